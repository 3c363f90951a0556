#include "geometry/drawing/course_tables.hpp"

#include "geometry/drawing/figures.hpp"
#include "geometry/plan/tubes.hpp"
#include "geometry/plan/wire.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {
namespace {

std::string change_text(const Drafting& drafting, double change) {
    const std::string text = fine_length_text(std::abs(change), drafting.unit());
    if (text == fine_length_text(0, drafting.unit()))
        return "no change";
    return text + (change < 0 ? " shorter" : " longer");
}

std::string step_text(const Drafting& drafting, double step) {
    if (std::abs(step) < 5e-5)
        return "none, plumb";
    const std::string text = drafting.length(step);
    if (text != drafting.length(0))
        return text;
    return drafting.unit() == DisplayUnit::feet ? "under 1/8 in" : "under 1 mm";
}

Fact wire_fact(const Drafting& drafting, const Course& course, const Ring& ring) {
    const Dome* dome = find_dome(drafting.plan.design, ring.dome);
    if (course.wire_length <= 0 || !dome)
        return {"Wire on top", "none"};
    const int strands = wire_strands(drafting.plan.design, dome->tube);
    const std::string whose = course.rings.size() > 1 ? ", all domes" : "";
    return {"Wire on top, " + count_text(strands, "strand", "strands") + whose,
            supply_text(course.wire_length, drafting.unit())};
}

} // namespace

std::vector<Fact> course_facts(const Drafting& drafting, const Course& course, const Ring& ring,
                               const Ring* below, const DomeForm& dome) {
    const Design& design = drafting.plan.design;
    std::vector<Fact> facts;
    if (ring.kind == RingKind::ring && design.course.tamp_gap > 0)
        facts.push_back(
            {"Lay outside the setting, then tamp", drafting.length(design.course.tamp_gap)});
    if (course.top < -1e-6)
        facts.push_back({"Its top, below the bench mark (0)", drafting.length(-course.top)});
    else
        facts.push_back({"Its top, on the rod", drafting.length(course.top)});
    if (ring.kind == RingKind::ring) {
        if (below)
            facts.push_back({"Step-in from course " + std::to_string(course.number - 1),
                             step_text(drafting, ring.step_in)});
        facts.push_back({below ? "Bearing on the course below" : "Tamped width on the trench",
                         drafting.length(ring.bearing_width)});
    }
    if (ring.kind == RingKind::cap && !ring.runs.empty() && !ring.runs.front().tubes.empty()) {
        const double bags = static_cast<double>(ring.runs.front().tubes.size());
        facts.push_back({"Width of each bag", drafting.length(2 * ring.outside_radius / bags)});
    }
    if (ring.kind == RingKind::cap && below)
        facts.push_back({"Its edge, in from that of course " + std::to_string(course.number - 1),
                         drafting.length(below->outside_radius - ring.outside_radius)});
    const double fill = ring_fill(course, ring, drafting.schedule());
    const std::string buckets = buckets_text(fill), litres = litres_text(fill) + " L";
    if (drafting.unit() == DisplayUnit::feet)
        facts.push_back({"Tamped fill, 5 gal buckets", buckets + " (" + litres + ")"});
    else
        facts.push_back({"Tamped fill (5 gal buckets)", litres + " (" + buckets + ")"});
    facts.push_back(wire_fact(drafting, course, ring));
    const double off = drafting.unit() == DisplayUnit::feet ? 0.0127 : 0.010;
    const std::string by = drafting.unit() == DisplayUnit::feet ? "1/2 in" : "10 mm";
    if (ring.kind == RingKind::ring) {
        const double high = compass_change(ring, course, dome, design, off);
        const double low = compass_change(ring, course, dome, design, -off);
        const std::string arm = design.compass.arm == CompassArm::chain ? "chain" : "arm";
        if (change_text(drafting, high) == change_text(drafting, low)) {
            facts.push_back({"If it lies off the rod", arm + ": no change"});
        } else {
            facts.push_back({"Per " + by + " above rod: " + arm, change_text(drafting, high)});
            facts.push_back({"Per " + by + " below rod: " + arm, change_text(drafting, low)});
        }
    }
    return facts;
}

namespace {

/// A fact's row: the value on the right, its name beside it in one line or more.
struct FactRow {
    std::vector<std::string> name;
    double name_size = 0, value_size = 0, height = 0;
};

FactRow fact_row(const Fact& fact, double width, double size, const MeasureText& measure) {
    FactRow row;
    row.name_size = std::max(sizes::small, 0.88 * size);
    row.value_size =
        fitting_size(fact.value, width * 0.62, 1.12 * size, sizes::small, true, measure);
    const double value_width = measure(fact.value, row.value_size, true).width;
    row.name = wrapped(fact.name, std::max(width * 0.3, width - value_width - 2.5), row.name_size,
                       false, measure, 3);
    row.height = std::max(1.65 * size, lines_height(row.name.size(), row.name_size) + 0.5 * size);
    return row;
}

} // namespace

double facts_height(const std::vector<Fact>& facts, double width, double size,
                    const MeasureText& measure) {
    double height = 0;
    for (const Fact& fact : facts)
        height += fact_row(fact, width, size, measure).height;
    return height;
}

double add_facts(Sheet& sheet, Vec2 top_left, double width, const std::vector<Fact>& facts,
                 double size, const MeasureText& measure) {
    double y = top_left.y();
    const double right = top_left.x() + width;
    for (const Fact& fact : facts) {
        const FactRow row = fact_row(fact, width, size, measure);
        const double text_height = lines_height(row.name.size(), row.name_size);
        add_lines(sheet, {top_left.x(), y - (row.height - text_height) / 2 + 0.1}, row.name,
                  row.name_size, false);
        add_text(sheet, {right, y - row.height / 2 - 0.365 * row.value_size},
                 shortened(fact.value, width * 0.7, row.value_size, true, measure), row.value_size,
                 true, Align::right);
        y -= row.height;
        add_line(sheet, {top_left.x(), y}, {right, y}, pens::fine);
    }
    return y;
}

Table tube_table(const Drafting& drafting, const Ring& ring) {
    Table table;
    table.columns = {{{ring.kind == RingKind::cap ? "Bag" : "Tube"}, Align::left, true},
                     {{"Along centre"}, Align::right, false},
                     {{"Cut"}, Align::right, true}};
    for (const Run& run : ring.runs)
        for (const LaidTube& tube : run.tubes)
            table.rows.push_back({tube.id + (tube.lap_short ? "*" : ""),
                                  drafting.length(tube.length), drafting.length(tube.cut_length)});
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

std::vector<std::string> tube_remarks(const Drafting& drafting, const Ring& ring) {
    const CourseRules& rules = drafting.plan.design.course;
    std::vector<std::string> remarks;
    std::string cut = "Cut = ";
    if (ring.kind == RingKind::cap)
        cut += "length";
    else
        cut += rules.curve == CutCurve::outer ? "outer edge" : "centreline";
    remarks.push_back(cut + " + " + drafting.length(rules.end_allowance) + " at each end.");
    for (const Run& run : ring.runs)
        for (const LaidTube& tube : run.tubes)
            if (tube.lap_short) {
                remarks.push_back("* The joint at its clockwise end lies nearer than " +
                                  drafting.length(rules.joint_lap) +
                                  " to a joint below or to a cut: shift it if you can.");
                return remarks;
            }
    return remarks;
}

Table cut_table(const Drafting& drafting, const Ring& ring, const DomeForm& dome) {
    Table table;
    table.columns = {{{"Cut"}, Align::centre, true},
                     {{"Opening"}, Align::left, false},
                     {{"Its side"}, Align::left, false},
                     {{"Turn from", "the datum"}, Align::left, true},
                     {{"Bearing", "from datum"}, Align::right, false},
                     {{"Arc on the", "inside face"}, Align::right, true},
                     {{"Chord from", "datum mark"}, Align::right, true},
                     {{"Half-width", "of hole"}, Align::right, false}};
    for (const Cut& cut : ring.cuts) {
        const double clockwise = clockwise_degrees(dome.datum, {cut.inside_bearing});
        table.rows.push_back({cut.letter, cut.by, cut.side == Side::left ? "left" : "right",
                              cut.short_way == Side::left ? "left" : "right",
                              degrees_text(std::min(clockwise, 360 - clockwise)),
                              drafting.length(cut.short_arc), drafting.length(cut.chord),
                              drafting.length(cut.half_width)});
    }
    return table;
}

std::string plan_legend(const Ring& ring, const Ring* below, const Scale& scale) {
    std::string text = "From above, north up, " + scale.text + ".";
    if (ring.kind == RingKind::cap)
        return text + " Grey: the bags, side by side along the datum line.";
    text += " Triangle: datum mark.";
    if (!ring.cuts.empty())
        text += " Letters: cuts at the inside face.";
    if (below && !joint_bearings(*below).empty())
        text += " Dashed ticks: joints below.";
    return text;
}

} // namespace coilwright
