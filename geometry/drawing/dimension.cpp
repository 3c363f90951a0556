#include "geometry/drawing/dimension.hpp"

#include "geometry/base/bearing.hpp"
#include "geometry/drawing/pen.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

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
    // On the line where it fits, else beyond the end that is free, the later in reading first.
    struct Place {
        Vec2 middle, from, to;
    };
    std::vector<Place> places;
    if (extent.width + 3 <= length)
        places.push_back({(a + b) / 2, a, b});
    const bool b_last = reading.dot(b) > reading.dot(a);
    const Vec2 last = b_last ? b : a, first = b_last ? a : b;
    const Vec2 reach = reading * (extent.width + 3.5), middle = reading * (extent.width / 2 + 2.5);
    places.push_back({last + middle, first, last + reach});
    places.push_back({first - middle, first - reach, last});
    TextItem label;
    for (const Place& place : places) {
        label = text_at(place.middle + up * 1.1, text, size, false, Align::centre);
        label.turn = turn;
        if (!placer.free(corners(label, placer.measure()), 0.2))
            continue;
        add_line(sheet, place.from, place.to, pens::seen);
        placer.take_line(place.from, place.to);
        placer.take(corners(label, placer.measure()));
        sheet.items.push_back(label);
        return;
    }
    // No place is free: over what is there, on white, rather than not at all.
    label = text_at(places.front().middle + up * 1.1, text, size, false, Align::centre);
    label.turn = turn;
    label.on_white = true;
    add_line(sheet, places.front().from, places.front().to, pens::seen);
    placer.take(corners(label, placer.measure()));
    sheet.items.push_back(label);
}

} // namespace coilwright
