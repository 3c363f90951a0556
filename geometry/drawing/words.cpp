#include "geometry/drawing/words.hpp"

#include "geometry/drawing/figures.hpp"

#include <algorithm>

namespace coilwright::words {

std::string caution() {
    return "A drawing aid, not engineering. Follow the local code. Have a licensed professional "
           "review the design.";
}

std::string print_at_full_size() {
    return "Print at 100 %. This bar must measure 100 mm and 4 in.";
}

std::vector<std::string> hold_points(const Ring& ring) {
    std::vector<std::string> rules;
    if (ring.kind == RingKind::cap)
        rules.push_back("Nobody under the cap until it has gained strength.");
    else if (ring.curb)
        rules.push_back("Nobody under the skylight while the curb is laid.");
    else
        rules = {"Close this ring before you stop.",
                 ring.cuts.empty() ? "Nobody under an open ring but who swings the arm at the pole."
                                   : "Nobody under an open ring but who swings the arm at the "
                                     "pole; forms prop it at the openings."};
    rules.push_back("Let each lift gain strength, as test bags showed, before the next.");
    rules.push_back("When you stop, cover wall from rain and bags from sun.");
    return rules;
}

std::vector<std::string> tunnel_hold_points(const CoursePart& part) {
    if (!form_carries(part))
        return {};
    return {"A vault has no rings: only its form holds it up.",
            "The form stays, braced and wedged, until the crown's sheet lets it go.",
            "Nobody under the vault.", "When you stop, cover wall from rain and bags from sun."};
}

std::string tunnel_legend(const BuildingPlan& plan, const TunnelForm& tunnel,
                          const std::string& scale) {
    std::string text = "From above, north up, " + scale +
                       ". Distances run along the axis from the pole's axis of '" + tunnel.from +
                       "'; left and right are yours when you walk away from it.";
    const CourseRules& rules = plan.design.course;
    return text + " Cut = longer edge + " + length_text(rules.end_allowance, plan.schedule.unit) +
           " at each end. Thin lines: wall on other sheets.";
}

std::vector<std::string> datum(const BuildingPlan& plan, const DomeForm& dome) {
    const std::string element = datum_element(plan, dome);
    std::string where = element.empty() ? "due north" : "the centreline of '" + element + "'";
    where += ", bearing " + degrees_text(turned_into_circle(dome.datum.degrees)) + " from north";
    if (plan.schedule.building.domes.size() > 1)
        where = "the bearing in the table, each dome its own";
    return {
        "Datum line: from the pole's axis along " + where +
            ". Fix it by a stake outside that stays until the dome is closed.",
        "Datum mark of a course: where the arm's mark stands when it is swung over the datum line "
        "to the stake, level with the middle of the course. There need not be a wall there.",
        "Arcs run along the inside face from the datum mark, the shorter way round; chords run "
        "straight. Left and right are yours when you stand at the pole and face the datum mark or "
        "the opening. Where a form stands, butt the tubes against it and check with the figures."};
}

std::vector<std::string> compass(const BuildingPlan& plan, const DomeForm& dome) {
    const Design& design = plan.design;
    const bool several = plan.schedule.building.domes.size() > 1;
    std::vector<std::string> lines;
    std::string settings =
        "Settings are of the tamped inside face, at the middle of the course's height";
    const bool face = design.compass.pole_diameter > 0;
    if (design.compass.arm == CompassArm::chain) {
        settings += several ? ", read on the chain fixed to the pole as high as the sheets say"
                            : ", read on the chain fixed to the pole " +
                                  rod_text(dome.chain_height, plan.schedule.unit) +
                                  " above the bench mark";
        settings += face ? ", from the pole's face" : ", from its axis";
    } else if (face) {
        settings += ", read level from the pole's face (pole " +
                    length_text(design.compass.pole_diameter, plan.schedule.unit) + " thick)";
    } else {
        settings += ", read level from the pole's axis: take half the pole's thickness off if your "
                    "tape starts at its face";
    }
    lines.push_back(settings + ".");
    if (design.course.tamp_gap > 0)
        lines.push_back("Tamping pushes the face in. Lay each tube " +
                        length_text(design.course.tamp_gap, plan.schedule.unit) +
                        " outside the setting, the gap found on the test bag.");
    else
        lines.push_back(
            "Tamping pushes the face in. Find on a test bag by how much, and lay each tube "
            "that much outside the setting (the design states no gap).");
    lines.push_back(
        "Measure the height of every course at four places. Where it is off the rod, change "
        "the arm as the sheet says.");
    return lines;
}

std::vector<std::string> bench_mark(const BuildingPlan& plan) {
    const double build_up = plan.design.finish.floor_build_up;
    std::vector<std::string> lines{"Heights are from 0, the finished floor. It does not exist "
                                   "while you build: mark 0 on the pole, "
                                   "and on a bench mark peg outside that nothing can move; carry "
                                   "it across with a water level."};
    if (build_up > 0)
        lines.push_back("The bare ground inside lies " + length_text(build_up, plan.schedule.unit) +
                        " below 0: the floor's build-up.");
    return lines;
}

std::vector<std::string> pole(const BuildingPlan& plan, const DomeForm& dome) {
    std::vector<std::string> lines{"Set the pole on firm ground at the centre, guy it three ways, "
                                   "and check it with a plumb bob "
                                   "before you start and every 4 courses after."};
    const std::vector<DomeForm>& domes = plan.schedule.building.domes;
    const std::string last = domes.size() > 1 ? "" : ", course " + std::to_string(dome.last_ring);
    if (std::any_of(domes.begin(), domes.end(),
                    [](const DomeForm& one) { return one.cap_courses > 0; }))
        lines.push_back(
            "Take it out after the last ring" + last +
            ", before the cap closes the dome: first carry its axis over to two strings "
            "across that ring, which centre the cap.");
    if (std::any_of(domes.begin(), domes.end(),
                    [](const DomeForm& one) { return one.cap_courses == 0; }))
        lines.push_back("Under a skylight it stays until the last course is laid, then comes out "
                        "through the hole or the door.");
    return lines;
}

std::vector<std::string> tubes(const BuildingPlan& plan) {
    const CourseRules& rules = plan.design.course;
    const auto length = [&](double metres) { return length_text(metres, plan.schedule.unit); };
    return {
        std::string("Cut lengths are those of the ") +
            (rules.curve == CutCurve::outer ? "outer edge of the bent tube" : "tube's centreline") +
            " and " + length(rules.end_allowance) +
            " at each end to close it. The length along the centre is what lies in the wall.",
        "Keep each joint at least " + length(rules.joint_lap) +
            " from the joints of the course below and from cuts, those of the courses above and "
            "below too; the sheet marks those that cannot."};
}

std::string dome_in_a_sentence(const BuildingPlan& plan, const DomeForm& dome) {
    const auto length = [&](double metres) { return length_text(metres, plan.schedule.unit); };
    std::string text = "Dome '" + dome.id + "': " + word(dome.profile.kind) + ", " +
                       length(2 * dome.profile.half_span) + " inside, springline " +
                       length(dome.springline) + " above the floor, ";
    text += dome.cap_courses > 0 ? "apex of the inside curve " + length(dome.apex())
                                 : "top " + length(dome.top());
    text += " above it. " + count_text(dome.courses(), "course", "courses") + " of " +
            length(dome.course_height) + ", " + std::to_string(dome.foundation) +
            " of them below the floor";
    if (dome.cap_courses > 0)
        text += "; the last " + std::to_string(dome.cap_courses) + " a solid cap";
    if (dome.curb_courses > 0)
        text += "; the last " + std::to_string(dome.curb_courses) +
                " the plumb curb of a skylight " + length(2 * dome.last_ring_radius) + " wide";
    text += ". Tubes " + length(dome.width) + " wide when tamped. ";
    const int openings = static_cast<int>(openings_of(plan.schedule, dome.id).size());
    return text + (openings == 0 ? "No openings." : count_text(openings, "opening.", "openings."));
}

} // namespace coilwright::words
