// The blocks of arches: weights and centres against integrals, halves against wholes.
#include "geometry/base/bearing.hpp"
#include "geometry/statics/voussoirs.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;

namespace {

Vec2 centre_of(const Slice& slice) {
    Vec2 sum(0, 0);
    double weight = 0;
    for (const SliceBlock& block : slice.blocks) {
        sum += block.weight * block.centre;
        weight += block.weight;
    }
    return sum / weight;
}

double weight_of(const Slice& slice) {
    double weight = 0;
    for (const SliceBlock& block : slice.blocks)
        weight += block.weight;
    return weight;
}

} // namespace

TEST_CASE("voussoirs of half a ring weigh and balance as the half ring does") {
    // Area pi R t; centre 2 R / pi for a thin ring, (4 / 3 pi)(ro3 - ri3)/(ro2 - ri2) for a thick
    // one (any statics text).
    CircularArch arch;
    arch.radius = 1;
    arch.thickness = 0.2;
    arch.from = -pi / 2;
    arch.to = pi / 2;
    arch.unit_weight = 1;
    for (const int count : {1, 7, 40}) {
        arch.voussoirs = count;
        const Slice slice = circular_arch(arch);
        CHECK(slice.blocks.size() == static_cast<std::size_t>(count));
        CHECK(weight_of(slice) == Approx(pi * 0.2).epsilon(1e-12));
        CHECK(centre_of(slice).x() == Approx(0).margin(1e-12));
        CHECK(centre_of(slice).y() ==
              Approx(4 / (3 * pi) * (1.331 - 0.729) / (1.21 - 0.81)).epsilon(1e-12));
    }
    CHECK(centre_of(circular_arch(arch)).y() == Approx(0.638742).epsilon(0).margin(1e-6));
}

TEST_CASE("a half pointed arch has the area and the centre of strips across it") {
    PointedArch arch;
    arch.half_span = 1;
    arch.arc_radius = 1.7;
    arch.thickness = 0.3;
    arch.unit_weight = 1;
    // Midpoint rule over heights: x between the two circles about (a - rho, 0), right of the axis.
    double area = 0;
    Vec2 moment(0, 0);
    const int strips = 400000;
    const double off = 0.7, top = std::sqrt(4.0 - 0.49);
    for (int i = 0; i < strips; ++i) {
        const double z = (i + 0.5) * top / strips, inner2 = 1.7 * 1.7 - z * z;
        const double from = std::max(0.0, (inner2 > 0 ? std::sqrt(inner2) : 0) - off);
        const double to = std::sqrt(4.0 - z * z) - off;
        area += (to - from) * top / strips;
        moment += (to - from) * top / strips * Vec2((from + to) / 2, z);
    }
    for (const int count : {2, 5, 33}) {
        arch.voussoirs = count;
        const Slice slice = half_pointed_arch(arch);
        CHECK(weight_of(slice) == Approx(area).epsilon(1e-7));
        CHECK(centre_of(slice).x() == Approx(moment.x() / area).epsilon(1e-7));
        CHECK(centre_of(slice).y() == Approx(moment.y() / area).epsilon(1e-7));
    }
}

TEST_CASE("a round arch is the pointed one whose centres meet; a half does as its whole") {
    PointedArch half;
    half.half_span = half.arc_radius = 0.9;
    half.thickness = 0.2;
    half.voussoirs = 20;
    half.unit_weight = 1;
    CircularArch whole;
    whole.radius = 1;
    whole.thickness = 0.2;
    whole.from = -pi / 2;
    whole.to = pi / 2;
    whole.voussoirs = 40;
    whole.unit_weight = 1;
    const Slice a = half_pointed_arch(half), b = circular_arch(whole);
    CHECK(least_thrust(a, 20).joints[20].thrust() ==
          Approx(least_thrust(b, 40).joints[40].thrust()).epsilon(1e-7));
    CHECK(greatest_thrust(a, 0).joints[0].thrust() ==
          Approx(greatest_thrust(b, 20).joints[20].thrust()).epsilon(1e-7));
    CHECK(centred_thrust(a).share == Approx(centred_thrust(b).share).epsilon(1e-6));
}
