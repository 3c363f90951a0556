#include "geometry/plan/heads.hpp"
#include "geometry/plan/layout_faults.hpp"
#include "geometry/plan/ring_gaps.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

namespace coilwright {

namespace {

/// What takes a part of a dome's ring: its half-angle on a circle of a radius at a height.
struct Taker {
    std::string id;
    double bearing = 0;
    double low = 0, top = 0;
    std::function<double(double z, double radius)> half_degrees;
    const Opening* opening = nullptr; // what a person would move
    double gap = 0;                   // wall that must stay between it and an opening
    double at_radius = 0;             // where the gap is measured; 0: on the inside face
};

class OpeningCheck {
public:
    OpeningCheck(const BuildingForm& building, LayoutFaults& faults)
        : building_(building), faults_(faults) {}

    void run() {
        for (const DomeForm& dome : building_.domes)
            check_dome(dome);
        for (const TunnelForm& tunnel : building_.tunnels)
            check_tunnel(tunnel);
    }

private:
    const BuildingForm& building_;
    LayoutFaults& faults_;

    std::string length(double metres) const { return faults_.length(metres); }
    const Opening& written(const std::string& id) const {
        return *find_opening(faults_.design(), id);
    }

    void check_dome(const DomeForm& dome) {
        std::vector<Taker> takers;
        for (const OpeningForm& form : building_.openings)
            if (form.in == dome.id && fits(form, dome))
                takers.push_back(taker(form, dome));
        const std::size_t openings = takers.size();
        add_other_takers(dome, takers);
        for (std::size_t i = 0; i < openings; ++i)
            for (std::size_t j = i + 1; j < takers.size(); ++j)
                check_gap(takers[i], takers[j], dome);
    }

    bool fits(const OpeningForm& form, const DomeForm& dome) {
        const Opening& opening = written(form.id);
        const std::string subject = "opening." + form.id;
        const double end = rings_end(dome);
        const double top = taken_top(form, dome);
        if (top > end - height_tie) { // a head that ends just there leaves no ring to close over it
            const bool with_head = top > form.top + height_tie;
            Diagnostic& found = faults_.add(
                "opening-too-high", opening.height_place, subject,
                "The head of '" + form.id + "'" + (with_head ? ", with its fan or lintel," : "") +
                    " at " + length(top) + " lies above the last ring of '" + dome.id +
                    "', which ends at " + length(end) + ".");
            const double highest = end - dome.course_height;
            found.allowed = "a head no higher than " + length(highest - (top - form.top));
            const double fitting = highest - (top - form.top) - form.sill;
            found.example = fitting > dome.course_height ? "height = \"" + length(fitting) + "\""
                                                         : "sill = \"0 in\"";
            return false;
        }
        for (const double z : heights(form.sill, top, form.springing, dome)) {
            const double a = taken_half_width(form, dome, z), r = inside_radius(dome, z);
            if (a < widest_share * r)
                continue;
            const bool lintel = z >= form.top - height_tie;
            Diagnostic& found = faults_.add(
                lintel ? "lintel-too-long" : "opening-too-wide",
                lintel ? opening.head.place : opening.width_place, subject,
                (lintel ? "The lintel or fan of '" : "'") + form.id + "' is " + length(2 * a) +
                    " wide at " + length(z) + " above the floor, where the inside of '" + dome.id +
                    "' is " + length(2 * r) + " across.");
            found.allowed = "less than " + length(2 * widest_share * r) + " at that height";
            found.example = "width = \"" + length(std::floor(r / 0.0254) * 0.0254) + "\"";
            return false;
        }
        if (form.head_kind == HeadKind::circle && form.sill < dome.bottom() + dome.course_height / 2) {
            Diagnostic& found = faults_.add(
                "opening-at-foot", opening.sill_place, subject,
                "The circle '" + form.id + "' stands with its foot at " + length(form.sill) +
                    ", on the wall's own foot.");
            found.allowed = "a sill at least half a course above the foot of the wall";
            found.example = "sill = \"" + length(dome.bottom() + dome.course_height) + "\"";
            return false;
        }
        bool cuts = false;
        for (int n = 1; n <= dome.last_ring && !cuts; ++n)
            cuts = cuts_course(form, dome, n);
        if (!cuts) {
            Diagnostic& found =
                faults_.add("opening-cuts-nothing", opening.height_place, subject,
                            "'" + form.id + "' is too small to cut a course: at no course's middle is "
                                            "it a course height (" +
                                length(dome.course_height) + ") wide.");
            found.allowed = "an opening wider than a course height at the middle of a course; smaller "
                            "holes are sleeves";
            found.example = "width = \"" + length(3 * dome.course_height) + "\"";
            return false;
        }
        const double most = 2 * dome.width / 3;
        if (form.niche_depth > most + height_tie) {
            Diagnostic& found = faults_.add("niche-too-deep", opening.place, subject,
                                            "The niche '" + form.id + "' is " +
                                                length(form.niche_depth) + " deep in a wall of " +
                                                length(dome.width) + ".");
            found.allowed = "at most two thirds of the tube (" + length(most) + ")";
            found.example = "depth = \"" + length(dome.width / 2) + "\"";
            return false;
        }
        return true;
    }

    /// Where widths are compared: often enough that no facet of the model finds a wider place.
    static std::vector<double> heights(double sill, double top, double springing,
                                       const DomeForm& dome) {
        std::vector<double> heights;
        const double step = dome.course_height / 4;
        for (double z = sill; z < top; z += step)
            heights.push_back(z);
        heights.push_back(std::clamp(springing - 2 * height_tie, sill, top));
        for (int n = 1; n <= dome.last_ring; ++n) {
            const double z = dome.course_middle(n);
            if (z >= sill && z < top)
                heights.push_back(z);
        }
        return heights;
    }

    Taker taker(const OpeningForm& form, const DomeForm& dome) const {
        Taker result;
        result.id = form.id;
        result.bearing = form.bearing.degrees;
        result.low = form.sill;
        result.top = taken_top(form, dome);
        result.half_degrees = [form, dome](double z, double radius) {
            return half_angle_degrees(std::min(taken_half_width(form, dome, z), radius), radius);
        };
        result.opening = &written(form.id);
        result.gap = dome.width;
        return result;
    }

    void add_other_takers(const DomeForm& dome, std::vector<Taker>& takers) const {
        for (const TunnelForm& tunnel : building_.tunnels) {
            if (tunnel.from != dome.id && tunnel.to != dome.id)
                continue;
            Taker result;
            result.id = tunnel.id;
            result.bearing = tunnel.bearing.degrees + (tunnel.from == dome.id ? 0 : 180);
            result.top = tunnel.top();
            result.half_degrees = [tunnel](double z, double radius) {
                return half_angle_degrees(std::min(outer_half_width(tunnel, z), radius), radius);
            };
            result.gap = dome.width;
            takers.push_back(result);
        }
        for (const ButtressForm& pier : building_.buttresses) {
            if (pier.dome != dome.id)
                continue;
            Taker result;
            result.id = pier.id;
            result.bearing = pier.bearing.degrees;
            result.top = pier.top;
            // Measured at its near corner on the base ring, as it is placed beside an opening; above
            // it the opening cuts what leans into it.
            const double base = dome.profile.half_span;
            result.at_radius = std::hypot(base, pier.half_width);
            result.half_degrees = [pier, base](double, double) {
                return std::atan(pier.half_width / base) / radians_per_degree;
            };
            takers.push_back(result);
        }
        for (const DomeForm& other : building_.domes) {
            const JoinEffect effect = join_effect(building_, dome.id, other.id);
            if (effect == JoinEffect::none)
                continue;
            Taker result;
            result.id = other.id;
            const Vec2 apart = other.at - dome.at;
            result.bearing = to_bearing({std::atan2(apart.y(), apart.x())}).degrees;
            result.top = other.top();
            const bool stops = effect == JoinEffect::stops_at_wall;
            result.half_degrees = [other, apart, stops](double z, double radius) {
                RingGap gap;
                gap.disc_distance = apart.norm();
                gap.disc_radius = stops ? outside_radius(other, z) : inside_radius(other, z);
                return gap.disc_radius > 0 ? half_gap_degrees(gap, radius) : 0;
            };
            result.gap = dome.width;
            takers.push_back(result);
        }
    }

    void check_gap(const Taker& a, const Taker& b, const DomeForm& dome) {
        const double least = std::min(a.gap, b.gap);
        const double low = std::max(a.low, b.low), high = std::min(a.top, b.top);
        if (low - high >= least - height_tie) // one stands a tube width above the other
            return;
        const double turn = clockwise_degrees({a.bearing}, {b.bearing});
        const double between = std::min(turn, 360 - turn);
        double nearest = 2 * pi * dome.profile.half_span;
        double at = low;
        const auto compare = [&](double z, double z_a, double z_b) {
            const double r = b.at_radius > 0 ? b.at_radius : inside_radius(dome, z);
            const double half_a = a.half_degrees(z_a, r), half_b = b.half_degrees(z_b, r);
            if (half_b <= 0)
                return;
            const double gap = r * radians_per_degree * (between - half_a - half_b);
            if (gap < nearest) {
                nearest = gap;
                at = z;
            }
        };
        if (low < high) {
            const double step = std::min(dome.course_height / 4, (high - low) / 4);
            for (double z = low; z < high; z += step)
                compare(z, z, z);
        } else { // above each other: the head of one against the sill of the other
            const bool a_above = a.low > b.low;
            // A round head or a circle is still wide a little within its top or its foot.
            const double above = (a_above ? a.low : b.low) + 0.05;
            const double below = (a_above ? b.top : a.top) - 0.05;
            compare(above, a_above ? above : below, a_above ? below : above);
        }
        if (nearest >= least - height_tie)
            return;
        if (low >= high)
            report_above(a, b, low - high, least, dome);
        else
            report_beside(a, b, nearest, at, turn, between, least, dome);
    }

    void report_above(const Taker& a, const Taker& b, double apart, double least,
                      const DomeForm& dome) {
        const bool b_above = b.opening && b.low > a.low;
        const Taker& upper = b_above ? b : a;
        const Taker& lower = b_above ? a : b;
        if (!upper.opening)
            return;
        Diagnostic& found = faults_.add("openings-too-close", upper.opening->sill_place,
                                        "opening." + upper.id,
                                        "'" + upper.id + "' stands only " + length(apart) + " above '" +
                                            lower.id + "'.");
        found.allowed = "at least one tamped tube width (" + length(least) + ") of wall between them";
        found.example = "sill = \"" +
                        length(std::ceil((lower.top + least) / dome.course_height - 1e-9) *
                               dome.course_height) +
                        "\"";
    }

    void report_beside(const Taker& a, const Taker& b, double nearest, double at, double turn,
                       double between, double least, const DomeForm& dome) {
        const Taker& moved = b.opening ? b : a; // the later opening of the two
        const Taker& stays = b.opening ? a : b;
        const bool overlap = nearest <= 0;
        Diagnostic& found = faults_.add(
            overlap ? "openings-overlap" : "openings-too-close", moved.opening->bearing_place,
            "opening." + moved.id,
            overlap ? "'" + moved.id + "' and '" + stays.id + "' overlap at " + length(at) +
                          " above the floor."
                    : "'" + moved.id + "' comes within " + length(nearest) + " of '" + stays.id +
                          "' at " + length(at) +
                          " above the floor, measured along the inside face.");
        found.allowed = least > 0 ? "at least one tamped tube width (" + length(least) +
                                        ") of wall between them"
                                  : "an opening clear of the pier";
        const double r = b.at_radius > 0 ? b.at_radius : inside_radius(dome, at);
        const double away = std::ceil(between + (least - nearest) / (r * radians_per_degree));
        const bool clockwise = (turn <= 180) == (&moved == &b);
        found.example =
            "bearing = " +
            fixed_text(turned_into_circle(stays.bearing + (clockwise ? away : -away)), 0);
    }

    void check_tunnel(const TunnelForm& tunnel) {
        for (const OpeningForm& form : building_.openings)
            if (form.in == tunnel.id)
                check_in_tunnel(form, tunnel);
    }

    void check_in_tunnel(const OpeningForm& form, const TunnelForm& tunnel) {
        const Opening& opening = written(form.id);
        const std::string subject = "opening." + form.id;
        const double walls_end = tunnel.course_bottom(tunnel.side_courses + 1);
        const bool in_end = opening.side == TunnelSide::end;
        if (in_end && !tunnel.end_wall) {
            Diagnostic& found =
                faults_.add("opening-without-wall", opening.in_place, subject,
                            "'" + form.id + "' stands in the end of '" + tunnel.id +
                                "', which has no end wall.");
            found.allowed = "a tunnel with `end = \"wall\"`, or an opening in a side: `side = \"left\"` "
                            "and `along`";
            found.example = "end = \"wall\"";
            return;
        }
        if (form.fan_depth > 0 || form.niche_depth > 0) {
            Diagnostic& found =
                faults_.add("head-not-in-tunnel", opening.place, subject,
                            "'" + form.id + "' in the tunnel '" + tunnel.id +
                                "' is a niche or has a fan head; tunnels take plain openings only.");
            found.allowed = "corbelled or square heads that go through";
            found.example = "laid = \"corbelled\"";
            return;
        }
        if (form.top > walls_end + height_tie) {
            Diagnostic& found = faults_.add("opening-too-high", opening.height_place, subject,
                                            "The head of '" + form.id + "' at " + length(form.top) +
                                                " lies above the walls of '" + tunnel.id +
                                                "', which end at " + length(walls_end) + ".");
            found.allowed = "a head no higher than " + length(walls_end);
            found.example = "height = \"" +
                            length(std::max(tunnel.course_height, walls_end - form.sill)) + "\"";
            return;
        }
        if (in_end)
            check_in_end_wall(form, opening, tunnel);
        else
            check_in_side(form, opening, tunnel);
    }

    void check_in_end_wall(const OpeningForm& form, const Opening& opening,
                           const TunnelForm& tunnel) {
        const double pier = tunnel.width / 2; // no sliver of less than half a tube beside it
        for (double z = form.sill; z < form.top; z += tunnel.course_height / 4) {
            const double a = half_width(form, z), b = inner_half_width(tunnel, z);
            if (a <= 0 || b - a >= pier - height_tie)
                continue;
            Diagnostic& found = faults_.add(
                "opening-too-wide", opening.width_place, "opening." + form.id,
                "'" + form.id + "' is " + length(2 * a) + " wide at " + length(z) +
                    " above the floor, where the end wall of '" + tunnel.id + "' is " + length(2 * b) +
                    " wide.");
            found.allowed = "piers of at least half a tube (" + length(pier) + ") on each side";
            found.example = "width = \"" + length(std::max(0.1, 2 * (b - pier))) + "\"";
            return;
        }
    }

    void check_in_side(const OpeningForm& form, const Opening& opening, const TunnelForm& tunnel) {
        const double w = tunnel.width;
        double from = w, to = tunnel.reach - (tunnel.end_wall ? 2 * w : w);
        if (const DomeForm* dome = find_dome(building_, tunnel.from))
            from += outside_radius(*dome, 0);
        if (const DomeForm* dome = find_dome(building_, tunnel.to))
            to = tunnel.reach - outside_radius(*dome, 0) - w;
        if (opening.along - form.half_width < from - height_tie ||
            opening.along + form.half_width > to + height_tie) {
            Diagnostic& found = faults_.add(
                "opening-off-wall", opening.along_place, "opening." + form.id,
                "'" + form.id + "' reaches from " + length(opening.along - form.half_width) + " to " +
                    length(opening.along + form.half_width) + " along '" + tunnel.id +
                    "', whose free wall reaches from " + length(from) + " to " + length(to) + ".");
            found.allowed = "a tube's width of wall on each side";
            found.example = "along = \"" + length((from + to) / 2) + "\"";
            return;
        }
        for (const OpeningForm& other : building_.openings) {
            const Opening& second = written(other.id);
            if (other.id <= form.id || other.in != form.in || second.side != opening.side)
                continue;
            const bool apart_in_height = other.sill - form.top >= w || form.sill - other.top >= w;
            const double gap = std::abs(second.along - opening.along) - form.half_width -
                               other.half_width;
            if (apart_in_height || gap >= w - height_tie)
                continue;
            Diagnostic& found = faults_.add("openings-too-close", second.along_place,
                                            "opening." + other.id,
                                            "'" + other.id + "' comes within " +
                                                length(std::max(0.0, gap)) + " of '" + form.id + "'.");
            found.allowed = "at least one tamped tube width (" + length(w) + ") of wall between them";
            found.example = "along = \"" + length(opening.along + form.half_width + w +
                                                  other.half_width) + "\"";
        }
    }
};

} // namespace

void check_openings(const BuildingForm& building, LayoutFaults& faults) {
    OpeningCheck(building, faults).run();
}

} // namespace coilwright
