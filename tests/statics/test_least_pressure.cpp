// The line of thrust that asks least of the fill: by hand, and against the most centred line.
#include "geometry/statics/dome_statics.hpp"
#include "geometry/statics/least_pressure.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace coilwright;
using namespace coilwright::testing;

TEST_CASE("a plumb ring presses its ground evenly") {
    WallCourse course;
    course.bottom = -0.1;
    course.top = 0;
    course.inside = course.contact_inner = 4.875;
    course.outside = course.contact_outer = 5.125;
    course.mass_radius = 5;
    course.weight = 30e3 * 5; // 30 kN/m at its middle
    course.strength = 300e3;
    const LeastPressure least = least_pressure({course});
    REQUIRE(least.line.stands);
    CHECK(least.factor == Approx(300e3 / (30e3 / 0.25)).epsilon(1e-6)); // 2.5
    CHECK(least.joints[0].pressure == Approx(120e3).epsilon(1e-6));
}

TEST_CASE("no line presses less than the one found, and strength alone scales it") {
    const Design design = store_design();
    const BuildingForm building = make_building_form(design);
    std::vector<WallCourse> courses = dome_courses(design, building, building.domes[0]);
    for (const char* beside : {"", "door"}) {
        DomeSlice what;
        if (*beside)
            what.beside = beside;
        const LeastPressure least = least_pressure(courses, what);
        REQUIRE(least.line.stands);
        const auto spare = [](const std::vector<JointCheck>& joints) {
            double worst = unlimited;
            for (const JointCheck& joint : joints)
                worst = std::min(worst, joint.strength / joint.pressure);
            return worst;
        };
        const CentredThrust centred = centred_thrust(dome_slice(courses, what));
        CHECK(least.factor >= spare(check_joints(courses, what, centred.line)) * (1 - 0.05));
        // Nor can it be less than the load spread over the whole of the worst contact.
        for (const JointCheck& joint : least.joints) {
            const WallCourse& course = courses[static_cast<std::size_t>(joint.course - 1)];
            CHECK(joint.strength / least.factor >=
                  joint.normal / course.contact_width() * (1 - 1e-6));
        }
        std::vector<WallCourse> strong = courses;
        for (WallCourse& course : strong)
            course.strength *= 7;
        CHECK(least_pressure(strong, what).factor == Approx(7 * least.factor).epsilon(1e-3));
        const LeastPressure ground = least_pressure(courses, what, 1);
        CHECK(ground.factor >= least.joints[0].strength / least.joints[0].pressure * (1 - 1e-5));
    }
}
