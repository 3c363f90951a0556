// The region in doubles against the exact one.
#include "geometry/exact/exact_region.hpp"
#include "tests/support/random_plans.hpp"
#include "tests/support/region_checks.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

/// Small enough that a thousand of them are reckoned exactly in seconds: a ring less an opening or
/// a disc, and a box or a second ring.
PlanExpression small_plan(Seeded& dice) {
    PlanExpression plan;
    const double r = dice.between(1, 2.5);
    const int outer = add_shape(plan, Disc{{0, 0}, r + dice.between(0.2, 0.5)});
    PlanTerm ring{"ring", outer, {add_shape(plan, Disc{{0, 0}, r})}};
    const Vec2 at(dice.between(-3, 3), dice.between(-3, 3));
    const double half = dice.between(0.2, 0.8);
    const Box box{at, unit(dice.between(0, 2 * pi)), 0, dice.between(0.3, 5), -half, half};
    const int other =
        dice.coin() ? add_shape(plan, box) : add_shape(plan, Disc{at, dice.between(0.3, 2)});
    if (dice.coin())
        ring.less.push_back(other);
    else
        plan.terms.push_back({"other", other, {}});
    plan.terms.push_back(ring);
    return plan;
}

/// Two or three shapes brought together but for a gap: tangent circles, a side along a circle, a
/// corner on a circle, three circles through a point, sides nearly on one line.
PlanExpression nearly_meeting_plan(Seeded& dice, double gap) {
    PlanExpression plan;
    const double r = dice.between(0.5, 2), s = dice.between(0.5, 2), turn = dice.between(0, 2 * pi);
    const Vec2 towards = unit(turn), across(-towards.y(), towards.x());
    const int one = add_shape(plan, Disc{{0, 0}, r});
    int two = -1;
    switch (dice.whole(0, 5)) {
    case 0: // outside tangency
        two = add_shape(plan, Disc{(r + s + gap) * towards, s});
        break;
    case 1: // inside tangency
        two = add_shape(plan, Disc{(r * 0.4 + gap) * towards, r * 0.6});
        break;
    case 2: // a side along the circle
        two = add_shape(plan, Box{(r + gap) * towards, towards, 0, s, -0.5, 0.8});
        break;
    case 3: // a corner on the circle
        two = add_shape(plan, Box{(r + gap) * towards, unit(turn + 0.5), 0, s, 0, 1});
        break;
    case 4: // three circles through a point
        two = add_shape(plan, Disc{r * towards + s * unit(turn + 1), s + gap});
        plan.terms.push_back({"three", add_shape(plan, Disc{r * towards - s * across, s}), {}});
        break;
    default: // sides in line
        two = add_shape(plan, Box{{0, 0}, towards, -3, 0.5 * r, gap, s});
        plan.terms.push_back(
            {"box", add_shape(plan, Box{{0, 0}, -towards, -0.2, 3 * r, 0, 0.4}), {}});
    }
    PlanTerm first{"one", one, {}};
    if (dice.coin())
        first.less.push_back(two);
    else
        plan.terms.push_back({"two", two, {}});
    plan.terms.push_back(first);
    return plan;
}

void compare(std::uint64_t seeds, PlanExpression (*make)(Seeded&)) {
    std::uint64_t decided = 0;
    for (std::uint64_t seed = 1; seed <= seeds; ++seed) {
        CAPTURE(seed);
        Seeded dice(seed);
        PlanExpression plan = make(dice);
        if (dice.coin())
            plan = moved(plan, dice.between(0, 2 * pi),
                         {dice.between(-20, 20), dice.between(-20, 20)});
        if (const auto fast = fast_region(plan)) {
            ++decided;
            const Region exact = exact_region(plan);
            check_region(plan, exact);
            check_same_region(*fast, exact, 3e-9);
            CHECK(fast->area == Approx(exact.area).epsilon(1e-9).margin(1e-9));
        }
    }
    CHECK(static_cast<double>(decided) > 0.99 * static_cast<double>(seeds));
}

/// Returns how many were decided in doubles.
int compare_near(std::uint64_t seeds, double size) {
    const double beside = size > plan_weld ? 1e-10 : 5e-9; // curves may be moved by plan_weld
    int decided = 0;
    for (std::uint64_t seed = 1; seed <= seeds; ++seed) {
        Seeded dice(seed);
        const double gap = dice.coin() ? size : -size;
        const PlanExpression plan = nearly_meeting_plan(dice, gap);
        CAPTURE(seed, gap);
        if (const auto fast = fast_region(plan)) {
            ++decided;
            check_region(plan, *fast, beside);
            const Region exact = exact_region(plan);
            CHECK(std::abs(fast->area - exact.area) < 1e-9 * (exact.area + perimeter(exact)));
            CHECK(perimeter(*fast) == Approx(perimeter(exact)).epsilon(1e-8));
        } else {
            check_region(plan, region_of(plan, exact_region), beside);
        }
    }
    return decided;
}

} // namespace

TEST_CASE("doubles and exact arithmetic give the same small plans", "[region]") {
    compare(2000, small_plan);
}

TEST_CASE("doubles and exact arithmetic give the same scattered plans", "[region]") {
    compare(400, scattered_plan);
}

TEST_CASE("doubles and exact arithmetic give the same buildings", "[region]") {
    compare(100, building_plan);
}

TEST_CASE("doubles agree or refuse where curves nearly meet", "[region]") {
    for (const double gap : {1e-2, 1e-4, 1e-6})
        CHECK(compare_near(60, gap) >= 55);
    for (const double gap : {9e-8, 1e-8, 2e-9})
        CHECK(compare_near(60, gap) <= 30);
    for (const double gap : {9e-10, 1e-12, 1e-15, 0.0})
        compare_near(60, gap);
}

// Not in the quick suite: minutes. Run it by its tag after a change to the plan's arithmetic.
TEST_CASE("doubles and exact arithmetic agree at length", "[.long]") {
    compare(10000, small_plan);
    compare(5000, scattered_plan);
    compare(2000, building_plan);
    for (const double gap :
         {1e-2, 1e-4, 1e-6, 2e-7, 1e-7, 5e-8, 1e-8, 2e-9, 9e-10, 5e-10, 1e-12, 0.0})
        compare_near(500, gap);
}
