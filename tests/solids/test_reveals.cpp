// Plumb reveals as solids: a closed wall that agrees with the plan, and every tube a body.
#include "geometry/plan/check_layout.hpp"
#include "geometry/plan/lay.hpp"
#include "geometry/solids/building_parts.hpp"
#include "geometry/solids/mesh_check.hpp"
#include "geometry/solids/solid_model.hpp"
#include "tests/solids/building_checks.hpp"
#include "tests/support/designs.hpp"
#include "tests/support/random_buildings.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;

/// The store with a reveal of its own for every head that can have one.
Design store_with(HeadKind head, double sill) {
    Design design = store_design();
    design.openings.push_back(opening("win", 330, 24 * inch, sill, 35 * inch, head));
    Opening& window = design.openings.back();
    window.reveal_plumb = true;
    if (head == HeadKind::pointed)
        window.head.rise = 20 * inch;
    if (head == HeadKind::segmental)
        window.head.rise = 6 * inch;
    if (head == HeadKind::circle)
        window.height = window.width;
    return design;
}

} // namespace

TEST_CASE("a wall with plumb reveals is one solid of its plans") {
    for (const HeadKind head :
         {HeadKind::pointed, HeadKind::round, HeadKind::segmental, HeadKind::circle})
        for (const double sill :
             {15.0, 40.0}) { // in inches: below the first course that leans, above
            CAPTURE(static_cast<int>(head), sill);
            const Design design = store_with(head, sill * inch);
            REQUIRE(check_layout(design).empty());
            const BuildingForm building = make_building_form(design);
            REQUIRE(building.buttresses.size() == 1);
            for (const BuildingPart& part : building_parts(building)) {
                const BuildingShell shell = checked_shell(part.building, 0.004, 0.3);
                CHECK(genus(shell.mesh) == 2); // a handle for the door and for the window
            }
        }
}

TEST_CASE("the tubes of a reveal are bodies of their own that fill its strips") {
    const Schedule schedule = lay(store_with(HeadKind::pointed, 40 * inch));
    const SolidResult courses = courses_model(schedule);
    REQUIRE(courses.faults.empty());
    std::size_t laid = 0, made = 0;
    for (const Course& course : schedule.courses)
        for (const Straight& straight : course.straights)
            laid += straight.tubes.size();
    const auto group = std::find_if(courses.model.groups.begin(), courses.model.groups.end(),
                                    [](const SolidGroup& g) { return g.title == "win-reveal"; });
    REQUIRE(group != courses.model.groups.end());
    for (const SolidPart& part : courses.model.parts)
        if (part.title.find("win-reveal") != std::string::npos) {
            ++made;
            CHECK(part.volume > 0);
            CHECK(check_mesh(part.mesh, true).solid());
        }
    CHECK(laid >= 20);
    CHECK(made == laid);
}

TEST_CASE("random buildings with plumb reveals are refused, or sound solids of their plans") {
    int reveals = 0;
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
        CAPTURE(seed);
        const Design design = with_reveals(random_building(seed, 2), seed);
        if (!check_layout(design).empty())
            continue;
        const BuildingForm building = make_building_form(design);
        const auto count =
            std::count_if(building.buttresses.begin(), building.buttresses.end(),
                          [](const ButtressForm& pier) { return pier.reveal.has_value(); });
        reveals += static_cast<int>(count);
        if (count > 0)
            for (const BuildingPart& part : building_parts(building))
                checked_shell(part.building, 0.006, 0.3);
    }
    CHECK(reveals >= 5);
}
