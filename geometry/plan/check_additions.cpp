// Tunnels, buttresses and joins: whether each can stand where it is.
#include "geometry/plan/box_overlap.hpp"
#include "geometry/plan/layout_faults.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

Diagnostic& tunnel_fault(LayoutFaults& faults, const Tunnel& tunnel, const std::string& code,
                         const std::string& message) {
    return faults.add(code, tunnel.place, "tunnel." + tunnel.id, message);
}

/// A tunnel's walls against one of its domes: narrower and lower than it.
bool tunnel_fits_dome(const TunnelForm& form, const DomeForm& dome, const Tunnel& tunnel,
                      LayoutFaults& faults) {
    const double end = rings_end(dome);
    if (form.top() > end + height_tie) {
        Diagnostic& found =
            tunnel_fault(faults, tunnel, "tunnel-too-high",
                         "The crown of '" + form.id + "' at " + faults.length(form.top()) +
                             " lies above the last ring of '" + dome.id + "', which ends at " +
                             faults.length(end) + ".");
        found.allowed = "a crown no higher than " + faults.length(end);
        found.example =
            "springline = \"" +
            faults.length(form.course_height *
                          std::max(0.0, std::floor((form.springline - (form.top() - end)) /
                                                   form.course_height))) +
            "\"";
        return false;
    }
    for (double z = 0; z < form.top(); z += form.course_height / 4) {
        const double b = inner_half_width(form, z), outer = outer_half_width(form, z);
        const double r = inside_radius(dome, z), outside = outside_radius(dome, z);
        if (b < widest_share * r && outer < widest_share * outside)
            continue;
        Diagnostic& found = tunnel_fault(faults, tunnel, "tunnel-too-wide",
                                         "'" + form.id + "' is " + faults.length(2 * outer) +
                                             " wide over its walls at " + faults.length(z) +
                                             " above the floor, where '" + dome.id + "' is " +
                                             faults.length(2 * outside) + " across.");
        found.allowed = "a tunnel narrower than its dome at every height";
        found.example = "width = \"" + faults.length(std::max(0.3, r)) + "\"";
        return false;
    }
    return true;
}

/// What stands outside its dome on the ground: a tunnel or a pier.
struct Outwork {
    std::string id, subject;
    SourcePlace place;
    std::vector<std::string> domes; // that it belongs to
    Box box;                        // from the outside of its dome's base ring
    bool is_tunnel = false;
};

std::vector<Outwork> outworks_of(const BuildingForm& building, const Design& design) {
    std::vector<Outwork> outworks;
    for (const TunnelForm& tunnel : building.tunnels) {
        Outwork work{tunnel.id,
                     "tunnel." + tunnel.id,
                     find_tunnel(design, tunnel.id)->place,
                     {tunnel.from, tunnel.to},
                     tunnel_body(tunnel, 0)};
        work.box.from = base_outside(*find_dome(building, tunnel.from));
        if (const DomeForm* to = find_dome(building, tunnel.to))
            work.box.to -= base_outside(*to);
        work.is_tunnel = true;
        outworks.push_back(work);
    }
    for (const ButtressForm& pier : building.buttresses) {
        SourcePlace place;
        for (const Buttress& table : design.buttresses)
            if (table.id == pier.table)
                place = table.place;
        Outwork work{pier.id, "buttress." + pier.table, place, {pier.dome}, buttress_body(pier, 0)};
        work.box.from = pier.base_outside;
        if (work.box.to > work.box.from)
            outworks.push_back(work);
    }
    return outworks;
}

bool belongs(const Outwork& work, const std::string& dome) {
    return std::find(work.domes.begin(), work.domes.end(), dome) != work.domes.end();
}

/// Their ways part at its pole: check_gaps compares them where they leave its ring.
bool both_tunnels_of_one_dome(const Outwork& a, const Outwork& b) {
    return a.is_tunnel && b.is_tunnel &&
           std::any_of(a.domes.begin(), a.domes.end(),
                       [&](const std::string& dome) { return !dome.empty() && belongs(b, dome); });
}

/// Between what stands apart a hand with a trowel has its place, metres (judged).
constexpr double least_slit = 0.05;

Box wider(Box box) {
    return {box.origin,
            box.axis,
            box.from - least_slit,
            box.to + least_slit,
            box.low - least_slit,
            box.high + least_slit};
}

void meets(const Outwork& work, const std::string& other, bool overlapping, LayoutFaults& faults) {
    Diagnostic& found = faults.add(
        "elements-meet", work.place, work.subject,
        "'" + work.id + "' " +
            (overlapping ? "runs into"
                         : "leaves a slit of less than " + faults.length(least_slit) + " beside") +
            " '" + other + "'.");
    found.allowed = "tunnels and buttresses clear of every element they are not declared to meet";
    found.example = "turn its bearing, shorten it, or leave it out";
}

/// Whether an opening runs within a slit of the wall of a dome that its own is joined to. One whose
/// wall stays may open into the other's room: what stands against it there is check_gaps' to judge.
bool runs_along_wall(const OpeningForm& form, const DomeForm& dome, const DomeForm& other,
                     const BuildingForm& building) {
    if (join_effect(building, dome.id, other.id) == JoinEffect::none)
        return false;
    const double step = std::min(dome.course_height, form.top - form.sill) / 4;
    for (double z = form.sill; z < form.top - height_tie; z += step) {
        const double a = half_width(form, z), inside = inside_radius(dome, z);
        const double wall = outside_radius(other, z);
        if (a <= 0 || a >= inside || wall <= 0)
            continue;
        const Box hole{
            form.origin, form.axis, std::sqrt(inside * inside - a * a), outside_radius(dome, z),
            -a,          a};
        if (overlap(hole, other.at, wall + least_slit))
            return true;
    }
    return false;
}

} // namespace

void check_tunnels(const BuildingForm& building, LayoutFaults& faults) {
    for (const TunnelForm& form : building.tunnels) {
        const Tunnel& tunnel = *find_tunnel(faults.design(), form.id);
        const DomeForm& from = *find_dome(building, form.from);
        const DomeForm* to = find_dome(building, form.to);
        if (form.side_courses + form.crown_courses >= most_courses) {
            Diagnostic& found = tunnel_fault(
                faults, tunnel, "too-many-courses",
                "'" + form.id + "' needs " + std::to_string(most_courses) + " courses or more.");
            found.allowed = "fewer than " + std::to_string(most_courses) + " courses";
            found.example = "rise = \"" + faults.length(2 * form.profile.half_span) + "\"";
            continue;
        }
        const double taken = outside_radius(from, 0) + (to ? base_outside(*to) : 0);
        if (form.reach - taken < form.width - height_tie) {
            Diagnostic& found =
                tunnel_fault(faults, tunnel, "tunnel-too-short",
                             "'" + form.id + "' ends " + faults.length(form.reach) +
                                 " from the centre of '" + form.from + "', whose wall " +
                                 (to ? "and that of '" + form.to + "' take " : "takes ") +
                                 faults.length(taken) + " of it.");
            found.allowed = "at least a tube's width (" + faults.length(form.width) + ") beyond";
            found.example = to ? "set the domes further apart, or join them"
                               : "reach = \"" + faults.length(taken + 3 * form.width) + "\"";
            continue;
        }
        if (tunnel_fits_dome(form, from, tunnel, faults) && to)
            tunnel_fits_dome(form, *to, tunnel, faults);
    }
}

void check_buttresses(const BuildingForm& building, LayoutFaults& faults) {
    for (const Buttress& table : faults.design().buttresses) {
        const auto of_table =
            std::find_if(building.buttresses.begin(), building.buttresses.end(),
                         [&](const ButtressForm& pier) { return pier.table == table.id; });
        if (of_table == building.buttresses.end())
            continue;
        const ButtressForm& pier = *of_table;
        const DomeForm& dome = *find_dome(building, pier.dome);
        const double r = inside_radius(dome, dome.course_middle(std::max(1, pier.last_course)));
        const double most = std::sqrt(2 * r * dome.width + dome.width * dome.width);
        if (pier.half_width > most + height_tie) {
            Diagnostic& found = faults.add(
                "buttress-too-wide", table.place, "buttress." + table.id,
                "The buttress '" + table.id + "' is " + faults.length(2 * pier.half_width) +
                    " wide: at its corners it stands clear of the ring of '" + dome.id + "'.");
            found.allowed = "at most " + faults.length(2 * most);
            found.example = "width = \"" + faults.length(2 * dome.width) + "\"";
        } else if (table.height > rings_end(dome) + height_tie) {
            Diagnostic& found = faults.add("buttress-too-high", table.place, "buttress." + table.id,
                                           "The buttress '" + table.id + "' ends at " +
                                               faults.length(table.height) +
                                               ", above the last ring of '" + dome.id + "'.");
            found.allowed = "at most " + faults.length(rings_end(dome));
            found.example = "height = \"" + faults.length(dome.springline + 0.4572) + "\"";
        }
    }
}

void check_domes_apart(const BuildingForm& building, LayoutFaults& faults) {
    const auto& domes = building.domes;
    for (std::size_t i = 0; i < domes.size(); ++i)
        for (std::size_t j = i + 1; j < domes.size(); ++j) {
            const DomeForm& a = domes[i];
            const DomeForm& b = domes[j];
            const double apart = (a.at - b.at).norm(), w = std::max(a.width, b.width);
            const double outer_a = base_outside(a), outer_b = base_outside(b);
            const double inner_a = inside_radius(a, 0), inner_b = inside_radius(b, 0);
            const Join* join = nullptr;
            for (const Join& candidate : faults.design().joins)
                if ((candidate.first == a.id && candidate.second == b.id) ||
                    (candidate.first == b.id && candidate.second == a.id))
                    join = &candidate;
            const Dome& second = *find_dome(faults.design(), b.id);
            const std::string both = "'" + a.id + "' and '" + b.id + "'";
            if (!join) {
                if (apart >= outer_a + outer_b + w - height_tie)
                    continue;
                const bool overlapping = apart < outer_a + outer_b;
                Diagnostic& found = faults.add(
                    overlapping ? "domes-overlap" : "domes-touch", second.place, "dome." + b.id,
                    both + (overlapping ? " overlap" : " all but touch") + ": their poles stand " +
                        faults.length(apart) + " apart.");
                found.allowed = "poles at least " + faults.length(outer_a + outer_b + w) +
                                " apart, or a [join] that says whose wall stays";
                found.example = "[join." + a.id.substr(0, 12) + "] between = [\"" + a.id +
                                "\", \"" + b.id + "\"], keep = \"" + a.id + "\"";
                continue;
            }
            const std::string subject = "join." + join->id;
            const bool open = join->keep.empty();
            const double least = std::max(outer_a, outer_b);
            const double most = open ? inner_a + inner_b - w : outer_a + outer_b - w / 2;
            if (apart <= most + height_tie && apart >= least - height_tie)
                continue;
            const bool too_far = apart > most;
            Diagnostic& found =
                faults.add(too_far ? "join-does-not-meet" : "join-swallows", join->place, subject,
                           both +
                               (too_far ? (open ? " do not open to each other" : " hardly meet")
                                        : " stand within each other") +
                               ": their poles stand " + faults.length(apart) + " apart.");
            found.allowed =
                "poles " + faults.length(least) + " to " + faults.length(most) + " apart";
            found.example = "poles " + faults.length((least + most) / 2) + " apart";
        }
}

void check_meetings(const BuildingForm& building, LayoutFaults& faults) {
    const std::vector<Outwork> works = outworks_of(building, faults.design());
    for (std::size_t i = 0; i < works.size(); ++i) {
        for (const DomeForm& dome : building.domes)
            if (!belongs(works[i], dome.id) &&
                overlap(works[i].box, dome.at, base_outside(dome) + least_slit))
                meets(works[i], dome.id, overlap(works[i].box, dome.at, base_outside(dome)),
                      faults);
        for (std::size_t j = i + 1; j < works.size(); ++j)
            if (!both_tunnels_of_one_dome(works[i], works[j]) &&
                overlap(wider(works[i].box), works[j].box))
                meets(works[j], works[i].id, overlap(works[i].box, works[j].box), faults);
    }
    // An opening looks into the open: within 1.5 m of its wall stands nothing else.
    constexpr double reach = 1.5;
    for (const OpeningForm& form : building.openings) {
        const DomeForm* dome = find_dome(building, form.in);
        const TunnelForm* tunnel = find_tunnel(building, form.in);
        if ((!dome && !tunnel) || form.niche_depth > 0)
            continue;
        const double from = dome                           ? base_outside(*dome)
                            : form.side == TunnelSide::end ? tunnel->reach
                                                           : outer_half_width(*tunnel, 0);
        const Box before{form.origin,  form.axis,        from,
                         from + reach, -form.half_width, form.half_width};
        const Opening& opening = *find_opening(faults.design(), form.id);
        const auto blocked = [&](const std::string& by) {
            Diagnostic& found =
                faults.add("opening-blocked", dome ? opening.bearing_place : opening.place,
                           "opening." + form.id,
                           "'" + form.id + "' opens onto '" + by + "' within " +
                               faults.length(reach) + " of its wall.");
            found.allowed = "nothing within " + faults.length(reach) +
                            " before an opening, and no joined dome's wall beside it";
            found.example = dome ? "turn its bearing" : "move it, or turn what stands before it";
        };
        for (const DomeForm& other : building.domes) {
            const bool joined = std::any_of(
                building.joins.begin(), building.joins.end(), [&](const JoinForm& join) {
                    return dome && ((join.first == dome->id && join.second == other.id) ||
                                    (join.first == other.id && join.second == dome->id));
                });
            if (&other != dome && (joined ? !faults.has("opening." + form.id) &&
                                                runs_along_wall(form, *dome, other, building)
                                          : overlap(before, other.at, base_outside(other))))
                blocked(other.id);
        }
        for (const Outwork& work : works)
            if (work.id != form.in && !(dome && belongs(work, dome->id)) &&
                overlap(before, work.box))
                blocked(work.id);
    }
}

} // namespace coilwright
