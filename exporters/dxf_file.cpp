#include "exporters/dxf_file.hpp"

#include "exporters/dxf_groups.hpp"
#include "geometry/base/bearing.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {
namespace {

constexpr double capital = 0.729; // of the em, DejaVu Sans: DXF heights are of capitals

double degrees(double radians) {
    const double turned = std::fmod(radians / radians_per_degree, 360);
    return turned < 0 ? turned + 360 : turned;
}

/// Vertices with the bulge to the next; those that repeat the one before are left out.
struct Vertex {
    Vec2 at{0, 0};
    double bulge = 0;
};
struct Vertices {
    std::vector<Vertex> list;
    bool closed = false;
};

Vertices vertices_of(const Outline& outline) {
    constexpr double same = 1e-6;
    Vertices vertices;
    vertices.list.push_back({outline.from, 0});
    for (const OutlineEdge& edge : outline.edges) {
        if ((edge.to - vertices.list.back().at).norm() < same)
            continue;
        vertices.list.back().bulge = std::abs(edge.bulge) < 1e-9 ? 0 : edge.bulge;
        vertices.list.push_back({edge.to, 0});
    }
    if (vertices.list.size() > 2 &&
        (vertices.list.back().at - vertices.list.front().at).norm() < same) {
        vertices.list.pop_back();
        vertices.closed = true;
    }
    return vertices;
}

/// Twice the area between the vertices, arcs as chords' own segments.
double twice_area(const Vertices& vertices) {
    double twice = 0;
    for (std::size_t i = 0; i < vertices.list.size(); ++i) {
        const Vertex &a = vertices.list[i], &b = vertices.list[(i + 1) % vertices.list.size()];
        twice += a.at.x() * b.at.y() - a.at.y() * b.at.x();
        if (const auto arc = arc_of(BoundaryEdge{0, a.at, b.at, a.bulge})) {
            const double sweep = 4 * std::atan(a.bulge);
            twice += arc->radius * arc->radius * (sweep - std::sin(sweep));
        }
    }
    return twice;
}

} // namespace

std::string DxfFile::hex(std::uint32_t number) {
    static const char* const digits = "0123456789ABCDEF";
    std::string text;
    for (; number > 0; number /= 16)
        text.insert(text.begin(), digits[number % 16]);
    return text;
}

DxfFile::DxfFile(DxfUnit unit, double per, MeasureText measure)
    : unit_(unit), per_(per), measure_(std::move(measure)) {
    model_ = handle();
    paper_ = handle();
    owner_ = model_;
}

void DxfFile::see(Vec2 point) {
    low_ = any_ ? Vec2(low_.cwiseMin(point)) : point;
    high_ = any_ ? Vec2(high_.cwiseMax(point)) : point;
    any_ = true;
}

std::string DxfFile::start(const char* kind, const DxfLayer& layer, const char* subclass) {
    layers_.emplace(layer.name, layer);
    return dxf_group(0, kind) + dxf_group(5, handle()) + dxf_group(330, owner_) +
           dxf_group(100, "AcDbEntity") + dxf_group(8, layer.name) + dxf_group(100, subclass);
}

void DxfFile::put_line(std::string& into, const DxfLayer& layer, Vec2 from, Vec2 to) {
    if ((to - from).norm() < 1e-6)
        return;
    into += start("LINE", layer, "AcDbLine") + dxf_point(10, from) + dxf_point(11, to);
    see(from);
    see(to);
}

void DxfFile::add_line(const DxfLayer& layer, Vec2 from, Vec2 to) {
    put_line(entities_, layer, from, to);
}

void DxfFile::add_arc(const DxfLayer& layer, Vec2 centre, double radius, double start_angle,
                      double end_angle) {
    if (!(radius > 1e-6) || !((end_angle - start_angle) * radius > 1e-6))
        return;
    see(centre - Vec2(radius, radius));
    see(centre + Vec2(radius, radius));
    const bool whole = end_angle - start_angle >= 2 * pi - 1e-9;
    entities_ += start(whole ? "CIRCLE" : "ARC", layer, "AcDbCircle") + dxf_point(10, centre) +
                 dxf_real(40, radius);
    if (!whole)
        entities_ += dxf_group(100, "AcDbArc") + dxf_real(50, degrees(start_angle)) +
                     dxf_real(51, degrees(end_angle));
}

void DxfFile::add_outline(const DxfLayer& layer, const Outline& outline) {
    const Vertices vertices = vertices_of(outline);
    const std::vector<Vertex>& list = vertices.list;
    if (list.size() < 2)
        return;
    const auto first = arc_of(BoundaryEdge{0, list[0].at, list[1].at, list[0].bulge});
    if (list.size() == 2 && vertices.closed && first &&
        std::abs(list[0].bulge - list[1].bulge) < 1e-9 &&
        std::abs(std::abs(list[0].bulge) - 1) < 1e-9) {
        add_arc(layer, first->centre, first->radius, 0, 2 * pi);
        return;
    }
    if (list.size() == 2 && !vertices.closed) {
        if (!first) {
            add_line(layer, list[0].at, list[1].at);
            return;
        }
        const Vec2 begin = (list[0].bulge > 0 ? list[0].at : list[1].at) - first->centre;
        const double angle = std::atan2(begin.y(), begin.x());
        add_arc(layer, first->centre, first->radius, angle,
                angle + 4 * std::atan(std::abs(list[0].bulge)));
        return;
    }
    entities_ += start("LWPOLYLINE", layer, "AcDbPolyline") +
                 dxf_group(90, static_cast<int>(list.size())) +
                 dxf_group(70, vertices.closed ? 1 : 0);
    for (const Vertex& vertex : list) {
        see(vertex.at);
        entities_ += dxf_real(10, vertex.at.x()) + dxf_real(20, vertex.at.y());
        if (vertex.bulge != 0)
            entities_ += dxf_bulge(vertex.bulge);
    }
}

void DxfFile::add_hatch(const DxfLayer& layer, const std::vector<Outline>& loops, double spacing) {
    std::vector<Vertices> paths;
    for (const Outline& loop : loops) {
        Vertices vertices = vertices_of(loop);
        if (vertices.list.size() >= 2 && std::abs(twice_area(vertices)) > 1e-6)
            paths.push_back(std::move(vertices));
    }
    if (paths.empty())
        return;
    const bool solid = spacing <= 0;
    entities_ += start("HATCH", layer, "AcDbHatch") + dxf_point(10, {0, 0}) + dxf_real(210, 0) +
                 dxf_real(220, 0) + dxf_real(230, 1) + dxf_group(2, solid ? "SOLID" : "ANSI31") +
                 dxf_group(70, solid ? 1 : 0) + dxf_group(71, 0) +
                 dxf_group(91, static_cast<int>(paths.size()));
    for (const Vertices& path : paths) {
        const bool bulged = std::any_of(path.list.begin(), path.list.end(),
                                        [](const Vertex& vertex) { return vertex.bulge != 0; });
        // A polyline, the first of them the outermost: even-odd by style 0.
        entities_ += dxf_group(92, &path == &paths.front() ? 3 : 2) +
                     dxf_group(72, bulged ? 1 : 0) + dxf_group(73, 1) +
                     dxf_group(93, static_cast<int>(path.list.size()));
        for (const Vertex& vertex : path.list) {
            entities_ += dxf_real(10, vertex.at.x()) + dxf_real(20, vertex.at.y());
            if (bulged)
                entities_ += dxf_bulge(vertex.bulge);
        }
        entities_ += dxf_group(97, 0);
    }
    entities_ += dxf_group(75, 0) + dxf_group(76, 1);
    if (!solid) {
        // The pattern's own lines are 1/8 in (3.175 mm) apart.
        const double usual = unit_ == DxfUnit::inches ? 0.125 : 3.175;
        const double aside = spacing * std::sqrt(0.5);
        entities_ += dxf_real(52, 0) + dxf_real(41, spacing / usual) + dxf_group(77, 0) +
                     dxf_group(78, 1) + dxf_real(53, 45) + dxf_real(43, 0) + dxf_real(44, 0) +
                     dxf_real(45, -aside) + dxf_real(46, aside) + dxf_group(79, 0);
    }
    entities_ += dxf_group(98, 0);
}

void DxfFile::put_text(std::string& into, const DxfLayer& layer, const TextItem& text) {
    const std::string safe = dxf_text(text.text);
    if (safe.find_first_not_of(' ') == std::string::npos || !(text.size > 0))
        return;
    const Vec2 reading(std::cos(text.turn), std::sin(text.turn));
    const double before = text.align == Align::left ? 0 : text.align == Align::centre ? 0.5 : 1;
    // Where a reader without our font is to start: the alignment point is what counts.
    const double width = measure_(text.text, 1, text.bold).width * text.size;
    const Vec2 left = text.at - reading * (width * before);
    see(left);
    see(text.at + reading * (width * (1 - before)));
    into += start("TEXT", layer, "AcDbText") + dxf_point(10, left) +
            dxf_real(40, text.size * capital) + dxf_group(1, safe) +
            dxf_real(50, degrees(text.turn)) + dxf_group(7, text.bold ? "BOLD" : "Standard");
    if (text.align != Align::left)
        into += dxf_group(72, text.align == Align::centre ? 1 : 2) + dxf_point(11, text.at);
    into += dxf_group(100, "AcDbText");
}

void DxfFile::add_text(const DxfLayer& layer, const TextItem& text) {
    put_text(entities_, layer, text);
}

void DxfFile::add_dimension(const DxfLayer& layer, const DxfDimension& dimension) {
    Block block;
    block.name = "*D" + std::to_string(dimension_blocks_.size() + 1);
    block.record = handle();
    block.begin = handle();
    block.end = handle();
    owner_ = block.record;
    for (const auto& [from, to] : dimension.lines)
        put_line(block.entities, layer, from, to);
    put_text(block.entities, layer, dimension.figure);
    owner_ = model_;
    const TextItem& figure = dimension.figure;
    const Vec2 up(-std::sin(figure.turn), std::cos(figure.turn));
    // Rotated linear, its block its own, its text where it was put.
    entities_ += start("DIMENSION", layer, "AcDbDimension") + dxf_group(2, block.name) +
                 dxf_point(10, dimension.line_to) +
                 dxf_point(11, figure.at + up * (figure.size * capital / 2)) +
                 dxf_group(70, 32 + 128) + dxf_group(71, 5) + dxf_real(42, dimension.measured) +
                 dxf_group(3, "COILWRIGHT") + dxf_group(100, "AcDbAlignedDimension") +
                 dxf_point(13, dimension.from) + dxf_point(14, dimension.to) +
                 dxf_real(50, degrees(dimension.angle)) + dxf_group(100, "AcDbRotatedDimension");
    if (!dimension.of.empty())
        entities_ += dxf_group(1001, "COILWRIGHT") + dxf_group(1000, dxf_text(dimension.of));
    if (std::abs(dimension.per - per_) > 1e-9 * per_) // the style's, but for its scale
        entities_ += dxf_group(1001, "ACAD") + dxf_group(1000, "DSTYLE") + dxf_group(1002, "{") +
                     dxf_group(1070, 40) + dxf_real(1040, dimension.per) + dxf_group(1002, "}");
    dimension_blocks_.push_back(std::move(block));
}

} // namespace coilwright
