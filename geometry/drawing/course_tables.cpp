#include "geometry/drawing/course_tables.hpp"

#include "geometry/drawing/figures.hpp"
#include "geometry/drawing/plan_view.hpp"
#include "geometry/plan/tubes.hpp"
#include "geometry/plan/wire.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

namespace coilwright {
namespace {

std::string change_text(const Drafting& drafting, double change) {
    const std::string text = fine_length_text(std::abs(change), drafting.unit());
    if (text == fine_length_text(0, drafting.unit()))
        return "no change";
    return text + (change < 0 ? " shorter" : " longer");
}

Fact wire_fact(const Drafting& drafting, const CoursePart& part, const std::string& tube) {
    const double length = part_wire(part);
    if (length <= 0)
        return {"Wire on top", "none"};
    const int strands = wire_strands(drafting.plan.design, tube);
    return {"Wire on top, " + count_text(strands, "strand", "strands"),
            supply_text(length, drafting.unit())};
}

Fact top_fact(const Drafting& drafting, const Course& course) {
    if (course.top < -1e-6)
        return {course.top_measured ? "Its top, as measured below 0"
                                    : "Its top, below the bench mark (0)",
                drafting.length(-course.top)};
    return {course.top_measured ? "Its top, as measured" : "Its top, on the rod",
            drafting.length(course.top)};
}

Fact fill_fact(const Drafting& drafting, const CoursePart& part) {
    const double fill = part_fill(part, drafting.schedule().course_height) + pieces_fill(part);
    const std::string buckets = bucket_name(drafting.unit()) + " buckets";
    return {drafting.unit() == DisplayUnit::feet ? "Tamped fill, " + buckets
                                                 : "Tamped fill (" + buckets + ")",
            fill_text(fill, drafting.unit())};
}

/// What to change a setting by where the course lies off the rod; `change` gives it for a height.
void add_changes(std::vector<Fact>& facts, const Drafting& drafting, const std::string& what,
                 const std::function<double(double)>& change) {
    const bool feet = drafting.unit() == DisplayUnit::feet;
    const double off = feet ? 0.0127 : 0.010;
    const std::string by = feet ? "1/2 in" : "10 mm";
    const double high = change(off), low = change(-off);
    if (change_text(drafting, high) == change_text(drafting, low)) {
        facts.push_back({"If it lies off the rod", what + ": no change"});
        return;
    }
    facts.push_back({"Per " + by + " above rod: " + what, change_text(drafting, high)});
    facts.push_back({"Per " + by + " below rod: " + what, change_text(drafting, low)});
}

std::string datum_text(const Drafting& drafting, const DomeForm& dome) {
    const std::string element = datum_element(drafting.plan, dome);
    const std::string bearing = degrees_text(turned_into_circle(dome.datum.degrees));
    return element.empty() ? "north" : element + ", " + bearing;
}

/// Of a ring without cuts, where its first tube starts: "4 ft 2 in left" of the datum mark, along
/// the inside face; of a second wythe, whose inside none can reach, along the outside.
std::string start_text(const Drafting& drafting, const DomeForm& dome, const Ring& ring) {
    const double clockwise = clockwise_degrees(dome.datum, {ring.runs[0].start_bearing});
    const double shorter = std::min(clockwise, 360 - clockwise) * radians_per_degree;
    const double arc = shorter * (ring.wythe > 1 ? ring.outside_radius : ring.inside_radius);
    if (arc < 0.0005)
        return "at the datum mark";
    return drafting.length(arc) + (clockwise <= 180 ? " right" : " left");
}

} // namespace

std::vector<Fact> course_facts(const Drafting& drafting, const CoursePart& part,
                               const CoursePart* below_part) {
    const Design& design = drafting.plan.design;
    const Course& course = *part.course;
    const DomeForm& dome = *part.dome;
    const Ring& ring = *part.rings.front();
    const Ring* below = below_part ? below_part->rings.front() : nullptr;
    std::vector<Fact> facts;
    if (several_parts(drafting.schedule()))
        facts.push_back({"Datum", datum_text(drafting, dome)});
    if (dome.lower_width > 0 && ring.kind == RingKind::ring)
        facts.push_back({"Tube '" + ring.tube + "', tamped width", drafting.length(ring.width)});
    if (ring.kind == RingKind::ring && design.course.tamp_gap > 0)
        facts.push_back(
            {"Lay outside the setting, then tamp", drafting.length(design.course.tamp_gap)});
    facts.push_back(top_fact(drafting, course));
    if (ring.kind == RingKind::ring)
        for (const Ring* one : part.rings)
            if (one->runs.size() == 1 && one->runs[0].closed && !one->runs[0].tubes.empty())
                facts.push_back({one->runs[0].tubes[0].id +
                                     (one->wythe > 1 ? " starts, outside face" : " starts, arc"),
                                 start_text(drafting, dome, *one)});
    if (ring.kind == RingKind::ring) {
        if (below)
            facts.push_back({"Step-in from course " + std::to_string(course.number - 1),
                             step_text(ring.step_in, drafting.unit())});
        double on_trench = 0;
        for (const Ring* one : part.rings)
            on_trench += one->width;
        facts.push_back({below                   ? "Bearing on the course below"
                         : part.rings.size() > 1 ? "Tamped width on the trench, both rings"
                                                 : "Tamped width on the trench",
                         drafting.length(below ? ring.bearing_width : on_trench)});
    }
    if (ring.kind == RingKind::cap && !ring.runs.empty() && !ring.runs.front().tubes.empty()) {
        const double bags = static_cast<double>(ring.runs.front().tubes.size());
        facts.push_back({"Width of each bag", drafting.length(2 * ring.outside_radius / bags)});
    }
    if (ring.kind == RingKind::cap && below && below->kind == RingKind::ring) {
        facts.push_back({"Hole that it closes, across", drafting.length(2 * below->inside_radius)});
        facts.push_back({"Bearing round the hole", drafting.length(ring.bearing_width)});
    }
    if (ring.kind == RingKind::cap && below)
        facts.push_back({"Its edge, in from that of course " + std::to_string(course.number - 1),
                         drafting.length(below->outside_radius - ring.outside_radius)});
    facts.push_back(fill_fact(drafting, part));
    facts.push_back(wire_fact(drafting, part, ring.tube));
    if (ring.kind == RingKind::ring)
        add_changes(facts, drafting, design.compass.arm == CompassArm::chain ? "chain" : "arm",
                    [&](double off) { return compass_change(ring, course, dome, design, off); });
    return facts;
}

std::vector<Fact> tunnel_facts(const Drafting& drafting, const CoursePart& part) {
    const TunnelForm& tunnel = *part.tunnel;
    const Course& course = *part.course;
    const bool crown = course.number > tunnel.side_courses;
    std::vector<Fact> facts{{"Axis, from the pole of '" + tunnel.from + "'",
                             degrees_text(turned_into_circle(tunnel.bearing.degrees))},
                            top_fact(drafting, course)};
    const auto half = [&](double z) {
        return crown ? outer_half_width(tunnel, z) : inner_half_width(tunnel, z);
    };
    if (course.number > 1 && !crown)
        facts.push_back(
            {"Step-in from course " + std::to_string(course.number - 1),
             step_text(half(tunnel.course_middle(course.number - 1)) - half(course.middle),
                       drafting.unit())});
    if (tunnel.to.empty())
        facts.push_back(
            {"Its end, from the pole of '" + tunnel.from + "'", drafting.length(tunnel.reach)});
    if (tunnel.end_wall && !crown)
        facts.push_back(
            {"Inside face of the end wall", drafting.length(tunnel.reach - tunnel.width)});
    facts.push_back(fill_fact(drafting, part));
    facts.push_back(wire_fact(drafting, part, tunnel.tube));
    if (!crown)
        add_changes(facts, drafting, "gauge",
                    [&](double off) { return half(course.middle + off) - half(course.middle); });
    return facts;
}

Table tube_table(const Drafting& drafting, const CoursePart& part) {
    Table table;
    table.columns = {
        {{part.rings.front()->kind == RingKind::cap ? "Bag" : "Tube"}, Align::left, true},
        {{"Along centre"}, Align::right, false},
        {{"Cut"}, Align::right, true}};
    for (const Ring* ring : part.rings)
        for (const Run& run : ring->runs)
            for (const LaidTube& tube : run.tubes)
                table.rows.push_back({tube.id + (tube.lap_short ? "*" : ""),
                                      drafting.length(tube.length),
                                      drafting.length(tube.cut_length)});
    for (const Ring* ring : part.rings)
        for (const Piece& piece : ring->pieces)
            table.rows.push_back({piece_name(*ring, piece), drafting.length(piece.length),
                                  drafting.length(piece.cut_length)});
    return table;
}

Table in_two(const Table& table) {
    Table two;
    two.columns = table.columns;
    two.columns.push_back({{""}, Align::left, false});
    two.columns.insert(two.columns.end(), table.columns.begin(), table.columns.end());
    const std::size_t half = (table.rows.size() + 1) / 2;
    for (std::size_t i = 0; i < half; ++i) {
        std::vector<std::string> row = table.rows[i];
        row.emplace_back();
        if (half + i < table.rows.size())
            row.insert(row.end(), table.rows[half + i].begin(), table.rows[half + i].end());
        row.resize(two.columns.size());
        two.rows.push_back(std::move(row));
    }
    return two;
}

std::string short_tube_remark(const CoursePart& part) {
    std::string names;
    const auto add = [&](const LaidTube& tube, double width) {
        if (tube.length < width - 1e-6)
            names += (names.empty() ? "" : ", ") + tube.id;
    };
    for (const Ring* ring : part.rings)
        if (ring->kind == RingKind::ring)
            for (const Run& run : ring->runs)
                for (const LaidTube& tube : run.tubes)
                    add(tube, ring->width);
    for (const Straight* straight : part.straights)
        for (const LaidTube& tube : straight->tubes)
            add(tube, straight->width);
    return names.empty() ? names
                         : names + ": shorter than a tube is wide. Fold each into one bag and tamp "
                                   "it tight.";
}

std::string piece_name(const Ring& ring, const Piece& piece) {
    std::string name = ring.wythe > 1 ? piece.id + " outer" : piece.id;
    return piece.kind == PieceKind::wedge ? name : name + " " + piece.of;
}

std::vector<std::string> tube_remarks(const Drafting& drafting, const CoursePart& part) {
    const Ring& ring = *part.rings.front();
    const CourseRules& rules = drafting.plan.design.course;
    std::vector<std::string> remarks;
    std::string cut = "Cut = ";
    if (ring.kind == RingKind::cap)
        cut += "longer edge";
    else
        cut += rules.curve == CutCurve::outer ? "outer edge" : "centreline";
    remarks.push_back(cut + " + " + drafting.length(rules.end_allowance) + " at each end.");
    if (part.rings.size() > 1) {
        std::string two = "Two rings: lay the inner one to the compass and tamp it, then the outer "
                          "against it.";
        if (!part.rings.back()->cuts.empty())
            two += " Letters with a 2 are of the outer ring: their arcs run along its outside face "
                   "from the datum line.";
        remarks.push_back(two);
    }
    if (const std::string remark = short_tube_remark(part); !remark.empty())
        remarks.push_back(remark);
    for (const Ring* one : part.rings)
        if (std::any_of(one->pieces.begin(), one->pieces.end(), [](const Piece& piece) {
                return piece.kind == PieceKind::fan_bag || piece.kind == PieceKind::keystone;
            }))
            remarks.push_back(
                "Of a fan's bag the length of tube that holds its fill is given: fold "
                "it to a block on the form, as deep as the fan, through the wall.");
    for (const OpeningPlan* opening : openings_of(drafting.schedule(), ring.dome)) {
        const bool cuts = std::any_of(ring.cuts.begin(), ring.cuts.end(),
                                      [&](const Cut& one) { return one.by == opening->form.id; });
        const double back = ring.outside_radius - ring.inside_radius - opening->form.niche_depth;
        if (cuts && opening->form.niche_depth > 0 && back > 0)
            remarks.push_back("N1 " + opening->form.id + " closes the wall behind niche '" +
                              opening->form.id + "', " + drafting.length(back) +
                              " thick, folded to fit.");
    }
    for (const Ring* one : part.rings)
        for (const Piece& piece : one->pieces)
            if (piece.kind == PieceKind::wedge)
                remarks.push_back(piece_name(*one, piece) + ": the wedge between '" + piece.of +
                                  "' and '" + piece.other + "', one folded bag.");
    for (const Ring* one : part.rings)
        for (const Run& run : one->runs)
            for (const LaidTube& tube : run.tubes)
                if (tube.lap_short) {
                    remarks.push_back(
                        "* The joint at its clockwise end lies nearer than " +
                        drafting.length(rules.joint_lap) +
                        " to a joint below or to a cut, here or in the course above or "
                        "below: shift it if you can.");
                    return remarks;
                }
    return remarks;
}

Table cut_table(const Drafting& drafting, const CoursePart& part) {
    const Schedule& schedule = drafting.schedule();
    const bool plain = schedule.building.tunnels.empty() && schedule.building.buttresses.empty() &&
                       schedule.building.joins.empty();
    Table table;
    table.columns = {{{"Cut"}, Align::centre, true},
                     {{plain ? "Opening" : "Cut by"}, Align::left, false},
                     {{"Its side"}, Align::left, false},
                     {{"Turn from", "the datum"}, Align::left, true},
                     {{"Bearing", "from datum"}, Align::right, false},
                     {{"Arc on the", "inside face"}, Align::right, true},
                     {{"Chord from", "datum mark"}, Align::right, true},
                     {{"Half-width", "of hole"}, Align::right, false}};
    for (const Ring* ring : part.rings)
        for (const Cut& cut : ring->cuts) {
            // The inside face of an outer ring lies against the inner one: its outside is measured.
            const bool outer = ring->wythe > 1;
            const double clockwise = clockwise_degrees(
                part.dome->datum, {outer ? cut.outside_bearing : cut.inside_bearing});
            const double shorter = std::min(clockwise, 360 - clockwise);
            const double turn = shorter * radians_per_degree, radius = ring->outside_radius;
            // A ring that stops at another dome follows its curve: there is no hole of one width.
            const bool curved = find_dome(schedule.building, cut.by) != nullptr;
            table.rows.push_back(
                {cut_letter(*ring, cut), cut.by, cut.side == Side::left ? "left" : "right",
                 cut.short_way == Side::left ? "left" : "right", degrees_text(shorter),
                 outer ? drafting.length(radius * turn) + " outside"
                       : drafting.length(cut.short_arc),
                 outer ? "–" : drafting.length(cut.chord), // the wall lies in its way
                 curved ? "curved" : drafting.length(cut.half_width)});
        }
    return table;
}

namespace {

/// Of a disc of the cap: whether its bags lie square to the datum line.
bool bags_across_datum(const CoursePart& part) {
    const Ring& ring = *part.rings.front();
    const double turn =
        ring.runs.empty() ? 0
                          : clockwise_degrees(part.dome->datum, {ring.runs.front().start_bearing});
    return std::abs(std::abs(turn - 180) - 90) < 1;
}

} // namespace

std::string plan_legend(const Drafting& drafting, const CoursePart& part, const CoursePart* below,
                        const Scale& scale) {
    const BuildingForm& building = drafting.schedule().building;
    std::string text = "From above, north up, " + scale.text + ".";
    if (part.rings.front()->kind == RingKind::cap)
        return text + " Grey: the bags, side by side " +
               (bags_across_datum(part) ? "across" : "along") + " the datum line.";
    text += " Triangle: datum mark.";
    const auto any = [](const std::vector<const Ring*>& rings, auto has) {
        return std::any_of(rings.begin(), rings.end(), has);
    };
    if (any(part.rings, [](const Ring* ring) { return !ring->cuts.empty(); }))
        text += part.rings.size() > 1
                    ? " Letters: cuts at the inside face, with a 2 at the outside."
                    : " Letters: cuts at the inside face.";
    if (below && any(below->rings, [](const Ring* ring) { return !joint_bearings(*ring).empty(); }))
        text += " Dashed ticks: joints below.";
    if (below && below->rings.front()->kind == RingKind::ring &&
        scale.on_paper(part.rings.front()->step_in) >= least_step_shown)
        text += " Dashed circle: inside face below.";
    if (building.domes.size() + building.tunnels.size() > 1)
        text += " Thin lines: wall on other sheets.";
    return text;
}

} // namespace coilwright
