#include "geometry/plan/buttress_form.hpp"
#include "geometry/plan/tunnel_form.hpp"

#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;

} // namespace

TEST_CASE("a porch has walls to its crown and a closed crown above") {
    const Design design = store_design();
    const TunnelForm form = make_tunnel_form(design, porch());
    // rho = (18^2 + 36^2) / 36 = 45 in. Half-width of the void at 70 in, y 25: sqrt(45^2 - 25^2)
    // - 27.
    CHECK(inner_half_width(form, 70 * inch) ==
          Approx((std::sqrt(45.0 * 45 - 25 * 25) - 27) * inch).epsilon(1e-12));
    CHECK(inner_half_width(form, -5 * inch) == Approx(18 * inch));
    CHECK(inner_half_width(form, 81 * inch) == 0);
    CHECK(outer_half_width(form, 10 * inch) == Approx(33 * inch));
    // Courses whose middle lies below 81 in: 77.5 is the last, number 3 + 16.
    CHECK(form.side_courses == 19);
    CHECK(form.crown_courses >= 1);
    // Past the apex the circle runs on: x_ext + w >= w / 2.
    for (int n = form.side_courses + 1; n <= form.side_courses + form.crown_courses; ++n)
        CHECK(outer_half_width(form, form.course_middle(n)) >= 7.5 * inch - 1e-9);
    const double next = form.course_middle(form.side_courses + form.crown_courses + 1) / inch - 45;
    CHECK((next > 45 || std::sqrt(45 * 45 - next * next) - 27 + 15 < 7.5));
}

TEST_CASE("a tunnel to another dome runs from pole to pole") {
    Design design = store_design();
    Dome second = design.domes[0];
    second.id = "second";
    second.at = {3, 4};
    design.domes.push_back(second);
    Tunnel tunnel = porch();
    tunnel.to = "second";
    tunnel.reach.reset();
    const TunnelForm form = make_tunnel_form(design, tunnel);
    CHECK(form.reach == Approx(5));
    CHECK(form.bearing.degrees == Approx(std::atan2(3.0, 4.0) * 180 / pi));
}

TEST_CASE("a buttress beside an opening clears its jamb: 32.112 degrees, reckoned") {
    CHECK(beside_degrees(16, 0, 54, 30) == Approx(32.112).margin(5e-4));
    Design design = store_design();
    Buttress buttress = flank();
    buttress.bearings.clear();
    buttress.beside = "door";
    const DomeForm dome = make_dome_form(design, design.domes[0]);
    const auto piers = make_buttress_forms(design, buttress, dome);
    REQUIRE(piers.size() == 2);
    CHECK(piers[0].bearing.degrees == Approx(150 - 32.112).margin(1e-3));
    CHECK(piers[1].bearing.degrees == Approx(150 + 32.112).margin(1e-3));
    for (const ButtressForm& pier : piers) {
        // The near corner on the inside face of the base ring, seen from the door's axis.
        const Vec2 axis = along({150});
        const Vec2 side = right_of({150});
        const double reach = std::sqrt(54.0 * 54 - 0) * inch;
        double nearest = 1e9;
        for (const double y : {-15 * inch, 15 * inch}) {
            const Vec2 corner = reach * pier.axis() + y * Vec2(-pier.axis().y(), pier.axis().x());
            CHECK(corner.dot(axis) > 0);
            nearest = std::min(nearest, std::abs(corner.dot(side)));
        }
        CHECK(nearest == Approx(16 * inch).epsilon(1e-9));
        CHECK(pier.tubes == 2);
        CHECK(outer_face(pier, 0) == Approx((69 + 30) * inch));
        CHECK(outer_face(pier, -1) == Approx((69 + 30) * inch));
        CHECK(outer_face(pier, 20 * inch) == Approx((69 + 22.5) * inch));
        CHECK(pier.top == Approx(40 * inch));
    }
}
