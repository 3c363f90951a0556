#include "geometry/design/forgotten_unit.hpp"

#include "geometry/design/measure.hpp"

#include <cmath>

namespace coilwright {

namespace {

struct SmallUnit {
    const char* word;
    double metres;
};

} // namespace

std::string with_forgotten_unit(double number, const UsualLength& usual, DisplayUnit unit) {
    constexpr double least_share = 1.0 / 8; // of the example; less is hardly what was meant
    const auto is_ordinary = [&](double value) {
        return value >= usual.low && value <= usual.high &&
               std::abs(value) >= std::abs(usual.example) * least_share;
    };
    const auto text = [&](const SmallUnit& small) {
        return short_number(number) + " " + small.word;
    };
    if (unit == DisplayUnit::feet && is_ordinary(number * metres_per_inch))
        return text({"in", metres_per_inch});
    std::string nearest;
    double least = 0;
    for (const SmallUnit& small : {SmallUnit{"cm", 0.01}, SmallUnit{"mm", 0.001}}) {
        if (!is_ordinary(number * small.metres))
            continue;
        const double off = std::abs(std::log(std::abs(number * small.metres / usual.example)));
        if (nearest.empty() || off < least) {
            nearest = text(small);
            least = off;
        }
    }
    return nearest;
}

} // namespace coilwright
