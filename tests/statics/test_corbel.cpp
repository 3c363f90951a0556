// Corbelled courses as cantilevers, in domes and tunnels.
#include "geometry/plan/tunnel_form.hpp"
#include "geometry/statics/corbel.hpp"
#include "geometry/statics/course_mass.hpp"
#include "geometry/statics/tunnel_slice.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;

struct TunnelCase {
    Design design;
    TunnelForm form;
    std::vector<WallCourse> courses;
};

/// A pointed tunnel twice as high as its half-span, springing from the floor.
TunnelCase tunnel(double span, double width, double course, double k = 1) {
    TunnelCase result;
    Design& design = result.design;
    design.course.height = k * course * inch;
    TubeType tube;
    tube.id = "main";
    tube.lay_flat = k * (width + 2) * inch;
    tube.tamped_width = k * width * inch;
    design.tubes.push_back(tube);
    Tunnel porch;
    porch.id = "porch";
    porch.width = k * span * inch;
    porch.profile.kind = ProfileKind::pointed;
    porch.profile.rise = k * span * inch;
    porch.tube = "main";
    porch.reach = 3 * k;
    design.tunnels.push_back(porch);
    design.ground.level *= k;
    result.form = make_tunnel_form(design, porch);
    result.courses = tunnel_courses(design, result.form);
    return result;
}

} // namespace

TEST_CASE("four blocks stacked to the harmonic limit balance on every edge") {
    // The top block reaches 1/2 over the next, that 1/4 over the next, then 1/6, 1/8 (any statics
    // text).
    std::vector<CorbelCourse> stack;
    double left = 0;
    std::vector<CorbelCourse> downward;
    for (const double out : {1 / 2.0, 1 / 4.0, 1 / 6.0, 1 / 8.0}) {
        downward.push_back({1, left + 0.5, left + out});
        left += out;
    }
    stack.assign(downward.rbegin(), downward.rend());
    for (const double lever : corbel_levers(stack))
        CHECK(lever == Approx(0).margin(1e-12));
}

TEST_CASE("tunnels: nothing wider than a porch stands without its form") {
    // Reckoned in another program for a pointed vault as high as it spans, sides laid up to the
    // crown, to the inside face of the course below: 36 in, tube 15 in: +1.1 in (-1.4 to the edge
    // of the flat); 48: -2.35; 60: -3.5; 72, tube 19 in: -3.7; 96: -7.9.
    struct Row {
        double span, width, course, margin;
    };
    for (const Row& row : {Row{36, 15, 5, 1.1}, Row{48, 15, 5, -2.35}, Row{60, 15, 5, -3.5},
                           Row{72, 19, 6, -3.7}, Row{96, 19, 6, -7.9}}) {
        CAPTURE(row.span);
        const TunnelCase vault = tunnel(row.span, row.width, row.course);
        const std::vector<double> levers = levers_while_building(vault.courses);
        CHECK(static_cast<int>(levers.size()) == vault.form.side_courses);
        const double flat = *std::min_element(levers.begin(), levers.end()) / inch;
        CHECK(flat + row.course / 2 == Approx(row.margin).epsilon(0).margin(0.06));
        CHECK(flat < 0); // by the flat each of them needs its form
    }
    const std::vector<double> narrow = levers_while_building(tunnel(20, 15, 5).courses);
    CHECK(*std::min_element(narrow.begin(), narrow.end()) > 0);
}

TEST_CASE("the store falls in as free cantilevers: it stands by its rings") {
    const Design design = store_design();
    const BuildingForm building = make_building_form(design);
    const std::vector<WallCourse> courses = dome_courses(design, building, building.domes[0]);
    const std::vector<double> levers = corbel_levers(corbel_courses(courses));
    CHECK(*std::min_element(levers.begin(), levers.end()) < 0);
    // And yet there is a thrust line with rings; without any, none.
    Slice slice = dome_slice(courses);
    const auto end = static_cast<int>(slice.blocks.size());
    CHECK(least_thrust(slice, end).stands);
    for (SliceBlock& block : slice.blocks)
        block.hoop_limit = 0;
    CHECK_FALSE(least_thrust(slice, end).stands);
    // A wedge without rings stands exactly where every lever over a joint keeps within its contact.
    for (int last = 1; last <= 27; ++last) {
        CAPTURE(last);
        DomeSlice what;
        what.last = last;
        Slice open = dome_slice(courses, what);
        for (SliceBlock& block : open.blocks)
            block.hoop_limit = 0;
        const std::vector<double> laid = corbel_levers(corbel_courses(courses, last));
        bool within = true;
        for (std::size_t i = 0; i < laid.size(); ++i)
            within = within && laid[i] >= 0 && laid[i] <= courses[i].contact_width();
        CHECK(least_thrust(open, last).stands == within);
    }
}

TEST_CASE("tunnel: weights by area, half slices in balance, shares as the courses grow finer") {
    const TunnelCase vault = tunnel(48, 15, 5);
    double sides = 0, crown = 0;
    for (const WallCourse& course : vault.courses)
        (course.cap ? crown : sides) += course.weight;
    // A stadium of 15 x 5 in: (w - t) t + pi t2 / 4, times the courses.
    const double section = (10 * 5 + pi * 25 / 4) * inch * inch;
    CHECK(sides == Approx(1762 * 9.80665 * section * vault.form.side_courses).epsilon(1e-9));
    CHECK(crown > 0);
    const Slice slice = tunnel_slice(vault.courses);
    CHECK(slice.blocks.size() == static_cast<std::size_t>(vault.form.side_courses) + 1);
    const auto end = slice.blocks.size();
    const ThrustLine least = least_thrust(slice, static_cast<int>(end));
    REQUIRE(least.stands);
    CHECK(least.joints[end].normal == Approx(sides + crown).epsilon(1e-9));
    // No rings: the thrust is the same all the way down, and the crown's joint carries it alone.
    for (std::size_t j = 0; j <= end; ++j)
        CHECK(least.joints[j].thrust() == Approx(least.joints[0].thrust()).epsilon(1e-6));
    CHECK(least.joints[0].shear == Approx(0).margin(1e-9));
    // Friction of the beds, of the ground, and none on the axis.
    const Slice rough = tunnel_slice(vault.courses, {0.5, 0.4});
    CHECK(rough.joints.front().friction == 0);
    CHECK(rough.joints[1].friction == 0.5);
    CHECK(rough.joints[end - 1].friction == 0.5);
    CHECK(rough.joints[end].friction == 0.4);
    // Twice the size: the same safety, four times the thrust on a metre.
    const TunnelCase doubled = tunnel(48, 15, 5, 2);
    const Slice large = tunnel_slice(doubled.courses);
    CHECK(centred_thrust(large).share == Approx(centred_thrust(slice).share).epsilon(1e-6));
    CHECK(least_thrust(large, static_cast<int>(end)).joints[end].thrust() ==
          Approx(4 * least.joints[end].thrust()).epsilon(1e-6)); // per metre: k squared
}

TEST_CASE("plaster on a course by hand") {
    CHECK(plaster_section(0.05, 0.1, 0) == Approx(0.05 * 0.1 + (1 - pi / 4) * 0.01 / 2));
    CHECK(plaster_section(0.05, 0.1, 0) == Approx(0.006073).epsilon(0).margin(5e-7));
    CHECK(plaster_section(0.05, 0.3, 0.4) ==
          Approx(0.05 * 0.5 + (1 - pi / 4) * 0.09 / 2 + 0.4 * 0.3 / 2));
    CHECK(plaster_section(0, 0.3, 0.4) == 0);
}
