#include "geometry/plan/heads.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

/// One side of an arched head and of the fan around it: an arc about a centre that lies `beyond`
/// the axis on the far side (pointed) and `below` the springing (segmental).
struct HeadArc {
    double radius = 0, beyond = 0, below = 0;
    double skewback = 0; // radians from the vertical at the springing

    /// Angle from the springing to the crown on a circle of some radius about the centre.
    double sweep(double r) const { return below > 0 ? skewback : std::acos(beyond / r); }
    double crown(double r) const { return std::sqrt(r * r - beyond * beyond) - below; }
    /// Half-width at an arc length from the crown.
    double half_across(double r, double arc) const {
        return below > 0 ? r * std::sin(arc / r) : r * std::cos(sweep(r) - arc / r) - beyond;
    }
    /// Area between the circle, the axis and the radii at springing and crown, less what lies
    /// beyond the axis.
    double sector(double r) const {
        return r * r * sweep(r) / 2 - (below > 0 ? 0 : beyond * r * std::sin(sweep(r)) / 2);
    }
};

HeadArc head_arc(const Profile& head) {
    HeadArc arc;
    arc.radius = head.radius;
    if (head.kind == ProfileKind::pointed)
        arc.beyond = head.radius - head.half_span;
    if (head.kind == ProfileKind::segmental && head.radius - head.rise > height_tie) {
        arc.below = head.radius - head.rise;
        arc.skewback = std::asin(head.half_span / head.radius);
    }
    return arc;
}

/// Half-width of a fan's outer curve at a height above the springing, 0 above it. Beside a skewback
/// that leans out, the courses end at the skewback.
double fan_half_width(const OpeningForm& opening, double y) {
    const HeadArc arc = head_arc(*opening.head);
    const double r = arc.radius + opening.fan_depth;
    const double square = r * r - (y + arc.below) * (y + arc.below);
    const double curve = square <= 0 ? 0 : std::max(0.0, std::sqrt(square) - arc.beyond);
    return arc.below > 0 ? std::min(curve, opening.head->half_span + y * std::tan(arc.skewback))
                         : curve;
}

bool has_fan(const OpeningForm& opening) {
    return opening.fan_depth > 0 && opening.head;
}

} // namespace

std::optional<Fan> make_fan(const OpeningForm& opening, double width, int springing_course) {
    if (!has_fan(opening))
        return std::nullopt;
    const HeadArc arc = head_arc(*opening.head);
    const double inner = arc.radius, outer = inner + opening.fan_depth;
    Fan fan;
    fan.opening = opening.id;
    fan.set_before_course = springing_course;
    fan.depth = opening.fan_depth;
    fan.inner_arc = 2 * inner * arc.sweep(inner);
    fan.outer_arc = 2 * outer * arc.sweep(outer);
    const double bags = fan.outer_arc / width;
    fan.count = std::max(1, 2 * static_cast<int>(std::floor((bags - 1) / 2 + 0.5)) + 1);
    fan.outer_width = fan.outer_arc / fan.count;
    fan.inner_width = fan.inner_arc / fan.count;
    fan.keystone_outer = 2 * arc.half_across(outer, fan.outer_width / 2);
    fan.keystone_inner = 2 * arc.half_across(inner, fan.inner_width / 2);
    fan.face_area = 2 * (arc.sector(outer) - arc.sector(inner));
    fan.fill_volume = fan.face_area * width;
    return fan;
}

double fan_corner(const OpeningForm& opening, const Fan& fan, int i) {
    const HeadArc arc = head_arc(*opening.head);
    const double r = arc.radius + opening.fan_depth;
    const double along = i * fan.outer_width / r;
    return arc.below > 0 ? r * std::cos(arc.skewback - along) - arc.below : r * std::sin(along);
}

double fan_bag_area(const Fan& fan, bool keystone) {
    const double bag = (fan.outer_width + fan.inner_width) / 2 * fan.depth;
    return keystone ? fan.face_area - (fan.count - 1) * bag : bag;
}

double fan_top(const OpeningForm& opening) {
    if (!has_fan(opening))
        return opening.top;
    const HeadArc arc = head_arc(*opening.head);
    return opening.springing + arc.crown(arc.radius + opening.fan_depth);
}

namespace {

/// Half of a chord: how far from its middle a circle lies at a distance from its centre; 0 beyond.
double half_chord(double radius, double off) {
    return std::sqrt(std::max(0.0, radius * radius - off * off));
}

/// Area under a circle about the origin from the y axis to y, 0 <= y <= radius.
double under_circle(double radius, double y) {
    return (y * half_chord(radius, y) + radius * radius * std::asin(std::min(1.0, y / radius))) / 2;
}

/// One end of a lintel on the round wall below it: the band from `low` to `high` along it, its
/// faces half its width off its long axis.
struct LintelEnd {
    double inside = 0, outside = 0; // radii of the wall
    double half_depth = 0;          // of the lintel, across the wall
    double low = 0, high = 0;

    /// Of the band, what lies on the wall at all with the long axis so far from the pole.
    double first(double centre) const {
        return std::clamp(half_chord(inside, centre + half_depth), low, high);
    }
    double last(double centre) const {
        return std::clamp(half_chord(outside, centre - half_depth), low, high);
    }
    /// From where on the lintel's inner face stands on the wall, and up to where its outer one.
    double inner_from(double centre) const {
        return std::clamp(half_chord(inside, centre - half_depth), first(centre), last(centre));
    }
    double outer_to(double centre) const {
        return std::clamp(half_chord(outside, centre + half_depth), first(centre), last(centre));
    }

    double area(double centre) const {
        const double y0 = first(centre), y1 = last(centre);
        if (y1 <= y0)
            return 0;
        const double in = inner_from(centre), out = outer_to(centre);
        const double over = (centre + half_depth) * (out - y0) + under_circle(outside, y1) -
                            under_circle(outside, out);
        const double under = under_circle(inside, std::min(in, inside)) -
                             under_circle(inside, std::min(y0, inside)) +
                             (centre - half_depth) * (y1 - in);
        return over - under;
    }
    /// What the area gains where the long axis moves outward: the outer face's length on the wall
    /// less the inner one's.
    double gain(double centre) const {
        return (outer_to(centre) - first(centre)) - (last(centre) - inner_from(centre));
    }

    /// The long axis where the area is largest, in the middle of such places where they are many: a
    /// lintel that lies whole on the wall may be moved.
    double best_centre() const {
        const auto turn = [&](auto rises) {
            // From where its ends come onto the wall to where they leave it.
            double from = half_chord(inside, high), to = half_chord(outside, low) + half_depth;
            for (int i = 0; i < 60; ++i) {
                const double middle = (from + to) / 2;
                (rises(gain(middle)) ? from : to) = middle;
            }
            return (from + to) / 2;
        };
        return (turn([](double gain) { return gain > 0; }) +
                turn([](double gain) { return gain >= 0; })) /
               2;
    }
};

} // namespace

std::optional<LintelCourses> lintel_courses(const OpeningForm& opening,
                                            const CourseLevels& levels) {
    if (!opening.lintel || opening.head_kind != HeadKind::square)
        return std::nullopt;
    const double t = levels.course_height;
    LintelCourses courses;
    courses.first = 1;
    while (courses.first < most_courses &&
           levels.course_middle(courses.first) < opening.top - height_tie)
        ++courses.first;
    const double depth = opening.lintel->depth.value_or(t);
    const double end = levels.course_bottom(courses.first) + depth;
    courses.last = courses.first;
    while (courses.last < most_courses && levels.course_bottom(courses.last + 1) < end - height_tie)
        ++courses.last;
    courses.half_length = opening.half_width + opening.lintel->bearing;
    return courses;
}

namespace {

/// How much of what lies from `low` to `high` lies from `from` to `to`.
double share_between(double low, double high, double from, double to) {
    return std::max(0.0, std::min(high, to) - std::max(low, from)) / (high - low);
}

Lintel start_lintel(const OpeningForm& opening, const LintelCourses& courses,
                    const CourseLevels& levels, double wall_width) {
    const double t = levels.course_height;
    Lintel lintel;
    lintel.opening = opening.id;
    lintel.kind = opening.lintel->kind;
    lintel.bottom = levels.course_bottom(courses.first);
    lintel.depth = opening.lintel->depth.value_or(t);
    lintel.width = opening.lintel->width.value_or(wall_width - t);
    lintel.bearing = opening.lintel->bearing;
    lintel.length = 2 * courses.half_length;
    lintel.first_course = courses.first;
    lintel.last_course = courses.last;
    lintel.packing = levels.course_bottom(courses.last + 1) - lintel.bottom - lintel.depth;
    return lintel;
}

} // namespace

std::optional<Lintel> make_lintel(const OpeningForm& opening, const DomeForm& dome) {
    const std::optional<LintelCourses> courses = lintel_courses(opening, dome);
    if (!courses)
        return std::nullopt;
    const double wall = ring_width(dome, dome.course_bottom(courses->first));
    Lintel lintel = start_lintel(opening, *courses, dome, wall);
    // The place that makes the bearing largest, on the ring of the course below.
    const double z = dome.course_middle(std::max(1, courses->first - 1));
    const double r = inside_radius(dome, z), high = lintel.length / 2;
    const LintelEnd end{r, outside_radius(dome, z), lintel.width / 2, opening.half_width, high};
    lintel.centre_distance = end.best_centre();
    lintel.bearing_area = 2 * end.area(lintel.centre_distance);
    lintel.shows_inside = std::max(0.0, r - (lintel.centre_distance - lintel.width / 2));
    const double around = outside_radius(dome, dome.course_middle(courses->first));
    const double face = lintel.centre_distance + lintel.width / 2;
    const auto open_at = [&](double along) {
        return std::max(0.0, std::sqrt(std::max(0.0, around * around - along * along)) - face);
    };
    lintel.open_behind = open_at(0);
    lintel.open_behind_ends = open_at(high);
    const double over = dome.course_middle(lintel.last_course + 1);
    lintel.carried_share = share_between(inside_radius(dome, over), outside_radius(dome, over),
                                         lintel.centre_distance - lintel.width / 2, face);
    return lintel;
}

std::optional<Lintel> make_lintel(const OpeningForm& opening, const TunnelForm& tunnel) {
    const std::optional<LintelCourses> courses = lintel_courses(opening, tunnel);
    if (!courses)
        return std::nullopt;
    Lintel lintel = start_lintel(opening, *courses, tunnel, tunnel.width);
    const double w = tunnel.width;
    const double z = tunnel.course_middle(std::max(1, courses->first - 1));
    const double face =
        opening.side == TunnelSide::end ? tunnel.reach - w : inner_half_width(tunnel, z);
    lintel.centre_distance = face + w / 2;
    lintel.bearing_area = 2 * lintel.bearing * std::min(lintel.width, w);
    lintel.shows_inside = std::max(0.0, (lintel.width - w) / 2);
    lintel.carried_share = std::min(1.0, lintel.width / w);
    return lintel;
}

double taken_top(const OpeningForm& opening, const CourseLevels& levels) {
    if (const auto band = lintel_band(opening, levels))
        return std::max(opening.top, band->high);
    return fan_top(opening);
}

std::optional<LintelBand> lintel_band(const OpeningForm& opening, const CourseLevels& levels) {
    const std::optional<LintelCourses> lintel = lintel_courses(opening, levels);
    if (!lintel)
        return std::nullopt;
    return LintelBand{levels.course_bottom(lintel->first), levels.course_bottom(lintel->last + 1),
                      lintel->half_length};
}

double taken_half_width(const OpeningForm& opening, const std::optional<LintelBand>& band,
                        double z) {
    const double a = half_width(opening, z);
    if (has_fan(opening) && z >= opening.springing)
        return std::max(a, fan_half_width(opening, z - opening.springing));
    return band && z >= band->low && z < band->high ? std::max(a, band->half_length) : a;
}

double laid_half_width(const OpeningForm& opening, const CourseLevels& levels, int last, int n) {
    if (n > last)
        return 0;
    const double z = levels.course_middle(n);
    if (has_fan(opening) && z >= opening.springing - height_tie) {
        const double half = fan_half_width(opening, z - opening.springing);
        return 2 * half >= levels.course_height - height_tie ? half : 0;
    }
    if (const std::optional<LintelCourses> lintel = lintel_courses(opening, levels);
        lintel && n >= lintel->first && n <= lintel->last)
        return lintel->half_length;
    return cut_half_width(opening, levels, n);
}

double laid_half_width(const OpeningForm& opening, const DomeForm& dome, int n) {
    return laid_half_width(opening, dome, dome.last_ring, n);
}

} // namespace coilwright
