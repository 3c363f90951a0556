// Seeded random values that are the same on every machine: raw bits of mt19937_64, whose sequence
// the standard fixes (its distributions it does not). Print the seed with CAPTURE.
#pragma once

#include <cstdint>
#include <random>

namespace coilwright {

class Seeded {
public:
    explicit Seeded(std::uint64_t seed) : bits_(seed) {}

    /// In [low, high).
    double between(double low, double high) {
        const double unit = static_cast<double>(bits_() >> 11) * 0x1p-53;
        return low + (high - low) * unit;
    }
    /// In [low, high], both included.
    int whole(int low, int high) {
        const auto count = static_cast<std::uint64_t>(high - low) + 1;
        return low + static_cast<int>(bits_() % count);
    }
    bool coin() { return (bits_() & 1) != 0; }
    /// One of the elements of a container that is not empty.
    template <typename Container>
    const auto& one_of(const Container& all) {
        return all[static_cast<std::size_t>(whole(0, static_cast<int>(all.size()) - 1))];
    }

private:
    std::mt19937_64 bits_;
};

} // namespace coilwright
