#include "exporters/paint.hpp"

#include "exporters/text_setting.hpp"
#include "geometry/base/bearing.hpp"

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <stdexcept>

namespace coilwright {
namespace {

using Context = Cairo::RefPtr<Cairo::Context>;

void require_finite(std::initializer_list<double> numbers) {
    for (const double number : numbers)
        if (!std::isfinite(number))
            throw std::runtime_error("A drawing holds a number that is not finite.");
}

void require_finite(Vec2 point) {
    require_finite({point.x(), point.y()});
}

void set_ink(const Context& context, Ink ink) {
    require_finite({ink.grey});
    context->set_source_rgb(ink.grey, ink.grey, ink.grey);
}

void stroke(const Context& context, const Stroke& stroke) {
    require_finite({stroke.width});
    set_ink(context, stroke.ink);
    // In the page's own units: the frame would be written into the file with each line.
    const Cairo::Matrix frame = context->get_matrix();
    const double scale = std::abs(frame.yy);
    std::vector<double> dashes = stroke.dashes;
    for (double& dash : dashes)
        dash *= scale;
    context->set_identity_matrix();
    context->set_line_width(stroke.width * scale);
    context->set_dash(dashes, 0);
    context->stroke();
    context->set_matrix(frame);
}

void draw(const Context& context, const LineItem& item) {
    if (item.points.size() < 2)
        return;
    context->begin_new_path();
    for (const Vec2& point : item.points) {
        require_finite(point);
        context->line_to(point.x(), point.y());
    }
    if (item.closed)
        context->close_path();
    stroke(context, item.stroke);
}

void draw(const Context& context, const ArcItem& item) {
    require_finite(item.centre);
    require_finite({item.radius, item.start, item.end});
    if (item.radius <= 0 || item.end <= item.start)
        return;
    const bool full = item.end - item.start >= 2 * pi * (1 - 1e-12);
    context->begin_new_path();
    context->arc(item.centre.x(), item.centre.y(), item.radius, item.start,
                 full ? item.start + 2 * pi : item.end);
    if (full)
        context->close_path();
    stroke(context, item.stroke);
}

/// An arc from the current point `from` to `to`, tan(sweep / 4) = bulge.
void bulge_to(const Context& context, Vec2 from, Vec2 to, double bulge) {
    const Vec2 chord = to - from;
    const double length = chord.norm();
    if (std::abs(bulge) < 1e-9 || length < 1e-9) {
        context->line_to(to.x(), to.y());
        return;
    }
    // Centre: off the chord's middle, to its left for a positive bulge under a half circle.
    const Vec2 left(-chord.y() / length, chord.x() / length);
    const double radius = length * (1 + bulge * bulge) / (4 * std::abs(bulge));
    const Vec2 centre = (from + to) / 2 + left * (length * (1 - bulge * bulge) / (4 * bulge));
    const double start = std::atan2(from.y() - centre.y(), from.x() - centre.x());
    const double end = std::atan2(to.y() - centre.y(), to.x() - centre.x());
    if (bulge > 0)
        context->arc(centre.x(), centre.y(), radius, start, end);
    else
        context->arc_negative(centre.x(), centre.y(), radius, start, end);
}

void outline(const Context& context, const FillItem& item) {
    context->begin_new_path();
    for (const FillItem::Loop& loop : item.loops) {
        require_finite(loop.from);
        context->move_to(loop.from.x(), loop.from.y());
        Vec2 from = loop.from;
        for (const FillItem::Edge& edge : loop.edges) {
            require_finite(edge.to);
            require_finite({edge.bulge});
            bulge_to(context, from, edge.to, edge.bulge);
            from = edge.to;
        }
        context->close_path();
    }
}

void draw(const Context& context, const FillItem& item) {
    context->save();
    context->set_fill_rule(Cairo::Context::FillRule::EVEN_ODD);
    outline(context, item);
    if (item.hatch_spacing <= 0) {
        set_ink(context, item.ink);
        context->fill();
        context->restore();
        return;
    }
    double x0 = 0, y0 = 0, x1 = 0, y1 = 0;
    context->get_path_extents(x0, y0, x1, y1);
    context->clip();
    // Lines x - y = k * step, counted from the sheet's corner so that neighbours' hatches meet.
    const double step = std::max(item.hatch_spacing, 0.1) * std::sqrt(2.0);
    require_finite({step, x0, y0, x1, y1});
    context->begin_new_path();
    for (double k = std::ceil((x0 - y1) / step); k * step <= x1 - y0; ++k) {
        context->move_to(k * step + y0, y0);
        context->line_to(k * step + y1, y1);
    }
    stroke(context, item.hatch);
    context->restore();
}

void draw(const Context& context, const TextItem& item) {
    require_finite(item.at);
    require_finite({item.size, item.turn, item.ink.grey});
    if (item.text.empty() || item.size <= 0)
        return;
    show_text(context, item);
}

} // namespace

void require_paintable(const Sheet& sheet) {
    for (const double side : {sheet.width, sheet.height})
        if (!(side > 0 && side <= 5000))
            throw std::runtime_error("A sheet of paper must be over 0 and at most 5 m a side.");
}

void use_millimetres(const Context& context, double height_mm, double units_per_mm) {
    context->scale(units_per_mm, -units_per_mm);
    context->translate(0, -height_mm);
    context->set_line_join(Cairo::Context::LineJoin::ROUND);
    context->set_line_cap(Cairo::Context::LineCap::BUTT);
}

void paint(const Context& context, const Sheet& sheet) {
    for (const PaperItem& item : sheet.items)
        std::visit([&](const auto& one) { draw(context, one); }, item);
}

} // namespace coilwright
