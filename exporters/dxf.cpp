#include "exporters/dxf.hpp"

#include "exporters/dxf_file.hpp"
#include "geometry/views/role_strokes.hpp"

#include <cmath>

namespace coilwright {
namespace {

constexpr int black = 7, red = 1, yellow = 2, green = 3, cyan = 4, blue = 5, magenta = 6, grey = 8;

/// Names after the layer conventions of the trade: discipline, major group, minor group.
std::string layer_name(ViewKind kind, LineRole role) {
    if (role == LineRole::axis)
        return "A-ANNO-CNTR";
    if (role == LineRole::level)
        return "A-ANNO-LEVL";
    if (role == LineRole::door)
        return "A-DOOR";
    if (role == LineRole::glazing)
        return "A-GLAZ";
    if (role == LineRole::trench)
        return "S-FNDN-EXCV";
    if (role == LineRole::ground)
        return "C-TOPO-PROF";
    if (role == LineRole::symbol)
        return "A-ANNO-SYMB";
    const bool cut = role == LineRole::cut, hidden = role == LineRole::hidden;
    switch (kind) {
    case ViewKind::floor_plan:
        return cut ? "A-WALL" : hidden ? "A-FLOR-OVHD" : "A-FLOR-OTLN";
    case ViewKind::foundation:
        return cut ? "S-FNDN" : "S-FNDN-OTLN";
    case ViewKind::roof:
        return hidden ? "A-ROOF-HIDN" : "A-ROOF-OTLN";
    case ViewKind::section:
        return cut ? "A-SECT-MCUT" : hidden ? "A-SECT-HIDN" : "A-SECT-MBND";
    case ViewKind::elevation:
        return hidden ? "A-ELEV-HIDN" : "A-ELEV-OTLN";
    case ViewKind::detail:
        return cut ? "A-DETL-MCUT" : hidden ? "A-DETL-HIDN" : "A-DETL-MBND";
    case ViewKind::form:
        return cut ? "FORM-CUT" : "FORM-MARK";
    }
    return "0";
}

int colour_of(LineRole role) {
    switch (role) {
    case LineRole::cut:
        return black;
    case LineRole::seen:
        return green;
    case LineRole::hidden:
        return grey;
    case LineRole::axis:
        return red;
    case LineRole::level:
        return cyan;
    case LineRole::ground:
        return yellow;
    case LineRole::door:
        return magenta;
    case LineRole::glazing:
        return blue;
    case LineRole::trench:
    case LineRole::symbol:
        return yellow;
    }
    return black;
}

DxfLayer layer_of(ViewKind kind, LineRole role) {
    const Stroke& stroke = stroke_of(role);
    return {layer_name(kind, role), colour_of(role), stroke.width, stroke.dashes};
}

DxfLayer hatch_layer(ViewKind kind) {
    std::string name = "A-WALL-PATT";
    if (kind == ViewKind::foundation)
        name = "S-FNDN-PATT";
    if (kind == ViewKind::section)
        name = "A-SECT-PATT";
    if (kind == ViewKind::detail)
        name = "A-DETL-PATT";
    return {name, grey, 0.13, {}};
}

DxfLayer annotation(const char* name, int colour, double weight) {
    return {name, colour, weight, {}};
}

/// Where paper lies in the file.
class Placed {
public:
    explicit Placed(double per) : per_(per) {}
    Vec2 at(Vec2 paper) const { return paper * per_; }
    double of(double paper) const { return paper * per_; }
    TextItem at(TextItem text) const {
        text.at *= per_;
        text.size *= per_;
        return text;
    }
    Outline at(const LaidView& laid, const Outline& outline) const {
        Outline placed{at(laid.on_paper(outline.from)), {}};
        for (const OutlineEdge& edge : outline.edges)
            placed.edges.push_back({at(laid.on_paper(edge.to)), edge.bulge});
        return placed;
    }

private:
    double per_;
};

void add_symbol(DxfFile& file, const Placed& placed, const PaperItem& item) {
    const DxfLayer layer = annotation("A-ANNO-SYMB", black, 0.25);
    if (const auto* line = std::get_if<LineItem>(&item)) {
        Outline outline{placed.at(line->points.front()), {}};
        for (std::size_t i = 1; i < line->points.size(); ++i)
            outline.edges.push_back({placed.at(line->points[i]), 0});
        if (line->closed)
            outline.edges.push_back({outline.from, 0});
        file.add_outline(layer, outline);
    } else if (const auto* arc = std::get_if<ArcItem>(&item)) {
        file.add_arc(layer, placed.at(arc->centre), placed.of(arc->radius), arc->start, arc->end);
    } else if (const auto* text = std::get_if<TextItem>(&item)) {
        file.add_text(layer, placed.at(*text));
    } else if (const auto* fill = std::get_if<FillItem>(&item)) {
        std::vector<Outline> loops;
        for (const FillItem::Loop& loop : fill->loops) {
            loops.push_back({placed.at(loop.from), {}});
            for (const FillItem::Edge& edge : loop.edges)
                loops.back().edges.push_back({placed.at(edge.to), edge.bulge});
        }
        file.add_hatch(layer, loops, placed.of(fill->hatch_spacing));
    }
}

void add_dimension(DxfFile& file, const Placed& placed, const LaidView& laid,
                   const LaidDimension& dimension, double units_per_metre) {
    const ViewDimension& of = laid.view->dimensions[dimension.of];
    DxfDimension made;
    made.from = placed.at(laid.on_paper(of.from));
    made.to = placed.at(laid.on_paper(of.to));
    made.line_from = placed.at(dimension.from);
    made.line_to = placed.at(dimension.to);
    made.angle = std::atan2(of.along.y(), of.along.x());
    made.measured = std::abs(of.measured()) * units_per_metre;
    for (const LineItem& line : dimension.lines)
        made.lines.emplace_back(placed.at(line.points[0]), placed.at(line.points[1]));
    made.figure = placed.at(dimension.figure);
    made.of = of.of;
    made.per = placed.of(1);
    file.add_dimension(annotation("A-ANNO-DIMS", red, 0.18), made);
}

void add_view(DxfFile& file, const Placed& placed, const LaidView& laid, double units_per_metre) {
    const View& view = *laid.view;
    for (const ViewHatch& hatch : view.hatches) {
        std::vector<Outline> loops;
        for (const Outline& loop : hatch.loops)
            loops.push_back(placed.at(laid, loop));
        file.add_hatch(hatch_layer(view.kind), loops, placed.of(1.6));
    }
    for (const ViewPath& path : view.paths)
        file.add_outline(layer_of(view.kind, path.role), placed.at(laid, path.path));
    for (const PaperItem& item : laid.symbols)
        add_symbol(file, placed, item);
    for (const LaidDimension& dimension : laid.dimensions)
        add_dimension(file, placed, laid, dimension, units_per_metre);
    const DxfLayer names = annotation("A-ANNO-TEXT", black, 0.18);
    for (const LaidNote& note : laid.notes) {
        file.add_text(names, placed.at(note.text));
        if (note.led())
            file.add_line(names, placed.at(note.from), placed.at(note.to));
    }
    file.add_text(annotation("A-ANNO-TITL", black, 0.25), placed.at(laid.title));
}

} // namespace

std::string dxf_text_of(const ModelSpace& space, const MeasureText& measure) {
    const bool feet = space.unit == DisplayUnit::feet;
    const double per = space.scale.per / (feet ? 25.4 : 1.0);
    const double per_metre = feet ? 1 / metres_per_inch : 1000.0;
    DxfFile file(feet ? DxfUnit::inches : DxfUnit::millimetres, per, measure);
    const Placed placed(per);
    for (const LaidView& laid : space.views) // each at its own scale
        add_view(file, Placed(per_metre / laid.per_metre), laid, per_metre);
    for (const TextItem& text : space.texts)
        file.add_text(annotation("A-ANNO-TITL", black, 0.25), placed.at(text));
    return std::move(file).finish();
}

} // namespace coilwright
