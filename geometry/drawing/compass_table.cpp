#include "geometry/drawing/crew_pages.hpp"
#include "geometry/drawing/figures.hpp"
#include "geometry/drawing/ring_shapes.hpp"

#include <cmath>

namespace coilwright {
namespace {

std::string kind_mark(const Ring& ring) {
    if (ring.kind == RingKind::cap)
        return " cap";
    return ring.curb ? " curb" : "";
}

Table compass_table(const Drafting& drafting, const DomeForm& dome) {
    const Design& design = drafting.plan.design;
    const bool chain = design.compass.arm == CompassArm::chain;
    const bool face = design.compass.pole_diameter > 0;
    Table table;
    table.columns = {{{"Course"}, Align::left, true},
                     {{"Its top", "on the rod"}, Align::right, false}};
    if (chain)
        table.columns.push_back({{"Chain"}, Align::right, true});
    if (face)
        table.columns.push_back({{"Compass,", "pole's face"}, Align::right, !chain});
    table.columns.push_back({{"Compass,", "pole's axis"}, Align::right, !chain && !face});
    for (const auto& head : std::vector<std::vector<std::string>>{{"Step-in"},
                                                                  {"Length along", "the centre"},
                                                                  {"Runs"},
                                                                  {"Tubes"},
                                                                  {"Cuts"},
                                                                  {"Buckets", "5 gal"},
                                                                  {"Litres"}})
        table.columns.push_back({head, Align::right, false});
    for (const Course& course : drafting.schedule().courses) {
        const Ring* ring = ring_of_dome(course, dome.id);
        if (!ring)
            continue;
        const bool cap = ring->kind == RingKind::cap;
        const auto setting = [&](double metres) { return cap ? "" : drafting.length(metres); };
        std::vector<std::string> row{std::to_string(course.number) + kind_mark(*ring),
                                     rod_text(course.top, drafting.unit())};
        if (chain)
            row.push_back(setting(ring->chain));
        if (face)
            row.push_back(setting(ring->pole_face));
        row.push_back(setting(ring->inside_radius));
        row.push_back(cap || std::abs(ring->step_in) < 5e-5 ? "–" : drafting.length(ring->step_in));
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
        const double fill = ring_fill(course, *ring, drafting.schedule());
        row.push_back(buckets_text(fill));
        row.push_back(litres_text(fill));
        table.rows.push_back(std::move(row));
    }
    return table;
}

} // namespace

std::vector<Sheet> compass_table_pages(const Drafting& drafting) {
    std::vector<Sheet> sheets;
    for (const DomeForm& dome : drafting.schedule().building.domes) {
        const bool several = drafting.schedule().building.domes.size() > 1;
        bool first = true;
        Flow flow(drafting, [&] {
            std::string title =
                "Compass table" + (several ? " of '" + dome.id + "'" : std::string());
            if (!first)
                title += ", continued";
            first = false;
            return titled_page(
                drafting, title,
                "Settings of the tamped inside face at the middle of each course. Heights "
                "from the bench mark 0, the finished floor.");
        });
        flow.table("", compass_table(drafting, dome), sizes::body, sizes::least);
        for (Sheet& sheet : flow.finish())
            sheets.push_back(std::move(sheet));
    }
    return sheets;
}

} // namespace coilwright
