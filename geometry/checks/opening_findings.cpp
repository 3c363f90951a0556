#include "geometry/base/quantity.hpp"
#include "geometry/checks/element_findings.hpp"
#include "geometry/checks/statics_finding.hpp"
#include "geometry/statics/head_arch.hpp"
#include "geometry/statics/lintel_beam.hpp"
#include "geometry/statics/materials.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

/// The wall that an opening is in, as far as its head asks.
struct HostWall {
    double top = 0, thickness = 0;
};

std::optional<HostWall> host_of(const BuildingForm& building, const OpeningForm& opening) {
    if (const DomeForm* dome = find_dome(building, opening.in))
        return HostWall{dome->top(), ring_width(*dome, opening.top)};
    if (const TunnelForm* tunnel = find_tunnel(building, opening.in))
        return HostWall{tunnel->top(), tunnel->width};
    return std::nullopt;
}

void add_lintel(const BuildingPlan& plan, const OpeningForm& opening, const Lintel& lintel,
                const HostWall& host, std::vector<Finding>& findings) {
    const Design& design = plan.design;
    const SourcePlace place = find_opening(design, opening.id)->place;
    LintelBeam beam;
    if (const DomeForm* dome = find_dome(plan.schedule.building, opening.in))
        beam = lintel_beam(design, *dome, opening, lintel);
    else {
        beam.span = 2 * opening.half_width + lintel.bearing;
        beam.wall_above = host.top - (lintel.bottom + lintel.depth);
        beam.wall_thickness = host.thickness;
        beam.wall_unit_weight =
            standard_gravity * fill_density(design, lintel.last_course + 1).value;
        beam.depth = lintel.depth;
        beam.width = lintel.width;
        beam.beam_unit_weight =
            standard_gravity * (lintel.kind == LintelKind::timber ? 600.0 : 2400.0);
        beam.bearing_area = lintel.bearing_area;
    }
    if (!(beam.span > 0 && beam.depth > 0 && beam.width > 0 && beam.bearing_area > 0))
        return;
    beam.wall_above = std::max(beam.wall_above, 0.0);
    const LintelForces forces = lintel_forces(beam);
    const std::string subject = "opening." + opening.id;
    Finding bending = statics_finding("lintel-bending", subject, place);
    const Limit& timber = limit_of(design, "lintel-beam.timber_bending");
    bending.unit = FindingUnit::pascal;
    bending.value = forces.bending;
    bending.formula = "6 M/(b d^2), M of the wall's triangle of 45 degrees and the lintel itself";
    bending.source = source_text(timber);
    bending.message = "The lintel of '" + opening.id + "' carries " +
                      force_text(forces.load, design.unit) + " and is bent with " +
                      stress_text(forces.bending, design.unit);
    if (lintel.kind == LintelKind::timber) {
        bending.limit = timber.value;
        bending.verdict = forces.bending <= timber.value ? Verdict::holds : Verdict::fails;
        bending.message +=
            "; sawn timber is taken to bear " + stress_text(timber.value, design.unit) + ".";
        if (bending.verdict == Verdict::fails)
            bending.remedy =
                "A depth of " +
                length_text(beam.depth * std::sqrt(forces.bending / timber.value) * 1.02 + 0.005,
                            design.unit) +
                " would do.";
    } else {
        bending.message += "; its steel is for an engineer to choose.";
        bending.remedy = "Give the engineer the moment of " + three_digits(forces.moment) + " N m.";
    }
    Finding bearing = statics_finding("lintel-bearing", subject, place);
    const double strength = fill_strength(design, std::max(1, lintel.first_course - 1)).value;
    const Limit& least = limit_of(design, "crushing.least");
    judge_ratio(bearing, forces.bearing > 0 ? strength / forces.bearing : unlimited, least.value,
                limit_of(design, "crushing.good").value);
    bearing.formula = "strength of the fill / (load / area of both ends on the course below)";
    bearing.source = source_text(least);
    bearing.message = "Under the ends of its lintel the wall beside '" + opening.id +
                      "' is pressed with " + stress_text(forces.bearing, design.unit) +
                      "; its fill is taken to bear " + stress_text(strength, design.unit) + ".";
    if (bearing.verdict != Verdict::holds)
        bearing.remedy =
            "Lay it on plates, or give it a bearing of " +
            length_text(lintel.bearing * limit_of(design, "crushing.good").value / *bearing.value,
                        design.unit) +
            " on each side.";
    findings.push_back(bending);
    findings.push_back(bearing);
}

/// The course that lies on the head of an opening.
int course_above(const BuildingPlan& plan, const OpeningForm& opening) {
    return plan.design.course.foundation + 1 +
           static_cast<int>(std::floor(opening.top / plan.schedule.course_height));
}

void add_fan(const BuildingPlan& plan, const OpeningForm& opening, const HostWall& host,
             std::vector<Finding>& findings) {
    const Design& design = plan.design;
    HeadLoad load;
    load.wall_thickness = host.thickness;
    load.unit_weight = standard_gravity * fill_density(design, course_above(plan, opening)).value;
    // The wall above arches itself over a triangle, as over a lintel.
    const double outer = opening.half_width + opening.fan_depth;
    load.cover = std::clamp(host.top - opening.top - opening.fan_depth, 0.0, outer);
    const std::optional<Slice> arch = head_arch(opening, load);
    if (!arch)
        return;
    const CentredThrust centred = centred_thrust(*arch);
    const Limit& least = limit_of(design, "geometric-safety.least");
    Finding found = statics_finding("fan-head", "opening." + opening.id,
                                    find_opening(design, opening.id)->place);
    judge_ratio(found, centred.safety(), least.value,
                limit_of(design, "geometric-safety.good").value);
    found.formula =
        "geometric factor of safety of the fan's bags as an arch under plumb columns of "
        "wall as high as half its outer span";
    found.source = source_text(least);
    found.message = found.verdict == Verdict::fails
                        ? "No line of thrust keeps within the fan over '" + opening.id + "'."
                        : "The line of thrust in the fan over '" + opening.id +
                              "' would keep within bags " + fixed_text(centred.safety(), 2) +
                              " times less deep.";
    if (found.verdict != Verdict::holds)
        found.remedy = "Deeper bags, or a pointed head.";
    findings.push_back(found);
}

} // namespace

std::vector<Finding> opening_findings(const BuildingPlan& plan) {
    std::vector<Finding> findings;
    const Schedule& schedule = plan.schedule;
    for (const OpeningPlan& opening : schedule.openings) {
        const std::optional<HostWall> host = host_of(schedule.building, opening.form);
        if (!host)
            continue;
        for (const Lintel& lintel : schedule.lintels)
            if (lintel.opening == opening.form.id)
                add_lintel(plan, opening.form, lintel, *host, findings);
        if (opening.form.fan_depth > 0)
            add_fan(plan, opening.form, *host, findings);
    }
    return findings;
}

} // namespace coilwright
