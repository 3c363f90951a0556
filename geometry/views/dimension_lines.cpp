#include "geometry/views/dimension_lines.hpp"

#include "geometry/base/bearing.hpp"
#include "geometry/drawing/pen.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {
namespace {

constexpr double overshoot = 1.5, gap = 1.2, tick = 1.3, above = 1.1; // mm

/// A dimension's line as drawn, and how its figure reads.
struct Laid {
    Vec2 a{0, 0}, b{0, 0}; // in the order of reading
    Vec2 reading{1, 0}, up{0, 1};
    double turn = 0;
    const PaperDimension* of = nullptr;
    std::size_t first = 0, last = 0; // its items on the sheet
    double length() const { return (b - a).norm(); }
};

Laid lay_line(Sheet& sheet, Placer& placer, const PaperDimension& dimension) {
    const Vec2 along = dimension.along, left(-along.y(), along.x());
    const double level =
        std::max(left.dot(dimension.from), left.dot(dimension.to)) + dimension.offset;
    Laid laid;
    laid.of = &dimension;
    laid.first = sheet.items.size();
    laid.a = dimension.from + left * (level - left.dot(dimension.from));
    laid.b = dimension.to + left * (level - left.dot(dimension.to));
    for (const auto& [point, end] :
         {std::pair{dimension.from, laid.a}, std::pair{dimension.to, laid.b}}) {
        add_line(sheet, point + left * gap, end + left * overshoot, pens::fine);
        placer.take_line(point + left * gap, end + left * overshoot, 0.2);
        const Vec2 stroke = (along + left).normalized() * tick;
        add_line(sheet, end - stroke, end + stroke, pens::cut);
        placer.take(corners(end - stroke, end + stroke, 0.5));
    }
    add_line(sheet, laid.a, laid.b, pens::seen);
    laid.last = sheet.items.size();
    placer.take_line(laid.a, laid.b, 0.3);
    laid.turn = std::atan2(along.y(), along.x());
    if (laid.turn > pi / 2 + 1e-6 || laid.turn <= -pi / 2 + 1e-6)
        laid.turn += laid.turn > 0 ? -pi : pi;
    laid.reading = {std::cos(laid.turn), std::sin(laid.turn)};
    laid.up = {-laid.reading.y(), laid.reading.x()};
    if (laid.reading.dot(laid.b - laid.a) < 0)
        std::swap(laid.a, laid.b);
    return laid;
}

TextItem figure(const Laid& laid, Vec2 middle, double size) {
    TextItem item = text_at(middle, laid.of->text, size, false, Align::centre);
    item.turn = laid.turn;
    return item;
}

bool put_if_free(Sheet& sheet, Placer& placer, const TextItem& item, double clearance) {
    if (!placer.free(corners(item, placer.measure()), clearance))
        return false;
    placer.take(corners(item, placer.measure()));
    sheet.items.emplace_back(item);
    return true;
}

bool put_on_line(Sheet& sheet, Placer& placer, const Laid& laid) {
    for (const double size : {sizes::small, sizes::least}) {
        if (placer.measure()(laid.of->text, size, false).width + 1.6 > laid.length())
            continue;
        const Vec2 middle = (laid.a + laid.b) / 2;
        if (put_if_free(sheet, placer, figure(laid, middle + laid.up * above, size), 0.2) ||
            put_if_free(sheet, placer, figure(laid, middle - laid.up * (above + 0.75 * size), size),
                        0.2))
            return true;
    }
    return false;
}

/// Beyond an end, on the line made longer; else beside the line with a leader to its middle.
bool put_near(Sheet& sheet, Placer& placer, const Laid& laid) {
    for (const double size : {sizes::small, sizes::least}) {
        const double width = placer.measure()(laid.of->text, size, false).width;
        for (const bool last : {true, false}) {
            const Vec2 end = last ? laid.b : laid.a;
            const Vec2 out = last ? laid.reading : Vec2(-laid.reading);
            const Vec2 middle = end + out * (width / 2 + 2.4);
            if (!put_if_free(sheet, placer, figure(laid, middle + laid.up * above, size), 0.2))
                continue;
            add_line(sheet, end, end + out * (width + 3.4), pens::seen);
            placer.take_line(end, end + out * (width + 3.4), 0.3);
            return true;
        }
    }
    const Vec2 middle = (laid.a + laid.b) / 2;
    const double size = sizes::least, width = placer.measure()(laid.of->text, size, false).width;
    for (double aside = 0; aside <= 40; aside += 1.5)
        for (const double away : {3.2, -5.2, 6.5, -8.5, 10.0, -12.0})
            for (const double side : {1.0, -1.0}) {
                const Vec2 foot = middle + laid.reading * (side * aside) + laid.up * away;
                const TextItem item = figure(laid, foot, size);
                const Vec2 near = foot + laid.up * (away > 0 ? -0.4 : 0.75 * size + 0.4) -
                                  laid.reading * (side * std::min(aside, width / 2));
                if (!placer.free_for_leader(middle, near) || !put_if_free(sheet, placer, item, 0.2))
                    continue;
                add_line(sheet, middle, near, pens::fine);
                placer.take_line(middle, near, 0.2);
                return true;
            }
    return false;
}

/// Anywhere, level, with a leader.
bool put_anywhere(Sheet& sheet, Placer& placer, const Laid& laid) {
    const Vec2 middle = (laid.a + laid.b) / 2;
    std::vector<TextItem> candidates;
    for (const Vec2& place : places_in_frame(placer.frame(), middle, 60))
        candidates.push_back(text_at(place, laid.of->text, sizes::least, false, Align::centre));
    const auto led = placer.place_led(candidates, middle, 2);
    if (!led)
        return false;
    sheet.items.emplace_back(led->text);
    if ((led->to - led->from).norm() > 0)
        add_line(sheet, led->from, led->to, pens::fine);
    return true;
}

} // namespace

std::vector<Vec2> places_in_frame(const PaperBox& frame, Vec2 target, double farthest) {
    constexpr double step = 2; // mm
    std::vector<Vec2> places;
    for (double y = frame.bottom; y <= frame.top; y += step)
        for (double x = frame.left; x <= frame.right; x += step)
            if ((Vec2(x, y) - target).norm() <= farthest)
                places.emplace_back(x, y);
    std::stable_sort(places.begin(), places.end(), [&](const Vec2& a, const Vec2& b) {
        return (a - target).squaredNorm() < (b - target).squaredNorm();
    });
    return places;
}

void add_dimensions(Sheet& sheet, Placer& placer, const std::vector<PaperDimension>& dimensions) {
    std::vector<Laid> lines;
    for (const PaperDimension& dimension : dimensions)
        lines.push_back(lay_line(sheet, placer, dimension));
    std::vector<const Laid*> left;
    for (const Laid& laid : lines)
        if (!put_on_line(sheet, placer, laid))
            left.push_back(&laid);
    std::vector<const Laid*> left_out;
    for (const Laid* laid : left) {
        if (put_near(sheet, placer, *laid) || put_anywhere(sheet, placer, *laid))
            continue;
        if (laid->of->optional) {
            left_out.push_back(laid);
            continue;
        }
        // No place is free: over what is there, on white, rather than not at all.
        TextItem item = figure(*laid, (laid->a + laid->b) / 2 + laid->up * above, sizes::least);
        item.on_white = true;
        placer.take(corners(item, placer.measure()));
        sheet.items.emplace_back(item);
    }
    std::sort(left_out.begin(), left_out.end(),
              [](const Laid* a, const Laid* b) { return a->first > b->first; });
    for (const Laid* laid : left_out)
        sheet.items.erase(sheet.items.begin() + static_cast<std::ptrdiff_t>(laid->first),
                          sheet.items.begin() + static_cast<std::ptrdiff_t>(laid->last));
}

} // namespace coilwright
