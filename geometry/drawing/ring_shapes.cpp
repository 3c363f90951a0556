#include "geometry/drawing/ring_shapes.hpp"

#include "geometry/drawing/pen.hpp"

#include <cmath>

namespace coilwright {
namespace {

/// The bearing plus whole turns that lies nearest to another.
double near(double bearing, double other) {
    return bearing + 360 * std::round((other - bearing) / 360);
}

const Cut* find_cut(const Ring& ring, const std::string& by, Side side) {
    for (const Cut& cut : ring.cuts)
        if (cut.by == by && cut.side == side)
            return &cut;
    return nullptr;
}

double math_angle(double bearing) {
    return to_angle({bearing}).radians;
}

} // namespace

BandShape tube_shape(const Ring& ring, const Run& run, const LaidTube& tube) {
    BandShape shape;
    shape.inside_radius = ring.inside_radius;
    shape.outside_radius = ring.outside_radius;
    shape.inside_start = shape.outside_start = tube.start_bearing;
    shape.inside_end = shape.outside_end = tube.end_bearing;
    if (run.closed || run.tubes.empty())
        return shape;
    // A run goes clockwise from the right side of one opening to the left side of the next.
    if (&tube == &run.tubes.front())
        if (const Cut* cut = find_cut(ring, run.start_by, Side::right)) {
            shape.inside_start = near(cut->inside_bearing, tube.start_bearing);
            shape.outside_start = near(cut->outside_bearing, tube.start_bearing);
        }
    if (&tube == &run.tubes.back())
        if (const Cut* cut = find_cut(ring, run.end_by, Side::left)) {
            shape.inside_end = near(cut->inside_bearing, tube.end_bearing);
            shape.outside_end = near(cut->outside_bearing, tube.end_bearing);
        }
    return shape;
}

const Ring* ring_of_dome(const Course& course, const std::string& dome) {
    for (const Ring& ring : course.rings)
        if (ring.dome == dome)
            return &ring;
    return nullptr;
}

Vec2 PlanFrame::at(double bearing_degrees, double metres) const {
    return pole + along({bearing_degrees}) * (metres * mm_per_metre);
}

FillItem band_fill(const BandShape& shape, const PlanFrame& frame, Ink ink) {
    const double inner = shape.inside_radius * frame.mm_per_metre;
    const double outer = shape.outside_radius * frame.mm_per_metre;
    const auto sweep = [](double from, double to) { return -(to - from) * radians_per_degree; };
    FillItem fill;
    fill.ink = ink;
    FillItem::Loop loop;
    loop.from = frame.at(shape.outside_start, shape.outside_radius);
    loop.edges = arc_edges(frame.pole, outer, math_angle(shape.outside_start),
                           sweep(shape.outside_start, shape.outside_end));
    loop.edges.push_back({frame.at(shape.inside_end, shape.inside_radius), 0});
    for (const FillItem::Edge& edge : arc_edges(frame.pole, inner, math_angle(shape.inside_end),
                                                sweep(shape.inside_end, shape.inside_start)))
        loop.edges.push_back(edge);
    loop.edges.push_back({loop.from, 0});
    fill.loops.push_back(std::move(loop));
    return fill;
}

} // namespace coilwright
