// Pressures in joints, on the ground and in piers, by hand.
#include "geometry/statics/joint_checks.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;

std::vector<WallCourse> courses_of(const Design& design) {
    const BuildingForm building = make_building_form(design);
    return dome_courses(design, building, building.domes.front());
}

} // namespace

TEST_CASE("pressure over the part of a contact that lies about the thrust") {
    CHECK(contact_pressure(30e3, 0.25, 0.05) == Approx(200e3));
    CHECK(contact_pressure(30e3, 0.25, -0.05) == Approx(200e3));
    CHECK(contact_pressure(30e3, 0.25, 0) == Approx(120e3));
    CHECK(contact_pressure(30e3, 0.25, 0.125) == unlimited);
    CHECK(contact_pressure(30e3, 0.25, 0.2) == unlimited);
    CHECK(contact_pressure(0, 0.25, 0.05) == 0);
}

TEST_CASE("a plumb ring wall presses the ground with its weight on its flat") {
    // Six courses of a dome that has not begun to lean.
    Design design = store_design();
    design.openings.clear();
    design.domes[0].datum.clear();
    const std::vector<WallCourse> courses = courses_of(design);
    DomeSlice what;
    what.last = 6;
    const CentredThrust centred = centred_thrust(dome_slice(courses, what));
    const std::vector<JointCheck> checks = check_joints(courses, what, centred.line);
    REQUIRE(checks.size() == 6);
    CHECK(checks[0].course == 1);
    // The centre of mass of a ring lies a little outside the middle of its flat; the pressure is
    // even about it. Weight per radian: 1762 g A r_c, six times.
    const double section = (10 * 5 + pi * 25 / 4) * inch * inch;
    const double weight = 6 * 1762 * 9.80665 * section * 61.5 * inch;
    const double centre = courses[0].mass_radius, off = centre - 61.5 * inch;
    CHECK(checks[0].normal == Approx(weight / centre).epsilon(1e-6));
    CHECK(checks[0].pressure == Approx(weight / centre / (10 * inch - 2 * off)).epsilon(1e-6));
    CHECK(checks[0].thrust == Approx(0).margin(1e-3));
    CHECK(checks[0].friction_needed == Approx(0).margin(1e-6));
    CHECK(checks[0].reach == Approx(off / (5 * inch)).epsilon(1e-6));
    CHECK(checks[5].normal == Approx(checks[0].normal / 6).epsilon(1e-6));
    CHECK(checks[0].strength == 0.297e6);
}

TEST_CASE("joints beside a door carry on what the door leaves; the weaker fill counts") {
    Design design = store_design();
    Fill base, main;
    base.id = "base";
    base.courses = {{1, 3}};
    base.strength = 2e6;
    main.id = "main";
    main.strength = 1e6;
    design.fills = {base, main};
    const std::vector<WallCourse> courses = courses_of(design);
    DomeSlice whole, beside;
    beside.beside = "door";
    const auto checks = [&](const DomeSlice& what) {
        return check_joints(courses, what, centred_thrust(dome_slice(courses, what)).line);
    };
    const std::vector<JointCheck> a = checks(whole), b = checks(beside);
    REQUIRE(a.size() == 28); // 27 rings and the cap
    CHECK(a.back().course == 28);
    CHECK(a[2].strength == 2e6);
    CHECK(a[3].strength == 1e6); // course 4 on course 3
    CHECK(a[0].strength == 2e6);
    const std::vector<double> kept = kept_beside(courses, "door");
    // Above the door both carry the same load; in its lower courses the strip has lost weight, but
    // what is left of it stands on less.
    CHECK(b[20].normal == Approx(a[20].normal).epsilon(0.02));
    CHECK(b[10].normal > 1.2 * a[10].normal);
    CHECK(b[0].normal < a[0].normal);
    // Rings: what the horizontal force gains from joint to joint, on the section of a stadium.
    double rings = 0;
    const double section = (10 * 5 + pi * 25 / 4) * inch * inch;
    const ThrustLine line = centred_thrust(dome_slice(courses, whole)).line;
    for (int course = 27; course >= 1; --course) {
        CAPTURE(course);
        const JointCheck& check = a[static_cast<std::size_t>(course - 1)];
        const auto j = static_cast<std::size_t>(joint_under(courses, whole, course));
        const double gained = line.joints[j].thrust() - line.joints[j - 1].thrust();
        CHECK(check.hoop == Approx(gained).epsilon(1e-6).margin(0.01));
        CHECK(check.hoop_pressure ==
              Approx(std::max(0.0, gained) / section).epsilon(1e-6).margin(1));
        rings = std::max(rings, check.hoop);
    }
    CHECK(rings > 0);
    for (std::size_t i = 0; i < b.size(); ++i) {
        const JointThrust& joint =
            centred_thrust(dome_slice(courses, beside))
                .line.joints[static_cast<std::size_t>(joint_under(courses, beside, b[i].course))];
        const double share = i == 0 ? kept[0] : std::min(kept[i], kept[i - 1]);
        CHECK(b[i].normal * share * joint.point.x() == Approx(joint.normal).epsilon(1e-6));
    }
}

TEST_CASE("piers between openings carry half of what each opening leaves") {
    Design design = store_design();
    design.domes[0].datum.clear();
    design.openings.clear();
    CHECK(check_piers(courses_of(design)).empty());
    // Two windows of the same width, opposite each other: two equal piers.
    design.openings = {opening("a", 90, 24 * inch, 20 * inch, 20 * inch, HeadKind::square),
                       opening("b", 270, 24 * inch, 20 * inch, 20 * inch, HeadKind::square)};
    const std::vector<WallCourse> courses = courses_of(design);
    const std::vector<PierCheck> piers = check_piers(courses);
    REQUIRE(piers.size() == 2);
    CHECK(piers[0].from == "a");
    CHECK(piers[0].to == "b");
    CHECK(piers[0].pressure == Approx(piers[1].pressure));
    CHECK(piers[0].course == 8); // 20 in above the floor, the lowest course they cut
    // The whole weight above on the two of them.
    double load = 0;
    for (const WallCourse& course : courses)
        if (course.number >= 8)
            load += 2 * pi * course.weight * (1 - course.open_share);
    const WallCourse& lowest = courses[7];
    const double r = (lowest.inside + lowest.outside) / 2;
    const double length = 2 * (pi * r - 2 * r * std::asin(12 * inch / r));
    CHECK(piers[0].length == Approx(length / 2).epsilon(1e-9));
    CHECK(piers[0].pressure == Approx(load / (length * lowest.contact_width())).epsilon(1e-9));
    // One window: the pier runs from it round to it.
    design.openings.pop_back();
    const std::vector<PierCheck> one = check_piers(courses_of(design));
    REQUIRE(one.size() == 1);
    CHECK(one[0].from == "a");
    CHECK(one[0].to == "a");
    CHECK(one[0].pressure < piers[0].pressure);
    // Nearer to each other, the short pier is pressed more than the long one.
    design.openings.push_back(opening("b", 140, 24 * inch, 20 * inch, 20 * inch, HeadKind::square));
    const std::vector<PierCheck> uneven = check_piers(courses_of(design));
    REQUIRE(uneven.size() == 2);
    CHECK(uneven[0].length < uneven[1].length);
    CHECK(uneven[0].pressure > uneven[1].pressure);
    // A pier that stands past the datum (north) is one pier.
    CHECK(uneven[0].from == "a");
    CHECK(uneven[1].from == "b");
}
