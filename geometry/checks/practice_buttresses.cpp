// Buttresses where doors and tunnels open a wall that pushes.
#include "geometry/checks/held_against.hpp"
#include "geometry/checks/trade_findings.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

/// A doorway of a dome.
struct Doorway {
    Bearing bearing;
    double half_width = 0;
};

/// Height up to which both sides of a doorway are braced by a pier no farther than `beside` from
/// the jamb, metres; none: below the floor.
double braced_to(const BuildingForm& building, const DomeForm& dome, const Doorway& door,
                 double beside) {
    const double r = dome.profile.half_span;
    double sides[2] = {dome.bottom(), dome.bottom()};
    if (door.half_width >= r)
        return dome.bottom();
    for (const ButtressForm& pier : building.buttresses) {
        if (pier.dome != dome.id || pier.reveal)
            continue;
        double away = clockwise_degrees(door.bearing, pier.bearing);
        const int side = away < 180 ? 0 : 1;
        away = std::min(away, 360 - away);
        const double from_jamb =
            (away - half_angle_degrees(door.half_width, r)) * pi / 180 * r - pier.half_width;
        if (from_jamb <= beside)
            sides[side] = std::max(sides[side], pier.top);
    }
    return std::min(sides[0], sides[1]);
}

} // namespace

std::vector<Finding> buttress_practice_findings(const BuildingPlan& plan) {
    const Design& design = plan.design;
    const BuildingForm& building = plan.schedule.building;
    const Wording wording{design.unit};
    const Limit* above = find_limit(design.limits, "buttress.above_springline");
    std::vector<Finding> findings;
    const Limit* beside = find_limit(design.limits, "doorway-pier.from_jamb");
    if (!above || !beside)
        return findings;
    for (const DomeForm& dome : building.domes) {
        std::string bare, first;
        double least = 1e9;
        int doorways = 0;
        const auto consider = [&](const std::string& id, double braced) {
            ++doorways;
            const double over = braced - dome.springline;
            least = std::min(least, over);
            if (over < above->value - height_tie) {
                bare += (bare.empty() ? "'" : ", '") + id + "'";
                first = first.empty() ? id : first;
            }
        };
        for (const OpeningForm& opening : building.openings)
            if (opening.in == dome.id && opening.use == OpeningUse::door)
                consider(opening.id,
                         braced_to(building, dome, {opening.bearing, opening.half_width},
                                   beside->value));
        for (const TunnelForm& tunnel : building.tunnels) {
            const std::optional<Bearing> bearing = bearing_from(tunnel, dome.id);
            if (tunnel.wall_stays || !bearing)
                continue;
            // Its own walls reach out beside the opening and brace it up to the vault's crown.
            consider(tunnel.id,
                     std::max(tunnel.crown(),
                              braced_to(building, dome, {*bearing, tunnel.profile.half_span},
                                        beside->value)));
        }
        if (doorways == 0)
            continue;
        const Dome* written = find_dome(design, dome.id);
        Finding found = held_against(
            "buttress-at-opening", {"dome." + dome.id, written ? written->place : SourcePlace{}},
            least, FindingUnit::metre, Bound::at_least, *above, Verdict::advice);
        const double top = std::ceil((dome.springline + above->value) / dome.course_height - 1e-6) *
                           dome.course_height;
        if (found.verdict == Verdict::holds) {
            found.message = "Its doorways are braced on both sides up to " + wording.length(least) +
                            " above the springline (" + wording.length(above->value) +
                            " at least).";
        } else {
            found.message = "No pier braces both sides of " + bare + " up to " +
                            wording.length(above->value) + " above the springline.";
            const bool stand = least > -dome.springline; // piers, if too low
            const std::string others =
                bare.find(',') != std::string::npos ? "; the same for the others." : ".";
            found.remedy = stand ? "Raise the piers beside '" + first + "' to a height of " +
                                       wording.length_up(top) + others
                                 : "Add a [buttress.NAME] with on = \"" + dome.id +
                                       "\", beside = \"" + first +
                                       "\", width = " + wording.length(dome.width) +
                                       ", height = " + wording.length_up(top) +
                                       ", projection = " + wording.length_up(dome.width) + others;
            if (!stand)
                found.value = 0;
        }
        findings.push_back(std::move(found));
    }
    return findings;
}

} // namespace coilwright
