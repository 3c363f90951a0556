#include "geometry/drawing/section_view.hpp"

#include "geometry/drawing/dimension.hpp"
#include "geometry/drawing/figures.hpp"
#include "geometry/drawing/pen.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {
namespace {

constexpr Ink tube_ink{0.88};

/// A tube cut across: a rectangle with half-round ends, from x0 to x1.
FillItem stadium(const SectionFrame& frame, double x0, double x1, double bottom, double top) {
    const double r = std::min((top - bottom) / 2, (x1 - x0) / 2);
    FillItem fill;
    fill.ink = tube_ink;
    FillItem::Loop loop{frame.at(x0 + r, bottom), {}};
    loop.edges.push_back({frame.at(x1 - r, bottom), 0});
    loop.edges.push_back({frame.at(x1 - r, top), 1});
    loop.edges.push_back({frame.at(x0 + r, top), 0});
    loop.edges.push_back({frame.at(x0 + r, bottom), 1});
    fill.loops.push_back(loop);
    return fill;
}

void add_stadium(Sheet& sheet, const SectionFrame& frame, double x0, double x1, double bottom,
                 double top) {
    sheet.items.push_back(stadium(frame, x0, x1, bottom, top));
    const double r = std::min((top - bottom) / 2, (x1 - x0) / 2);
    const double middle = (bottom + top) / 2, radius = r * frame.mm_per_metre;
    const Stroke& pen = pens::seen;
    add_line(sheet, frame.at(x0 + r, bottom), frame.at(x1 - r, bottom), pen);
    add_line(sheet, frame.at(x0 + r, top), frame.at(x1 - r, top), pen);
    sheet.items.push_back(ArcItem{frame.at(x1 - r, middle), radius, -pi / 2, pi / 2, pen});
    sheet.items.push_back(ArcItem{frame.at(x0 + r, middle), radius, pi / 2, 3 * pi / 2, pen});
}

/// Whether a ring lies at a bearing: no opening, tunnel, buttress or other dome takes it there.
bool lies_at(const Ring& ring, Bearing bearing) {
    return std::any_of(ring.runs.begin(), ring.runs.end(), [&](const Run& run) {
        return run.closed || clockwise_degrees({run.start_bearing}, bearing) <=
                                 run.end_bearing - run.start_bearing;
    });
}

void draw_courses(Sheet& sheet, const BuildingPlan& plan, const DomeForm& dome, Bearing right,
                  const SectionFrame& frame) {
    for (const Course& course : plan.schedule.courses)
        for (const Ring& ring : course.rings) {
            if (ring.dome != dome.id)
                continue;
            const double inside = ring.inside_radius, outside = ring.outside_radius;
            if (ring.kind == RingKind::cap) {
                add_stadium(sheet, frame, -outside, outside, course.bottom, course.top);
                continue;
            }
            if (lies_at(ring, right))
                add_stadium(sheet, frame, inside, outside, course.bottom, course.top);
            if (lies_at(ring, turned(right, 180)))
                add_stadium(sheet, frame, -outside, -inside, course.bottom, course.top);
        }
}

/// The design's inside curve: arcs where it is arcs, else a fine polyline.
void draw_curve(Sheet& sheet, const DomeForm& dome, const SectionFrame& frame) {
    const Profile& profile = dome.profile;
    const double top =
        dome.cap_courses > 0
            ? profile.rise
            : std::min(profile.rise, dome.course_middle(dome.last_ring) - dome.springline);
    if (top <= 0)
        return;
    const Stroke pen{0.35, {0}, {2.5, 1}};
    if (profile.radius > 0 &&
        (profile.kind == ProfileKind::pointed || profile.kind == ProfileKind::round)) {
        const double offset = profile.radius - profile.half_span;
        const double angle = std::asin(std::min(1.0, top / profile.radius));
        const double radius = profile.radius * frame.mm_per_metre;
        sheet.items.push_back(ArcItem{frame.at(-offset, dome.springline), radius, 0, angle, pen});
        sheet.items.push_back(
            ArcItem{frame.at(offset, dome.springline), radius, pi - angle, pi, pen});
        return;
    }
    constexpr int pieces = 96;
    for (const double side : {1.0, -1.0}) {
        LineItem curve;
        curve.stroke = pen;
        for (int i = 0; i <= pieces; ++i) {
            // Finer towards the crown, where flat curves turn fastest against height.
            const double part = std::sin(pi / 2 * i / pieces);
            const double y = top * part;
            curve.points.push_back(frame.at(side * half_width(profile, y), dome.springline + y));
        }
        sheet.items.push_back(std::move(curve));
    }
}

void level_line(Sheet& sheet, Placer& placer, const SectionFrame& frame, double from, double to,
                double z, const Stroke& pen) {
    add_line(sheet, frame.at(from, z), frame.at(to, z), pen);
    placer.take_line(frame.at(from, z), frame.at(to, z));
}

} // namespace

Vec2 section_size(const DomeForm& dome) {
    return {2 * base_outside(dome), dome.top() - dome.bottom()};
}

void add_section(Sheet& sheet, Placer& placer, const BuildingPlan& plan, const DomeForm& dome,
                 Bearing right, const SectionFrame& frame) {
    const DisplayUnit unit = plan.schedule.unit;
    const auto length = [&](double metres) { return length_text(metres, unit); };
    const double a = dome.profile.half_span, outside = base_outside(dome);
    draw_courses(sheet, plan, dome, right, frame);
    draw_curve(sheet, dome, frame);
    level_line(sheet, placer, frame, -a, a, 0, pens::cut);
    if (dome.springline > 1e-6)
        level_line(sheet, placer, frame, -a, a, dome.springline, pens::hidden);
    // Ground outside, where the design has it.
    const double ground = plan.design.ground.level;
    const double apron = 5 / frame.mm_per_metre;
    level_line(sheet, placer, frame, outside, outside + apron, ground, pens::heavy);
    level_line(sheet, placer, frame, -outside - apron, -outside, ground, pens::heavy);
    // The pole's axis, and the compass's pivot or the chain's fixing on it.
    const double top = std::max(dome.apex(), 0.0);
    add_line(sheet, frame.at(0, 0), frame.at(0, dome.cap_courses > 0 ? top : dome.top()),
             pens::axis);

    // Heights to the left of the wall, from the floor.
    const double size = sizes::small;
    const Vec2 up(0, 1), x_right(1, 0);
    const Vec2 wall = frame.at(-outside, 0);
    const auto at_wall = [&](double z) { return Vec2(wall.x(), frame.at(0, z).y()); };
    const double summit = dome.cap_courses > 0 ? dome.apex() : dome.top();
    add_dimension(sheet, placer, at_wall(0), at_wall(summit), up, 21, length(summit), size);
    if (dome.foundation > 0)
        add_dimension(sheet, placer, at_wall(dome.bottom()), at_wall(0), up,
                      dome.springline > 1e-6 ? 14.5 : 8, length(-dome.bottom()), size);
    if (dome.springline > 1e-6)
        add_dimension(sheet, placer, at_wall(0), at_wall(dome.springline), up, 8,
                      length(dome.springline), size);
    // Width under the floor.
    const double bottom = dome.bottom();
    add_dimension(sheet, placer, frame.at(a, bottom), frame.at(-a, bottom), -x_right, 7,
                  length(2 * a), size);
    // The opening in the plane, to the right.
    for (const OpeningPlan* opening : openings_of(plan.schedule, dome.id)) {
        const double off = clockwise_degrees(opening->form.bearing, right);
        if (std::min(off, 360 - off) > 1e-9)
            continue;
        const Vec2 face = frame.at(outside, 0);
        const auto at_face = [&](double z) { return Vec2(face.x(), frame.at(0, z).y()); };
        const double sill = opening->form.sill, head = opening->form.top;
        add_dimension(sheet, placer, at_face(head), at_face(sill), -up, 16, length(head - sill),
                      size);
        if (sill > 1e-6)
            add_dimension(sheet, placer, at_face(sill), at_face(0), -up, 9, length(sill), size);
        break;
    }
}

} // namespace coilwright
