#include "geometry/plan/heads.hpp"
#include "geometry/plan/layout_faults.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

/// The most that an opening takes of a wall to each side, from one height to another. Heads are
/// widest at their springing and at the ends of the range.
double widest(const OpeningForm& form, const TunnelForm& tunnel, double low, double high) {
    const auto band = lintel_band(form, tunnel);
    low = std::max(low, form.sill);
    high = std::min(high, taken_top(form, tunnel));
    double most = 0;
    for (const double z : {low, std::clamp(form.springing, low, high), high})
        most = std::max(most, taken_half_width(form, band, z));
    if (form.head_kind == HeadKind::circle)
        most = form.half_width;
    return band && band->low < high && band->high > low ? std::max(most, band->half_length) : most;
}

/// Openings in the end wall and the sides of tunnels.
class TunnelOpeningCheck {
public:
    TunnelOpeningCheck(const BuildingForm& building, LayoutFaults& faults)
        : building_(building), faults_(faults) {}

    void run(const TunnelForm& tunnel) {
        for (const OpeningForm& form : building_.openings)
            if (form.in == tunnel.id)
                check_in_tunnel(form, tunnel);
    }

private:
    const BuildingForm& building_;
    LayoutFaults& faults_;

    std::string length(double metres) const { return faults_.length(metres); }
    const Opening& written(const std::string& id) const {
        return *find_opening(faults_.design(), id);
    }

    void check_in_tunnel(const OpeningForm& form, const TunnelForm& tunnel) {
        const Opening& opening = written(form.id);
        const std::string subject = "opening." + form.id;
        const double walls_end = tunnel.course_bottom(tunnel.side_courses + 1);
        const bool in_end = opening.side == TunnelSide::end;
        if (in_end && !tunnel.end_wall) {
            Diagnostic& found = faults_.add("opening-without-wall", opening.in_place, subject,
                                            "'" + form.id + "' stands in the end of '" + tunnel.id +
                                                "', which has no end wall.");
            found.allowed =
                "a tunnel with `end = \"wall\"`, or an opening in a side: `side = \"left\"` "
                "and `along`";
            found.example = "end = \"wall\"";
            return;
        }
        if (form.sill < -height_tie) {
            report_below_floor(opening, faults_);
            return;
        }
        if (form.head_kind == HeadKind::circle &&
            form.sill < tunnel.bottom() + tunnel.course_height / 2) {
            report_at_foot(opening, tunnel, faults_);
            return;
        }
        if (form.fan_depth > 0 || form.niche_depth > 0) {
            Diagnostic& found = faults_.add(
                "head-not-in-tunnel", opening.place, subject,
                "'" + form.id + "' in the tunnel '" + tunnel.id +
                    "' is a niche or has a fan head; tunnels take plain openings only.");
            found.allowed = "corbelled or square heads that go through";
            found.example = "laid = \"corbelled\"";
            return;
        }
        const double top = taken_top(form, tunnel);
        if (top > walls_end + height_tie) {
            Diagnostic& found = faults_.add(
                "opening-too-high", opening.height_place, subject,
                "The head of '" + form.id + "'" + (form.lintel ? ", with its lintel," : "") +
                    " at " + length(top) + " lies above the walls of '" + tunnel.id +
                    "', which end at " + length(walls_end) + ".");
            const double highest = walls_end - (top - form.top);
            found.allowed = "a head no higher than " + length(highest);
            found.example =
                "height = \"" + length(std::max(tunnel.course_height, highest - form.sill)) + "\"";
            return;
        }
        if (!lintel_fits(form, opening, tunnel))
            return;
        if (in_end)
            check_in_end_wall(form, opening, tunnel);
        else
            check_in_side(form, opening, tunnel);
    }

    /// A lintel lies wholly in its wall: in the end wall between the sides, in a side on free wall.
    bool lintel_fits(const OpeningForm& form, const Opening& opening, const TunnelForm& tunnel) {
        const auto lintel = lintel_courses(form, tunnel);
        if (!lintel)
            return true;
        double room = inner_half_width(tunnel, tunnel.course_middle(lintel->last));
        if (opening.side != TunnelSide::end) {
            const auto [from, to] = free_wall(building_, tunnel);
            room =
                std::min(opening.along - (from - tunnel.width), to + tunnel.width - opening.along);
        }
        if (lintel->half_length <= room + height_tie)
            return true;
        Diagnostic& found =
            faults_.add("lintel-too-long", opening.head.place, "opening." + form.id,
                        "The lintel of '" + form.id + "' is " + length(2 * lintel->half_length) +
                            " long, where the wall of '" + tunnel.id + "' has room for " +
                            length(2 * std::max(0.0, room)) + " about its middle.");
        found.allowed = "at most " + length(2 * std::max(0.0, room));
        found.example =
            "lintel = { bearing = \"" + length(std::max(0.05, room - form.half_width)) + "\" }";
        return false;
    }

    void check_in_end_wall(const OpeningForm& form, const Opening& opening,
                           const TunnelForm& tunnel) {
        const double pier = tunnel.width / 2; // no sliver of less than half a tube beside it
        for (double z = form.sill; z < form.top; z += tunnel.course_height / 4) {
            const double a = half_width(form, z), b = inner_half_width(tunnel, z);
            if (a <= 0 || b - a >= pier - height_tie)
                continue;
            Diagnostic& found =
                faults_.add("opening-too-wide", opening.width_place, "opening." + form.id,
                            "'" + form.id + "' is " + length(2 * a) + " wide at " + length(z) +
                                " above the floor, where the end wall of '" + tunnel.id + "' is " +
                                length(2 * b) + " wide.");
            found.allowed = "piers of at least half a tube (" + length(pier) + ") on each side";
            found.example = "width = \"" + length(std::max(0.1, 2 * (b - pier))) + "\"";
            return;
        }
    }

    void check_in_side(const OpeningForm& form, const Opening& opening, const TunnelForm& tunnel) {
        const double w = tunnel.width;
        const auto [from, to] = free_wall(building_, tunnel);
        if (opening.along - form.half_width < from - height_tie ||
            opening.along + form.half_width > to + height_tie) {
            Diagnostic& found = faults_.add(
                "opening-off-wall", opening.along_place, "opening." + form.id,
                "'" + form.id + "' reaches from " + length(opening.along - form.half_width) +
                    " to " + length(opening.along + form.half_width) + " along '" + tunnel.id +
                    "', whose free wall reaches from " + length(from) + " to " + length(to) + ".");
            found.allowed = "a tube's width of wall on each side";
            found.example = "along = \"" + length((from + to) / 2) + "\"";
            return;
        }
        for (const OpeningForm& other : building_.openings) {
            const Opening& second = written(other.id);
            if (other.id <= form.id || other.in != form.in || second.side != opening.side)
                continue;
            // With what their heads take: fans, and lintels' bearings.
            const double top = taken_top(form, tunnel), other_top = taken_top(other, tunnel);
            if (other.sill - top >= w - height_tie || form.sill - other_top >= w - height_tie)
                continue;
            const double low = std::max(form.sill, other.sill) - w;
            const double high = std::min(top, other_top) + w;
            const double taken = widest(form, tunnel, low, high),
                         others = widest(other, tunnel, low, high);
            const double gap = std::abs(second.along - opening.along) - taken - others;
            if (gap >= w - height_tie)
                continue;
            Diagnostic& found =
                faults_.add("openings-too-close", second.along_place, "opening." + other.id,
                            "'" + other.id + "' comes within " + length(std::max(0.0, gap)) +
                                " of '" + form.id + "'.");
            found.allowed =
                "at least one tamped tube width (" + length(w) + ") of wall between them";
            found.example = "along = \"" + length(opening.along + taken + w + others) + "\"";
        }
    }
};

} // namespace

std::pair<double, double> free_wall(const BuildingForm& building, const TunnelForm& tunnel) {
    const double w = tunnel.width;
    double from = w, to = tunnel.reach - (tunnel.end_wall ? 2 * w : w);
    if (const DomeForm* dome = find_dome(building, tunnel.from))
        from += base_outside(*dome);
    if (const DomeForm* dome = find_dome(building, tunnel.to))
        to = tunnel.reach - base_outside(*dome) - w;
    return {from, to};
}

void check_tunnel_openings(const BuildingForm& building, LayoutFaults& faults) {
    for (const TunnelForm& tunnel : building.tunnels)
        TunnelOpeningCheck(building, faults).run(tunnel);
}

} // namespace coilwright
