#include "geometry/exact/exact_region.hpp"

#include "tests/support/random_plans.hpp"
#include "tests/support/region_checks.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

PlanExpression all_together(std::vector<Shape> shapes) {
    PlanExpression plan;
    plan.shapes = std::move(shapes);
    for (int i = 0; i < static_cast<int>(plan.shapes.size()); ++i)
        plan.terms.push_back({"part", i, {}});
    return plan;
}

PlanExpression difference(const Shape& solid, const Shape& less) {
    PlanExpression plan;
    plan.shapes = {solid, less};
    plan.terms = {{"solid", 0, {1}}};
    return plan;
}

} // namespace

TEST_CASE("a disc and a ring come whole, their halves joined", "[exact]") {
    const Region disc = exact_region(all_together({Disc{{1, 2}, 3}}));
    check_same_region(disc, fast_region(all_together({Disc{{1, 2}, 3}})).value(), 1e-15);
    const Region ring = exact_region(difference(Disc{{0, 0}, 2}, Disc{{0, 0}, 1}));
    REQUIRE(ring.loops.size() == 2);
    CHECK(ring.loops[1].edges.size() == 2);
    CHECK(ring.area == Approx(3 * pi).epsilon(1e-15));
}

TEST_CASE("a stadium, whose discs touch the sides of its box, is decided exactly", "[exact]") {
    // 2 a L + pi a^2, outline 2 L + 2 pi a: a rectangle with semicircular ends.
    const double a = 0.5, length = 3;
    const PlanExpression plan = all_together(
        {Box{{0, 0}, {1, 0}, 0, length, -a, a}, Disc{{0, 0}, a}, Disc{{length, 0}, a}});
    CHECK_FALSE(fast_region(plan));
    const Region region = region_of(plan, exact_region);
    check_region(plan, region);
    CHECK(region.area == Approx(2 * a * length + pi * a * a).epsilon(1e-14));
    CHECK(perimeter(region) == Approx(2 * length + 2 * pi * a).epsilon(1e-14));
    REQUIRE(region.loops.size() == 1);
    CHECK(region.loops[0].edges.size() == 4);
}

TEST_CASE("discs that touch stay two, a whisker of overlap makes them one", "[exact]") {
    const auto pair = [](double apart) {
        return all_together({Disc{{0, 0}, 1}, Disc{{apart, 0}, 1}});
    };
    CHECK(exact_region(pair(2)).loops.size() == 2);
    CHECK(exact_region(pair(2)).area == Approx(2 * pi).epsilon(1e-15));
    const Region overlap = exact_region(pair(2 - 1e-12)); // crossings 2e-6 apart
    CHECK(overlap.loops.size() == 1);
    CHECK(overlap.loops[0].edges.size() == 4); // two arcs, each nearly a circle and so halved
    CHECK(overlap.area == Approx(2 * pi).epsilon(1e-12));
    // Touching from inside: the arbelos' outer part, pi (R^2 - r^2 - s^2) with R = r + s.
    PlanExpression plan = difference(Disc{{0, 0}, 1}, Disc{{-0.25, 0}, 0.75});
    plan.terms[0].less.push_back(add_shape(plan, Disc{{0.75, 0}, 0.25}));
    CHECK(exact_region(plan).area == Approx(pi * (1 - 0.75 * 0.75 - 0.25 * 0.25)).epsilon(1e-14));
}

TEST_CASE("sides that rounding moves off one line are taken as one", "[exact]") {
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        CAPTURE(seed);
        Seeded dice(seed);
        const double angle = dice.between(0, 2 * pi);
        const Vec2 by(dice.between(-50, 50), dice.between(-50, 50));
        // Side by side, the second in a frame that looks back; then one flush in the other.
        const Box one{{0, 0}, {1, 0}, 0, 2, 0, 1}, beside{{4, 1}, {-1, 0}, 0, 2, 0, 1};
        const Region both = exact_region(moved(all_together({one, beside}), angle, by));
        REQUIRE(both.loops.size() == 1);
        CHECK(both.area == Approx(4).epsilon(1e-9));
        const Box end{{2, 0.5}, {-1, 0}, 0, 0.5, -0.25, 0.25};
        const Region notch = exact_region(moved(difference(one, end), angle, by));
        REQUIRE(notch.loops.size() == 1);
        CHECK(notch.loops[0].edges.size() == 8);
        CHECK(notch.area == Approx(1.75).epsilon(1e-9));
    }
}

TEST_CASE("expressions that are not sound are left undecided", "[exact]") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK_FALSE(exact_region(all_together({Disc{{0, 0}, nan}})).decided);
    CHECK_FALSE(exact_region(all_together({Disc{{1e300, 0}, 1}})).decided);
    PlanExpression plan = all_together({Disc{{0, 0}, 1}});
    plan.terms[0].less = {7};
    CHECK_FALSE(exact_region(plan).decided);
    CHECK(exact_region({}).decided);
    CHECK(exact_region(all_together({Disc{{0, 0}, 0}})).loops.empty());
}
