#include "geometry/drawing/barred_course.hpp"
#include "geometry/drawing/crew_pages.hpp"
#include "geometry/drawing/figures.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {
namespace {

std::string kind_mark(const Ring& ring) {
    if (ring.kind == RingKind::cap)
        return " cap";
    if (ring.wythe > 1)
        return " outer";
    return ring.curb ? " curb" : "";
}

/// A top that was measured has a star.
std::string top_text(const Course& course, const Drafting& drafting) {
    return rod_text(course.top, drafting.unit()) + (course.top_measured ? " *" : "");
}

std::string star_note(const Schedule& schedule) {
    for (const Course& course : schedule.courses)
        if (course.top_measured)
            return " * A top as measured on site; the courses over it are laid from it.";
    return {};
}

Table compass_table(const Drafting& drafting, const DomeForm& dome) {
    const Design& design = drafting.plan.design;
    const bool chain = design.compass.arm == CompassArm::chain;
    const bool face = design.compass.pole_diameter > 0;
    Table table;
    table.columns = {{{"Course"}, Align::left, true},
                     {{"Its top", "on the rod"}, Align::right, false}};
    if (chain && face)
        table.columns.push_back({{"Chain,", "pole's face"}, Align::right, true});
    if (chain)
        table.columns.push_back({face ? std::vector<std::string>{"Chain,", "pole's axis"}
                                      : std::vector<std::string>{"Chain"},
                                 Align::right, !face});
    // Who sets by the chain needs no level reading but the radius.
    if (face && !chain)
        table.columns.push_back({{"Compass,", "pole's face"}, Align::right, true});
    table.columns.push_back({{"Compass,", "pole's axis"}, Align::right, !chain && !face});
    const bool feet = drafting.unit() == DisplayUnit::feet;
    const std::vector<std::string> buckets{"Buckets", bucket_name(drafting.unit())};
    const std::vector<std::string> litres{"Litres"};
    // With several settings a course the sheets of the courses alone tell what is spare here.
    table.columns.insert(table.columns.end(),
                         {{{"Step-in"}, Align::right, false, 0},
                          {{"Length along", "the centre"}, Align::right, false, 1},
                          {{"Runs"}, Align::right, false, 2},
                          {{"Tubes"}, Align::right, false, 3},
                          {{"Cuts"}, Align::right, false, 0},
                          {feet ? buckets : litres, Align::right, false, 4},
                          {feet ? litres : buckets, Align::right, false, 5}});
    const auto add_row = [&](const Course& course, const Ring* ring) {
        const bool cap = ring->kind == RingKind::cap;
        const bool barred =
            barred_from(drafting.plan, *part_in(drafting.schedule(), course.number, dome.id)) > 0;
        const auto setting = [&](double metres) {
            return barred ? "do not lay" : cap ? "" : drafting.length(metres);
        };
        std::vector<std::string> row{std::to_string(course.number) + kind_mark(*ring),
                                     top_text(course, drafting)};
        if (chain && face)
            row.push_back(setting(ring->chain_face));
        if (chain)
            row.push_back(setting(ring->chain));
        if (face && !chain)
            row.push_back(setting(ring->pole_face));
        row.push_back(cap && !barred ? drafting.length(2 * ring->outside_radius) + " across"
                                     : setting(ring->inside_radius));
        row.push_back(cap || std::abs(ring->step_in) < 5e-5
                          ? "–"
                          : step_text(ring->step_in, drafting.unit()));
        row.push_back(drafting.length(ring_length(*ring)));
        row.push_back(cap                  ? "disc"
                      : ring->cuts.empty() ? "ring"
                                           : std::to_string(ring->runs.size()));
        std::size_t tubes = 0;
        for (const Run& run : ring->runs)
            tubes += run.tubes.size();
        row.push_back(std::to_string(tubes));
        row.push_back(
            ring->cuts.empty() ? "no" : ring->cuts.front().letter + "–" + ring->cuts.back().letter);
        double fill = ring->fill_volume;
        for (const Piece& piece : ring->pieces)
            fill += piece.fill_volume;
        const std::string in_buckets = buckets_text(fill, drafting.unit());
        row.push_back(feet ? in_buckets : litres_text(fill));
        row.push_back(feet ? litres_text(fill) : in_buckets);
        table.rows.push_back(std::move(row));
    };
    for (const Course& course : drafting.schedule().courses)
        for (const Ring& ring : course.rings)
            if (ring.dome == dome.id)
                add_row(course, &ring);
    return table;
}

/// A tunnel's courses: where its faces stand, what lies in its walls.
Table gauge_table(const Drafting& drafting, const TunnelForm& tunnel) {
    Table table;
    table.columns = {{{"Course"}, Align::left, true},
                     {{"Its top", "on the rod"}, Align::right, false},
                     {{"Gauge, axis", "to inside"}, Align::right, true},
                     {{"Between", "the faces"}, Align::right, false},
                     {{"Across", "outside"}, Align::right, false},
                     {{"Tubes"}, Align::right, false},
                     {{"Length along", "the centre"}, Align::right, false},
                     {{"Buckets", bucket_name(drafting.unit())}, Align::right, false},
                     {{"Carried by"}, Align::left, false}};
    for (const Course& course : drafting.schedule().courses) {
        const auto part = part_in(drafting.schedule(), course.number, tunnel.id);
        if (!part)
            continue;
        const bool crown = course.number > tunnel.side_courses;
        const double half = inner_half_width(tunnel, course.middle);
        std::size_t tubes = 0;
        double length = 0;
        for (const Straight* straight : part->straights) {
            tubes += straight->tubes.size();
            length += straight->length;
        }
        table.rows.push_back(
            {std::to_string(course.number) + (crown ? " crown" : ""), top_text(course, drafting),
             crown ? "" : drafting.length(half), crown ? "" : drafting.length(2 * half),
             drafting.length(2 * outer_half_width(tunnel, course.middle)), std::to_string(tubes),
             drafting.length(length),
             buckets_text(part_fill(*part, drafting.schedule().course_height), drafting.unit()),
             form_carries(*part) ? "THE FORM" : "itself"});
    }
    return table;
}

} // namespace

std::vector<Sheet> compass_table_pages(const Drafting& drafting) {
    std::vector<Sheet> sheets;
    const auto add = [&](const std::string& name, const std::string& under, const Table& whole) {
        bool first = true;
        Flow flow(
            drafting,
            [&] {
                const std::string title = first ? name : name + ", continued";
                first = false;
                return titled_page(drafting, title, under);
            },
            sizes::body, dense_row_part);
        const Table table = without_spare(whole, flow.width(), sizes::small, drafting.measure);
        // As large as lets one page hold all rows, if it can.
        const double rows = static_cast<double>(table.rows.size()) + 3.5; // with the heading
        const double size = (flow.room() - 2) / rows / dense_row_part;
        flow.table("", table,
                   std::clamp(size, size < sizes::small ? sizes::body : sizes::small, sizes::body),
                   sizes::least);
        for (Sheet& sheet : flow.finish())
            sheets.push_back(std::move(sheet));
    };
    const BuildingForm& building = drafting.schedule().building;
    for (const DomeForm& dome : building.domes)
        add("Compass table" + (several_parts(drafting.schedule()) ? " of '" + dome.id + "'" : ""),
            "Settings of the tamped inside face at the middle of each course. Heights from the "
            "bench "
            "mark 0, the finished floor." +
                star_note(drafting.schedule()),
            compass_table(drafting, dome));
    for (const TunnelForm& tunnel : building.tunnels)
        add("Gauge table of '" + tunnel.id + "'",
            "Half-widths between the axis string and the tamped inside face at the middle of each "
            "course. Heights from the bench mark 0, the finished floor.",
            gauge_table(drafting, tunnel));
    return sheets;
}

} // namespace coilwright
