#include "geometry/plan/path.hpp"

#include "geometry/plan/plan_outline.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

/// A stretch of the path inside one shape, in places; 0 <= from < to <= length_in_places.
struct Taken {
    PathEnd from, to;
};

double places_of(const Path& path) {
    return std::holds_alternative<CirclePath>(path) ? 360 : length_of(path);
}
double metres_per_place(const Path& path) {
    const CirclePath* circle = std::get_if<CirclePath>(&path);
    return circle ? circle->radius * radians_per_degree : 1;
}

using Places = std::vector<double>;

/// Degrees from the datum to both crossings with a line or circle that lies `off` from the centre
/// along a bearing.
void add_crossings(const CirclePath& circle, double off, const Vec2& towards, Places& places) {
    const double middle =
        clockwise_degrees(circle.datum, to_bearing({std::atan2(towards.y(), towards.x())}));
    const double half_chord = (circle.radius - off) * (circle.radius + off);
    if (half_chord <= 0)
        return;
    const double half = std::atan2(std::sqrt(half_chord), off) / radians_per_degree;
    places.push_back(turned_into_circle(middle - half));
    places.push_back(turned_into_circle(middle + half));
}

void cross_disc(const CirclePath& circle, const Disc& disc, Places& places) {
    const Vec2 apart = disc.centre - circle.centre;
    const double d = apart.norm(), r = circle.radius, s = disc.radius;
    if (d >= r + s || d <= std::abs(r - s))
        return;
    add_crossings(circle, (d + (r - s) * (r + s) / d) / 2, apart, places);
}

void cross_box(const CirclePath& circle, const Box& box, Places& places) {
    const Vec2 across = turned_left(box.axis), centre = circle.centre - box.origin;
    for (const double along : {box.from, box.to})
        add_crossings(circle, along - box.axis.dot(centre), box.axis, places);
    for (const double left : {box.low, box.high})
        add_crossings(circle, left - across.dot(centre), across, places);
}

void cross_disc(const LinePath& line, const Disc& disc, Places& places) {
    const Vec2 along = (line.to - line.from).normalized();
    const Vec2 to_centre = disc.centre - line.from;
    const double off = cross(along, to_centre);
    const double half_chord = (disc.radius - off) * (disc.radius + off);
    if (half_chord <= 0)
        return;
    for (const double half : {-std::sqrt(half_chord), std::sqrt(half_chord)})
        places.push_back(along.dot(to_centre) + half);
}

void cross_box(const LinePath& line, const Box& box, Places& places) {
    const Vec2 along = (line.to - line.from).normalized(), start = line.from - box.origin;
    const auto cut = [&](const Vec2& axis, double low, double high) {
        const double rate = axis.dot(along);
        if (std::abs(rate) < 1e-12) // parallel, to far less than plan_weld over any path
            return;
        for (const double side : {low, high})
            places.push_back((side - axis.dot(start)) / rate);
    };
    cut(box.axis, box.from, box.to);
    cut(turned_left(box.axis), box.low, box.high);
}

template <typename OnePath>
Places crossings(const OnePath& path, const Shape& shape) {
    Places places;
    if (const Disc* disc = std::get_if<Disc>(&shape))
        cross_disc(path, *disc, places);
    else
        cross_box(path, std::get<Box>(shape), places);
    return places;
}

/// Stretches of the path inside a shape by more than rounding: split at all crossings with the
/// shape's lines and circles, each piece judged at its middle.
void add_taken(const Path& path, const Shape& shape, int index, std::vector<Taken>& taken) {
    const double whole = places_of(path), least = plan_weld / metres_per_place(path);
    Places places = std::visit([&](const auto& one) { return crossings(one, shape); }, path);
    std::erase_if(places, [&](double place) { return place <= 0 || place >= whole; });
    places.push_back(0);
    places.push_back(whole);
    std::sort(places.begin(), places.end());
    bool open = false; // whether the last stretch goes on
    for (std::size_t i = 1; i < places.size(); ++i) {
        if (places[i] - places[i - 1] <= least)
            continue;
        const Vec2 middle = point_at(path, (places[i - 1] + places[i]) / 2);
        const bool inside = distance_outside(shape, middle) < -plan_weld;
        if (inside && open)
            taken.back().to.at = places[i];
        else if (inside)
            taken.push_back({{places[i - 1], index}, {places[i], index}});
        open = inside;
    }
}

/// The datum is no end of a circle: the stretches to both sides of it are one, or end at the cut
/// that lies just beyond it.
void close_circle(const std::vector<Taken>& taken, double whole, double weld,
                  std::vector<Interval>& kept) {
    if (kept.empty() || taken.empty())
        return;
    Interval &first = kept.front(), &last = kept.back();
    const bool open_start = first.start.shape < 0, open_end = last.end.shape < 0;
    if (open_start && open_end && kept.size() > 1) {
        last.end = {whole + first.end.at, first.end.shape};
        kept.erase(kept.begin());
    } else if (open_end) {
        last.end.shape = taken.front().from.shape;
    } else if (open_start) {
        for (const Taken& stretch : taken)
            if (stretch.to.at >= whole - weld &&
                (first.start.shape < 0 || stretch.to.shape < first.start.shape))
                first.start.shape = stretch.to.shape;
    }
}

} // namespace

double length_of(const Path& path) {
    if (const CirclePath* circle = std::get_if<CirclePath>(&path))
        return 2 * pi * std::max(circle->radius, 0.0);
    const LinePath& line = std::get<LinePath>(path);
    return (line.to - line.from).norm();
}

double length_of(const Path& path, const Interval& interval) {
    return (interval.end.at - interval.start.at) * metres_per_place(path);
}

Vec2 point_at(const Path& path, double place) {
    if (const CirclePath* circle = std::get_if<CirclePath>(&path))
        return circle->centre + circle->radius * along(turned(circle->datum, place));
    const LinePath& line = std::get<LinePath>(path);
    return line.from + place * (line.to - line.from).normalized();
}

std::vector<Interval> kept_intervals(const Path& path, const std::vector<Shape>& taken_shapes) {
    if (length_of(path) <= plan_weld)
        return {};
    const double whole = places_of(path), weld = plan_weld / metres_per_place(path);
    std::vector<Taken> taken;
    for (std::size_t i = 0; i < taken_shapes.size(); ++i)
        add_taken(path, taken_shapes[i], static_cast<int>(i), taken);
    std::sort(taken.begin(), taken.end(), [](const Taken& a, const Taken& b) {
        return a.from.at != b.from.at ? a.from.at < b.from.at : a.from.shape < b.from.shape;
    });

    std::vector<Interval> kept;
    PathEnd start; // of the stretch that is not taken yet
    for (std::size_t i = 0; i < taken.size(); ++i) {
        if (taken[i].from.at > start.at + weld) {
            PathEnd end = taken[i].from;
            for (std::size_t k = i; k < taken.size() && taken[k].from.at <= end.at + weld; ++k)
                end.shape = std::min(end.shape, taken[k].from.shape);
            kept.push_back({start, end});
        }
        const PathEnd& to = taken[i].to;
        if (to.at > start.at + weld)
            start = to;
        else if (to.at >= start.at - weld)
            start = {std::max(start.at, to.at), std::min(start.shape, to.shape)};
    }
    if (whole > start.at + weld)
        kept.push_back({start, {whole, -1}});

    if (std::holds_alternative<CirclePath>(path))
        close_circle(taken, whole, weld, kept);
    std::erase_if(kept,
                  [&](const Interval& piece) { return length_of(path, piece) < shortest_kept; });
    return kept;
}

} // namespace coilwright
