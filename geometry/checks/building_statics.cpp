#include "geometry/checks/building_statics.hpp"

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

void add_sideways(const Design& design, const DomeForm& dome, DomeAnalysis& result) {
    const std::vector<WallCourse> parallel = parallel_courses(design, dome);
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

AnalysisParts parts_of_findings() {
    AnalysisParts parts;
    parts.strips.lines = false;
    parts.membrane = false;
    return parts;
}

namespace {

LeastPressure pressure_at_friction(const Design& design, const std::vector<WallCourse>& courses,
                                   DomeSlice what, std::optional<int> only = {}) {
    what.friction = design.joint.friction;
    LeastPressure found = least_pressure(courses, what, only);
    if (found.line.stands)
        return found;
    what.friction = unlimited;
    return least_pressure(courses, what, only);
}

} // namespace

ThrustLine thrust_at_friction(const Design& design, const std::vector<WallCourse>& courses,
                              const DomeForm& dome, DomeSlice what) {
    what.friction = design.joint.friction;
    ThrustLine found = springline_thrust(courses, dome, what);
    if (found.stands)
        return found;
    what.friction = unlimited;
    return springline_thrust(courses, dome, what);
}

DomeAnalysis analyse_dome(const Design& design, const BuildingForm& building, const DomeForm& dome,
                          const AnalysisParts& parts) {
    DomeAnalysis result;
    result.statics = dome_statics(design, building, dome, {}, parts.strips);
    const std::vector<WallCourse>& courses = result.statics.courses;
    result.springline_course = course_over_springline(dome, courses);
    if (result.statics.strips.empty())
        return result;
    for (const StripStatics& strip : result.statics.strips) {
        DomeSlice what;
        if (!strip.beside.empty())
            what.beside = strip.beside;
        if (parts.pressures)
            result.pressures.push_back(pressure_at_friction(design, courses, what));
        if (parts.ground_pressures)
            result.ground_pressures.push_back(pressure_at_friction(design, courses, what, 1));
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
        add_sideways(design, dome, result);
    return result;
}

TunnelAnalysis analyse_tunnel(const Design& design, const TunnelForm& tunnel) {
    TunnelAnalysis result;
    result.tunnel = tunnel.id;
    result.courses = tunnel_courses(design, tunnel);
    if (tunnel.crown_courses < 1 || first_without_contact(result.courses))
        return result;
    result.laid = true;
    const Slice slice = tunnel_slice(result.courses);
    const auto ground = static_cast<int>(slice.blocks.size());
    result.centred = centred_thrust(slice);
    result.friction = least_friction(slice);
    result.least = least_thrust(slice, ground);
    result.greatest = result.least.stands ? greatest_thrust(slice, ground) : result.least;
    result.levers = levers_while_building(result.courses);
    const int crown = tunnel.side_courses + 1;
    if (crown > 1) {
        result.sway = sway_capacity(sway_slice(result.courses, crown));
        SwaySlice what;
        what.wind_from = design.ground.level;
        if (result.sway > 0)
            result.wind = wind_capacity(result.courses, crown, what);
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
