#include "tests/exporters/sample_plans.hpp"

#include "geometry/design/read_design.hpp"
#include "geometry/plan/fit.hpp"
#include "geometry/plan/lay.hpp"
#include "geometry/plan/practice.hpp"
#include "tests/exporters/scratch.hpp"
#include "tests/support/files.hpp"

#include <algorithm>
#include <limits>
#include <stdexcept>

namespace coilwright {
namespace {

Ring full_ring() {
    Ring ring;
    ring.dome = "vault";
    ring.inside_radius = 1.3716;
    ring.centre_radius = 1.5621;
    ring.outside_radius = 1.7526;
    ring.chain = 1.5;
    ring.pole_face = 1.3716;
    ring.chain_face = 1.48;
    ring.step_in = -0.0;
    ring.bearing_width = 0.381;
    ring.radius_per_height = -0.0;
    Run run{"R1", 359.99999996, 719.99999996, 9.814963, true, "", "", {}};
    run.tubes = {{"T1", 9.0, 10.1, 10.5064, 359.99999996, 689.0, false},
                 {"T2", 0.814963, 0.9, 1.3064, 689.0, 719.99999996, true}};
    ring.runs = {run};
    return ring;
}

Ring cut_ring() {
    Ring ring = full_ring();
    ring.step_in = 0.01;
    ring.radius_per_height = -std::numeric_limits<double>::infinity();
    Run run{"R1", 167.25, 492.75, 8.8744, false, "door", "door", {}};
    run.tubes = {{"T1", 8.8744, 9.9567, 10.3631, 167.25, 492.75, false}};
    ring.runs = {run};
    Cut right, left;
    right.by = left.by = "door";
    right.letter = "A";
    right.side = Side::right;
    right.half_width = left.half_width = 0.4064;
    right.inside_bearing = 167.23456789;
    right.centre_bearing = 165.1;
    right.outside_bearing = 163.4;
    right.inside_arc_from_datum = right.short_arc = 0.4126;
    right.chord = 0.41;
    left.letter = "B";
    left.side = Side::left;
    left.inside_bearing = 359.99999999;
    left.centre_bearing = 0.0000001;
    left.outside_bearing = 136.6;
    left.inside_arc_from_datum = 8.2054;
    left.short_arc = 0.4126;
    left.short_way = Side::left;
    left.chord = 0.41;
    ring.cuts = {right, left};
    return ring;
}

Ring cap_ring() {
    Ring ring;
    ring.dome = "vault";
    ring.kind = RingKind::cap;
    ring.outside_radius = 0.25;
    ring.centre_radius = 0.125;
    ring.bearing_width = 0.2;
    Run run{"R1", 0, 0, 0.5, false, "", "", {}};
    run.tubes = {{"T1", 0.5, 0.5, 0.9064, 0, 0, false}};
    ring.runs = {run};
    return ring;
}

Course course_of(int number, Ring ring) {
    Course course;
    course.number = number;
    course.bottom = (number - 2) * 0.127;
    course.middle = course.bottom + 0.0635;
    course.top = course.bottom + 0.127;
    course.below_floor = number == 1;
    course.top_measured = number == 2;
    course.wall_area = 3.74;
    course.fill_volume = 0.471;
    course.tube_length = 9.81;
    course.cut_length = 12.34;
    course.wire_length = 20.5;
    ring.fill_volume = course.fill_volume;
    course.rings = {std::move(ring)};
    return course;
}

} // namespace

BuildingPlan awkward_plan() {
    BuildingPlan plan;
    TubeType tube;
    tube.id = "main";
    tube.lay_flat = 0.4318;
    tube.tamped_width = 0.381;
    plan.design.tubes = {tube};
    Schedule& schedule = plan.schedule;
    schedule.name = "Séchoir \"Nº 1\"\n– 乾燥\x01 \xff";
    schedule.course_height = 0.127;
    DomeForm dome;
    dome.id = "vault";
    dome.at = {-0.0, 12.5};
    dome.profile = pointed_profile(1.3716, 2.7432);
    dome.course_height = 0.127;
    dome.foundation = 1;
    dome.width = 0.381;
    dome.datum = {150};
    dome.last_ring = 2;
    dome.cap_courses = 1;
    dome.last_ring_radius = 1.3716;
    schedule.building.domes = {dome};
    OpeningPlan door;
    door.form.id = "door";
    door.form.in = "vault";
    door.form.use = OpeningUse::door;
    door.form.head_kind = HeadKind::pointed;
    door.form.bearing = {150};
    door.form.half_width = 0.4064;
    door.form.sill = 0;
    door.form.springing = 1.4224;
    door.form.top = 2.032;
    door.form.head = pointed_profile(0.4064, 0.6096);
    door.first_course = door.last_course = 2;
    door.clear_width = 0.6604;
    door.clear_height = 2.0;
    door.least_form_depth = 0.71;
    door.frame_band_start = 1.3716;
    door.frame_band_end = 1.42;
    door.frame_depth = 0.1143;
    door.strike_after_course = 3;
    schedule.openings = {door};
    schedule.fitted = {{"vault", "springline", 0.508, 4, "a wish", 2.1, 1.9, "Springline: 4."}};
    schedule.courses = {course_of(1, full_ring()), course_of(2, cut_ring()),
                        course_of(3, cap_ring())};
    schedule.courses[1].before = {{"door", "form", "Set the form of the door, \"plumb\"."}};
    schedule.courses[2].after = {{"door", "anchor plates", "Nail two plates."}};
    schedule.totals = {29.43, 37.02, 1.413, 61.5, 1.42, 3};
    Finding advice;
    advice.code = "sill-misses-joint";
    advice.subject = "opening.door";
    advice.place = {31, 1};
    advice.verdict = Verdict::advice;
    advice.message = "The sill misses a joint.";
    advice.value = 0.0254;
    advice.limit = 0.01;
    advice.unit = FindingUnit::metre;
    advice.source = "common practice, no source";
    advice.remedy = "=1+1, \"quoted\"";
    Finding verdict = advice;
    verdict.code = "headroom";
    verdict.subject = "dome.vault";
    verdict.verdict = Verdict::not_judged;
    verdict.value.reset();
    verdict.limit.reset();
    verdict.unit = FindingUnit::none;
    plan.findings = {advice, verdict};
    plan.headroom = {
        {"vault", 2.9, 5.5, {{2.1336, 1.2, 4.5, 1.69}, {1.524, 1.3, 5.3, 1.8}}, verdict}};
    return plan;
}

std::vector<std::string> whole_building_names() {
    return {"home", "retreat", "square-door"};
}

BuildingPlan whole_building_plan(const std::string& name) {
    const std::string text = testing::whole_building_text(name);
    const DesignReading reading = read_design(text);
    if (!reading.diagnostics.empty())
        throw std::runtime_error(diagnostic_text(reading.diagnostics.front(), name, text));
    const Fit fitted = fit(reading.design);
    BuildingPlan plan;
    plan.design = fitted.design;
    plan.schedule = lay(plan.design);
    plan.schedule.fitted = fitted.fitted;
    plan.headroom = headroom(plan.design, plan.schedule);
    plan.findings = practice_findings(plan.design, plan.schedule);
    return plan;
}

} // namespace coilwright
