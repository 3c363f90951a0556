#include "geometry/checks/building_statics.hpp"

#include "geometry/checks/statics_finding.hpp"
#include "geometry/plan/set_notes.hpp"
#include "geometry/statics/sway.hpp"
#include "geometry/statics/tunnel_slice.hpp"
#include "geometry/threads/side_by_side.hpp"

#include <algorithm>

namespace coilwright {

namespace {

int course_over_springline(const DomeForm& dome, const std::vector<WallCourse>& courses) {
    int first = 1;
    for (const WallCourse& course : courses)
        if (course.bottom < dome.springline - height_tie && !course.cap)
            first = std::min(course.number + 1, dome.last_ring);
    return first;
}

void add_sideways(const Design& design, const DomeForm& dome, const DomeLoads& loads,
                  DomeAnalysis& result) {
    const std::vector<WallCourse> parallel = parallel_courses(design, dome, loads);
    const int crown = crown_block_from(dome);
    if (crown <= 1 || first_without_contact(parallel))
        return;
    result.sway = sway_capacity(sway_slice(parallel, crown));
    if (result.sway <= 0)
        return;
    SwaySlice what;
    what.wind_from = design.ground.level;
    result.wind = wind_capacity(parallel, crown, what);
}

} // namespace

std::vector<std::string> joined_domes(const std::vector<WallCourse>& courses) {
    std::vector<std::string> ids;
    for (const WallCourse& course : courses)
        for (const RingGap& gap : course.gaps)
            if (gap.kind() != GapKind::strip &&
                std::find(ids.begin(), ids.end(), gap.by) == ids.end())
                ids.push_back(gap.by);
    return ids;
}

void leave_joined(Finding& finding, const std::vector<std::string>& joined) {
    if (joined.empty() || finding.verdict == Verdict::holds)
        return;
    finding.verdict = Verdict::not_judged;
    finding.message += " Its rings are broken where it opens into '" + joined.front() + "'";
    for (std::size_t i = 1; i < joined.size(); ++i)
        finding.message += (i + 1 < joined.size() ? ", '" : " and '") + joined[i] + "'";
    finding.message += ": that they lean on each other there is not reckoned.";
    finding.remedy = "Ask an engineer to reckon the domes together; a higher springline of the "
                     "larger one, or domes farther apart, leave more rings whole.";
}

std::string strip_words(const std::string& beside) {
    return beside.empty() ? "clear of all openings" : "beside '" + beside + "'";
}

void leave_sliding(Finding& finding, const Design& design, const std::vector<SlidingStrip>& strips,
                   bool worst) {
    if (strips.empty())
        return;
    const auto told = std::max_element(
        strips.begin(), strips.end(),
        [](const SlidingStrip& a, const SlidingStrip& b) { return a.friction < b.friction; });
    std::string where = told->where.empty() ? "" : " " + told->where;
    if (strips.size() > 1)
        where += " (the worst of " + std::to_string(strips.size()) + " strips)";
    const bool none = !(told->friction < unlimited);
    const std::string friction = three_digits(design.joint.friction);
    if (none)
        finding.message +=
            " No line of thrust stands" + where + " at any friction: it is left out here.";
    else
        finding.message +=
            " No line of thrust stands" + where + " at the friction of the joints, " + friction +
            "; there it is reckoned with " + three_digits(up_to_three_digits(told->friction)) +
            ", the least with which one does.";
    if (finding.verdict == Verdict::holds)
        finding.verdict = Verdict::not_judged;
    else if (!none && worst)
        soften_default(finding, design.joint.friction_stated, "friction of the joints");
    finding.remedy = std::string("First mend ") + (none ? "geometric-safety" : "joint-sliding") +
                     (told->where.empty() ? "" : " " + told->where) + "." +
                     (finding.remedy.empty() ? "" : " ") + finding.remedy;
}

void leave_edge_pressure(Finding& finding, const std::string& by) {
    finding.value.reset();
    finding.message = by + " would be pressed along an edge by the only line of thrust there is: "
                           "no pressure is told.";
}

AnalysisParts parts_of_findings() {
    AnalysisParts parts;
    parts.strips.lines = false;
    parts.membrane = false;
    return parts;
}

namespace {

/// The least friction with which a line stands, and room for the solver's tolerance; never less
/// than that of the joints, with which none was found.
double friction_to_stand(const Design& design, const LeastFriction& needed) {
    if (!needed.line.stands)
        return unlimited;
    return std::max(design.joint.friction, needed.friction) * (1 + 1e-4) + 1e-6;
}

double friction_to_stand(const Design& design, const Slice& slice) {
    return friction_to_stand(design, friction_needed(slice));
}

/// That of a strip which was worked out, where it is plainly more than the joints have: no line
/// need be tried at theirs.
std::optional<double> friction_of_sliding(const Design& design, const LeastFriction& needed) {
    if (needed.line.stands && needed.friction < design.joint.friction + 1e-4)
        return std::nullopt;
    return friction_to_stand(design, needed);
}

/// `sliding`: the friction to reckon with where no line stands at that of the joints, once known.
LeastPressure pressure_at_friction(const Design& design, const std::vector<WallCourse>& courses,
                                   DomeSlice what, std::optional<double>& sliding,
                                   std::optional<int> only = {}) {
    if (!sliding) {
        what.friction = design.joint.friction;
        LeastPressure found = least_pressure(courses, what, only);
        if (found.line.stands)
            return found;
        sliding = friction_to_stand(design, dome_slice(courses, what));
    }
    what.friction = *sliding;
    return *sliding < unlimited ? least_pressure(courses, what, only) : LeastPressure{};
}

} // namespace

LineAtFriction thrust_at_friction(const Design& design, const std::vector<WallCourse>& courses,
                                  const DomeForm& dome, DomeSlice what) {
    what.friction = design.joint.friction;
    ThrustLine found = springline_thrust(courses, dome, what);
    if (found.stands)
        return {found, what.friction};
    what.first = course_over_springline(dome, courses);
    what.friction = friction_to_stand(design, dome_slice(courses, what));
    if (what.friction < unlimited)
        found = springline_thrust(courses, dome, what);
    return {found, found.stands ? what.friction : unlimited};
}

DomeAnalysis analyse_dome(const Design& design, const BuildingForm& building, const DomeForm& dome,
                          const AnalysisParts& parts, const DomeLoads& loads) {
    DomeAnalysis result;
    result.statics = dome_statics(design, building, dome, loads, parts.strips);
    const std::vector<WallCourse>& courses = result.statics.courses;
    result.springline_course = course_over_springline(dome, courses);
    if (result.statics.strips.empty())
        return result;
    for (const StripStatics& strip : result.statics.strips) {
        DomeSlice what;
        if (!strip.beside.empty())
            what.beside = strip.beside;
        std::optional<double> sliding;
        if (parts.strips.friction)
            sliding = friction_of_sliding(design, strip.friction);
        if (parts.pressures)
            result.pressures.push_back(pressure_at_friction(design, courses, what, sliding));
        if (parts.ground_pressures)
            result.ground_pressures.push_back(
                pressure_at_friction(design, courses, what, sliding, 1));
        result.frictions.push_back(sliding.value_or(design.joint.friction));
    }
    for (const OpeningForm& form : building.openings)
        if (const Opening* written = find_opening(design, form.id); written && form.in == dome.id)
            result.forms_until[form.id] =
                plan_opening(design, *written, form, building).strike_after_course;
    for (const TunnelForm& tunnel : building.tunnels)
        if (!tunnel.wall_stays && bearing_from(tunnel, dome.id))
            result.forms_until[tunnel.id] = plan_vault_form(tunnel, building).strike_after_course;
    if (parts.springline)
        result.springline = thrust_at_friction(design, courses, dome);
    if (parts.membrane)
        result.membrane = dome_membrane(dome, courses);
    if (parts.levers)
        result.levers = levers_while_building(courses);
    if (parts.sideways)
        add_sideways(design, dome, loads, result);
    return result;
}

TunnelAnalysis analyse_tunnel(const Design& design, const TunnelForm& tunnel,
                              const DomeLoads& loads) {
    TunnelAnalysis result;
    result.tunnel = tunnel.id;
    result.courses = tunnel_courses(design, tunnel, loads);
    if (tunnel.crown_courses < 1 || first_without_contact(result.courses))
        return result;
    result.laid = true;
    const Slice slice = tunnel_slice(result.courses);
    const auto ground = static_cast<int>(slice.blocks.size());
    result.centred = centred_thrust(slice);
    result.friction = least_friction(slice);
    TunnelSlice what;
    what.friction = design.joint.friction;
    result.least = least_thrust(tunnel_slice(result.courses, what), ground);
    if (!result.least.stands) {
        what.friction = friction_to_stand(design, slice);
        if (what.friction < unlimited)
            result.least = least_thrust(tunnel_slice(result.courses, what), ground);
    }
    if (result.least.stands) {
        result.line_friction = what.friction;
        result.greatest = greatest_thrust(tunnel_slice(result.courses, what), ground);
    }
    result.levers = levers_while_building(result.courses);
    const int crown = tunnel.side_courses + 1;
    if (crown > 1) {
        result.sway = sway_capacity(sway_slice(result.courses, crown));
        SwaySlice wind;
        wind.wind_from = design.ground.level;
        if (result.sway > 0)
            result.wind = wind_capacity(result.courses, crown, wind);
    }
    return result;
}

BuildingStatics building_statics(const BuildingPlan& plan) {
    BuildingStatics result;
    const BuildingForm& building = plan.schedule.building;
    const std::size_t domes = building.domes.size();
    result.domes.resize(domes);
    result.tunnels.resize(building.tunnels.size());
    side_by_side(domes + building.tunnels.size(), [&](std::size_t i) {
        if (i < domes)
            result.domes[i] = analyse_dome(plan.design, building, building.domes[i]);
        else
            result.tunnels[i - domes] = analyse_tunnel(plan.design, building.tunnels[i - domes]);
    });
    return result;
}

} // namespace coilwright
