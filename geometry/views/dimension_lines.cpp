#include "geometry/views/dimension_lines.hpp"

#include "geometry/base/bearing.hpp"
#include "geometry/drawing/pen.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {
namespace {

constexpr double overshoot = 1.5, gap = 1.2, tick = 1.3, above = 1.1; // mm
constexpr double in_line = 3; // mm: as near as that a figure seems to stand on a line

/// A dimension's line as drawn, and how its figure reads.
struct Line {
    LaidDimension laid;
    Vec2 a{0, 0}, b{0, 0}; // in the order of reading
    Vec2 reading{1, 0}, up{0, 1};
    double turn = 0;
    const PaperDimension* of = nullptr;
    bool left_out = false;
    double length() const { return (b - a).norm(); }
    void add(Vec2 from, Vec2 to, const Stroke& stroke) {
        laid.lines.push_back({{from, to}, false, stroke});
    }
};

Line lay_line(Placer& placer, const PaperDimension& dimension) {
    const Vec2 along = dimension.along, left(-along.y(), along.x());
    const double level =
        std::max(left.dot(dimension.from), left.dot(dimension.to)) + dimension.offset;
    Line line;
    line.of = &dimension;
    line.a = line.laid.from = dimension.from + left * (level - left.dot(dimension.from));
    line.b = line.laid.to = dimension.to + left * (level - left.dot(dimension.to));
    for (const auto& [point, end] :
         {std::pair{dimension.from, line.a}, std::pair{dimension.to, line.b}}) {
        line.add(point + left * gap, end + left * overshoot, pens::fine);
        placer.take_line(point + left * gap, end + left * overshoot, 0.2);
        const Vec2 stroke = (along + left).normalized() * tick;
        line.add(end - stroke, end + stroke, pens::cut);
        placer.take(corners(end - stroke, end + stroke, 0.5));
    }
    line.add(line.a, line.b, pens::seen);
    placer.take_line(line.a, line.b, 0.3);
    line.turn = std::atan2(along.y(), along.x());
    if (line.turn > pi / 2 + 1e-6 || line.turn <= -pi / 2 + 1e-6)
        line.turn += line.turn > 0 ? -pi : pi;
    line.reading = {std::cos(line.turn), std::sin(line.turn)};
    line.up = {-line.reading.y(), line.reading.x()};
    if (line.reading.dot(line.b - line.a) < 0)
        std::swap(line.a, line.b);
    return line;
}

TextItem figure(const Line& line, Vec2 middle, double size) {
    TextItem item = text_at(middle, line.of->text, size, false, Align::centre);
    item.turn = line.turn;
    return item;
}

bool put_if_free(Line& line, Placer& placer, const TextItem& item, double clearance) {
    if (!placer.free(corners(item, placer.measure()), clearance))
        return false;
    placer.take(corners(item, placer.measure()));
    line.laid.figure = item;
    return true;
}

/// On its own line: in the middle, else as near to it as there is room between the ends.
bool put_on_line(Line& line, Placer& placer) {
    for (const double size : {sizes::small, sizes::least}) {
        const double spare =
            (line.length() - 1.6 - placer.measure()(line.of->text, size, false).width) / 2;
        if (spare < 0)
            continue;
        for (double aside = 0; aside <= spare; aside += 1.5)
            for (const double side : {1.0, -1.0}) {
                const Vec2 foot = (line.a + line.b) / 2 + line.reading * (side * aside);
                if (put_if_free(line, placer, figure(line, foot + line.up * above, size), 0.2) ||
                    put_if_free(line, placer,
                                figure(line, foot - line.up * (above + 0.75 * size), size), 0.2))
                    return true;
            }
    }
    return false;
}

/// Whether another dimension's line lies in line there: a figure would be taken for that one's.
bool is_on_another(const Line& line, Vec2 from, Vec2 to, const std::vector<Line>& all) {
    const double start = std::min(line.reading.dot(from), line.reading.dot(to));
    const double end = std::max(line.reading.dot(from), line.reading.dot(to));
    for (const Line& other : all) {
        if (&other == &line || std::abs(line.up.dot(other.reading)) > 1e-6 ||
            std::abs(line.up.dot(other.a - from)) > in_line)
            continue;
        const double one = line.reading.dot(other.a), another = line.reading.dot(other.b);
        if (std::min(one, another) < end - 0.1 && std::max(one, another) > start + 0.1)
            return true;
    }
    return false;
}

/// Beyond an end, on the line made longer; else beside the line with a leader to its middle.
bool put_near(Line& line, Placer& placer, const std::vector<Line>& all) {
    for (const double size : {sizes::small, sizes::least}) {
        const double width = placer.measure()(line.of->text, size, false).width;
        for (const bool last : {true, false}) {
            const Vec2 end = last ? line.b : line.a;
            const Vec2 out = last ? line.reading : Vec2(-line.reading);
            const Vec2 middle = end + out * (width / 2 + 2.4);
            if (is_on_another(line, end, end + out * (width + 3.4), all) ||
                !put_if_free(line, placer, figure(line, middle + line.up * above, size), 0.2))
                continue;
            line.add(end, end + out * (width + 3.4), pens::seen);
            placer.take_line(end, end + out * (width + 3.4), 0.3);
            return true;
        }
    }
    const Vec2 middle = (line.a + line.b) / 2;
    const double size = sizes::least, width = placer.measure()(line.of->text, size, false).width;
    for (double aside = 0; aside <= 40; aside += 1.5)
        for (const double away : {3.2, -5.2, 6.5, -8.5, 10.0, -12.0})
            for (const double side : {1.0, -1.0}) {
                const Vec2 foot = middle + line.reading * (side * aside) + line.up * away;
                const TextItem item = figure(line, foot, size);
                const Vec2 near = foot + line.up * (away > 0 ? -0.4 : 0.75 * size + 0.4) -
                                  line.reading * (side * std::min(aside, width / 2));
                if (!placer.free_for_leader(middle, near) || !put_if_free(line, placer, item, 0.2))
                    continue;
                line.add(middle, near, pens::fine);
                placer.take_line(middle, near, 0.2);
                return true;
            }
    return false;
}

/// Anywhere, level, with a leader.
bool put_anywhere(Line& line, Placer& placer) {
    const Vec2 middle = (line.a + line.b) / 2;
    std::vector<TextItem> candidates;
    for (const Vec2& place : places_in_frame(placer.frame(), middle, 60))
        candidates.push_back(text_at(place, line.of->text, sizes::least, false, Align::centre));
    const auto led = placer.place_led(candidates, middle, 2);
    if (!led)
        return false;
    line.laid.figure = led->text;
    if ((led->to - led->from).norm() > 0)
        line.add(led->from, led->to, pens::fine);
    return true;
}

} // namespace

std::vector<Vec2> places_in_frame(const PaperBox& frame, Vec2 target, double farthest) {
    constexpr double step = 2; // mm
    struct Place {
        double square; // of the distance
        Vec2 at;
    };
    std::vector<Place> within;
    for (double y = frame.bottom; y <= frame.top; y += step)
        for (double x = frame.left; x <= frame.right; x += step)
            if (const double square = (Vec2(x, y) - target).squaredNorm();
                square <= farthest * farthest)
                within.push_back({square, {x, y}});
    std::stable_sort(within.begin(), within.end(),
                     [](const Place& a, const Place& b) { return a.square < b.square; });
    std::vector<Vec2> places;
    places.reserve(within.size());
    for (const Place& place : within)
        places.push_back(place.at);
    return places;
}

std::vector<LaidDimension> lay_dimensions(Placer& placer,
                                          const std::vector<PaperDimension>& dimensions) {
    std::vector<Line> lines;
    lines.reserve(dimensions.size());
    for (std::size_t i = 0; i < dimensions.size(); ++i) {
        lines.push_back(lay_line(placer, dimensions[i]));
        lines.back().laid.of = i;
    }
    std::vector<Line*> left;
    for (Line& line : lines)
        if (!put_on_line(line, placer))
            left.push_back(&line);
    for (Line* line : left) {
        if (put_near(*line, placer, lines) || put_anywhere(*line, placer))
            continue;
        if (line->of->optional) {
            line->left_out = true;
            continue;
        }
        // No place is free: over what is there, on white, rather than not at all.
        TextItem item = figure(*line, (line->a + line->b) / 2 + line->up * above, sizes::least);
        item.on_white = true;
        placer.take(corners(item, placer.measure()));
        line->laid.figure = item;
    }
    std::vector<LaidDimension> laid;
    for (Line& line : lines)
        if (!line.left_out)
            laid.push_back(std::move(line.laid));
    return laid;
}

} // namespace coilwright
