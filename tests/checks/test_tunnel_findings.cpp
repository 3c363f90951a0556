// Vaults and walls of tunnels: what their joints need of friction. At the limit the solver itself
// is asked with that friction: a line of thrust stands just over it and none just under it
// (Coulomb's law; Heyman, The Stone Skeleton, 1966, from memory, leaves sliding out).
#include "geometry/checks/check_building.hpp"
#include "geometry/checks/element_findings.hpp"
#include "geometry/plan/section.hpp"
#include "geometry/statics/tunnel_slice.hpp"
#include "tests/checks/laid.hpp"
#include "tests/support/demos.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

Finding sliding(const BuildingPlan& plan, const std::string& tunnel) {
    return the(tunnel_checks(plan, *find_tunnel(plan.schedule.building, tunnel)), "tunnel-sliding",
               "tunnel." + tunnel);
}

} // namespace

TEST_CASE("the joints of a tunnel slide under the friction that its line of thrust needs") {
    BuildingPlan plan = demo_plan("home.toml");
    for (const char* const tunnel : {"back", "porch"}) {
        CAPTURE(tunnel);
        const double needed = plan.design.joint.friction / sliding(plan, tunnel).value.value();
        CHECK(needed > 0.05);
        const std::vector<WallCourse> courses =
            tunnel_courses(plan.design, *find_tunnel(plan.schedule.building, tunnel));
        const auto stands = [&](double friction) {
            TunnelSlice what;
            what.friction = what.ground_friction = friction;
            const Slice slice = tunnel_slice(courses, what);
            return least_thrust(slice, static_cast<int>(slice.blocks.size())).stands;
        };
        CHECK(stands(needed * 1.001));
        CHECK_FALSE(stands(needed * 0.999));

        BuildingPlan stated = plan;
        stated.design.joint.friction_stated = true;
        const auto verdict = [&](double times) {
            stated.design.joint.friction = needed * times;
            return sliding(stated, tunnel).verdict;
        };
        CHECK(verdict(0.999) == Verdict::fails);
        CHECK(verdict(1.001) == Verdict::advice);
        CHECK(verdict(1.499) == Verdict::advice); // factor 1.5, the default
        CHECK(verdict(1.501) == Verdict::holds);

        stated.design.joint.friction_stated = false; // a default fails nothing, and says so
        stated.design.joint.friction = needed * 0.9;
        const Finding by_default = sliding(stated, tunnel);
        CHECK(by_default.verdict == Verdict::advice);
        CHECK(by_default.message.find("default") != std::string::npos);
        CHECK(std::stod(taken(by_default, "; ([0-9.]+) would do")) ==
              Approx(1.5 * needed).epsilon(0.005));
        stated.design.ground.level = 2 * stated.design.course.height;
        CHECK(sliding(stated, tunnel).verdict == Verdict::not_judged); // a bank
    }
}

TEST_CASE("what a tunnel bears sideways is held against the site, and is else told bare") {
    BuildingPlan plan = demo_plan("home.toml");
    plan.design.site = {};
    const TunnelForm& porch = *find_tunnel(plan.schedule.building, "porch");
    const auto found = [&](const char* code) {
        return the(tunnel_checks(plan, porch), code, "tunnel.porch");
    };
    const Finding bare = found("tunnel-earthquake"), blown = found("tunnel-wind");
    CHECK(bare.verdict == Verdict::not_judged);
    CHECK(blown.verdict == Verdict::not_judged);
    CHECK(bare.value.value() > 0);
    CHECK(blown.value.value() > 0);
    // It bears less than one of its walls would that never tips over its outer edge: that the flat
    // of course 1 over the height of the walls' own centre, less than half of the whole.
    const std::vector<WallCourse> courses = tunnel_courses(plan.design, porch);
    CHECK(bare.value.value() < courses.front().contact_outer / (porch.springline / 2));
    plan.design.site.seismic_acceleration = bare.value.value() * 9.80665 * 0.99;
    plan.design.site.wind_pressure = blown.value.value() * 0.99;
    CHECK(found("tunnel-earthquake").verdict == Verdict::holds);
    CHECK(found("tunnel-wind").verdict == Verdict::holds);
    plan.design.site.seismic_acceleration = bare.value.value() * 9.80665 * 1.01;
    plan.design.site.wind_pressure = blown.value.value() * 1.01;
    CHECK(found("tunnel-earthquake").verdict == Verdict::advice);
    CHECK(found("tunnel-wind").verdict == Verdict::advice);
}

TEST_CASE("an end wall tips over its flat at flat/height of its weight") {
    // Balance of a rigid wall: a W h/2 = W d/2 and p h^2/2 = W d/2, any text of statics.
    BuildingPlan plan = demo_plan("home.toml");
    TunnelForm walled = *find_tunnel(plan.schedule.building, "porch");
    walled.end_wall = true;
    const FreeWall wall = end_wall_of(plan.design, walled);
    const double t = walled.course_height, d = walled.width - t;
    CHECK(wall.contact == Approx(d));
    CHECK(wall.height >= walled.top() - plan.design.ground.level - t);
    CHECK(wall.height <= walled.top() - plan.design.ground.level + 1e-9);
    const double weight = wall.height / t * stadium_area(walled.width, t) * 1762 * 9.80665;
    CHECK(wall.weight == Approx(weight)); // 110 pcf, the default
    plan.design.site = {};
    const std::vector<Finding> findings =
        tunnel_sideways_findings(plan.design, walled, analyse_tunnel(plan.design, walled));
    CHECK(the(findings, "end-wall-earthquake").value.value() == Approx(d / wall.height));
    CHECK(the(findings, "end-wall-wind").value.value() ==
          Approx(weight * d / (wall.height * wall.height)));
    plan.design.joint.friction = d / wall.height / 2; // it slides before it tips
    CHECK(the(tunnel_sideways_findings(plan.design, walled, analyse_tunnel(plan.design, walled)),
              "end-wall-earthquake")
              .value.value() == Approx(d / wall.height / 2));
    walled.end_wall = false;
    CHECK_FALSE(
        has(tunnel_sideways_findings(plan.design, walled, analyse_tunnel(plan.design, walled)),
            "end-wall-wind"));
}

TEST_CASE("joints of a tunnel and the ground under it are pressed by what lies above") {
    BuildingPlan plan = demo_plan("home.toml");
    const TunnelForm& porch = *find_tunnel(plan.schedule.building, "porch");
    const TunnelAnalysis analysis = analyse_tunnel(plan.design, porch);
    const std::vector<TunnelPressure> pressures = tunnel_pressures(analysis);
    REQUIRE(pressures.size() == static_cast<std::size_t>(porch.side_courses) + 1);
    // Balance: on every level joint lies all that is above it; Meyerhof 1953: N/(d - 2e), at least
    // N/d.
    double above = 0;
    for (std::size_t i = analysis.courses.size(); i-- > 0;) {
        above += analysis.courses[i].weight;
        if (i >= pressures.size())
            continue;
        CAPTURE(i);
        CHECK(pressures[i].course == static_cast<int>(i) + 1);
        CHECK(pressures[i].normal == Approx(above));
        CHECK(pressures[i].pressure >= above / analysis.courses[i].contact_width() * (1 - 1e-9));
    }
    const auto found = [&](const char* code) {
        return the(tunnel_checks(plan, porch), code, "tunnel.porch");
    };
    plan.design.ground.bearing_capacity.reset();
    CHECK(found("tunnel-ground").verdict == Verdict::not_judged);
    const double pressed = found("tunnel-ground").value.value();
    const double flat = pressures[0].normal / pressures[0].pressure; // d - 2e
    CHECK(pressed == Approx(pressures[0].normal / (flat + plan.design.trench.gravel_depth)));
    plan.design.ground.bearing_capacity = pressed * 1.001;
    CHECK(found("tunnel-ground").verdict == Verdict::holds);
    plan.design.ground.bearing_capacity = pressed * 0.999;
    CHECK(found("tunnel-ground").verdict == Verdict::fails);
    plan.design.trench.gravel_depth += 0.01; // the remedy's depth is not much more
    CHECK(found("tunnel-ground").verdict == Verdict::holds);

    double worst = 0;
    for (const TunnelPressure& one : pressures)
        worst = std::max(worst, one.pressure);
    Fill fill;
    fill.id = "all";
    const auto crushed = [&](double times) {
        fill.strength = worst * times;
        plan.design.fills = {fill};
        return found("tunnel-crushing").verdict;
    };
    CHECK(crushed(0.999) == Verdict::fails);
    CHECK(crushed(1.001) == Verdict::advice);
    CHECK(crushed(2.999) == Verdict::advice);
    CHECK(crushed(3.001) == Verdict::holds);
}
