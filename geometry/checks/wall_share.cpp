#include "geometry/checks/wall_share.hpp"

#include <algorithm>

namespace coilwright {

namespace {

bool is_sleeve(const BuildingForm& building, const std::string& id) {
    return std::any_of(building.sleeves.begin(), building.sleeves.end(),
                       [&](const SleeveForm& sleeve) { return sleeve.id == id; });
}

bool is_dome(const BuildingForm& building, const std::string& id) {
    return find_dome(building, id) != nullptr;
}

double centre_radius(const DomeForm& dome, int n) {
    return inside_radius(dome, dome.course_middle(n)) + dome.width / 2;
}

std::vector<RingGap> voids_of(const BuildingForm& building, const WallRelations& relations,
                              int dome, int n) {
    std::vector<RingGap> gaps = gaps_in_ring(building, relations, dome, n, Bond::wall);
    gaps.erase(std::remove_if(gaps.begin(), gaps.end(),
                              [&](const RingGap& gap) { return is_sleeve(building, gap.by); }),
               gaps.end());
    return gaps;
}

double kept_share(const std::vector<RingGap>& gaps, double radius) {
    double degrees = 0;
    for (const KeptArc& arc : kept_arcs(gaps, radius))
        degrees += arc.end - arc.start;
    return degrees / 360;
}

} // namespace

OpenCourse most_open_course(const BuildingForm& building, const WallRelations& relations, int dome,
                            double narrower) {
    const DomeForm& form = building.domes[static_cast<std::size_t>(dome)];
    OpenCourse worst;
    for (int n = form.foundation + 1; n <= form.last_ring; ++n) {
        std::vector<RingGap> gaps = voids_of(building, relations, dome, n), joins;
        // A ring that stops at a wall which stays is held there.
        gaps.erase(std::remove_if(gaps.begin(), gaps.end(),
                                  [&](const RingGap& gap) {
                                      return is_dome(building, gap.by) &&
                                             join_effect(building, form.id, gap.by) !=
                                                 JoinEffect::opens_to_room;
                                  }),
                   gaps.end());
        for (RingGap& gap : gaps) {
            if (gap.kind() == GapKind::strip)
                gap.half_width *= narrower;
            else
                joins.push_back(gap);
        }
        const double radius = centre_radius(form, n);
        const double share = gaps.empty() ? 0 : 1 - kept_share(gaps, radius);
        if (share > worst.share + 1e-12)
            worst = {n, share, joins.empty() ? 0 : 1 - kept_share(joins, radius)};
    }
    return worst;
}

Pier narrowest_pier(const BuildingForm& building, const WallRelations& relations, int dome) {
    const DomeForm& form = building.domes[static_cast<std::size_t>(dome)];
    Pier least;
    for (int n = form.foundation + 1; n <= form.last_ring; ++n) {
        const std::vector<RingGap> gaps = voids_of(building, relations, dome, n);
        const double radius = centre_radius(form, n);
        for (const KeptArc& arc : kept_arcs(gaps, radius)) {
            if (!arc.starts_at || !arc.ends_at || arc.starts_at->by == arc.ends_at->by ||
                arc.starts_at->kind() != GapKind::strip || arc.ends_at->kind() != GapKind::strip)
                continue;
            const double length = (arc.end - arc.start) * pi / 180 * radius;
            if (least.course == 0 || length < least.length)
                least = {n, length, radius, arc.starts_at->by, arc.ends_at->by};
        }
    }
    return least;
}

} // namespace coilwright
