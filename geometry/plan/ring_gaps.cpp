#include "geometry/plan/ring_gaps.hpp"

#include "geometry/plan/heads.hpp"
#include "geometry/plan/path.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace coilwright {

namespace {

constexpr double beyond = 1000; // metres: out of any building

std::size_t at(int index) {
    return static_cast<std::size_t>(index);
}

/// Whether course n is a ring that stands plumb: one that leans in must not be broken by bonds.
bool plumb(const DomeForm& dome, int n) {
    return n <= dome.last_ring &&
           inside_radius(dome, dome.course_middle(n)) >= dome.profile.half_span - height_tie;
}

bool bonds(const DomeForm& dome, int n) {
    return n % 2 == 0 && plumb(dome, n);
}

class Collector {
public:
    Collector(const BuildingForm& building, const WallRelations& relations, int dome, int n,
              Bond bond)
        : building_(building), relations_(relations), index_(dome), dome_(building.domes[at(dome)]),
          n_(n), z_(dome_.course_middle(n)), as_laid_(bond == Bond::laid) {}

    std::vector<RingGap> collect() {
        for (const auto& [other, effect] : relations_.joins[at(index_)])
            add_join(building_.domes[at(other)], effect, other);
        if (as_laid_) {
            for (const int other : relations_.stopped_at[at(index_)])
                add_bonded(building_.domes[at(other)]);
            for (const int sleeve : relations_.dome_sleeves[at(index_)])
                add_sleeve(building_.sleeves[at(sleeve)]);
            for (const int pier : relations_.dome_piers[at(index_)])
                add_buttress(pier);
        }
        if (z_ > 0) {
            for (const int opening : relations_.dome_openings[at(index_)])
                add_opening(building_.openings[at(opening)]);
            for (const int tunnel : relations_.dome_tunnels[at(index_)])
                add_tunnel(building_.tunnels[at(tunnel)]);
        }
        std::sort(gaps_.begin(), gaps_.end(), [](const RingGap& a, const RingGap& b) {
            return std::tie(a.middle, a.by, a.band_side) < std::tie(b.middle, b.by, b.band_side);
        });
        return std::move(gaps_);
    }

private:
    const BuildingForm& building_;
    const WallRelations& relations_;
    int index_;
    const DomeForm& dome_;
    int n_;
    double z_;
    bool as_laid_;
    std::vector<RingGap> gaps_;

    void add_strip(const std::string& by, Bearing bearing, double half_width) {
        RingGap gap;
        gap.by = by;
        gap.middle = clockwise_degrees(dome_.datum, bearing);
        gap.half_width = half_width;
        gaps_.push_back(gap);
    }

    void add_opening(const OpeningForm& opening) {
        const double half = as_laid_                          ? laid_half_width(opening, dome_, n_)
                            : cuts_course(opening, dome_, n_) ? half_width(opening, z_)
                                                              : 0;
        if (half > 0)
            add_strip(opening.id, opening.bearing, half);
    }

    void add_sleeve(const SleeveForm& sleeve) {
        if (const double half = laid_half_width(sleeve, dome_, n_); half > 0)
            add_strip(sleeve.id, sleeve.bearing, half);
    }

    void add_tunnel(const TunnelForm& tunnel) {
        if (tunnel.wall_stays)
            return;
        if (!stops_ring(tunnel, z_))
            return;
        const double b = inner_half_width(tunnel, z_);
        const Bearing bearing = *bearing_from(tunnel, dome_.id);
        const bool stops = as_laid_ && tunnel_runs_in(tunnel, dome_, n_);
        add_strip(tunnel.id, bearing, stops ? outer_half_width(tunnel, z_) : b);
    }

    void add_buttress(int index) {
        const ButtressForm& pier = building_.buttresses[at(index)];
        if (z_ < pier.top - height_tie && pier_runs_in(building_, relations_, index, n_))
            add_strip(pier.id, pier.bearing, pier.half_width);
    }

    RingGap towards(const DomeForm& other, double radius) const {
        const Vec2 apart = other.at - dome_.at;
        RingGap gap;
        gap.by = other.id;
        gap.middle = clockwise_degrees(dome_.datum, to_bearing({std::atan2(apart.y(), apart.x())}));
        gap.disc_distance = apart.norm();
        gap.disc_radius = radius;
        return gap;
    }

    double centre_radius() const {
        return (inside_radius(dome_, z_) + outside_radius(dome_, z_)) / 2;
    }

    void add_join(const DomeForm& other, JoinEffect effect, int other_index) {
        if (z_ >= other.top() - height_tie)
            return;
        // In an open plan the two rings take turns in running through where their walls cross.
        const bool stops = effect == JoinEffect::stops_at_wall
                               ? !(as_laid_ && ring_runs_in(building_, dome_, other, n_))
                               : as_laid_ && (index_ < other_index) == (n_ % 2 == 0);
        const double radius = stops ? outside_radius(other, z_) : inside_radius(other, z_);
        if (radius <= 0)
            return;
        RingGap gap = towards(other, radius);
        const double r = centre_radius(), half = half_gap_degrees(gap, r);
        if (half <= 0)
            return;
        gap.half_width = r * std::sin(half * radians_per_degree);
        gaps_.push_back(gap);
    }

    /// The ring of another dome that is bonded into this one.
    void add_bonded(const DomeForm& other) {
        if (!ring_runs_in(building_, other, dome_, n_))
            return;
        for (const int side : {-1, 1}) {
            RingGap gap = towards(other, outside_radius(other, z_));
            gap.band_inside = inside_radius(other, z_);
            gap.band_side = side;
            const double r = centre_radius();
            const auto ends = gap_ends(gap, r);
            if (!ends)
                continue;
            gap.half_width = r * std::sin((ends->second - ends->first) / 2 * radians_per_degree);
            gaps_.push_back(gap);
        }
    }
};

/// Half-angle of a disc about a point at a distance on a circle about the pole.
double half_disc_degrees(double distance, double disc_radius, double radius) {
    if (distance >= radius + disc_radius || radius >= distance + disc_radius)
        return 0;
    if (disc_radius >= distance + radius)
        return 180;
    const double cosine = (radius * radius + distance * distance - disc_radius * disc_radius) /
                          (2 * radius * distance);
    return std::acos(std::clamp(cosine, -1.0, 1.0)) / radians_per_degree;
}

} // namespace

bool tunnel_runs_in(const TunnelForm& tunnel, const DomeForm& dome, int n) {
    return !tunnel.wall_stays && dome.course_middle(n) > 0 && bonds(dome, n);
}

bool pier_runs_in(const BuildingForm& building, const WallRelations& relations, int pier, int n) {
    const ButtressForm& form = building.buttresses[at(pier)];
    const int index = relations.pier_domes[at(pier)];
    if (index < 0 || form.reveal || !bonds(building.domes[at(index)], n))
        return false;
    const DomeForm& dome = building.domes[at(index)];
    const double z = dome.course_middle(n), r = inside_radius(dome, z);
    const auto& openings = relations.dome_openings[at(index)];
    return std::none_of(openings.begin(), openings.end(), [&](int i) {
        const OpeningForm& opening = building.openings[at(i)];
        const double taken = laid_half_width(opening, dome, n);
        const double turn = clockwise_degrees(opening.bearing, form.bearing);
        return taken > half_width(opening, z) &&
               std::min(turn, 360 - turn) < half_angle_degrees(std::min(taken, r), r) +
                                                half_angle_degrees(std::min(form.half_width, r), r);
    });
}

bool ring_runs_in(const BuildingForm& building, const DomeForm& stopped, const DomeForm& kept,
                  int n) {
    if (n % 2 != 0 || !plumb(stopped, n) || !plumb(kept, n) ||
        (stopped.at - kept.at).norm() >= stopped.profile.half_span + kept.profile.half_span)
        return false;
    return std::any_of(building.joins.begin(), building.joins.end(), [&](const JoinForm& join) {
        return join.bonded && join.keep == kept.id &&
               (join.first == stopped.id || join.second == stopped.id);
    });
}

double half_gap_degrees(const RingGap& gap, double radius) {
    if (gap.kind() == GapKind::strip)
        return gap.half_width >= radius ? 90 : half_angle_degrees(gap.half_width, radius);
    return half_disc_degrees(gap.disc_distance, gap.disc_radius, radius);
}

std::optional<std::pair<double, double>> gap_ends(const RingGap& gap, double radius) {
    const double half = half_gap_degrees(gap, radius);
    if (half <= 0)
        return std::nullopt;
    if (gap.kind() != GapKind::band)
        return std::pair{gap.middle - half, gap.middle + half};
    const double inner = half_disc_degrees(gap.disc_distance, gap.band_inside, radius);
    if (inner >= half)
        return std::nullopt;
    return gap.band_side > 0 ? std::pair{gap.middle + inner, gap.middle + half}
                             : std::pair{gap.middle - half, gap.middle - inner};
}

std::vector<RingGap> gaps_in_ring(const BuildingForm& building, const WallRelations& relations,
                                  int dome, int n, Bond bond) {
    return Collector(building, relations, dome, n, bond).collect();
}

std::vector<RingGap> gaps_in_ring(const BuildingForm& building, const DomeForm& dome, int n,
                                  Bond bond) {
    for (std::size_t i = 0; i < building.domes.size(); ++i)
        if (building.domes[i].id == dome.id)
            return gaps_in_ring(building, make_relations(building), static_cast<int>(i), n, bond);
    return {};
}

std::vector<KeptArc> kept_arcs(const std::vector<RingGap>& gaps, double radius) {
    std::vector<Shape> taken;
    for (const RingGap& gap : gaps) {
        double middle = gap.middle, half_width = gap.half_width;
        if (gap.kind() == GapKind::disc) {
            taken.emplace_back(Disc{gap.disc_distance * along({middle}), gap.disc_radius});
            continue;
        }
        if (gap.kind() == GapKind::band) { // the strip that takes as much of this circle
            const auto ends = gap_ends(gap, radius);
            middle = ends ? (ends->first + ends->second) / 2 : 0;
            half_width =
                ends ? radius * std::sin((ends->second - ends->first) / 2 * radians_per_degree) : 0;
        }
        taken.emplace_back(Box{Vec2::Zero(), along({middle}), 0, beyond, -half_width, half_width});
    }
    std::vector<KeptArc> arcs;
    for (const Interval& kept : kept_intervals(CirclePath{Vec2::Zero(), radius, {0}}, taken)) {
        const auto gap = [&](const PathEnd& end) {
            return end.shape < 0 ? nullptr : &gaps[at(end.shape)];
        };
        arcs.push_back({kept.start.at, kept.end.at, gap(kept.start), gap(kept.end)});
    }
    return arcs;
}

} // namespace coilwright
