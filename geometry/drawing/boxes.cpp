#include "geometry/drawing/boxes.hpp"

#include "geometry/base/bearing.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace coilwright {
namespace {

constexpr double touch = 1e-6; // mm

/// Grows a box point by point.
struct Bounds {
    PaperBox box{std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity(),
                 -std::numeric_limits<double>::infinity(),
                 -std::numeric_limits<double>::infinity()};
    void add(Vec2 point) {
        box.left = std::min(box.left, point.x());
        box.right = std::max(box.right, point.x());
        box.bottom = std::min(box.bottom, point.y());
        box.top = std::max(box.top, point.y());
    }
    void add_arc(Vec2 centre, double radius, double start, double end) {
        const auto at = [&](double angle) {
            return Vec2(centre + radius * Vec2(std::cos(angle), std::sin(angle)));
        };
        add(at(start));
        add(at(end));
        const double quarter = pi / 2;
        const double last = std::min(end, start + 2 * pi);
        for (double k = std::ceil(start / quarter); k * quarter <= last; ++k)
            add(at(k * quarter));
    }
};

bool split(const Corners& a, const Corners& b, Vec2 axis) {
    double a_low = std::numeric_limits<double>::infinity(), a_high = -a_low;
    double b_low = a_low, b_high = -a_low;
    for (const Vec2& point : a) {
        a_low = std::min(a_low, axis.dot(point));
        a_high = std::max(a_high, axis.dot(point));
    }
    for (const Vec2& point : b) {
        b_low = std::min(b_low, axis.dot(point));
        b_high = std::max(b_high, axis.dot(point));
    }
    return a_high <= b_low + touch || b_high <= a_low + touch;
}

void add_fill(Bounds& around, const FillItem& fill) {
    for (const FillItem::Loop& loop : fill.loops) {
        Vec2 from = loop.from;
        around.add(from);
        for (const FillItem::Edge& edge : loop.edges) {
            around.add(edge.to);
            const double length = (edge.to - from).norm();
            if (std::abs(edge.bulge) > 1e-9 && length > 1e-9) {
                const Vec2 left(-(edge.to - from).y() / length, (edge.to - from).x() / length);
                const Vec2 centre =
                    (from + edge.to) / 2 +
                    left * (length * (1 - edge.bulge * edge.bulge) / (4 * edge.bulge));
                const Vec2 first = (edge.bulge > 0 ? from : edge.to) - centre;
                const double start = std::atan2(first.y(), first.x());
                around.add_arc(centre, first.norm(), start,
                               start + 4 * std::atan(std::abs(edge.bulge)));
            }
            from = edge.to;
        }
    }
}

} // namespace

PaperBox grown(const PaperBox& box, double by) {
    return {box.left - by, box.bottom - by, box.right + by, box.top + by};
}

bool inside(const PaperBox& inner, const PaperBox& outer) {
    return inner.left >= outer.left - touch && inner.right <= outer.right + touch &&
           inner.bottom >= outer.bottom - touch && inner.top <= outer.top + touch;
}

Corners corners(const PaperBox& box) {
    return {Vec2(box.left, box.bottom), Vec2(box.right, box.bottom), Vec2(box.right, box.top),
            Vec2(box.left, box.top)};
}

Corners corners(Vec2 from, Vec2 to, double width) {
    Vec2 ahead = to - from;
    const double length = ahead.norm();
    ahead = length > 0 ? Vec2(ahead / length) : Vec2(1, 0);
    const Vec2 aside = Vec2(-ahead.y(), ahead.x()) * (width / 2);
    return {from - aside, to - aside, to + aside, from + aside};
}

Corners corners(const TextItem& text, const MeasureText& measure) {
    const TextExtent extent = measure(text.text, text.size, text.bold);
    const double start = text.align == Align::left     ? 0
                         : text.align == Align::centre ? -extent.width / 2
                                                       : -extent.width;
    const Vec2 ahead(std::cos(text.turn), std::sin(text.turn));
    const Vec2 up(-ahead.y(), ahead.x());
    const auto at = [&](double x, double y) { return Vec2(text.at + ahead * x + up * y); };
    return {at(start, -extent.descent), at(start + extent.width, -extent.descent),
            at(start + extent.width, extent.ascent), at(start, extent.ascent)};
}

PaperBox bounds(const Corners& points) {
    Bounds around;
    for (const Vec2& point : points)
        around.add(point);
    return around.box;
}

PaperBox bounds(const PaperItem& item, const MeasureText& measure) {
    Bounds around;
    double pen = 0;
    if (const auto* line = std::get_if<LineItem>(&item)) {
        for (const Vec2& point : line->points)
            around.add(point);
        pen = line->stroke.width / 2;
    } else if (const auto* arc = std::get_if<ArcItem>(&item)) {
        around.add_arc(arc->centre, arc->radius, arc->start, arc->end);
        pen = arc->stroke.width / 2;
    } else if (const auto* fill = std::get_if<FillItem>(&item)) {
        add_fill(around, *fill);
    } else {
        return bounds(corners(std::get<TextItem>(item), measure));
    }
    return grown(around.box, pen);
}

bool overlap(const Corners& a, const Corners& b) {
    // Most stand clear of each other by their circles; the test by axes is for the rest.
    const Vec2 apart = (a[0] + a[2] - b[0] - b[2]) / 2;
    const double reach = ((a[2] - a[0]).norm() + (b[2] - b[0]).norm()) / 2;
    if (apart.squaredNorm() > reach * reach)
        return false;
    for (const Corners* one : {&a, &b})
        for (int i : {0, 1}) {
            Vec2 axis =
                (*one)[static_cast<std::size_t>(i) + 1] - (*one)[static_cast<std::size_t>(i)];
            const double length = axis.norm();
            if (length < touch) // a rectangle without width: its other side's normal serves
                continue;
            if (split(a, b, axis / length))
                return false;
        }
    return true;
}

PaperItem moved(PaperItem item, Vec2 by) {
    if (auto* line = std::get_if<LineItem>(&item)) {
        for (Vec2& point : line->points)
            point += by;
    } else if (auto* arc = std::get_if<ArcItem>(&item)) {
        arc->centre += by;
    } else if (auto* fill = std::get_if<FillItem>(&item)) {
        for (FillItem::Loop& loop : fill->loops) {
            loop.from += by;
            for (FillItem::Edge& edge : loop.edges)
                edge.to += by;
        }
    } else if (auto* text = std::get_if<TextItem>(&item)) {
        text->at += by;
    }
    return item;
}

} // namespace coilwright
