#include "geometry/plan/tunnel_headroom.hpp"

#include "geometry/plan/headroom.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace coilwright {

double clear_height_at(const TunnelForm& form, double inside_plaster, double across) {
    const double d = std::abs(across);
    if (d >= form.profile.half_span - inside_plaster)
        return 0;
    return std::max(0.0, form.springline + offset_height_at(form.profile, inside_plaster, d));
}

double clear_width_at(const TunnelForm& form, double inside_plaster, double height) {
    const double half =
        height <= 0 ? form.profile.half_span - inside_plaster
                    : offset_half_width(form.profile, inside_plaster, height - form.springline);
    return 2 * std::max(0.0, half);
}

namespace {

/// Where a dome's room ends at a height, as the tunnel meets it.
double room_radius(const TunnelForm& form, const DomeForm& dome, double inside_plaster,
                   double height) {
    const bool stays = form.wall_stays && dome.id == form.from;
    return stays ? outside_radius(dome, 0) : clear_radius_at(dome, inside_plaster, height);
}

/// What a disc about the pole takes of a strip from there: the integral of sqrt(r^2 - y^2) over |y|
/// < half.
double taken_by_disc(double r, double half) {
    const double y = std::min(r, half);
    return y <= 0 ? 0 : y * std::sqrt(std::max(0.0, r * r - y * y)) + r * r * std::asin(y / r);
}

double end_of(const TunnelForm& form, double inside_plaster) {
    return form.end_wall ? form.reach - form.width - inside_plaster : form.reach;
}

} // namespace

double floor_area_at(const BuildingForm& building, const TunnelForm& form, double inside_plaster,
                     double height) {
    const double half = clear_width_at(form, inside_plaster, height) / 2;
    double area = 2 * half * end_of(form, inside_plaster);
    for (const std::string& id : {form.from, form.to})
        if (const DomeForm* dome = find_dome(building, id))
            area -= taken_by_disc(room_radius(form, *dome, inside_plaster, height), half);
    return std::max(0.0, area);
}

std::vector<TunnelHeadroom> tunnel_headroom(const Design& design, const Schedule& schedule) {
    constexpr double shown[] = {7 * metres_per_foot, 80 * metres_per_inch, 5 * metres_per_foot};
    const double plaster = design.finish.inside_plaster;
    std::vector<TunnelHeadroom> tunnels;
    for (const TunnelForm& form : schedule.building.tunnels) {
        TunnelHeadroom room;
        room.tunnel = form.id;
        room.at_middle = clear_height_at(form, plaster, 0);
        room.width = clear_width_at(form, plaster, 0);
        room.length = end_of(form, plaster);
        for (const std::string& id : {form.from, form.to})
            if (const DomeForm* dome = find_dome(schedule.building, id))
                room.length -= room_radius(form, *dome, plaster, 0);
        room.floor_area = floor_area_at(schedule.building, form, plaster, 0);
        for (const double height : shown)
            room.rows.push_back({height, clear_width_at(form, plaster, height),
                                 floor_area_at(schedule.building, form, plaster, height)});
        tunnels.push_back(std::move(room));
    }
    return tunnels;
}

namespace {

/// What holds where a design does not bring the limits of the reader.
const Limit code_width{32 * metres_per_inch, "m",      "International Residential Code",
                       "2018 and 2021",      "R311.2", Standing::read};
const Limit code_height{78 * metres_per_inch, "m",      "International Residential Code",
                        "2018 and 2021",      "R311.2", Standing::read};

/// Clear height above the sill of an upright rectangle of that width in an opening, after
/// plaster and frame.
double clear_height_over(double width, const OpeningPlan& opening) {
    const OpeningForm& form = opening.form;
    const double lost = opening.frame_inset + opening.frame_width, half = width / 2;
    if (form.half_width - lost < half - height_tie)
        return 0;
    // A hair inside a side that is just wide enough.
    const double across = std::min(half, form.half_width - lost - 2 * height_tie);
    const double top =
        form.head ? form.springing + offset_height_at(*form.head, lost, across) : form.top - lost;
    return std::max(0.0, top - form.sill);
}

/// Domes of one building: those that tunnels and joins connect, by one number each.
std::vector<int> buildings_of(const BuildingForm& building) {
    std::vector<int> group(building.domes.size());
    std::iota(group.begin(), group.end(), 0);
    const auto connect = [&](const std::string& one, const std::string& other) {
        const DomeForm *a = find_dome(building, one), *b = find_dome(building, other);
        if (!a || !b)
            return;
        const int from = group[static_cast<std::size_t>(a - building.domes.data())];
        const int to = group[static_cast<std::size_t>(b - building.domes.data())];
        std::replace(group.begin(), group.end(), from, to);
    };
    for (const JoinForm& join : building.joins)
        connect(join.first, join.second);
    for (const TunnelForm& tunnel : building.tunnels)
        connect(tunnel.from, tunnel.to);
    return group;
}

class EgressCheck {
public:
    EgressCheck(const Design& design, const Schedule& schedule)
        : design_(design), schedule_(schedule), building_(schedule.building),
          group_(buildings_of(schedule.building)),
          width_(limit("egress-door.clear_width", code_width)),
          height_(limit("egress-door.clear_height", code_height)) {}

    std::vector<Finding> run() const {
        std::vector<Finding> findings;
        for (const TunnelForm& tunnel : building_.tunnels)
            if (tunnel.to.empty() && lived_in(group_of(tunnel.from)) && leads_out(tunnel))
                findings.push_back(judge(tunnel));
        return findings;
    }

private:
    const Design& design_;
    const Schedule& schedule_;
    const BuildingForm& building_;
    std::vector<int> group_;
    Limit width_, height_;

    Limit limit(const std::string& name, const Limit& otherwise) const {
        const Limit* set = find_limit(design_.limits, name);
        return set ? *set : otherwise;
    }

    std::string length(double metres) const { return length_text(metres, design_.unit); }

    int group_of(const std::string& dome) const {
        const DomeForm* form = find_dome(building_, dome);
        return form ? group_[static_cast<std::size_t>(form - building_.domes.data())] : -1;
    }
    bool lived_in(int group) const {
        for (std::size_t i = 0; i < group_.size(); ++i)
            if (const Use use = building_.domes[i].use;
                group_[i] == group && (use == Use::habitable || use == Use::tiny_house))
                return true;
        return false;
    }
    /// The best door of an end wall; none in an open end.
    double door_height(const TunnelForm& tunnel) const {
        double best = -1;
        for (const OpeningPlan& opening : schedule_.openings)
            if (opening.form.in == tunnel.id && opening.form.side == TunnelSide::end &&
                opening.form.use == OpeningUse::door)
                best = std::max(best, clear_height_over(width_.value, opening));
        return best;
    }
    bool leads_out(const TunnelForm& tunnel) const {
        return !tunnel.end_wall || door_height(tunnel) >= 0;
    }
    double vault_height(const TunnelForm& tunnel) const {
        return clear_height_at(tunnel, design_.finish.inside_plaster,
                               width_.value / 2 - height_tie);
    }
    double height_of(const TunnelForm& tunnel) const {
        const double vault = vault_height(tunnel);
        return tunnel.end_wall ? std::min(vault, door_height(tunnel)) : vault;
    }
    /// Whether a door elsewhere serves: in a wall that leads into the open, or at another tunnel's
    /// end.
    bool another_serves(const TunnelForm& tunnel) const {
        const int group = group_of(tunnel.from);
        for (const TunnelForm& other : building_.tunnels)
            if (other.id != tunnel.id && other.to.empty() && group_of(other.from) == group &&
                leads_out(other) && height_of(other) >= height_.value - height_tie)
                return true;
        return std::any_of(
            schedule_.openings.begin(), schedule_.openings.end(), [&](const OpeningPlan& opening) {
                return opening.form.use == OpeningUse::door && group_of(opening.form.in) == group &&
                       !leads_into_joined(opening.form) &&
                       clear_height_over(width_.value, opening) >= height_.value - height_tie;
            });
    }
    /// A doorway between two joined domes is no way out.
    bool leads_into_joined(const OpeningForm& form) const {
        return std::any_of(
            building_.joins.begin(), building_.joins.end(), [&](const JoinForm& join) {
                if (join.first != form.in && join.second != form.in)
                    return false;
                const DomeForm* other =
                    find_dome(building_, join.first == form.in ? join.second : join.first);
                const DomeForm* own = find_dome(building_, form.in);
                return other && own &&
                       (form.origin + outside_radius(*own, 0) * form.axis - other->at).norm() <
                           outside_radius(*other, 0);
            });
    }

    Finding judge(const TunnelForm& tunnel) const {
        const double vault = vault_height(tunnel), have = height_of(tunnel);
        Finding finding;
        finding.code = "tunnel-egress";
        finding.subject = "tunnel." + tunnel.id;
        finding.place = find_tunnel(design_, tunnel.id)->place;
        finding.value = have;
        finding.limit = height_.value;
        finding.unit = FindingUnit::metre;
        finding.source = source_text(height_);
        const bool by_door = have < vault;
        finding.message = "Who leaves by the tunnel '" + tunnel.id + "' has " + length(have) +
                          " clear height over a width of " + length(width_.value) +
                          (by_door ? " in the door at its end" : " in its vault") +
                          "; an egress door asks for " + length(height_.value) + ".";
        if (have >= height_.value - height_tie) {
            finding.verdict = Verdict::holds;
            return finding;
        }
        const bool other = another_serves(tunnel);
        finding.verdict = other ? Verdict::advice : Verdict::fails;
        if (other)
            finding.message += " Another way out serves as the egress.";
        finding.remedy = remedy(tunnel, vault, by_door);
        return finding;
    }

    /// Whole courses on the springline, or a width, by which the vault serves.
    std::string remedy(const TunnelForm& tunnel, double vault, bool by_door) const {
        std::string text;
        const double t = tunnel.course_height;
        if (vault <= 0)
            text = "Widen the tunnel to " +
                   length(width_.value + 2 * design_.finish.inside_plaster + 2 * t) +
                   " or over, and check again.";
        else if (vault < height_.value - height_tie)
            text = "Raise the tunnel's springline to " +
                   length(tunnel.springline + std::ceil((height_.value - vault) / t - 1e-9) * t) +
                   ".";
        if (by_door)
            text += std::string(text.empty() ? "" : " ") +
                    "Make the door at its end wider and higher, so that " + length(width_.value) +
                    " by " + length(height_.value) + " is clear of plaster, frame and head.";
        return text;
    }
};

} // namespace

std::vector<Finding> egress_findings(const Design& design, const Schedule& schedule) {
    return EgressCheck(design, schedule).run();
}

} // namespace coilwright
