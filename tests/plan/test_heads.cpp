#include "geometry/plan/heads.hpp"

#include "geometry/plan/building_form.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;

} // namespace

TEST_CASE("a fan has the odd count of bags nearest to its outer arc, ties up") {
    // Semicircle of 16 in, bags 15 in deep and 15 in wide outside: pi 31 / 15 = 6.49 -> 7. Reckoned.
    OpeningForm form = make_opening_form(opening("door", 0, 32, 0, 60, HeadKind::round));
    form.fan_depth = 15;
    const auto fan = make_fan(form, 15, 9);
    REQUIRE(fan);
    CHECK(fan->outer_arc == Approx(pi * 31));
    CHECK(fan->inner_arc == Approx(pi * 16));
    CHECK(fan->count == 7);
    CHECK(fan->outer_width == Approx(pi * 31 / 7));
    CHECK(fan->inner_width == Approx(pi * 16 / 7));
    CHECK(make_fan(form, pi * 31 / 6, 9)->count == 7); // a tie between 5 and 7
    CHECK(make_fan(form, pi * 31 / 5.9, 9)->count == 5);
    form.fan_depth = 0;
    CHECK_FALSE(make_fan(form, 15, 9));
}

TEST_CASE("the courses are cut at the fan's outer curve above the springing") {
    Design design = store_design();
    design.openings[0].head.kind = HeadKind::round;
    design.openings[0].head.rise.reset();
    design.openings[0].height = 66 * inch; // springs at 50 in, on a joint
    design.openings[0].head.laid = HeadLaid::fan;
    const BuildingForm building = make_building_form(design);
    const OpeningForm& door = building.openings.at(0);
    const DomeForm& dome = building.domes.at(0);
    CHECK(door.fan_depth == Approx(15 * inch));
    CHECK(laid_half_width(door, dome, 13) == Approx(16 * inch)); // middle 47.5: below the springing
    CHECK(laid_half_width(door, dome, 14) ==
          Approx(std::sqrt(31 * 31 - 2.5 * 2.5) * inch)); // middle 52.5
    CHECK(laid_half_width(door, dome, 19) == Approx(std::sqrt(31 * 31 - 27.5 * 27.5) * inch));
    CHECK(laid_half_width(door, dome, 20) == 0); // middle 82.5, above the outer crown at 81
    CHECK(taken_top(door, dome) == Approx(81 * inch));
}

TEST_CASE("a lintel lies on the joint at the head and takes up whole courses") {
    Design design = store_design();
    design.openings[0].head = {};
    LintelSpec spec;
    spec.depth = 8 * inch;
    spec.width = 10 * inch;
    design.openings[0].head.lintel = spec;
    design.openings[0].height = 20 * inch; // low, where the ring stands plumb: r 54
    const BuildingForm building = make_building_form(design);
    const auto lintel = make_lintel(building.openings.at(0), building.domes.at(0));
    REQUIRE(lintel);
    CHECK(lintel->length == Approx((32 + 24) * inch));
    CHECK(lintel->first_course == 3 + 4 + 1);
    CHECK(lintel->last_course == 3 + 4 + 2); // 8 in take up two courses of 5 in
    CHECK(lintel->packing == Approx(2 * inch));
    CHECK(laid_half_width(building.openings[0], building.domes[0], 8) == Approx(28 * inch));
    CHECK(laid_half_width(building.openings[0], building.domes[0], 9) == Approx(28 * inch));
    CHECK(laid_half_width(building.openings[0], building.domes[0], 10) == 0);
    // No other place bears on more of the ring, by a plain grid.
    const auto area = [&](double centre) {
        constexpr int parts = 1000;
        double sum = 0;
        for (int i = 0; i < parts; ++i) {
            const double y = (16 + (i + 0.5) * 12.0 / parts) * inch;
            const double from = std::max(centre - 5 * inch, std::sqrt(54 * 54 * inch * inch - y * y));
            const double to = std::min(centre + 5 * inch, std::sqrt(69 * 69 * inch * inch - y * y));
            sum += std::max(0.0, to - from) * 12 * inch / parts;
        }
        return 2 * sum;
    };
    CHECK(lintel->bearing_area == Approx(area(lintel->centre_distance)).epsilon(1e-4));
    for (double centre = 45 * inch; centre < 70 * inch; centre += 0.25 * inch)
        CHECK(area(centre) <= lintel->bearing_area * (1 + 1e-6));
}

TEST_CASE("a straight lintel of 56 in on a ring of 54 in stands into the room, reckoned") {
    // 32 in and 12 in bearings on R 54: sagitta 54 - sqrt(54^2 - 28^2) = 7.8 in.
    Design design = store_design();
    design.openings[0].head = {};
    LintelSpec spec;
    spec.width = 15 * inch;
    design.openings[0].head.lintel = spec;
    design.openings[0].height = 20 * inch;
    const BuildingForm building = make_building_form(design);
    const auto lintel = make_lintel(building.openings.at(0), building.domes.at(0));
    REQUIRE(lintel);
    CHECK(lintel->shows_inside / inch == Approx(4.1).margin(0.15));
    // It loses 4.5 % of the bearing that its two ends would have on a straight wall.
    CHECK(lintel->bearing_area == Approx(2 * 12 * 15 * inch * inch * 0.955).epsilon(0.01));
}
