// Plumb reveals: whether each can be laid where it is.
#include "geometry/plan/box_overlap.hpp"
#include "geometry/plan/layout_faults.hpp"
#include "geometry/plan/reveal_form.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

/// What of a box from a pole lies outside a circle about the same pole.
Box beyond(Box box, double radius) {
    const double half = std::min(std::max(std::abs(box.low), std::abs(box.high)), radius);
    box.from = std::sqrt(radius * radius - half * half);
    return box;
}

class RevealCheck {
public:
    RevealCheck(const BuildingForm& building, LayoutFaults& faults)
        : building_(building), faults_(faults) {}

    void run(const Opening& opening, const OpeningForm& form) {
        if (form.in_tunnel || !can_have_reveal(form)) {
            report_unsuited(opening, form);
            return;
        }
        const auto& piers = building_.buttresses;
        const auto pier = std::find_if(piers.begin(), piers.end(), [&](const ButtressForm& one) {
            return one.reveal && one.reveal->opening.id == opening.id;
        });
        if (pier == piers.end()) // the wall stands plumb up to its head
            return;
        const DomeForm& dome = *find_dome(building_, pier->dome);
        if (!reaches_no_higher(opening, *pier, dome))
            return;
        // It is narrower than the ring wherever the opening is: one tube wider, as the ring is.
        for (int n = pier->reveal->first_course; n <= pier->last_course; ++n)
            if (const std::string other = met_in(n, *pier, dome); !other.empty()) {
                Diagnostic& found =
                    add("elements-meet", opening,
                        "The plumb reveal of '" + opening.id + "' runs into '" + other + "'.");
                found.allowed = "reveals clear of tunnels, buttresses, other domes and reveals";
                found.example = "turn its bearing, or leave reveal = \"plumb\" out";
                return;
            }
    }

private:
    const BuildingForm& building_;
    LayoutFaults& faults_;

    Diagnostic& add(const std::string& code, const Opening& opening, const std::string& message) {
        return faults_.add(code, opening.place, "opening." + opening.id, message);
    }

    void report_unsuited(const Opening& opening, const OpeningForm& form) {
        const std::string why = form.in_tunnel         ? "stands in a tunnel, whose jambs need none"
                                : form.niche_depth > 0 ? "is a niche, which has no outside"
                                : form.fan_depth > 0
                                    ? "has a head laid as a fan, which follows the leaning wall"
                                    : "has a straight head, over which nothing would close it";
        Diagnostic& found = add("reveal-unsuited", opening,
                                "'" + opening.id + "' asks for a plumb reveal, but " + why + ".");
        found.allowed =
            "an opening through a dome, with a corbelled pointed, round or segmental head";
        found.example = form.in_tunnel || form.niche_depth > 0 ? "leave reveal = \"plumb\" out"
                                                               : "head = { kind = \"pointed\" }";
    }

    bool reaches_no_higher(const Opening& opening, const ButtressForm& pier, const DomeForm& dome) {
        const double end = rings_end(dome);
        if (pier.top <= end + height_tie)
            return true;
        Diagnostic& found = add("reveal-too-high", opening,
                                "The plumb reveal of '" + opening.id + "' closes at " +
                                    faults_.length(pier.top) + ", above the last ring of '" +
                                    dome.id + "', which ends at " + faults_.length(end) + ".");
        found.allowed = "a reveal that closes no higher than " + faults_.length(end);
        found.example = "height = \"" +
                        faults_.length(std::max(
                            dome.course_height,
                            std::floor((opening.height - (pier.top - end)) / dome.course_height) *
                                dome.course_height)) +
                        "\"";
        return false;
    }

    /// What it runs into in course n; empty: nothing.
    std::string met_in(int n, const ButtressForm& pier, const DomeForm& dome) const {
        const double z = dome.course_middle(n), outside = outside_radius(dome, z);
        const Box body = beyond(buttress_body(pier, z), outside);
        const auto meets = [&](const Box& other, bool of_dome) {
            return other.high > other.low &&
                   overlap(body, of_dome ? beyond(other, outside) : other);
        };
        for (const ButtressForm& other : building_.buttresses)
            if (&other != &pier && meets(buttress_body(other, z), other.dome == pier.dome))
                return other.reveal ? other.reveal->opening.id : other.id;
        for (const TunnelForm& tunnel : building_.tunnels) {
            Box walls = tunnel_body(tunnel, z);
            if (tunnel.to == dome.id) { // seen from this dome's pole
                walls.origin = dome.at;
                walls.axis = -walls.axis;
            }
            if (meets(walls, tunnel.from == dome.id || tunnel.to == dome.id))
                return tunnel.id;
        }
        for (const DomeForm& other : building_.domes) {
            const double radius = outside_radius(other, z);
            if (&other != &dome && radius > 0 && overlap(body, other.at, radius))
                return other.id;
        }
        return {};
    }
};

} // namespace

void check_reveals(const BuildingForm& building, LayoutFaults& faults) {
    for (const Opening& opening : faults.design().openings)
        for (const OpeningForm& form : building.openings)
            if (opening.reveal_plumb && form.id == opening.id)
                RevealCheck(building, faults).run(opening, form);
}

} // namespace coilwright
