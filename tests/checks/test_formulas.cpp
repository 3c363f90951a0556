// The formulas that the engineer's report states, read back as arithmetic: what they say of a
// dome's courses and joints is what the tables hold.
#include "geometry/checks/building_statics.hpp"
#include "geometry/checks/formulas.hpp"
#include "tests/support/demos.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

TEST_CASE("every number of the report's tables has its formula and its source") {
    for (const ReportTable table :
         {ReportTable::sections, ReportTable::tunnel_sections, ReportTable::courses,
          ReportTable::tunnel_courses, ReportTable::joints, ReportTable::membrane,
          ReportTable::piers, ReportTable::lintels}) {
        REQUIRE_FALSE(formulas_of(table).empty());
        const std::string line = formula_line(table);
        for (const ColumnFormula& one : formulas_of(table)) {
            CAPTURE(one.column);
            CHECK_FALSE(one.formula.empty());
            CHECK_FALSE(one.source.empty());
            CHECK(line.find(one.column + ": " + one.formula + " (" + one.source + ")") !=
                  std::string::npos);
        }
    }
}

TEST_CASE("the stated formulas give the values of the tables") {
    BuildingPlan plan = demo_plan("grain-store.toml");
    plan.design.finish.inside_plaster = plan.design.finish.outside_plaster = 0;
    const BuildingForm& building = plan.schedule.building;
    const DomeAnalysis analysis = analyse_dome(plan.design, building, building.domes[0]);
    const std::vector<WallCourse>& courses = analysis.statics.courses;
    const double t = plan.design.course.height;
    for (std::size_t i = 1; i < courses.size(); ++i) {
        const WallCourse &course = courses[i], &below = courses[i - 1];
        if (course.cap || course.top > plan.design.ground.level)
            continue; // weights below the ground: no plaster in the grooves
        CAPTURE(course.number);
        const double w = course.outside - course.inside, r_c = course.inside + w / 2;
        const double section = (w - t) * t + pi * t * t / 4;
        CHECK(course.weight == Approx(1762 * 9.80665 * section * r_c)); // 110 pcf, the default
        CHECK(course.contact_width() == Approx(std::min(course.outside, below.outside) -
                                               std::max(course.inside, below.inside) - t));
    }
    const StripStatics& strip = analysis.statics.strips[analysis.statics.worst];
    REQUIRE(strip.joints.size() > 20);
    for (const JointCheck& joint : strip.joints) {
        CAPTURE(joint.course);
        const WallCourse& course = courses[static_cast<std::size_t>(joint.course - 1)];
        const double d = course.contact_width(), e = joint.reach * d / 2; // reach = e / (d/2)
        CHECK(joint.pressure == Approx(joint.normal / (d - 2 * e)));
        CHECK(joint.friction_needed == Approx(std::abs(joint.thrust) / joint.normal));
    }
    // Ring: change of H on a radian over its course; where no opening takes wall of the strip.
    const StripStatics& clear = analysis.statics.strips[0];
    const auto on_a_radian = [&](std::size_t i) {
        return clear.joints[i].thrust *
               clear.centred.line.joints[clear.centred.line.joints.size() - 1 - i].point.x();
    };
    for (std::size_t i = 0; i + 1 < clear.joints.size(); ++i) {
        CAPTURE(clear.joints[i].course);
        CHECK(clear.joints[i].hoop == Approx(on_a_radian(i) - on_a_radian(i + 1)).margin(0.5));
    }
}
