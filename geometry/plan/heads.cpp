#include "geometry/plan/heads.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

/// Half-width of a fan's outer curve at a height above the springing, 0 above it. All fan heads are
/// arcs of circles: the outer curve has the same centre and a radius greater by the depth.
double fan_half_width(const OpeningForm& opening, double y) {
    const Profile& head = *opening.head;
    const double outer = head.radius + opening.fan_depth;
    // Centre of the arc: pointed beyond the axis on the springing line, round on it, segmental below.
    const double beyond = head.kind == ProfileKind::pointed ? head.radius - head.half_span : 0;
    const double below = head.kind == ProfileKind::segmental ? head.radius - head.rise : 0;
    const double square = outer * outer - (y + below) * (y + below);
    return square <= 0 ? 0 : std::max(0.0, std::sqrt(square) - beyond);
}

double arc_length(const Profile& head, double radius) {
    // Both sides of the arch: half-angle of the arc at its centre.
    const double half = head.kind == ProfileKind::segmental
                            ? std::asin(head.half_span / head.radius)
                            : std::acos((head.radius - head.half_span) / head.radius);
    return 2 * radius * half;
}

} // namespace

std::optional<Fan> make_fan(const OpeningForm& opening, double width, int springing_course) {
    if (opening.fan_depth <= 0 || !opening.head)
        return std::nullopt;
    const Profile& head = *opening.head;
    Fan fan;
    fan.opening = opening.id;
    fan.set_before_course = springing_course;
    fan.depth = opening.fan_depth;
    // A circle's fan runs all the way round only above its springing: the lower half is the form.
    fan.inner_arc = arc_length(head, head.radius);
    fan.outer_arc = arc_length(head, head.radius + fan.depth);
    const double bags = fan.outer_arc / width;
    fan.count = 2 * static_cast<int>(std::floor((bags - 1) / 2 + 0.5)) + 1;
    fan.count = std::max(1, fan.count);
    fan.outer_width = fan.outer_arc / fan.count;
    fan.inner_width = fan.inner_arc / fan.count;
    return fan;
}

namespace {

/// Area of |x - c| <= half-depth, low <= y <= high that lies in a ring between two radii: bearing of
/// one end of a lintel. By the midpoint rule on y (the strip is a tube or two long; error under 1e-6).
double end_bearing_area(double r, double outside, double inner_face, double outer_face, double low,
                        double high) {
    constexpr int parts = 400;
    double area = 0;
    for (int i = 0; i < parts; ++i) {
        const double y = low + (i + 0.5) * (high - low) / parts;
        const double from = std::max(inner_face, r > y ? std::sqrt(r * r - y * y) : 0);
        const double to = std::min(outer_face, outside > y ? std::sqrt(outside * outside - y * y) : 0);
        area += std::max(0.0, to - from) * (high - low) / parts;
    }
    return area;
}

} // namespace

std::optional<LintelCourses> lintel_courses(const OpeningForm& opening, const DomeForm& dome) {
    if (!opening.lintel || opening.head_kind != HeadKind::square)
        return std::nullopt;
    const double t = dome.course_height;
    LintelCourses courses;
    // The first course whose middle lies above the head, and as many as the depth takes up.
    courses.first = 1;
    while (courses.first < dome.courses() &&
           dome.course_middle(courses.first) < opening.top - height_tie)
        ++courses.first;
    const double depth = opening.lintel->depth.value_or(t);
    const int count = std::max(1, static_cast<int>(std::ceil(depth / t - 1e-9)));
    courses.last = courses.first + count - 1;
    courses.half_length = opening.half_width + opening.lintel->bearing;
    return courses;
}

std::optional<Lintel> make_lintel(const OpeningForm& opening, const DomeForm& dome) {
    const std::optional<LintelCourses> courses = lintel_courses(opening, dome);
    if (!courses)
        return std::nullopt;
    const double t = dome.course_height;
    Lintel lintel;
    lintel.opening = opening.id;
    lintel.kind = opening.lintel->kind;
    lintel.bottom = opening.top;
    lintel.depth = opening.lintel->depth.value_or(t);
    lintel.width = opening.lintel->width.value_or(dome.width - t);
    lintel.bearing = opening.lintel->bearing;
    lintel.length = 2 * (opening.half_width + lintel.bearing);
    lintel.first_course = courses->first;
    lintel.last_course = courses->last;
    lintel.packing = (courses->last - courses->first + 1) * t - lintel.depth;

    // The place that makes the bearing largest, on the ring of the course below: golden section, the
    // area rises to one top and falls.
    const double z = dome.course_middle(std::max(1, courses->first - 1));
    const double r = inside_radius(dome, z), outside = outside_radius(dome, z);
    const double low = opening.half_width, high = lintel.length / 2;
    const auto area = [&](double centre) {
        return 2 * end_bearing_area(r, outside, centre - lintel.width / 2, centre + lintel.width / 2,
                                    low, high);
    };
    const double golden = (std::sqrt(5.0) - 1) / 2;
    double from = std::sqrt(std::max(0.0, r * r - high * high)), to = outside;
    for (int i = 0; i < 60; ++i) {
        const double left = to - golden * (to - from), right = from + golden * (to - from);
        if (area(left) >= area(right))
            to = right;
        else
            from = left;
    }
    lintel.centre_distance = (from + to) / 2;
    lintel.bearing_area = area(lintel.centre_distance);
    lintel.shows_inside = std::max(0.0, r - (lintel.centre_distance - lintel.width / 2));
    return lintel;
}

double taken_top(const OpeningForm& opening, const DomeForm& dome) {
    if (const auto lintel = lintel_courses(opening, dome))
        return std::max(opening.top, dome.course_bottom(lintel->last + 1));
    return opening.top + opening.fan_depth;
}

double taken_half_width(const OpeningForm& opening, const DomeForm& dome, double z) {
    const double a = half_width(opening, z);
    if (opening.fan_depth > 0 && z >= opening.springing)
        return std::max(a, fan_half_width(opening, z - opening.springing));
    const auto lintel = lintel_courses(opening, dome);
    if (lintel && z >= dome.course_bottom(lintel->first) && z < taken_top(opening, dome))
        return std::max(a, lintel->half_length);
    return a;
}

double laid_half_width(const OpeningForm& opening, const DomeForm& dome, int n) {
    if (n > dome.last_ring)
        return 0;
    const double z = dome.course_middle(n);
    if (opening.fan_depth > 0 && z >= opening.springing - height_tie) {
        const double half = fan_half_width(opening, z - opening.springing);
        return 2 * half >= dome.course_height - height_tie ? half : 0;
    }
    if (const std::optional<LintelCourses> lintel = lintel_courses(opening, dome);
        lintel && n >= lintel->first && n <= lintel->last)
        return lintel->half_length;
    return cuts_course(opening, dome, n) ? half_width(opening, z) : 0;
}

} // namespace coilwright
