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

/// The depth in whole courses that timber of a strength does with.
std::string deeper_lintel(const Design& design, LintelBeam beam, double bears) {
    const double t = design.course.height, now = beam.depth;
    for (int n = static_cast<int>(std::floor(now / t + 1e-6)) + 1; n * t <= 3 * now; ++n) {
        beam.wall_above = std::max(0.0, beam.wall_above - (n * t - beam.depth));
        beam.depth = n * t;
        if (lintel_forces(beam).bending <= bears)
            return "A depth of " + length_text(beam.depth, design.unit) + " would do.";
    }
    return "A stronger lintel, or a narrower opening.";
}

void add_lintel(const BuildingPlan& plan, const LaidLintel& laid, std::vector<Finding>& findings) {
    const Design& design = plan.design;
    const Lintel& lintel = laid.lintel;
    const LintelBeam& beam = laid.beam;
    const LintelForces& forces = laid.forces;
    const bool timber = lintel.kind == LintelKind::timber;
    const SourcePlace place = find_opening(design, lintel.opening)->place;
    const std::string subject = "opening." + lintel.opening;
    Finding bending = statics_finding("lintel-bending", subject, place);
    const Limit& bears = limit_of(design, "lintel-beam.timber_bending");
    bending.unit = FindingUnit::pascal;
    bending.value = forces.bending;
    bending.formula =
        "6 M/(b d^2), M of the wall's triangle of 45 degrees, gamma b h (L - h), with the plaster "
        "on both faces, p h (L - h), and the lintel itself: b " +
        length_text(beam.wall_thickness, design.unit) + ", h " +
        length_text(std::min(beam.wall_above, beam.span / 2), design.unit) + ", L " +
        length_text(beam.span, design.unit) + ", gamma " +
        quantity_text(std::round(beam.wall_unit_weight), Quantity::unit_weight, design.unit) +
        ", p " + pressure_text(beam.plaster, design.unit) + ", lintel " +
        force_text(forces.load - forces.wall_load, design.unit);
    bending.source = source_text(bears);
    bending.message = "The lintel of '" + lintel.opening + "' carries " +
                      force_text(forces.load, design.unit) + " and is bent with " +
                      stress_text(forces.bending, design.unit);
    if (timber) {
        bending.limit = bears.value;
        bending.verdict = forces.bending <= bears.value ? Verdict::holds : Verdict::fails;
        bending.message +=
            "; sawn timber is taken to bear " + stress_text(bears.value, design.unit) + ".";
        if (bending.verdict == Verdict::fails)
            bending.remedy = deeper_lintel(design, beam, bears.value);
    } else {
        bending.message += "; its steel is for an engineer to choose.";
        bending.remedy =
            "Give the engineer the moment of " + moment_text(forces.moment, design.unit) + ".";
    }
    Finding bearing = statics_finding("lintel-bearing", subject, place);
    const double strength = fill_strength(design, std::max(1, lintel.first_course - 1)).value;
    const Limit& least = limit_of(design, "crushing.least");
    judge_ratio(bearing, forces.bearing > 0 ? strength / forces.bearing : unlimited, least.value,
                limit_of(design, "crushing.good").value);
    bearing.formula =
        "strength of the fill / (load / area of both ends on the course below), load " +
        force_text(forces.load, design.unit);
    bearing.source = source_text(least);
    bearing.message = "Under the ends of its lintel the wall beside '" + lintel.opening +
                      "' is pressed with " + stress_text(forces.bearing, design.unit) +
                      "; its fill is taken to bear " + stress_text(strength, design.unit) + ".";
    soften_unstated(bearing, design, std::max(1, lintel.first_course - 1), forces.bearing);
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
    const std::optional<Fan> fan = make_fan(opening, host.thickness, 0);
    const Limit& least = limit_of(design, "geometric-safety.least");
    Finding found = statics_finding("fan-head", "opening." + opening.id,
                                    find_opening(design, opening.id)->place);
    judge_ratio(found, centred.safety(), least.value,
                limit_of(design, "geometric-safety.good").value);
    found.formula = "geometric factor of safety of the fan as an arch of " +
                    std::to_string(fan ? fan->count : 0) + " bags " +
                    length_text(opening.fan_depth, design.unit) +
                    " deep under plumb columns of wall as high as half its outer span";
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

std::vector<LaidLintel> laid_lintels(const BuildingPlan& plan) {
    std::vector<LaidLintel> all;
    const BuildingForm& building = plan.schedule.building;
    for (const OpeningPlan& opening : plan.schedule.openings) {
        const std::optional<HostWall> host = host_of(building, opening.form);
        const DomeForm* dome = find_dome(building, opening.form.in);
        if (!host)
            continue;
        for (const Lintel& lintel : plan.schedule.lintels) {
            if (lintel.opening != opening.form.id)
                continue;
            const char* const weight = lintel.kind == LintelKind::timber ? "lintel-weight.timber"
                                                                         : "lintel-weight.concrete";
            const double over = lintel.bottom + lintel.depth;
            LaidLintel laid{
                lintel,
                lintel_beam(plan.design,
                            {host->top, dome ? ring_width(*dome, over) : host->thickness},
                            opening.form, lintel, limit_of(plan.design, weight).value),
                {}};
            const LintelBeam& beam = laid.beam;
            if (!(beam.span > 0 && beam.depth > 0 && beam.width > 0 && beam.bearing_area > 0))
                continue;
            laid.forces = lintel_forces(beam);
            all.push_back(std::move(laid));
        }
    }
    return all;
}

std::vector<Finding> opening_findings(const BuildingPlan& plan) {
    std::vector<Finding> findings;
    for (const LaidLintel& laid : laid_lintels(plan))
        add_lintel(plan, laid, findings);
    for (const OpeningPlan& opening : plan.schedule.openings)
        if (opening.form.fan_depth > 0)
            if (const std::optional<HostWall> host = host_of(plan.schedule.building, opening.form))
                add_fan(plan, opening.form, *host, findings);
    return findings;
}

} // namespace coilwright
