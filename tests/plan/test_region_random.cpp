#include "geometry/plan/region.hpp"

#include "tests/support/random_plans.hpp"
#include "tests/support/region_checks.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

/// Order of shapes and of terms changed; the sets are the same.
PlanExpression shuffled(const PlanExpression& plan, Seeded& dice) {
    std::vector<int> place;
    for (std::size_t i = 0; i < plan.shapes.size(); ++i)
        place.insert(place.begin() + dice.whole(0, static_cast<int>(i)), static_cast<int>(i));
    PlanExpression result;
    std::vector<int> index(plan.shapes.size());
    for (const int old : place) {
        index[static_cast<std::size_t>(old)] = static_cast<int>(result.shapes.size());
        result.shapes.push_back(plan.shapes[static_cast<std::size_t>(old)]);
    }
    for (PlanTerm term : plan.terms) {
        term.solid = index[static_cast<std::size_t>(term.solid)];
        for (int& less : term.less)
            less = index[static_cast<std::size_t>(less)];
        std::reverse(term.less.begin(), term.less.end());
        result.terms.insert(
            result.terms.begin() + dice.whole(0, static_cast<int>(result.terms.size())), term);
    }
    return result;
}

/// Area of the region by counting points of a random lattice.
double counted_area(const PlanExpression& plan, Seeded& dice, double step) {
    const double x0 = dice.between(0, step), y0 = dice.between(0, step);
    int count = 0;
    for (double x = -8 + x0; x < 16; x += step)
        for (double y = -8 + y0; y < 8; y += step)
            count += contains(plan, {x, y}) ? 1 : 0;
    return count * step * step;
}

} // namespace

TEST_CASE("scattered plans have sound boundaries, and nearly all are decided", "[region]") {
    int decided = 0;
    constexpr int plans = 2000;
    for (std::uint64_t seed = 1; seed <= plans; ++seed) {
        CAPTURE(seed);
        Seeded dice(seed);
        const PlanExpression plan = scattered_plan(dice);
        if (const auto region = fast_region(plan)) {
            ++decided;
            check_region(plan, *region);
        }
    }
    CHECK(decided > plans * 0.99);
}

TEST_CASE("plans as buildings have them are decided, turned by any angle", "[region]") {
    int decided = 0;
    constexpr int plans = 1000;
    for (std::uint64_t seed = 1; seed <= plans; ++seed) {
        CAPTURE(seed);
        Seeded dice(seed);
        PlanExpression plan = building_plan(dice);
        if (dice.coin())
            plan = moved(plan, dice.between(0, 2 * pi),
                         {dice.between(-50, 50), dice.between(-50, 50)});
        if (const auto region = fast_region(plan)) {
            ++decided;
            check_region(plan, *region);
        }
    }
    CHECK(decided > plans * 0.99);
}

TEST_CASE("areas are what counting points gives", "[region]") {
    for (std::uint64_t seed = 1; seed <= 40; ++seed) {
        CAPTURE(seed);
        Seeded dice(seed);
        const PlanExpression plan = seed % 2 == 0 ? scattered_plan(dice) : building_plan(dice);
        const auto region = fast_region(plan);
        REQUIRE(region);
        const double step = 0.03;
        // A lattice errs by the cells on the boundary, which mostly cancel.
        CHECK(counted_area(plan, dice, step) ==
              Approx(region->area).margin(0.25 * step * perimeter(*region)));
    }
}

TEST_CASE("turning and moving a plan turns and moves its region", "[region]") {
    for (std::uint64_t seed = 1; seed <= 400; ++seed) {
        CAPTURE(seed);
        Seeded dice(seed);
        const PlanExpression plan = dice.coin() ? scattered_plan(dice) : building_plan(dice);
        const double angle = dice.between(0, 2 * pi);
        const Vec2 by(dice.between(-30, 30), dice.between(-30, 30));
        const auto there = fast_region(plan), here = fast_region(moved(plan, angle, by));
        REQUIRE(there.has_value() == here.has_value());
        if (!there)
            continue;
        CHECK(here->area == Approx(there->area).epsilon(1e-9));
        CHECK(perimeter(*here) == Approx(perimeter(*there)).epsilon(1e-9));
        REQUIRE(here->loops.size() == there->loops.size());
        for (std::size_t i = 0; i < here->loops.size(); ++i)
            CHECK(here->loops[i].area == Approx(there->loops[i].area).margin(1e-8));
    }
}

TEST_CASE("the order of shapes and terms changes nothing", "[region]") {
    for (std::uint64_t seed = 1; seed <= 400; ++seed) {
        CAPTURE(seed);
        Seeded dice(seed);
        PlanExpression plan = dice.coin() ? scattered_plan(dice) : building_plan(dice);
        if (dice.coin())
            plan = moved(plan, dice.between(0, 2 * pi), {3, -2});
        const PlanExpression other = shuffled(plan, dice);
        const auto one = fast_region(plan), two = fast_region(other);
        REQUIRE(one.has_value() == two.has_value());
        if (one)
            check_same_region(*one, *two, 3e-9);
    }
}
