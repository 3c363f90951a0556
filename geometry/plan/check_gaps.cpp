#include "geometry/plan/heads.hpp"
#include "geometry/plan/layout_faults.hpp"
#include "geometry/plan/ring_gaps.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <optional>

namespace coilwright {

namespace {

/// What takes a part of a dome's ring: its half-angle on a circle of a radius at a height.
struct Taker {
    std::string id;
    double bearing = 0;
    double low = 0, top = 0;
    std::function<double(double z, double radius)> half_degrees;
    // Of an opening's hole alone: its lintel or fan may lie before a pier.
    std::function<double(double z, double radius)> hole_half_degrees;
    const Opening* opening = nullptr;  // what a person would move
    double fan_depth = 0;              // of its head
    double gap = 0;                    // wall that must stay between it and an opening
    double at_radius = 0;              // where the gap is measured; 0: on the inside face
    const TunnelForm* porch = nullptr; // a tunnel that the dome's wall stays in: it takes nothing,
                                       // but an opening must lead wholly into it or pass it by
    bool is_void = false;              // it opens the wall, as openings do
    bool is_tunnel = false;
    std::string reveal_of; // of a reveal: its opening
    std::string subject;   // of what is no opening: "tunnel.porch"
    SourcePlace place;
};

/// Two takers against each other, as they stand and wherever they may be turned.
struct Nearness {
    double least = 0;   // wall that must stay between them
    double between = 0; // degrees between their bearings, at most 180
    double gap = 0;     // wall between them where it is least, negative: they overlap...
    double at = 0;      // ...and at which height
    bool stacked = false;
    double apart = 0;  // stacked: height between the head of one and the sill of the other
    double needed = 0; // degrees between their bearings that would leave enough wall
    bool too_near() const { return gap < least - height_tie; }
};

/// What takes the wall of one dome, two by two.
class GapCheck {
public:
    GapCheck(const BuildingForm& building, const DomeForm& dome, LayoutFaults& faults)
        : building_(building), dome_(dome), faults_(faults) {}

    void run(const std::vector<OpeningForm>& openings) {
        for (const OpeningForm& form : openings)
            takers_.push_back(taker(form));
        add_other_takers();
        for (std::size_t i = openings.size(); i < takers_.size(); ++i)
            for (std::size_t j = i + 1; j < takers_.size(); ++j)
                check_sliver(takers_[i], takers_[j]);
        for (std::size_t i = 0; i < openings.size(); ++i)
            for (std::size_t j = i + 1; j < takers_.size(); ++j)
                if (const Nearness near = nearness(takers_[i], takers_[j]); near.too_near()) {
                    if (takers_[j].porch && leads_into(openings[i], *takers_[j].porch))
                        continue;
                    if (near.stacked)
                        report_above(i, j, near);
                    else
                        report_beside(i, j, near);
                }
    }

private:
    const BuildingForm& building_;
    const DomeForm& dome_;
    LayoutFaults& faults_;
    std::vector<Taker> takers_;                   // openings first
    std::map<std::size_t, std::string> examples_; // where an opening could be turned to

    std::string length(double metres) const { return faults_.length(metres); }

    Taker taker(const OpeningForm& form) const {
        const DomeForm& dome = dome_;
        Taker result;
        result.id = form.id;
        result.bearing = form.bearing.degrees;
        result.low = form.sill;
        result.top = taken_top(form, dome);
        result.half_degrees = [form, band = lintel_band(form, dome)](double z, double radius) {
            return half_angle_degrees(std::min(taken_half_width(form, band, z), radius), radius);
        };
        result.hole_half_degrees = [form](double z, double radius) {
            return half_angle_degrees(std::min(half_width(form, z), radius), radius);
        };
        result.opening = find_opening(faults_.design(), form.id);
        result.fan_depth = form.fan_depth;
        result.gap = dome.width;
        return result;
    }

    void add_other_takers() {
        const DomeForm& dome = dome_;
        for (const TunnelForm& tunnel : building_.tunnels) {
            const std::optional<Bearing> bearing = bearing_from(tunnel, dome.id);
            if (!bearing)
                continue;
            Taker result;
            result.id = tunnel.id;
            result.bearing = bearing->degrees;
            result.top = tunnel.top();
            result.half_degrees = [tunnel](double z, double radius) {
                return half_angle_degrees(std::min(outer_half_width(tunnel, z), radius), radius);
            };
            result.gap = dome.width;
            if (tunnel.wall_stays && tunnel.from == dome.id)
                result.porch = &tunnel;
            result.is_void = !tunnel.wall_stays;
            result.is_tunnel = true;
            result.subject = "tunnel." + tunnel.id;
            result.place = find_tunnel(faults_.design(), tunnel.id)->place;
            takers_.push_back(result);
        }
        for (const ButtressForm& pier : building_.buttresses) {
            if (pier.dome != dome.id)
                continue;
            Taker result;
            result.id = pier.id;
            result.bearing = pier.bearing.degrees;
            result.top = pier.top;
            if (pier.reveal) {
                add_reveal(pier);
                continue;
            }
            // Measured at its near corner on the base ring, as it is placed beside an opening;
            // above it the opening cuts what leans into it.
            const double base = dome.profile.half_span;
            result.at_radius = std::hypot(base, pier.half_width);
            result.half_degrees = [pier, base](double, double) {
                return std::atan(pier.half_width / base) / radians_per_degree;
            };
            takers_.push_back(result);
        }
        for (const Join& join : faults_.design().joins) {
            if (join.first != dome.id && join.second != dome.id)
                continue;
            const DomeForm* other =
                find_dome(building_, join.first == dome.id ? join.second : join.first);
            if (!other)
                continue;
            if (join.keep == dome.id)
                add_stopped_ring(*other);
            else
                add_joined(*other, join);
        }
    }

    /// A reveal's body leans on the ring: another opening's hole stays clear of it, its own does
    /// not.
    void add_reveal(const ButtressForm& pier) {
        Taker result;
        result.id = pier.id;
        result.reveal_of = pier.reveal->opening.id;
        result.bearing = pier.bearing.degrees;
        result.low = pier.bottom;
        result.top = pier.top;
        result.half_degrees = [pier](double z, double radius) {
            return half_angle_degrees(std::min(pier_half_width(pier, z), radius), radius);
        };
        takers_.push_back(result);
    }

    /// Another dome whose wall or room takes the place of this one's wall.
    void add_joined(const DomeForm& other, const Join& join) {
        Taker result;
        result.id = other.id;
        const Vec2 apart = other.at - dome_.at;
        result.bearing = to_bearing({std::atan2(apart.y(), apart.x())}).degrees;
        result.top = other.top();
        const bool stops = join.keep == other.id;
        result.half_degrees = [other, apart, stops](double z, double radius) {
            RingGap gap;
            gap.disc_distance = apart.norm();
            gap.disc_radius = stops ? outside_radius(other, z) : inside_radius(other, z);
            return gap.disc_radius > 0 ? half_gap_degrees(gap, radius) : 0;
        };
        result.gap = dome_.width;
        result.is_void = true;
        result.subject = "join." + join.id;
        result.place = join.place;
        takers_.push_back(result);
    }

    /// The two places where another dome's ring stands against this one's wall: solid wall, as a
    /// pier.
    void add_stopped_ring(const DomeForm& other) {
        const Vec2 apart = other.at - dome_.at;
        const double line = to_bearing({std::atan2(apart.y(), apart.x())}).degrees;
        for (const int side : {-1, 1}) {
            const auto ends = [other, apart, side](double z, double radius) {
                RingGap gap;
                gap.disc_distance = apart.norm();
                gap.disc_radius = outside_radius(other, z);
                gap.band_inside = inside_radius(other, z);
                gap.band_side = side;
                return gap.disc_radius > 0 ? gap_ends(gap, radius) : std::nullopt;
            };
            const auto at_floor = ends(0, dome_.profile.half_span);
            const double off = at_floor ? (at_floor->first + at_floor->second) / 2 : 0;
            Taker result;
            result.id = other.id;
            result.bearing = line + off;
            result.top = other.top();
            result.half_degrees = [ends, off](double z, double radius) {
                const auto at = ends(z, radius);
                return at ? std::max(std::abs(at->first - off), std::abs(at->second - off)) : 0;
            };
            takers_.push_back(result);
        }
    }

    /// Whether an opening looks wholly into a tunnel that starts at the wall's outside face.
    bool leads_into(const OpeningForm& opening, const TunnelForm& tunnel) const {
        const double turn = clockwise_degrees(tunnel.bearing, opening.bearing) * radians_per_degree;
        if (std::cos(turn) <= 0)
            return false;
        for (double z = opening.sill; z < opening.top; z += dome_.course_height / 4) {
            const double a = half_width(opening, z), r = outside_radius(dome_, z);
            if (a >= r)
                return false;
            const double across = std::abs(std::sqrt(r * r - a * a) * std::sin(turn));
            if (across + a * std::cos(turn) > inner_half_width(tunnel, z) + height_tie)
                return false;
        }
        return true;
    }

    /// Two tunnels or joined domes: no overlap, and no wall thinner than half a tube between them.
    /// Two joined domes may overlap, being joined to each other too.
    void check_sliver(const Taker& a, const Taker& b) {
        if (!(a.is_void || a.is_tunnel) || !(b.is_void || b.is_tunnel))
            return;
        const Nearness near = nearness(a, b);
        const double least = dome_.width / 2;
        if (near.stacked || near.gap >= least - height_tie)
            return;
        const bool overlap = near.gap <= height_tie;
        const bool tunnels = a.is_tunnel || b.is_tunnel;
        if (overlap && !tunnels)
            return;
        Diagnostic& found = faults_.add(
            overlap ? "elements-meet" : "wall-sliver", b.place, b.subject,
            overlap ? "'" + b.id + "' runs into '" + a.id + "' at " + length(near.at) +
                          " above the floor."
                    : "Between '" + a.id + "' and '" + b.id + "' only " + length(near.gap) +
                          " of the wall of '" + dome_.id + "' is left.");
        found.allowed = "at least half a tamped tube (" + length(least) + ") of wall between them";
        found.example = "turn its bearing, or move the dome";
    }

    /// Of what two of them take of the ring, either of any kind.
    Nearness nearness(const Taker& a, const Taker& b) const {
        Nearness near;
        if (b.reveal_of == a.id) {
            near.gap = 2 * pi * dome_.profile.half_span;
            return near;
        }
        near.least = std::min(a.gap, b.gap);
        const double turn = clockwise_degrees({a.bearing}, {b.bearing});
        near.between = std::min(turn, 360 - turn);
        near.gap = 2 * pi * dome_.profile.half_span;
        const double low = std::max(a.low, b.low), high = std::min(a.top, b.top);
        near.stacked = low >= high;
        near.apart = low - high;
        if (near.apart >= near.least - height_tie) // one stands a tube width above the other
            return near;
        const bool by_pier = b.at_radius > 0 && a.hole_half_degrees;
        const auto compare = [&](double z, double z_a, double z_b) {
            const double r = b.at_radius > 0 ? b.at_radius : inside_radius(dome_, z);
            const double half_a = by_pier ? a.hole_half_degrees(z_a, r) : a.half_degrees(z_a, r);
            const double half_b = b.half_degrees(z_b, r);
            if (half_a <= 0 || half_b <= 0)
                return;
            const double metres_per_degree = r * radians_per_degree;
            near.needed = std::max(near.needed, half_a + half_b + near.least / metres_per_degree);
            const double gap = metres_per_degree * (near.between - half_a - half_b);
            if (gap < near.gap) {
                near.gap = gap;
                near.at = z;
            }
        };
        if (!near.stacked) {
            const double step = std::min(dome_.course_height / 4, (high - low) / 4);
            for (double z = low; z < high; z += step)
                compare(z, z, z);
        } else { // the head of one against the sill of the other
            const bool a_above = a.low > b.low;
            // A round head or a circle is still wide a little within its top or its foot.
            const double above = (a_above ? a.low : b.low) + 0.05;
            const double below = (a_above ? b.top : a.top) - 0.05;
            compare(above, a_above ? above : below, a_above ? below : above);
        }
        return near;
    }

    /// An opening as it would take the wall with other measures; none where it has no place in it.
    std::optional<Taker> tried(const Taker& moved, const OtherMeasures& measures) const {
        Opening trial = *moved.opening;
        trial.sill = measures.sill.value_or(trial.sill);
        trial.width = measures.width.value_or(trial.width);
        OpeningForm form = make_opening_form(trial);
        form.fan_depth = moved.fan_depth;
        if (place_in_wall(form, dome_).misfit != Misfit::none)
            return std::nullopt;
        return taker(form);
    }

    /// The whole degree nearest to its bearing at which a taker is clear of all but `moved`, whose
    /// place it is to take; none where the ring has no place left for it.
    std::optional<double> free_bearing(const Taker& trial, std::size_t moved) const {
        struct Kept {
            double bearing, needed;
        };
        std::vector<Kept> kept;
        for (std::size_t other = 0; other < takers_.size(); ++other)
            if (other != moved)
                kept.push_back({takers_[other].bearing, nearness(trial, takers_[other]).needed});
        const auto is_free = [&](double bearing) {
            return std::all_of(kept.begin(), kept.end(), [&](const Kept& one) {
                const double turn = clockwise_degrees({one.bearing}, {bearing});
                return std::min(turn, 360 - turn) >= one.needed;
            });
        };
        for (int turn = 0; turn <= 180; ++turn)
            for (const double bearing :
                 {std::ceil(trial.bearing) + turn, std::floor(trial.bearing) - turn})
                if (is_free(bearing))
                    return turned_into_circle(bearing);
        return std::nullopt;
    }

    /// The first joint a tube's width above what stands below, if there it is clear of all others.
    std::optional<double> higher_sill(std::size_t moved, const Taker& lower, double least) const {
        const double t = dome_.course_height;
        OtherMeasures measures;
        measures.sill = std::ceil((lower.top + least) / t - 1e-9) * t;
        const std::optional<Taker> trial = tried(takers_[moved], measures);
        if (!trial)
            return std::nullopt;
        for (std::size_t other = 0; other < takers_.size(); ++other)
            if (other != moved && nearness(*trial, takers_[other]).too_near())
                return std::nullopt;
        return measures.sill;
    }

    /// An example: a bearing that is free; with less width where the ring has no place left else.
    const std::string& turned_away(std::size_t moved) {
        const auto [place, is_new] = examples_.try_emplace(moved);
        std::string& example = place->second;
        const Taker& mover = takers_[moved];
        for (int quarters = 4; is_new && quarters >= 1 && example.empty(); --quarters) {
            OtherMeasures measures;
            measures.width = mover.opening->width * quarters / 4;
            const auto trial = quarters == 4 ? mover : tried(mover, measures);
            const auto bearing = trial ? free_bearing(*trial, moved) : std::nullopt;
            if (bearing)
                example = "bearing = " + fixed_text(*bearing, 0) +
                          (quarters == 4 ? "" : ", width = \"" + length(*measures.width) + '"');
        }
        if (example.empty()) // it is to be left out, or the others are to be moved
            example =
                "bearing = " + fixed_text(turned_into_circle(std::round(mover.bearing) + 90), 0);
        return example;
    }

    void report_above(std::size_t a, std::size_t b, const Nearness& near) {
        const bool b_above = takers_[b].opening && takers_[b].low > takers_[a].low;
        const std::size_t moved = b_above ? b : a;
        const Taker& upper = takers_[moved];
        const Taker& lower = takers_[b_above ? a : b];
        Diagnostic& found = faults_.add(
            "openings-too-close", upper.opening->sill_place, "opening." + upper.id,
            "'" + upper.id + "' stands only " + length(near.apart) + " above " +
                (lower.opening && lower.opening->head.lintel ? "the lintel of '" : "'") + lower.id +
                "'" + (near.gap > 0 ? " and " + length(near.gap) + " beside it." : "."));
        found.allowed =
            "at least one tamped tube width (" + length(near.least) + ") of wall between them";
        const auto sill = higher_sill(moved, lower, near.least);
        found.example = sill ? "sill = \"" + length(*sill) + '"' : turned_away(moved);
    }

    void report_beside(std::size_t a, std::size_t b, const Nearness& near) {
        const std::size_t moved = takers_[b].opening ? b : a; // the later opening of the two
        const Taker& mover = takers_[moved];
        const Taker& stays = takers_[moved == b ? a : b];
        const bool overlap = near.gap <= 0;
        const std::string place = length(near.at) + " above the floor";
        Diagnostic& found = faults_.add(
            overlap ? "openings-overlap" : "openings-too-close", mover.opening->bearing_place,
            "opening." + mover.id,
            overlap ? "'" + mover.id + "' and '" + stays.id + "' overlap at " + place + "."
                    : "'" + mover.id + "' comes within " + length(near.gap) + " of '" + stays.id +
                          "' at " + place + ", measured along the inside face.");
        found.allowed = near.least > 0 ? "at least one tamped tube width (" + length(near.least) +
                                             ") of wall between them"
                                       : "an opening clear of it";
        found.example = turned_away(moved);
    }
};

} // namespace

void check_gaps(const BuildingForm& building, const DomeForm& dome,
                const std::vector<OpeningForm>& openings, LayoutFaults& faults) {
    GapCheck(building, dome, faults).run(openings);
}

} // namespace coilwright
