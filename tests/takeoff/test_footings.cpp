// The trench under the first course: against areas reckoned by hand.
#include "geometry/takeoff/footings.hpp"

#include "geometry/takeoff/days.hpp"
#include "tests/support/designs.hpp"
#include "tests/takeoff/planned.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = 0.0254;

BuildingPlan plan_of(const Design& design) {
    BuildingPlan plan = plan_building(design, {});
    REQUIRE(plan.sound());
    return plan;
}

Footing footing_of(const BuildingPlan& plan, const std::string& element) {
    for (const Footing& footing : footings(plan))
        if (footing.element == element)
            return footing;
    FAIL(element);
    return {};
}

/// The gravel to buy and the digging of the first day are of that area.
void check_amounts(const BuildingPlan& plan) {
    double area = 0;
    for (const Footing& footing : footings(plan))
        area += footing.trench_area();
    const Works works = default_works();
    const TakeOff take = take_off(plan, works);
    const double depth = plan.design.trench.gravel_depth;
    CHECK(amount(take, "gravel") == Approx(area * depth / 0.9)); // settles by 0.10
    const double deep = plan.design.ground.level - plan.schedule.courses.front().bottom + 2 * depth;
    double dug = 0;
    for (const WorkDay& day : plan_days(plan, take, works).days)
        for (const DayWork& work : day.work)
            dug += work.phase == Phase::trench ? work.person_days : 0;
    CHECK(dug == Approx(area * deep / 1.5)); // 1.5 m3 a person and day
}

} // namespace

TEST_CASE("the trench of a pier is its tubes side by side and the room once") {
    Design design = store_with_porch();
    design.trench.gravel_depth = 0.1;
    for (const bool stated : {false, true}) {
        if (stated) // under one tube of 15 in: the same room of 6 in
            design.trench.width = 21 * inch;
        const BuildingPlan plan = plan_of(design);
        double length = 0;
        int tubes = 0;
        for (const Straight& straight : plan.schedule.courses.front().straights)
            if (straight.of == "flank-1") {
                length += straight.length;
                ++tubes;
            }
        REQUIRE(tubes == 2); // 30 in of tubes of 15 in
        CHECK(footing_of(plan, "flank-1").trench_area() == Approx(length / 2 * 36 * inch));
        check_amounts(plan);
    }
    design.trench.width = 10 * inch; // narrower than a tube: the trench is as wide as its tubes
    CHECK(footing_of(plan_of(design), "flank-1").trench == Approx(30 * inch));
}

TEST_CASE("the trench of two wythes is one annulus") {
    Design design = store_design();
    design.openings.clear();
    design.domes.front().datum.clear();
    design.domes.front().second_wythe = 20 * inch;
    design.trench.gravel_depth = 0.1;
    for (const double room : {6.0, 9.0}) {
        if (room > 6)
            design.trench.width = (15 + room) * inch;
        const BuildingPlan plan = plan_of(design);
        // Inside 54 in, two tubes of 15 in, half of the room on each side.
        const double inner = (54 - room / 2) * inch, outer = (84 + room / 2) * inch;
        CHECK(footing_of(plan, "store").trench_area() ==
              Approx(pi * (outer * outer - inner * inner)));
        check_amounts(plan);
    }
}
