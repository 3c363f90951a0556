#include "geometry/drawing/element_tables.hpp"

#include "geometry/drawing/figures.hpp"
#include "geometry/plan/ring_gaps.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace coilwright {
namespace {

const Cut* cut_by(const CoursePart& part, const std::string& id) {
    for (const Ring* ring : part.rings)
        for (const Cut& cut : ring->cuts)
            if (cut.by == id)
                return &cut;
    return nullptr;
}

bool lays_straights(const CoursePart& part, const std::string& id) {
    return std::any_of(part.course->straights.begin(), part.course->straights.end(),
                       [&](const Straight& straight) { return straight.of == id; });
}

/// How the ring of a course meets an element; empty where it does not.
std::string bond_with_tunnel(const CoursePart& part, const TunnelForm& tunnel) {
    if (!lays_straights(part, tunnel.id))
        return {};
    if (tunnel_runs_in(tunnel, *part.dome, part.course->number))
        return "tunnel runs in, ring stops at it";
    return cut_by(part, tunnel.id) ? "ring runs to the hole, tunnel butts on it"
                                   : "ring runs on, tunnel butts on it";
}

std::string bond_with_pier(const CoursePart& part, const ButtressForm& pier) {
    if (!lays_straights(part, pier.id))
        return {};
    if (pier.reveal)
        return "ring runs on, reveal butts on it";
    return cut_by(part, pier.id) ? "buttress runs in, ring stops at it"
                                 : "ring runs on, buttress butts on it";
}

std::string bond_with_dome(const Schedule& schedule, const CoursePart& part,
                           const DomeForm& other) {
    const auto theirs = part_in(schedule, part.course->number, other.id);
    if (!theirs)
        return {};
    if (cut_by(part, other.id)) {
        switch (join_effect(schedule.building, part.dome->id, other.id)) {
        case JoinEffect::stops_at_wall:
            return ring_runs_in(schedule.building, *part.dome, other, part.course->number)
                       ? "this ring runs in, that one stops at it"
                       : "ring butts on its outside";
        case JoinEffect::opens_to_room:
            return runs_through(*part.dome, other, part.course->number)
                       ? "ring runs through the corner"
                       : "ring butts on it at the corner";
        case JoinEffect::none:
            return "its ring runs in, ring stops at it";
        }
    }
    return cut_by(*theirs, part.dome->id) ? "ring runs on, it butts on this" : std::string{};
}

struct BondRow {
    std::string where, now, below;
};

std::vector<BondRow> bonds(const Drafting& drafting, const CoursePart& part) {
    const Schedule& schedule = drafting.schedule();
    const BuildingForm& building = schedule.building;
    const auto below = part_in(schedule, part.course->number - 1, part.id());
    std::vector<BondRow> found;
    const auto add = [&](const std::string& where, const std::string& now,
                         const std::string& before) {
        if (!now.empty())
            found.push_back({where, now, before.empty() ? "–" : before});
    };
    for (const TunnelForm& tunnel : building.tunnels)
        if (tunnel.from == part.dome->id || tunnel.to == part.dome->id)
            add("tunnel '" + tunnel.id + "'", bond_with_tunnel(part, tunnel),
                below ? bond_with_tunnel(*below, tunnel) : "");
    for (const DomeForm& other : building.domes)
        if (&other != part.dome)
            add("dome '" + other.id + "'", bond_with_dome(schedule, part, other),
                below ? bond_with_dome(schedule, *below, other) : "");
    std::vector<BondRow> piers;
    for (const ButtressForm& pier : building.buttresses)
        if (pier.dome == part.dome->id)
            if (const std::string now = bond_with_pier(part, pier); !now.empty()) {
                const std::string before = below ? bond_with_pier(*below, pier) : "";
                piers.push_back({"'" + pier.id + "'", now, before.empty() ? "–" : before});
            }
    const bool alike = std::all_of(piers.begin(), piers.end(), [&](const BondRow& bond) {
        return bond.now == piers.front().now && bond.below == piers.front().below;
    });
    if (piers.size() > 1 && alike)
        piers = {{piers.front().now.find("reveal") != std::string::npos ? "all reveals"
                                                                        : "all buttresses",
                  piers.front().now, piers.front().below}};
    found.insert(found.end(), piers.begin(), piers.end());
    return found;
}

/// Left or right of the datum, and how far.
std::vector<std::string> from_datum(const Drafting& drafting, const CoursePart& part,
                                    Bearing bearing) {
    const double clockwise = clockwise_degrees(part.dome->datum, bearing);
    const double shorter = std::min(clockwise, 360 - clockwise);
    const double inside = part.rings.front()->inside_radius;
    return {clockwise <= 180 ? "right" : "left", degrees_text(shorter),
            drafting.length(inside * shorter * radians_per_degree)};
}

} // namespace

Table bond_table(const Drafting& drafting, const CoursePart& part) {
    const int below = part.course->number - 1;
    Table table;
    table.columns = {{{"Bond with"}, Align::left, true}, {{"This course"}, Align::left, true}};
    if (below > 0)
        table.columns.push_back({{"Course " + std::to_string(below)}, Align::left, false});
    for (const BondRow& bond : bonds(drafting, part)) {
        table.rows.push_back({bond.where, bond.now});
        if (below > 0)
            table.rows.back().push_back(bond.below);
    }
    return table;
}

std::string bond_remark(const Drafting& drafting, const CoursePart& part) {
    bool tunnels_in = false, piers_in = false, butts = false, corner = false;
    std::string text;
    for (const BondRow& bond : bonds(drafting, part)) {
        const auto says = [&](const char* words) {
            return bond.now.find(words) != std::string::npos;
        };
        tunnels_in = tunnels_in || says("tunnel runs in");
        piers_in = piers_in || says("buttress runs in");
        butts = butts || says("tunnel butts on it") || says("buttress butts on it");
        corner = corner || says("corner");
        if (says("ring butts on its outside")) // whose wall is kept goes up first...
            text += "Lay " + bond.where + " before this ring. ";
        if (says("its ring runs in")) // ...but where the other is bonded into it
            text += "Lay " + bond.where + " before this ring. ";
        if (says("this ring runs in"))
            text += "Lay this ring before " + bond.where + ". ";
    }
    if (tunnels_in && piers_in)
        text += "Lay what runs in first, the tunnel's walls before the buttresses, then the ring. ";
    else if (tunnels_in || piers_in)
        text += "Lay what runs in first, then the ring. ";
    else if (butts)
        text += "Lay the ring first, then what butts on it. ";
    if (corner)
        text += "Two rings that cross share the corner by turns: lay the one that runs through "
                "first. ";
    if (!text.empty())
        text.pop_back();
    return text;
}

Table pier_table(const Drafting& drafting, const CoursePart& part) {
    Table table;
    table.columns = {{{"Buttress"}, Align::left, true},
                     {{"Turn from", "the datum"}, Align::left, true},
                     {{"Its axis", "from datum"}, Align::right, false},
                     {{"Arc on the", "inside face"}, Align::right, true},
                     {{"Tubes"}, Align::left, true},
                     {{"Each along", "centre"}, Align::right, false},
                     {{"Cut"}, Align::right, true},
                     {{"Ends, from", "pole's axis"}, Align::right, false}};
    for (const ButtressForm& pier : drafting.schedule().building.buttresses) {
        // Tubes of like length share a row.
        std::map<std::pair<std::string, std::string>, std::string> rows;
        for (const Straight* straight : part.straights)
            if (straight->of == pier.id)
                for (const LaidTube& tube : straight->tubes) {
                    std::string& ids =
                        rows[{drafting.length(tube.length), drafting.length(tube.cut_length)}];
                    ids += (ids.empty() ? "" : ", ") + tube.id;
                }
        for (const auto& [lengths, ids] : rows) {
            std::vector<std::string> row{pier.id};
            for (const std::string& cell : from_datum(drafting, part, pier.bearing))
                row.push_back(cell);
            for (const std::string& cell : {ids, lengths.first, lengths.second,
                                            drafting.length(outer_face(pier, part.course->middle))})
                row.push_back(cell);
            table.rows.push_back(std::move(row));
        }
    }
    return table;
}

Table sleeve_table(const Drafting& drafting, const CoursePart& part) {
    Table table;
    const auto on_rod = [&](const SleevePlan& sleeve) {
        return (sleeve.stops_tubes ? "its centre " : "the joint under it ") +
               rod_text(sleeve.mark(), drafting.unit());
    };
    if (part.tunnel) {
        table.columns = {
            {{"Sleeve"}, Align::left, true},
            {{"Wall"}, Align::left, true},
            {{"Along the axis from", "pole of '" + part.tunnel->from + "'"}, Align::right, true},
            {{"On the rod"}, Align::right, true},
            {{"Across"}, Align::right, false}};
        for (const SleevePlan* sleeve : sleeves_of(drafting.plan, part))
            table.rows.push_back({sleeve->form.id, word(sleeve->form.side),
                                  drafting.length(sleeve->form.along), on_rod(*sleeve),
                                  drafting.length(sleeve->form.diameter)});
        return table;
    }
    table.columns = {{{"Sleeve"}, Align::left, true},
                     {{"Turn from", "the datum"}, Align::left, true},
                     {{"Bearing", "from datum"}, Align::right, false},
                     {{"Arc on the", "inside face"}, Align::right, true},
                     {{"On the rod"}, Align::right, true},
                     {{"Across"}, Align::right, false}};
    for (const SleevePlan* sleeve : sleeves_of(drafting.plan, part)) {
        std::vector<std::string> row{sleeve->form.id};
        for (const std::string& cell : from_datum(drafting, part, sleeve->form.bearing))
            row.push_back(cell);
        row.push_back(on_rod(*sleeve));
        row.push_back(drafting.length(sleeve->form.diameter));
        table.rows.push_back(std::move(row));
    }
    return table;
}

namespace {

std::string part_name(StraightPart part) {
    switch (part) {
    case StraightPart::left:
        return "left wall";
    case StraightPart::right:
        return "right wall";
    case StraightPart::crown:
        return "crown";
    case StraightPart::end:
        return "end wall";
    case StraightPart::pier:
        return "buttress";
    }
    return {};
}

/// A distance along the axis; across it, left or right.
std::string place_text(const Drafting& drafting, const Straight& straight, double at) {
    if (straight.part != StraightPart::end)
        return drafting.length(at);
    if (std::abs(at) < 1e-6)
        return "axis";
    return drafting.length(std::abs(at)) + (at < 0 ? " left" : " right");
}

std::string stop_name(const TunnelForm& tunnel, const Straight& straight, const std::string& by,
                      double at) {
    if (!by.empty())
        return "'" + by + "'";
    if (straight.part == StraightPart::end)
        return "side wall";
    return tunnel.end_wall && at < tunnel.reach - 1e-6 ? "end wall" : "end";
}

} // namespace

Table straight_table(const Drafting& drafting, const CoursePart& part) {
    Table table;
    table.columns = {{{"Tube"}, Align::left, true},
                     {{"Part"}, Align::left, false},
                     {{"From"}, Align::left, false},
                     {{"at"}, Align::right, true},
                     {{"To"}, Align::left, false},
                     {{"at"}, Align::right, true},
                     {{"Along", "centre"}, Align::right, false},
                     {{"Cut"}, Align::right, true}};
    for (const Straight* straight : part.straights) {
        double from = straight->start_distance;
        for (const LaidTube& tube : straight->tubes) {
            const bool first = &tube == &straight->tubes.front();
            const bool last = &tube == &straight->tubes.back();
            const double to = last ? straight->end_distance : from + tube.length;
            table.rows.push_back(
                {tube.id + (tube.lap_short ? "*" : ""), part_name(straight->part),
                 first ? stop_name(*part.tunnel, *straight, straight->start_by, from) : "joint",
                 place_text(drafting, *straight, from),
                 last ? stop_name(*part.tunnel, *straight, straight->end_by, to) : "joint",
                 place_text(drafting, *straight, to), drafting.length(tube.length),
                 drafting.length(tube.cut_length)});
            from = to;
        }
    }
    return table;
}

} // namespace coilwright
