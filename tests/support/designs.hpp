// Designs for the tests, built in code: no reader in between. Invented, as all demo data are.
#pragma once

#include "geometry/design/design.hpp"

#include <cstdint>

namespace coilwright::testing {

/// A pointed dome of 9 ft on a 20 in stem: 17 in tube tamped to 15 in, 5 in courses, 3 below the floor.
Design store_design();
/// An opening of the store, in metres and degrees.
Opening opening(const char* id, double bearing, double width, double sill, double height,
                HeadKind head);

/// Random numbers that are the same on every machine.
class Dice {
public:
    explicit Dice(std::uint64_t seed) : state_(seed) {}
    std::uint64_t bits();
    double between(double low, double high);
    int whole(int low, int high); // both ends included
    bool chance(double share) { return between(0, 1) < share; }

private:
    std::uint64_t state_;
};

/// One or two domes far apart with random profiles, tubes, tops and openings. About half can be laid.
Design random_design(std::uint64_t seed);

} // namespace coilwright::testing
