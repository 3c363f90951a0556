#include "geometry/plan/tunnel_headroom.hpp"

#include "geometry/plan/headroom.hpp"
#include "geometry/plan/lay.hpp"
#include "geometry/plan/plan_building.hpp"
#include "tests/support/designs.hpp"
#include "tests/support/home.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <optional>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch, foot = metres_per_foot;

TunnelForm vault(ProfileKind kind, double width, double springline, double rise) {
    const Design design = store_design();
    Tunnel tunnel = porch();
    tunnel.width = width;
    tunnel.springline = springline;
    tunnel.profile.kind = kind;
    tunnel.profile.rise = rise;
    if (kind == ProfileKind::round)
        tunnel.profile.rise.reset();
    return make_tunnel_form(design, tunnel);
}

/// Floor of a tunnel by counting points of a grid: within its plastered walls, out of the rooms of
/// its domes, with that clear height.
double counted_floor(const BuildingForm& building, const TunnelForm& form, double plaster,
                     double height) {
    constexpr int along = 400, across = 2000;
    const double half = form.profile.half_span;
    const double end = form.end_wall ? form.reach - form.width - plaster : form.reach;
    int inside = 0;
    for (int i = 0; i < along; ++i)
        for (int k = 0; k < across; ++k) {
            const double x = (i + 0.5) * end / along, y = ((k + 0.5) * 2 / across - 1) * half;
            if (clear_height_at(form, plaster, y) < std::max(height, 1e-9))
                continue;
            const Vec2 left(-form.axis().y(), form.axis().x());
            const Vec2 point = form.origin + x * form.axis() + y * left;
            bool in_room = false;
            for (const DomeForm& dome : building.domes) {
                const double from_pole = (point - dome.at).norm();
                in_room = in_room || (form.wall_stays && dome.id == form.from
                                          ? from_pole < outside_radius(dome, 0)
                                          : clear_height_at(dome, plaster, from_pole) >=
                                                std::max(height, 1e-9));
            }
            inside += !in_room;
        }
    return inside * (end / along) * (2 * half / across);
}

} // namespace

TEST_CASE("a round vault of 4 ft on 5 ft has 6 ft over 2 sqrt(3) ft, its plaster a circle within") {
    const TunnelForm form = vault(ProfileKind::round, 4 * foot, 5 * foot, 0);
    CHECK(clear_width_at(form, 0, 6 * foot) / foot == Approx(2 * std::sqrt(3.0)));
    CHECK(clear_height_at(form, 0, 0) / foot == Approx(7));
    CHECK(clear_height_at(form, 1.5 * inch, 0) == Approx(7 * foot - 1.5 * inch));
    CHECK(clear_width_at(form, 1.5 * inch, 0) == Approx(4 * foot - 3 * inch));
    CHECK(clear_width_at(form, 1.5 * inch, 6 * foot) / inch ==
          Approx(2 * std::sqrt(22.5 * 22.5 - 12.0 * 12)));
    CHECK(clear_width_at(form, 1.5 * inch, 7 * foot) == 0);
    CHECK(clear_height_at(form, 1.5 * inch, 22.6 * inch) == 0);
}

TEST_CASE("the height over a place in a tunnel and the width with a height are inverse") {
    for (const ProfileKind kind :
         {ProfileKind::pointed, ProfileKind::round, ProfileKind::catenary, ProfileKind::parabola}) {
        const TunnelForm form = vault(kind, 1.1, 1.2, 1.2);
        for (double height = 1.25; height < 1.6; height += 0.05) {
            const double half = clear_width_at(form, 0.04, height) / 2;
            REQUIRE(half > 0);
            CHECK(clear_height_at(form, 0.04, half - 1e-9) == Approx(height).margin(1e-6));
        }
    }
}

TEST_CASE("the floor of a tunnel is what counting points gives") {
    Design design = home_design();
    design.finish.inside_plaster = 0.04;
    for (const bool stays : {false, true}) {
        design.tunnels[1].wall_stays = stays;
        const BuildingForm building = make_building_form(design);
        REQUIRE(building.tunnels.size() == 2);
        for (const TunnelForm& form : building.tunnels)
            for (const double height : {0.0, 1.5, 80 * inch, 7 * foot}) {
                CAPTURE(form.id);
                CAPTURE(height);
                const double area = floor_area_at(building, form, 0.04, height);
                CHECK(area == Approx(counted_floor(building, form, 0.04, height)).margin(0.006));
            }
        CHECK(floor_area_at(building, building.tunnels[1], 0.04, 0) > 0.5);
        CHECK(floor_area_at(building, building.tunnels[1], 0.04, 1.5) > 0.5);
    }
}

TEST_CASE("every tunnel has its row in the plan, with the heights of the domes' rows") {
    const BuildingPlan plan = plan_building(store_with_porch(), {});
    REQUIRE(plan.tunnel_headroom.size() == 1);
    const TunnelHeadroom& room = plan.tunnel_headroom[0];
    CHECK(room.tunnel == "porch");
    // The vault's crown is at 81 in; the crown's tubes lie on the joint at 80.
    CHECK(room.at_middle == Approx(80 * inch));
    CHECK(room.width == Approx(36 * inch));
    CHECK(room.length == Approx(60 * inch)); // 114 in from the pole, 54 of them the room
    REQUIRE(room.rows.size() == plan.headroom.at(0).rows.size());
    for (std::size_t i = 0; i < room.rows.size(); ++i)
        CHECK(room.rows[i].height == plan.headroom[0].rows[i].height);
    CHECK(room.rows[0].width == 0); // 7 ft
    // 80 in: half-width sqrt(45^2 - 35^2) - 27.
    CHECK(room.rows[1].width / inch == Approx(2 * (std::sqrt(45.0 * 45 - 35 * 35) - 27)));
}
