#include "geometry/drawing/dimension.hpp"

#include "geometry/base/bearing.hpp"
#include "geometry/drawing/pen.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

void add_dimension(Sheet& sheet, Placer& placer, Vec2 from, Vec2 to, Vec2 along, double offset,
                   const std::string& text, double size) {
    constexpr double overshoot = 1.5, gap = 1.2, tick = 1.3; // mm
    const Vec2 left(-along.y(), along.x());
    const double level = std::max(left.dot(from), left.dot(to)) + offset;
    const auto on_line = [&](Vec2 point) { return Vec2(point + left * (level - left.dot(point))); };
    const Vec2 a = on_line(from), b = on_line(to);
    for (const auto& [point, end] : {std::pair{from, a}, std::pair{to, b}}) {
        add_line(sheet, point + left * gap, end + left * overshoot, pens::fine);
        placer.take_line(point + left * gap, end + left * overshoot);
        const Vec2 stroke = (along + left).normalized() * tick;
        add_line(sheet, end - stroke, end + stroke, pens::cut);
        placer.take(corners(end - stroke, end + stroke, 0.5));
    }
    const TextExtent extent = placer.measure()(text, size, false);
    const double length = (b - a).norm();
    // Upright: the text reads from the left or from below.
    double turn = std::atan2(along.y(), along.x());
    if (turn > pi / 2 + 1e-6 || turn <= -pi / 2 + 1e-6)
        turn += turn > 0 ? -pi : pi;
    const Vec2 reading(std::cos(turn), std::sin(turn));
    const Vec2 up(-reading.y(), reading.x());
    const bool outside = extent.width + 3 > length;
    Vec2 line_from = a, line_to = b, at = (a + b) / 2;
    if (outside) { // beyond the end that comes last in the direction of reading
        Vec2& last = (reading.dot(b) > reading.dot(a)) ? line_to : line_from;
        at = last + reading * (extent.width / 2 + 2.5);
        last += reading * (extent.width + 3.5);
    }
    add_line(sheet, line_from, line_to, pens::seen);
    placer.take_line(line_from, line_to);
    TextItem label = text_at(at + up * 1.1, text, size, false, Align::centre);
    label.turn = turn;
    placer.take(corners(label, placer.measure()));
    sheet.items.push_back(label);
}

} // namespace coilwright
