#include "geometry/plan/wall_form.hpp"

#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;

} // namespace

TEST_CASE("the store has the rings reckoned by hand") {
    // rho = (54^2 + 108^2) / 108 = 135 in; r = sqrt(135^2 - y^2) - 81. Reckoned.
    const Design design = store_design();
    const DomeForm form = make_dome_form(design, design.domes[0]);
    CHECK(form.last_ring == 27);
    CHECK(form.bottom() == Approx(-15 * inch));
    CHECK(form.course_middle(1) == Approx(-12.5 * inch));
    const double y28 = (28 - 0.5 - 3) * 5 - 20;
    CHECK(std::sqrt(135 * 135 - y28 * y28) - 81 == Approx(6.86).margin(0.005)); // too tight a ring
    CHECK(inside_radius(form, form.course_middle(7)) == Approx(54 * inch));
    const double y24 = (24 - 3.5) * 5 - 20;
    CHECK(inside_radius(form, form.course_middle(24)) ==
          Approx((std::sqrt(135 * 135 - y24 * y24) - 81) * inch).epsilon(1e-12));
    CHECK(outside_radius(form, form.course_middle(24)) -
              inside_radius(form, form.course_middle(24)) ==
          Approx(15 * inch).epsilon(1e-12));
}

TEST_CASE("a closed dome ends in discs no smaller than half a tube, on every kind of crown") {
    // Pointed, near-round and round: past the apex the continued curve must stay a number.
    for (const double ratio : {1.0, 1.1, 1.2, 1.5, 2.0, 3.0}) {
        CAPTURE(ratio);
        Design design = store_design();
        design.domes[0].profile.rise = ratio * 54 * inch;
        if (ratio == 1.0) {
            design.domes[0].profile.kind = ProfileKind::round;
            design.domes[0].profile.rise.reset();
        }
        const DomeForm form = make_dome_form(design, design.domes[0]);
        REQUIRE(form.cap_courses >= 1);
        REQUIRE(form.courses() < 60);
        double previous = outside_radius(form, form.course_middle(form.last_ring));
        for (int n = form.last_ring + 1; n <= form.courses(); ++n) {
            const double disc = outside_radius(form, form.course_middle(n));
            CHECK(std::isfinite(disc));
            CHECK(disc >= form.width / 2 - 1e-12);
            CHECK(disc < previous);
            CHECK(inside_radius(form, form.course_middle(n)) == 0);
            previous = disc;
        }
        const double rim = outside_radius(form, form.top());
        CHECK(rim > 0);
        CHECK(rim <= previous);
    }
}

TEST_CASE("the cap of a pointed dome follows the circle past the apex") {
    const Design design = store_design();
    const DomeForm form = make_dome_form(design, design.domes[0]);
    REQUIRE(form.cap.by_formula); // rho - a = 81 in, well over half a tube
    for (int n = form.last_ring + 1; n <= form.courses(); ++n) {
        const double y = (n - 3.5) * 5 - 20;
        CHECK(outside_radius(form, form.course_middle(n)) ==
              Approx((std::sqrt(135 * 135 - y * y) - 81 + 15) * inch).epsilon(1e-12));
    }
    const double y_next = (form.courses() + 1 - 3.5) * 5 - 20;
    CHECK(std::sqrt(135 * 135 - y_next * y_next) - 81 + 15 < 7.5);
}

TEST_CASE("faces are continuous in height") {
    for (std::uint64_t seed = 1; seed <= 200; ++seed) {
        CAPTURE(seed);
        const Design design = random_design(seed);
        const DomeForm form = make_dome_form(design, design.domes[0]);
        if (form.last_ring < 2 || form.courses() >= most_courses)
            continue;
        const double kink = form.springline + form.profile.rise;
        for (double z = form.bottom() + 1e-4; z < form.top() - 1e-4; z += form.course_height / 7) {
            if (z < form.ceiling() - 1e-4 && std::abs(z - kink) > 0.01) {
                CHECK(std::abs(inside_radius(form, z + 1e-9) - inside_radius(form, z - 1e-9)) <
                      1e-5);
            }
            CHECK(std::abs(outside_radius(form, z + 1e-9) - outside_radius(form, z - 1e-9)) < 1e-5);
            CHECK(outside_radius(form, z) > inside_radius(form, z));
        }
    }
}

TEST_CASE("a skylight leaves the last ring over it and a plumb curb") {
    Design design = store_design();
    design.domes[0].top.kind = TopKind::skylight;
    design.domes[0].top.diameter = 24 * inch;
    const DomeForm form = make_dome_form(design, design.domes[0]);
    CHECK(form.cap_courses == 0);
    CHECK(form.curb_courses == 2);
    CHECK(form.last_ring_radius > 12 * inch);
    CHECK(half_width(form.profile, form.course_middle(form.last_ring + 1) - form.springline) <=
          12 * inch);
    CHECK(inside_radius(form, form.top() - 1e-3) == form.last_ring_radius);
    CHECK(outside_radius(form, form.top() - 1e-3) == form.last_ring_radius + form.width);
}

TEST_CASE("holes have the half-width of their heads") {
    // Widths from the circles' equations, reckoned.
    SECTION("pointed") {
        Opening door = opening("door", 0, 1.0, 0, 2.0, HeadKind::pointed); // equilateral by default
        const OpeningForm form = make_opening_form(door);
        CHECK(form.springing == Approx(2 - std::sqrt(3.0) / 2));
        CHECK(half_width(form, form.springing + 0.5) ==
              Approx(std::sqrt(1 - 0.25) - 0.5).epsilon(1e-12));
        CHECK(half_width(form, 0.3) == 0.5);
        CHECK(half_width(form, -0.01) == 0);
        CHECK(half_width(form, 2.0) == 0);
    }
    SECTION("circle") {
        const OpeningForm form =
            make_opening_form(opening("eye", 0, 0.6, 1.0, 0.6, HeadKind::circle));
        CHECK(form.top == Approx(1.6));
        CHECK(half_width(form, 1.3) == Approx(0.3));
        CHECK(half_width(form, 1.1) == Approx(std::sqrt(0.09 - 0.04)));
        CHECK(half_width(form, 1.5) == Approx(std::sqrt(0.09 - 0.04)));
    }
    SECTION("segmental") {
        Opening window = opening("window", 0, 0.8, 1.0, 0.7, HeadKind::segmental);
        window.head.rise = 0.2; // radius (0.16 + 0.04) / 0.4 = 0.5
        const OpeningForm form = make_opening_form(window);
        CHECK(half_width(form, 1.6) == Approx(std::sqrt(0.25 - 0.16)));
    }
    SECTION("square") {
        const OpeningForm form =
            make_opening_form(opening("slot", 0, 0.8, 1, 0.7, HeadKind::square));
        CHECK(half_width(form, 1.699) == 0.4);
        CHECK(half_width(form, 1.701) == 0);
    }
}

TEST_CASE("a course is cut where its middle lies in the hole, and laid over a slot") {
    const Design design = store_design();
    const DomeForm dome = make_dome_form(design, design.domes[0]);
    const OpeningForm door = make_opening_form(design.openings[0]);
    CHECK_FALSE(cuts_course(door, dome, 3)); // below the floor
    CHECK(cuts_course(door, dome, 4));
    // The head springs at 56 in, rho = (16^2 + 24^2) / 32 = 26 in. At z 77.5 in it is
    // 2 (sqrt(26^2 - 21.5^2) - 10) = 9.24 in wide, more than a course is high: cut. Reckoned.
    CHECK(half_width(door, 77.5 * inch) == Approx((std::sqrt(26. * 26 - 21.5 * 21.5) - 10) * inch));
    const int last = 3 + 16; // the course whose middle is at 77.5 in
    CHECK(dome.course_middle(last) == Approx(77.5 * inch));
    CHECK(cuts_course(door, dome, last));
    CHECK_FALSE(cuts_course(door, dome, last + 1));
    // Of a door 1-1/2 in lower the same course finds 2 (sqrt(26^2 - 23^2) - 10) = 4.25 in: a slot.
    Opening lower = design.openings[0];
    lower.height = 78.5 * inch;
    CHECK(half_width(make_opening_form(lower), 77.5 * inch) > 0);
    CHECK_FALSE(cuts_course(make_opening_form(lower), dome, last));
    CHECK(cuts_course(make_opening_form(lower), dome, last - 1));
}

TEST_CASE("heights within a micrometre are one: a hole has its sill, and not its top") {
    const Design design = store_design();
    const DomeForm form = make_dome_form(design, design.domes[0]);
    const double z = form.course_middle(8);
    OpeningForm hole =
        make_opening_form(opening("win", 0, 24 * inch, z, 30 * inch, HeadKind::square));
    for (const auto& [off, cuts] : {std::pair{0.0, true}, {0.9e-6, true}, {1.1e-6, false}}) {
        CAPTURE(off);
        hole.sill = z + off;
        CHECK((half_width(hole, z) > 0) == cuts);
        CHECK(cuts_course(hole, form, 8) == cuts);
    }
    hole.sill = 0;
    for (const auto& [off, cuts] : {std::pair{0.0, false}, {0.9e-6, false}, {1.1e-6, true}}) {
        CAPTURE(off);
        hole.top = z + off;
        CHECK((half_width(hole, z) > 0) == cuts);
        CHECK(cuts_course(hole, form, 8) == cuts);
    }
    // A course height wide it cuts; a shade narrower the ring runs on over it.
    hole.top = z + 1;
    for (const auto& [less, cuts] : {std::pair{0.0, true}, {0.9e-6, true}, {1.1e-6, false}}) {
        CAPTURE(less);
        hole.half_width = (5 * inch - less) / 2;
        CHECK(cuts_course(hole, form, 8) == cuts);
    }
}
