#include "geometry/drawing/plan_canvas.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {
namespace {

constexpr double letter_radius = 2.9; // mm, of the circle around a letter

double math_angle(double bearing) {
    return to_angle({bearing}).radians;
}

/// The circle of an edge with a bulge, and its angles in order.
struct EdgeArcAngles {
    Vec2 centre{0, 0};
    double radius = 0, start = 0, end = 0;
};

EdgeArcAngles arc_angles(Vec2 from, Vec2 to, double bulge) {
    EdgeArcAngles arc;
    const EdgeArc circle = *arc_of(BoundaryEdge{0, from, to, bulge});
    arc.centre = circle.centre;
    arc.radius = circle.radius;
    const Vec2 first = (bulge > 0 ? from : to) - arc.centre;
    arc.start = std::atan2(first.y(), first.x());
    arc.end = arc.start + 4 * std::atan(std::abs(bulge));
    return arc;
}

} // namespace

void PlanCanvas::line(Vec2 from, Vec2 to, const Stroke& stroke) {
    add_line(sheet_, from, to, stroke);
    placer_.take_line(from, to);
}

void PlanCanvas::arc(double from, double to, double metres, const Stroke& stroke) {
    ArcItem item{frame_.pole, metres * frame_.mm_per_metre, math_angle(to), math_angle(from),
                 stroke};
    if (to - from >= 360 - 1e-9)
        item.end = item.start + 2 * pi;
    placer_.take_arc(item.centre, item.radius, item.start, item.end);
    sheet_.items.push_back(item);
}

void PlanCanvas::edges(const Outline& outline, const Stroke& stroke) {
    Vec2 from = outline.from;
    for (const OutlineEdge& edge : outline.edges) {
        if (std::abs(edge.bulge) < 1e-9) {
            line(frame_.of(from), frame_.of(edge.to), stroke);
        } else {
            const EdgeArcAngles arc = arc_angles(from, edge.to, edge.bulge);
            const ArcItem item{frame_.of(arc.centre), arc.radius * frame_.mm_per_metre, arc.start,
                               arc.end, stroke};
            placer_.take_arc(item.centre, item.radius, item.start, item.end);
            sheet_.items.push_back(item);
        }
        from = edge.to;
    }
}

namespace {

FillItem fill_of(const Outline& outline, const PlanFrame& frame) {
    FillItem fill;
    FillItem::Loop loop{frame.of(outline.from), {}};
    for (const OutlineEdge& edge : outline.edges)
        loop.edges.push_back({frame.of(edge.to), edge.bulge});
    fill.loops.push_back(std::move(loop));
    return fill;
}

} // namespace

void PlanCanvas::outline(const Outline& outline, Ink ink, const Stroke& stroke) {
    FillItem fill = fill_of(outline, frame_);
    fill.ink = ink;
    sheet_.items.push_back(std::move(fill));
    edges(outline, stroke);
}

void PlanCanvas::hatched(const Outline& outline, const Stroke& stroke) {
    FillItem fill = fill_of(outline, frame_);
    fill.ink = {1};
    fill.hatch_spacing = 1.2;
    fill.hatch = {0.18, {0.2}, {}};
    sheet_.items.push_back(std::move(fill));
    edges(outline, stroke);
}

void PlanCanvas::boundary(const Region& region, const Stroke& stroke) {
    const PaperBox& box = placer_.frame();
    const Vec2 low(box.left, box.bottom), high(box.right, box.top);
    for (const BoundaryLoop& loop : region.loops)
        for (const BoundaryEdge& edge : loop.edges) {
            const Vec2 from = frame_.of(edge.from), to = frame_.of(edge.to);
            if (std::abs(edge.bulge) < 1e-9) {
                for (const Segment& piece : clipped({from, to}, low, high))
                    line(piece.from, piece.to, stroke);
                continue;
            }
            const EdgeArcAngles arc = arc_angles(from, to, edge.bulge);
            for (const auto& [start, end] :
                 clipped_arc(arc.centre, arc.radius, arc.start, arc.end, low, high)) {
                sheet_.items.push_back(ArcItem{arc.centre, arc.radius, start, end, stroke});
                placer_.take_arc(arc.centre, arc.radius, start, end);
            }
        }
}

void PlanCanvas::letter(const std::string& text, const LetterPlace& place) {
    std::vector<Vec2> centres =
        places_about(place.target, place.wanted, letter_radius + 2, letter_radius + 16, pi * 0.45);
    for (const Vec2& beyond :
         places_about(place.beyond, place.other, letter_radius + 2, letter_radius + 14, pi * 0.45))
        centres.push_back(beyond);
    // Where many cuts crowd: farther in, else anywhere in the frame, the nearest first.
    for (const Vec2& farther :
         places_about(place.target, place.wanted, letter_radius + 16, place.farthest, pi * 0.45))
        centres.push_back(farther);
    auto centre = placer_.place_disc(centres, letter_radius, place.target);
    for (const bool over_all : {false, true})
        if (!centre)
            centre = placer_.place_disc(frame_places(place.target), letter_radius, place.target,
                                        over_all);
    const Vec2 at = centre.value_or(centres.front());
    const Vec2 to_target = place.target - at;
    add_line(sheet_, at + to_target.normalized() * letter_radius, place.target, pens::seen);
    add_disc(sheet_, place.target, 0.6, {0});
    add_disc(sheet_, at, letter_radius, {1});
    add_circle(sheet_, at, letter_radius, pens::seen);
    const double size = text.size() > 1 ? sizes::small : sizes::body;
    add_text(sheet_, at - Vec2(0, 0.365 * size), text, size, true, Align::centre);
}

/// A grid over the frame, the places nearest to a point first.
std::vector<Vec2> PlanCanvas::frame_places(Vec2 target) const {
    constexpr double step = 2; // mm
    const PaperBox& box = placer_.frame();
    std::vector<Vec2> places;
    const int columns = static_cast<int>(box.width() / step);
    const int rows = static_cast<int>(box.height() / step);
    for (int row = 0; row <= rows; ++row)
        for (int column = 0; column <= columns; ++column)
            places.emplace_back(box.left + column * step, box.bottom + row * step);
    std::stable_sort(places.begin(), places.end(), [&](const Vec2& a, const Vec2& b) {
        return (a - target).squaredNorm() < (b - target).squaredNorm();
    });
    return places;
}

bool PlanCanvas::name(const std::vector<TextItem>& candidates, double clearance) {
    const auto placed = placer_.place(candidates, clearance);
    if (placed)
        labels_.push_back(*placed);
    return placed.has_value();
}

bool PlanCanvas::led_name(const std::vector<TextItem>& candidates, Vec2 target, double near) {
    const auto placed = placer_.place_led(candidates, target, near);
    if (!placed)
        return false;
    labels_.push_back(placed->text);
    if ((placed->to - placed->from).norm() > 0)
        add_line(sheet_, placed->from, placed->to, pens::fine);
    return true;
}

void PlanCanvas::name_between(const std::string& text, Vec2 inner, Vec2 outer, Vec2 outward) {
    const auto about = [&](Vec2 point, Vec2 direction, double from, double to, double size) {
        std::vector<TextItem> candidates;
        for (const Vec2& place : places_about(point, direction, from, to, pi * 0.45))
            candidates.push_back(centred(place, text, size, false));
        return candidates;
    };
    for (const double size : {sizes::body, sizes::small})
        if (led_name(about(outer, outward, 4, 13, size), outer, 5) ||
            led_name(about(inner, -outward, 6, 18, size), inner, 6) ||
            led_name(about(outer, outward, 13, 40, size), outer, 5))
            return;
}

TextItem PlanCanvas::in_band(Vec2 middle, Vec2 ahead, const std::string& text, double size,
                             bool turned) const {
    if (!turned)
        return centred(middle, text, size, true);
    if (ahead.x() < -1e-9 || (ahead.x() < 1e-9 && ahead.y() < 0))
        ahead = -ahead;
    TextItem item = text_at(middle - Vec2(-ahead.y(), ahead.x()) * (0.365 * size), text, size, true,
                            Align::centre);
    item.turn = std::atan2(ahead.y(), ahead.x());
    return item;
}

TextItem PlanCanvas::centred(Vec2 middle, const std::string& text, double size, bool bold) {
    return text_at(middle - Vec2(0, 0.365 * size), text, size, bold, Align::centre);
}

void PlanCanvas::put(const TextItem& label) {
    placer_.take(corners(label, placer_.measure()));
    labels_.push_back(label);
}

void PlanCanvas::write_labels() {
    for (const LateLabel& label : later_)
        if (!name(label.candidates) && !label.led.empty())
            led_name(label.led, label.target, 3);
    for (const TextItem& label : labels_)
        sheet_.items.push_back(label);
    later_.clear();
    labels_.clear();
}

void add_north(Sheet& sheet, Placer& placer) {
    const PaperBox& box = placer.frame();
    constexpr double width = 8, height = 13.5;
    // The first corner where nothing is drawn; else the upper left one, on white.
    const double right = box.right - width, low = box.bottom + height;
    PaperBox place{box.left, box.top - height, box.left + width, box.top};
    bool free = false;
    for (const Vec2& corner :
         {Vec2(box.left, box.top), Vec2(right, box.top), Vec2(right, low), Vec2(box.left, low)}) {
        const PaperBox there{corner.x(), corner.y() - height, corner.x() + width, corner.y()};
        if (free || !placer.free(corners(there), -0.2))
            continue;
        place = there;
        free = true;
    }
    if (!free)
        add_fill(sheet, place, {1});
    const double x = place.left + 4;
    const Vec2 foot(x, place.top - 13), tip(x, place.top - 5.5);
    add_line(sheet, foot, tip, pens::cut);
    add_arrowhead(sheet, tip + Vec2(0, 1), {0, 1}, 4);
    TextItem north = text_at({x, place.top - 3.6}, "N", sizes::body, true, Align::centre);
    north.on_white = !free;
    sheet.items.push_back(north);
    placer.take(place);
}

} // namespace coilwright
