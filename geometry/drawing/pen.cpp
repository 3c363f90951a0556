#include "geometry/drawing/pen.hpp"

#include "geometry/base/bearing.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

// Items are moved in from named variables: with temporaries g++ 12 warns of members it thinks
// unset.

void add_polyline(Sheet& sheet, std::vector<Vec2> points, const Stroke& stroke) {
    LineItem line;
    line.points = std::move(points);
    line.stroke = stroke;
    sheet.items.emplace_back(std::move(line));
}

void add_line(Sheet& sheet, Vec2 from, Vec2 to, const Stroke& stroke) {
    add_polyline(sheet, {from, to}, stroke);
}

void add_box(Sheet& sheet, const PaperBox& box, const Stroke& stroke) {
    const Corners points = corners(box);
    LineItem line;
    line.points.assign(points.begin(), points.end());
    line.closed = true;
    line.stroke = stroke;
    sheet.items.emplace_back(std::move(line));
}

void add_circle(Sheet& sheet, Vec2 centre, double radius, const Stroke& stroke) {
    sheet.items.push_back(ArcItem{centre, radius, 0, 2 * pi, stroke});
}

void add_fill(Sheet& sheet, const std::vector<Vec2>& points, Ink ink) {
    FillItem fill;
    fill.ink = ink;
    FillItem::Loop loop{points.front(), {}};
    for (std::size_t i = 1; i < points.size(); ++i)
        loop.edges.push_back({points[i], 0});
    loop.edges.push_back({points.front(), 0});
    fill.loops.push_back(std::move(loop));
    sheet.items.push_back(std::move(fill));
}

void add_fill(Sheet& sheet, const PaperBox& box, Ink ink) {
    const Corners points = corners(box);
    add_fill(sheet, std::vector<Vec2>(points.begin(), points.end()), ink);
}

void add_disc(Sheet& sheet, Vec2 centre, double radius, Ink ink) {
    FillItem fill;
    fill.ink = ink;
    fill.loops.push_back({centre + Vec2(radius, 0), arc_edges(centre, radius, 0, 2 * pi)});
    sheet.items.push_back(std::move(fill));
}

void add_arrowhead(Sheet& sheet, Vec2 tip, Vec2 direction, double length) {
    const Vec2 ahead = direction.normalized();
    const Vec2 aside(-ahead.y(), ahead.x());
    const Vec2 foot = tip - ahead * length;
    add_fill(sheet, {tip, foot + aside * (length / 6), foot - aside * (length / 6)}, {0});
}

TextItem text_at(Vec2 at, std::string text, double size, bool bold, Align align) {
    TextItem item;
    item.text = std::move(text);
    item.at = at;
    item.size = size;
    item.bold = bold;
    item.align = align;
    return item;
}

void add_text(Sheet& sheet, Vec2 at, std::string text, double size, bool bold, Align align) {
    sheet.items.push_back(text_at(at, std::move(text), size, bold, align));
}

std::vector<FillItem::Edge> arc_edges(Vec2 centre, double radius, double from, double sweep) {
    const int pieces = std::max(1, static_cast<int>(std::ceil(std::abs(sweep) / (pi / 2) - 1e-9)));
    const double step = sweep / pieces;
    std::vector<FillItem::Edge> edges;
    for (int i = 1; i <= pieces; ++i) {
        const double angle = from + i * step;
        edges.push_back(
            {centre + radius * Vec2(std::cos(angle), std::sin(angle)), std::tan(step / 4)});
    }
    return edges;
}

} // namespace coilwright
