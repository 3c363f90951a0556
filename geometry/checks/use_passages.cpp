// Steps, sills near the ground, heads in tunnels.
#include "geometry/checks/rooms.hpp"
#include "geometry/checks/use_findings.hpp"
#include "geometry/plan/clear_outline.hpp"

#include <cmath>

namespace coilwright {

namespace {

Subject subject_of_opening(const Design& design, const std::string& id) {
    const Opening* opening = find_opening(design, id);
    return {"opening." + id, opening ? opening->sill_place : SourcePlace{}};
}

/// The opening whose sill stands highest (or lowest) over the ground, of those that `want` takes.
template <typename Want>
const OpeningForm* extreme_sill(const BuildingForm& building, bool highest, Want want) {
    const OpeningForm* found = nullptr;
    for (const OpeningForm& opening : building.openings)
        if (want(opening) && leads_out(opening, building) &&
            (!found || (highest ? opening.sill > found->sill : opening.sill < found->sill)))
            found = &opening;
    return found;
}

} // namespace

std::vector<Finding> passage_findings(const BuildingPlan& plan) {
    const Design& design = plan.design;
    const BuildingForm& building = plan.schedule.building;
    const Wording wording{design.unit};
    const double ground = design.ground.level;
    std::vector<Finding> findings;

    const Limit* step = find_limit(design.limits, "threshold.step");
    const OpeningForm* door = extreme_sill(
        building, true, [](const OpeningForm& o) { return o.use == OpeningUse::door; });
    if (step && door) {
        const double rise = door->sill - ground;
        Finding found = held_against("door-step", subject_of_opening(design, door->id), rise,
                                     FindingUnit::metre, Bound::at_most, *step, Verdict::advice);
        found.message = "The sill of '" + door->id + "', the highest of the doors, lies " +
                        wording.length(rise) + " over the ground (one step of " +
                        wording.length(step->value) + " at most).";
        if (found.verdict != Verdict::holds)
            found.remedy = "Set steps before it, or bring the ground up to " +
                           wording.length_up(door->sill - step->value) + " against the floor.";
        findings.push_back(std::move(found));
    }

    const Limit* base = find_limit(design.limits, "base.above_ground");
    const OpeningForm* window = extreme_sill(
        building, false, [](const OpeningForm& o) { return o.use != OpeningUse::door; });
    if (base && window) {
        const double over = window->sill - ground;
        Finding found =
            held_against("sill-near-ground", subject_of_opening(design, window->id), over,
                         FindingUnit::metre, Bound::at_least, *base, Verdict::advice);
        found.message = "The sill of '" + window->id +
                        "', the lowest of the windows and vents, lies " + wording.length(over) +
                        " over the ground (splashing rain reaches " + wording.length(base->value) +
                        ").";
        if (found.verdict != Verdict::holds)
            found.remedy =
                "Set its sill at " + wording.length_up(ground + base->value) + " or higher.";
        findings.push_back(std::move(found));
    }

    const Limit* passage = find_limit(design.limits, "passage.clear_height");
    for (const TunnelForm& tunnel : building.tunnels) {
        if (!passage)
            break;
        const ClearOutline outline = clear_outline(tunnel, design.finish.inside_plaster);
        const double clear = top_over_width(outline, 0);
        const Tunnel* written = find_tunnel(design, tunnel.id);
        Finding found = held_against(
            "tunnel-headroom", {"tunnel." + tunnel.id, written ? written->place : SourcePlace{}},
            clear, FindingUnit::metre, Bound::at_least, *passage, Verdict::advice);
        found.message = "In the middle of '" + tunnel.id + "' there are " + wording.length(clear) +
                        " clear after plaster (" + wording.length(passage->value) + " wanted).";
        if (found.verdict != Verdict::holds) {
            const double t = design.course.height;
            const double more = std::ceil((passage->value - clear) / t - 1e-9) * t;
            found.remedy =
                "Raise its springline to " + wording.length_up(tunnel.springline + more) + ".";
        }
        findings.push_back(std::move(found));
    }
    return findings;
}

std::vector<Finding> use_findings(const BuildingPlan& plan) {
    std::vector<Finding> all;
    for (const auto check : {room_findings, way_out_findings, passage_findings, permit_findings}) {
        const std::vector<Finding> some = check(plan);
        all.insert(all.end(), some.begin(), some.end());
    }
    return all;
}

} // namespace coilwright
