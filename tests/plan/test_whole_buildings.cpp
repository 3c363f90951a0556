// Whole designs, tunnels, buttresses, joins and all, from their files to sound schedules.
#include "geometry/design/read_design.hpp"
#include "geometry/plan/check_layout.hpp"
#include "geometry/plan/fit.hpp"
#include "geometry/plan/lay.hpp"
#include "tests/support/files.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;
using namespace coilwright::testing;

TEST_CASE("whole buildings are laid without a fault") {
    for (const std::string name : {"home", "retreat", "square-door"}) {
        CAPTURE(name);
        const std::string text = whole_building_text(name);
        const DesignReading reading = read_design(text);
        for (const Diagnostic& fault : reading.diagnostics)
            FAIL_CHECK(diagnostic_text(fault, name, text));
        const Fit fitted = fit(reading.design);
        for (const Diagnostic& fault : check_layout(fitted.design))
            FAIL_CHECK(diagnostic_text(fault, name, text));
        const Schedule schedule = lay(fitted.design);
        for (const Course& course : schedule.courses) {
            CAPTURE(course.number);
            CHECK(course.wall.decided);
            CHECK(course.wall_area > 0);
        }
    }
}
