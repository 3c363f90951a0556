// Fans over openings as arches under load.
#include "geometry/base/bearing.hpp"
#include "geometry/statics/head_arch.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

OpeningForm fan_opening(HeadKind kind, double width, double rise, double depth) {
    Opening written = opening("door", 0, width, 0, 2 + rise, kind);
    written.head.rise = rise;
    written.head.laid = HeadLaid::fan;
    OpeningForm form = make_opening_form(written);
    form.fan_depth = depth;
    return form;
}

double weight_of(const Slice& slice) {
    double sum = 0;
    for (const SliceBlock& block : slice.blocks)
        sum += block.weight;
    return sum;
}

} // namespace

TEST_CASE("a fan's arch carries its own weight and the wall up to the cover") {
    const double a = 0.4, d = 0.38, w = 0.38, g = 17280, cover = 0.5;
    const OpeningForm round = fan_opening(HeadKind::round, 2 * a, a, d);
    const Slice bare = head_arch(round, {w, g, -10, unlimited}).value();
    CHECK(bare.blocks.size() == 7); // as make_fan counts: pi (0.4 + 0.38) / 0.38 = 6.4
    CHECK(weight_of(bare) == Approx(g * w * pi / 2 * ((a + d) * (a + d) - a * a)).epsilon(1e-9));
    // The rectangle over the outer half circle less the half circle.
    const Slice loaded = head_arch(round, {w, g, cover, unlimited}).value();
    const double out = a + d, wall = 2 * out * (out + cover) - pi / 2 * out * out;
    CHECK(weight_of(loaded) - weight_of(bare) == Approx(g * w * wall).epsilon(2e-3));
    // Half the load on each springing, and the same from either side.
    const ThrustLine line = least_thrust(loaded, 0);
    REQUIRE(line.stands);
    CHECK(line.joints.front().normal == Approx(weight_of(loaded) / 2).epsilon(1e-6));
    CHECK(line.joints.back().normal == Approx(weight_of(loaded) / 2).epsilon(1e-6));
    // A column's centre is that of its plan: symmetric about the crown.
    for (std::size_t i = 0; i < 7; ++i)
        CHECK(loaded.blocks[i].centre.x() == Approx(-loaded.blocks[6 - i].centre.x()).margin(1e-9));
}

TEST_CASE("segmental and pointed fans") {
    const HeadLoad load{0.38, 17280, 0.6, unlimited};
    const double a = 0.5, rise = 0.2, d = 0.3, rho = (a * a + rise * rise) / (2 * rise);
    const Slice flat = head_arch(fan_opening(HeadKind::segmental, 2 * a, rise, d), load).value();
    // Springings lie on the radius: intrados ends a to either side of the axis.
    CHECK(flat.joints.front().inner.x() == Approx(-a));
    CHECK(flat.joints.back().inner.x() == Approx(a));
    CHECK(flat.joints.back().inner.y() == Approx(rho - rise));
    const Slice pointed = head_arch(fan_opening(HeadKind::pointed, 2 * a, 1.0, d), load).value();
    CHECK(pointed.joints.front().inner.x() == Approx(0).margin(1e-12));
    CHECK(pointed.joints.front().inner.y() == Approx(1.0));
    CHECK(pointed.joints.back().inner.x() == Approx(a));
    CHECK(pointed.joints.back().inner.y() == Approx(0).margin(1e-12));
    const Fan fan = make_fan(fan_opening(HeadKind::pointed, 2 * a, 1.0, d), 0.38, 0).value();
    CHECK(pointed.blocks.size() == static_cast<std::size_t>((fan.count + 1) / 2));
    // The flatter the arch the more it pushes, on the same load.
    const auto thrust = [](const Slice& slice) {
        const ThrustLine line = least_thrust(slice, static_cast<int>(slice.blocks.size()));
        REQUIRE(line.stands);
        return line.joints.back().thrust() / weight_of(slice);
    };
    CHECK(thrust(flat) > thrust(pointed)); // on its whole weight, the half on its half: the more so
    // Between bags without friction no arch stands.
    HeadLoad slippery = load;
    slippery.friction = 0;
    CHECK_FALSE(
        least_thrust(head_arch(fan_opening(HeadKind::pointed, 2 * a, 1.0, d), slippery).value(), 2)
            .stands);
}

TEST_CASE("heads that are not fans have no arch") {
    OpeningForm square = fan_opening(HeadKind::square, 0.8, 0.2, 0);
    CHECK_FALSE(head_arch(square, {0.38, 17280, 0.6, unlimited}));
    CHECK_FALSE(
        head_arch(fan_opening(HeadKind::round, 0.8, 0.4, 0), {0.38, 17280, 0.6, unlimited}));
}
