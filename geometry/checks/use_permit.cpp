// Whether the floor is so small that no permit is asked for.
#include "geometry/checks/rooms.hpp"
#include "geometry/checks/use_findings.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

/// Floor of a building by its inside and by its outside faces with plaster: domes, and its tunnels
/// to their ends.
struct FloorAreas {
    double inside = 0, outside = 0;
};

FloorAreas areas_of(const DomeGroup& house, const BuildingPlan& plan) {
    const BuildingForm& building = plan.schedule.building;
    const double within = plan.design.finish.inside_plaster,
                 without = plan.design.finish.outside_plaster;
    FloorAreas areas;
    areas.inside = group_floor(house, building, within, 0);
    PlanExpression outside;
    for (const int i : house.domes) {
        const DomeForm& dome = building.domes[static_cast<std::size_t>(i)];
        outside.terms.push_back({dome.id, static_cast<int>(outside.shapes.size()), {}});
        outside.shapes.push_back(Disc{dome.at, base_outside(dome) + without});
    }
    areas.outside = plan_area(outside);
    for (const TunnelForm& tunnel : building.tunnels) {
        const DomeForm* from = find_dome(building, tunnel.from);
        if (!from || !holds_dome(house, building, tunnel.from))
            continue;
        areas.inside += plan_area(room_plan(building, tunnel, within, 0));
        // Between the faces of its domes, along its middle: round corners are let go. Its end is
        // plastered too, as the dome is that it starts from.
        const DomeForm* to = find_dome(building, tunnel.to);
        const double domes = base_outside(*from) + (to ? base_outside(*to) + 2 * without : 0.0);
        areas.outside +=
            2 * (outer_half_width(tunnel, 0) + without) * std::max(0.0, tunnel.reach - domes);
    }
    return areas;
}

} // namespace

std::vector<Finding> permit_findings(const BuildingPlan& plan) {
    const Design& design = plan.design;
    const BuildingForm& building = plan.schedule.building;
    const Wording wording{design.unit};
    const Limit* most = find_limit(design.limits, "permit.area");
    const Limit* lower = find_limit(design.limits, "permit.lower_area");
    std::vector<Finding> findings;
    if (!most)
        return findings;
    for (const DomeGroup& house : houses_of(building)) {
        const FloorAreas areas = areas_of(house, plan);
        Finding found =
            held_against("permit-area", subject_of(house, design, building), areas.outside,
                         FindingUnit::square_metre, Bound::at_most, *most, Verdict::advice);
        const std::string both = wording.area(areas.inside) + " of floor by the inside, " +
                                 wording.area(areas.outside) + " by the outside";
        const std::string limits =
            wording.area(most->value) +
            (lower ? ", in places " + wording.area(lower->value) : std::string());
        if (!lived_in(house, building).domes.empty()) {
            found.verdict = Verdict::not_judged;
            found.message = "It has " + both +
                            ". People live in it: no floor is small enough to do "
                            "without a permit; ask the office.";
            findings.push_back(std::move(found));
            continue;
        }
        const std::string if_alone =
            " A detached accessory building that nobody sleeps in needs no permit up to " + limits +
            "; ask which area the office measures.";
        found.message = "It has " + both + "." + if_alone;
        if (found.verdict == Verdict::holds && lower && areas.outside > lower->value)
            found.message += " Where the lower value holds it needs one.";
        if (found.verdict != Verdict::holds) {
            if (areas.inside <= most->value)
                found.message += " Here they disagree.";
            if (house.domes.size() == 1) {
                const DomeForm& dome =
                    building.domes[static_cast<std::size_t>(house.domes.front())];
                const double ring = base_outside(dome) - dome.profile.half_span;
                const double across =
                    2 * (std::sqrt(most->value / pi) - ring - design.finish.outside_plaster);
                found.remedy = "Ask for a permit, or build at most " + wording.length_down(across) +
                               " inside, without a tunnel.";
            } else
                found.remedy = "Ask for a permit, or build the domes apart, each of at most " +
                               wording.area(most->value) + " by the outside.";
        }
        findings.push_back(std::move(found));
    }
    return findings;
}

} // namespace coilwright
