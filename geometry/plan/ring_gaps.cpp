#include "geometry/plan/ring_gaps.hpp"

#include "geometry/plan/heads.hpp"
#include "geometry/plan/path.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

/// Even courses above the floor, unless they lean in: then the ring must not be broken by bonds.
bool bonds(const DomeForm& dome, int n) {
    const double z = dome.course_middle(n);
    return n % 2 == 0 && z > 0 && n <= dome.last_ring &&
           inside_radius(dome, z) >= dome.profile.half_span - height_tie;
}

class Collector {
public:
    Collector(const BuildingForm& building, const DomeForm& dome, int n, Bond bond)
        : building_(building), dome_(dome), n_(n), z_(dome.course_middle(n)),
          as_laid_(bond == Bond::laid) {}

    std::vector<RingGap> collect() {
        for (const DomeForm& other : building_.domes)
            add_join(other);
        if (z_ > 0) {
            for (const OpeningForm& opening : building_.openings)
                add_opening(opening);
            for (const TunnelForm& tunnel : building_.tunnels)
                add_tunnel(tunnel);
            for (const ButtressForm& pier : building_.buttresses)
                add_buttress(pier);
        }
        std::sort(gaps_.begin(), gaps_.end(), [](const RingGap& a, const RingGap& b) {
            return a.middle != b.middle ? a.middle < b.middle : a.by < b.by;
        });
        return std::move(gaps_);
    }

private:
    const BuildingForm& building_;
    const DomeForm& dome_;
    int n_;
    double z_;
    bool as_laid_;
    std::vector<RingGap> gaps_;

    void add_strip(const std::string& by, Bearing bearing, double half_width) {
        gaps_.push_back({by, clockwise_degrees(dome_.datum, bearing), half_width, 0, 0});
    }

    void add_opening(const OpeningForm& opening) {
        if (opening.in != dome_.id)
            return;
        const double half = as_laid_ ? laid_half_width(opening, dome_, n_)
                            : cuts_course(opening, dome_, n_) ? half_width(opening, z_)
                                                              : 0;
        if (half > 0)
            add_strip(opening.id, opening.bearing, half);
    }

    void add_tunnel(const TunnelForm& tunnel) {
        if ((tunnel.from != dome_.id && tunnel.to != dome_.id) || tunnel.wall_stays)
            return;
        const double b = inner_half_width(tunnel, z_);
        if (2 * b < dome_.course_height - height_tie) // the ring runs on over the vault's form
            return;
        const Bearing bearing =
            tunnel.from == dome_.id ? tunnel.bearing : turned(tunnel.bearing, 180);
        const bool stops = as_laid_ && tunnel_runs_in(tunnel, dome_, n_);
        add_strip(tunnel.id, bearing, stops ? outer_half_width(tunnel, z_) : b);
    }

    void add_buttress(const ButtressForm& pier) {
        if (pier.dome != dome_.id || !as_laid_ || z_ >= pier.top - height_tie ||
            !pier_runs_in(building_, pier, dome_, n_))
            return;
        add_strip(pier.id, pier.bearing, pier.half_width);
    }

    void add_join(const DomeForm& other) {
        if (&other == &dome_ || z_ >= other.top() - height_tie)
            return;
        const JoinEffect effect = join_effect(building_, dome_.id, other.id);
        const double radius = effect == JoinEffect::stops_at_wall   ? outside_radius(other, z_)
                              : effect == JoinEffect::opens_to_room ? inside_radius(other, z_)
                                                                    : 0;
        if (radius <= 0)
            return;
        const Vec2 apart = other.at - dome_.at;
        RingGap gap;
        gap.by = other.id;
        gap.middle =
            clockwise_degrees(dome_.datum, to_bearing({std::atan2(apart.y(), apart.x())}));
        gap.disc_distance = apart.norm();
        gap.disc_radius = radius;
        const double r =
            (inside_radius(dome_, z_) + outside_radius(dome_, z_)) / 2; // the centreline
        const double half = half_gap_degrees(gap, r);
        if (half <= 0)
            return;
        gap.half_width = r * std::sin(half * radians_per_degree);
        gaps_.push_back(gap);
    }
};

} // namespace

bool tunnel_runs_in(const TunnelForm& tunnel, const DomeForm& dome, int n) {
    return !tunnel.wall_stays && bonds(dome, n);
}

bool pier_runs_in(const BuildingForm& building, const ButtressForm& pier, const DomeForm& dome,
                  int n) {
    if (!bonds(dome, n))
        return false;
    const double r = inside_radius(dome, dome.course_middle(n));
    return std::none_of(
        building.openings.begin(), building.openings.end(), [&](const OpeningForm& opening) {
            if (opening.in != dome.id)
                return false;
            const double taken = laid_half_width(opening, dome, n);
            const double turn = clockwise_degrees(opening.bearing, pier.bearing);
            return taken > half_width(opening, dome.course_middle(n)) &&
                   std::min(turn, 360 - turn) < half_angle_degrees(std::min(taken, r), r) +
                                                    half_angle_degrees(std::min(pier.half_width, r), r);
        });
}

double half_gap_degrees(const RingGap& gap, double radius) {
    if (gap.disc_distance == 0)
        return gap.half_width >= radius ? 90 : half_angle_degrees(gap.half_width, radius);
    const double d = gap.disc_distance;
    if (d >= radius + gap.disc_radius || radius >= d + gap.disc_radius)
        return 0;
    if (gap.disc_radius >= d + radius)
        return 180;
    const double cosine =
        (radius * radius + d * d - gap.disc_radius * gap.disc_radius) / (2 * radius * d);
    return std::acos(std::clamp(cosine, -1.0, 1.0)) / radians_per_degree;
}

std::vector<RingGap> gaps_in_ring(const BuildingForm& building, const DomeForm& dome, int n,
                                  Bond bond) {
    return Collector(building, dome, n, bond).collect();
}

std::vector<KeptArc> kept_arcs(const std::vector<RingGap>& gaps, double radius) {
    constexpr double beyond = 1000; // metres: a strip runs out of the building
    std::vector<Shape> taken;
    for (const RingGap& gap : gaps) {
        const Vec2 axis = along({gap.middle});
        if (gap.disc_distance > 0)
            taken.emplace_back(Disc{gap.disc_distance * axis, gap.disc_radius});
        else
            taken.emplace_back(Box{Vec2::Zero(), axis, 0, beyond, -gap.half_width, gap.half_width});
    }
    std::vector<KeptArc> arcs;
    for (const Interval& kept : kept_intervals(CirclePath{Vec2::Zero(), radius, {0}}, taken)) {
        const auto gap = [&](const PathEnd& end) {
            return end.shape < 0 ? nullptr : &gaps[static_cast<std::size_t>(end.shape)];
        };
        arcs.push_back({kept.start.at, kept.end.at, gap(kept.start), gap(kept.end)});
    }
    return arcs;
}

} // namespace coilwright
