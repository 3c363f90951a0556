// Pressure in the joints of a tunnel and on the ground under its walls.
#include "geometry/base/length.hpp"
#include "geometry/checks/element_findings.hpp"
#include "geometry/checks/statics_finding.hpp"
#include "geometry/statics/joint_checks.hpp"

#include <algorithm>

namespace coilwright {

std::vector<TunnelPressure> tunnel_pressures(const TunnelAnalysis& analysis) {
    std::vector<TunnelPressure> pressures;
    const std::vector<JointThrust>& joints = analysis.centred.line.joints;
    const std::vector<WallCourse>& courses = analysis.courses;
    for (std::size_t i = 0; i < courses.size() && i + 1 < joints.size(); ++i) {
        const JointThrust& joint = joints[joints.size() - 1 - i];
        TunnelPressure one;
        one.course = courses[i].number;
        one.normal = joint.normal;
        one.pressure = contact_pressure(joint.normal, courses[i].contact_width(), joint.offset);
        one.strength = courses[i].strength;
        if (i > 0)
            one.strength = std::min(one.strength, courses[i - 1].strength);
        pressures.push_back(one);
    }
    return pressures;
}

namespace {

Finding of_tunnel(const Design& design, const TunnelForm& tunnel, const std::string& code) {
    return statics_finding(code, "tunnel." + tunnel.id, find_tunnel(design, tunnel.id)->place);
}

Finding crushing(const Design& design, const TunnelForm& tunnel,
                 const std::vector<TunnelPressure>& pressures) {
    Finding found = of_tunnel(design, tunnel, "tunnel-crushing");
    const Limit& least = limit_of(design, "crushing.least");
    const double good = limit_of(design, "crushing.good").value;
    found.formula = "strength of the fill / (N/(d - 2e)) in a joint, along the most centred "
                    "line, friction without limit";
    found.source = source_text(least) +
                   "; strength as the design states it, else Dunbar & Wipplinger 2006, sand-filled";
    const TunnelPressure& worst = *std::min_element(
        pressures.begin(), pressures.end(), [](const TunnelPressure& a, const TunnelPressure& b) {
            return a.strength * b.pressure < b.strength * a.pressure;
        });
    judge_ratio(found, worst.strength / worst.pressure, least.value, good);
    found.message = "The joint under course " + std::to_string(worst.course) + " of '" + tunnel.id +
                    "' is pressed with " + stress_text(worst.pressure, design.unit) +
                    " along the most centred line of thrust; its fill is taken to bear " +
                    stress_text(worst.strength, design.unit) + ".";
    soften_unstated(found, design, worst.course, worst.pressure);
    if (found.verdict != Verdict::holds)
        found.remedy = stronger_fill(design, worst.pressure);
    return found;
}

Finding ground(const Design& design, const TunnelForm& tunnel, const TunnelPressure& lowest) {
    Finding found = of_tunnel(design, tunnel, "tunnel-ground");
    const double carries = lowest.normal / lowest.pressure;
    const double pressure = lowest.normal / (carries + design.trench.gravel_depth);
    found.unit = FindingUnit::pascal;
    found.value = pressure;
    found.formula = "N/(d - 2e + g) under course 1, along the most centred line; g: depth of the "
                    "gravel under it, which spreads 1 in 2 to either side";
    found.source = "Meyerhof 1953; capacity by [ground] bearing_capacity";
    found.message = "The ground under each wall of '" + tunnel.id + "' is pressed with " +
                    pressure_text(pressure, design.unit);
    if (!design.ground.bearing_capacity) {
        found.message += "; what it bears is not stated.";
        found.remedy = "State [ground] bearing_capacity.";
        return found;
    }
    const double capacity = *design.ground.bearing_capacity;
    found.limit = capacity;
    found.verdict = pressure <= capacity ? Verdict::holds : Verdict::fails;
    found.message += "; it bears " + pressure_text(capacity, design.unit) + ".";
    if (found.verdict == Verdict::fails)
        found.remedy =
            "A gravel trench " +
            length_text(up_to_step(lowest.normal / capacity - carries, design.unit), design.unit) +
            " deep spreads it enough; or take a wider tube.";
    return found;
}

} // namespace

std::vector<Finding> tunnel_pressure_findings(const Design& design, const TunnelForm& tunnel,
                                              const TunnelAnalysis& analysis) {
    const std::vector<TunnelPressure> pressures = tunnel_pressures(analysis);
    const bool leaves =
        std::any_of(pressures.begin(), pressures.end(), [](const TunnelPressure& one) {
            return one.pressure <= 0 || one.pressure >= unlimited;
        });
    if (pressures.empty() || leaves) // `tunnel-safety` says so
        return {};
    return {crushing(design, tunnel, pressures), ground(design, tunnel, pressures.front())};
}

} // namespace coilwright
