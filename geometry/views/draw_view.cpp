#include "geometry/drawing/pen.hpp"
#include "geometry/views/laid_view.hpp"
#include "geometry/views/role_strokes.hpp"

#include <cmath>

namespace coilwright {
namespace {

void draw_hatch(Sheet& sheet, const LaidView& laid, const ViewHatch& hatch) {
    FillItem fill;
    fill.ink = {1};
    fill.hatch_spacing = 1.6;
    fill.hatch = {0.13, {0.25}, {}};
    for (const Outline& outline : hatch.loops) {
        FillItem::Loop loop{laid.on_paper(outline.from), {}};
        for (const OutlineEdge& edge : outline.edges)
            loop.edges.push_back({laid.on_paper(edge.to), edge.bulge});
        fill.loops.push_back(std::move(loop));
    }
    sheet.items.emplace_back(std::move(fill));
}

void draw_path(Sheet& sheet, const LaidView& laid, const ViewPath& path) {
    const Stroke& stroke = stroke_of(path.role);
    std::vector<Vec2> run{laid.on_paper(path.path.from)};
    const auto flush = [&] {
        if (run.size() > 1)
            add_polyline(sheet, run, stroke);
        run.erase(run.begin(), run.end() - 1);
    };
    for (const OutlineEdge& edge : path.path.edges) {
        const Vec2 to = laid.on_paper(edge.to);
        const auto arc = arc_of(BoundaryEdge{0, run.back(), to, edge.bulge});
        if (!arc) {
            run.push_back(to);
            continue;
        }
        flush();
        const Vec2 first = (edge.bulge > 0 ? run.back() : to) - arc->centre;
        const double start = std::atan2(first.y(), first.x());
        sheet.items.push_back(ArcItem{arc->centre, arc->radius, start,
                                      start + 4 * std::atan(std::abs(edge.bulge)), stroke});
        run.assign(1, to);
    }
    flush();
}

} // namespace

void draw_view(Sheet& sheet, const LaidView& laid) {
    for (const ViewHatch& hatch : laid.view->hatches)
        draw_hatch(sheet, laid, hatch);
    for (const ViewPath& path : laid.view->paths)
        draw_path(sheet, laid, path);
    sheet.items.insert(sheet.items.end(), laid.symbols.begin(), laid.symbols.end());
    for (const LaidDimension& dimension : laid.dimensions)
        sheet.items.insert(sheet.items.end(), dimension.lines.begin(), dimension.lines.end());
    for (const LaidDimension& dimension : laid.dimensions)
        sheet.items.emplace_back(dimension.figure);
    for (const LaidNote& note : laid.notes) {
        sheet.items.emplace_back(note.text);
        if (note.led())
            add_line(sheet, note.from, note.to, pens::fine);
    }
    if (!laid.title.text.empty())
        sheet.items.emplace_back(laid.title);
}

void lay_view(Sheet& sheet, const PaperBox& box, const View& view, const Scale& scale,
              const MeasureText& measure) {
    draw_view(sheet, laid_view(box, view, scale, measure));
}

} // namespace coilwright
