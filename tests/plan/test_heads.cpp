#include "geometry/plan/heads.hpp"

#include "geometry/plan/building_form.hpp"
#include "geometry/plan/lay.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;

} // namespace

TEST_CASE("a fan has the odd count of bags nearest to its outer arc, ties up") {
    // Semicircle of 16 in, bags 15 in deep and 15 in wide outside: pi 31 / 15 = 6.49 -> 7.
    // Reckoned.
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
            const double from =
                std::max(centre - 5 * inch, std::sqrt(54 * 54 * inch * inch - y * y));
            const double to = std::min(centre + 5 * inch, std::sqrt(69 * 69 * inch * inch - y * y));
            sum += std::max(0.0, to - from) * 12 * inch / parts;
        }
        return 2 * sum;
    };
    CHECK(lintel->bearing_area == Approx(area(lintel->centre_distance)).epsilon(1e-4));
    for (double centre = 45 * inch; centre < 70 * inch; centre += 0.25 * inch)
        CHECK(area(centre) <= lintel->bearing_area * (1 + 1e-6));
}

TEST_CASE("a lintel that lies whole on the wall lies midway between where it would not") {
    // R 54 and 69 in. Its inner face clears the room at its near corner, its outer one the outside
    // at its far corner: the middle of the places that allow both, reckoned.
    struct Case {
        double width, bearing, depth; // inches, the last across the wall
    };
    for (const Case& c : {Case{32, 12, 10}, Case{84, 6, 4}, Case{80, 6, 3}}) {
        CAPTURE(c.width);
        OpeningForm opening;
        opening.head_kind = HeadKind::square;
        opening.half_width = c.width / 2 * inch;
        opening.sill = 0;
        opening.springing = opening.top = 20 * inch;
        opening.lintel = LintelSpec{};
        opening.lintel->bearing = c.bearing * inch;
        opening.lintel->width = c.depth * inch;
        const BuildingForm building = make_building_form(store_design());
        const auto lintel = make_lintel(opening, building.domes.at(0));
        REQUIRE(lintel);
        const double near = c.width / 2, far = near + c.bearing;
        const double least = std::sqrt(54 * 54 - near * near) + c.depth / 2;
        const double most = std::sqrt(69 * 69 - far * far) - c.depth / 2;
        REQUIRE(least < most);
        CHECK(lintel->centre_distance / inch == Approx((least + most) / 2));
        CHECK(lintel->bearing_area / inch / inch == Approx(2 * c.bearing * c.depth));
    }
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

namespace {

/// Area between the two curves of a pointed fan by the midpoint rule: polar about the centre of the
/// right side's arc, from the springing up to the axis, which lies `beyond` from it.
double fan_area(double radius, double depth, double beyond) {
    constexpr int parts = 200000;
    double area = 0;
    const double outer = radius + depth;
    for (int i = 0; i < parts; ++i) {
        const double angle = pi / 2 * (i + 0.5) / parts;
        const double to_axis = beyond / std::cos(angle);
        const double from = std::max(radius, to_axis), to = std::max(outer, to_axis);
        area += (to * to - from * from) / 2 * (pi / 2) / parts;
    }
    return 2 * area;
}

} // namespace

TEST_CASE("a pointed fan meets at its own crown, and its keystone is the wedge there") {
    // a 16, rise 32: rho = (16^2 + 32^2) / 32 = 40, its centre 24 beyond the axis.
    Opening door = opening("door", 0, 32, 0, 80, HeadKind::pointed);
    door.head.rise = 32;
    OpeningForm form = make_opening_form(door);
    form.fan_depth = 15;
    const auto fan = make_fan(form, 15, 9);
    REQUIRE(fan);
    CHECK(fan->inner_arc == Approx(2 * 40 * std::acos(24.0 / 40)));
    CHECK(fan->outer_arc == Approx(2 * 55 * std::acos(24.0 / 55)));
    CHECK(fan_top(form) == Approx(48 + std::sqrt(55.0 * 55 - 24 * 24)));
    CHECK(fan->face_area == Approx(fan_area(40, 15, 24)).epsilon(1e-6));
    // The keystone's sides lie half a bag along each arc from the crown.
    const double angle = std::acos(24.0 / 55) - fan->outer_width / 2 / 55;
    CHECK(fan->keystone_outer == Approx(2 * (55 * std::cos(angle) - 24)));
    CHECK(fan->keystone_outer < fan->outer_width);
}

TEST_CASE("a segmental fan stands on skewbacks along its radii") {
    // a 16, rise 8: R = (16^2 + 8^2) / 16 = 20, its centre 12 below the springing.
    Opening door = opening("door", 0, 32, 0, 80, HeadKind::segmental);
    door.head.rise = 8;
    OpeningForm form = make_opening_form(door);
    form.fan_depth = 10;
    const auto fan = make_fan(form, 9, 9);
    REQUIRE(fan);
    const double half = std::asin(16.0 / 20);
    CHECK(fan->inner_arc == Approx(2 * 20 * half));
    CHECK(fan->outer_arc == Approx(2 * 30 * half));
    CHECK(fan_top(form) == Approx(72 + 30 - 12));
    CHECK(fan->face_area == Approx((30 * 30 - 20 * 20) * half));
    CHECK(fan->keystone_inner == Approx(2 * 20 * std::sin(half / fan->count)));
    // Courses end at the skewback, 4 across for 3 up, until they meet the outer curve.
    CHECK(taken_half_width(form, {}, 72) == Approx(16));
    CHECK(taken_half_width(form, {}, 75) == Approx(16 + 3 * 4.0 / 3));
    CHECK(taken_half_width(form, {}, 72 + 10 * 12.0 / 20) == Approx(16 + 10 * 16.0 / 20));
    CHECK(taken_half_width(form, {}, 85) == Approx(std::sqrt(30.0 * 30 - 25 * 25)));
}

TEST_CASE("in courses of a wider lower tube a fan and a lintel are of that tube") {
    Design design = store_design();
    design.domes[0].springline = 70 * inch;
    TubeType wide;
    wide.id = "wide";
    wide.lay_flat = 24 * inch;
    wide.tamped_width = 22 * inch;
    design.tubes.push_back(wide);
    design.domes[0].lower_tube = "wide";
    design.domes[0].lower_height = 65 * inch;
    design.openings[0] = opening("o", 90, 24 * inch, 20 * inch, 22 * inch, HeadKind::round);
    design.openings[0].head.laid = HeadLaid::fan;
    design.openings.push_back(opening("p", 270, 24 * inch, 20 * inch, 20 * inch, HeadKind::square));
    design.openings[1].head.lintel = LintelSpec{};
    design.domes[0].datum.clear();
    const Schedule low = lay(design);
    // One tamped width deep: the outer arc is pi (12 + 22) = 106.8 in, 4.86 bags of 22 in: 5.
    REQUIRE(low.fans.size() == 1);
    CHECK(low.fans[0].depth == Approx(22 * inch));
    CHECK(low.fans[0].outer_arc == Approx(pi * 34 * inch));
    CHECK(low.fans[0].count == 5);
    CHECK(low.fans[0].fill_volume ==
          Approx(pi / 2 * (34 * 34 - 12 * 12) * 22 * inch * inch * inch));
    REQUIRE(low.lintels.size() == 1);
    CHECK(low.lintels[0].width == Approx((22 - 5) * inch));
    // With a depth of its own: pi 27 / 22 = 3.86 bags, 3; of tubes of 15 in 5.65 would be 5.
    design.openings[0].head.depth = 15 * inch;
    CHECK(lay(design).fans[0].count == 3);
    design.domes[0].lower_height = 10 * inch; // ends below both
    const Schedule high = lay(design);
    CHECK(high.fans[0].count == 5);
    CHECK(high.lintels[0].width == Approx((15 - 5) * inch));
}
