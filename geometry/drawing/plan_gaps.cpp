#include "geometry/drawing/plan_gaps.hpp"

#include "geometry/drawing/figures.hpp"

#include <algorithm>
#include <cmath>
#include <set>

namespace coilwright {
namespace {

/// The part of a ring between two distances to the right of a bearing's line; its ends follow the
/// circles, or the inner one is straight across.
Outline strip_in_ring(const DomeForm& dome, Bearing bearing, double low, double high, double inner,
                      double outer, bool flat_inside = false) {
    const Vec2 ahead = along(bearing), aside = right_of(bearing);
    const auto at = [&](double radius, double y) {
        return Vec2(dome.at + ahead * std::sqrt(std::max(0.0, radius * radius - y * y)) +
                    aside * y);
    };
    const auto bulge = [](double radius, double from, double to) {
        // To the right is clockwise, negative.
        return -std::tan((std::asin(std::clamp(to / radius, -1.0, 1.0)) -
                          std::asin(std::clamp(from / radius, -1.0, 1.0))) /
                         4);
    };
    Outline outline;
    const Vec2 inner_low =
        flat_inside ? Vec2(dome.at + ahead * inner + aside * low) : at(inner, low);
    const Vec2 inner_high =
        flat_inside ? Vec2(dome.at + ahead * inner + aside * high) : at(inner, high);
    outline.from = inner_low;
    outline.edges = {{at(outer, low), 0},
                     {at(outer, high), bulge(outer, low, high)},
                     {inner_high, 0},
                     {inner_low, flat_inside ? 0 : bulge(inner, high, low)}};
    return outline;
}

const OpeningPlan* find_opening_plan(const Schedule& schedule, const std::string& id) {
    for (const OpeningPlan& opening : schedule.openings)
        if (opening.form.id == id)
            return &opening;
    return nullptr;
}

const Lintel* lintel_in(const Schedule& schedule, const std::string& opening, int course) {
    for (const Lintel& lintel : schedule.lintels)
        if (lintel.opening == opening && course >= lintel.first_course &&
            course <= lintel.last_course)
            return &lintel;
    return nullptr;
}

void label_gap(PlanCanvas& canvas, Vec2 place, Vec2 outward, const std::string& text) {
    std::vector<TextItem> candidates;
    for (const Vec2& at : places_about(place, outward, 3, 14, pi * 0.5))
        candidates.push_back(PlanCanvas::centred(at, text, sizes::small, false));
    std::vector<TextItem> led;
    for (const Vec2& at : places_about(place, outward, 14, 40, pi))
        led.push_back(PlanCanvas::centred(at, text, sizes::small, false));
    canvas.later(std::move(candidates), std::move(led), place);
}

void draw_gap(PlanCanvas& canvas, const BuildingPlan& plan, const CoursePart& part,
              const Ring& ring, const OpeningForm& form, double laid_half) {
    const DomeForm& dome = *part.dome;
    const PlanFrame& frame = canvas.frame();
    if (draw_lintel(canvas, plan.schedule, form, part.course->number))
        return;
    const double a = half_width(form, part.course->middle);
    if (form.fan_depth > 0 && laid_half > a + 0.005) {
        if (a > 0.005) {
            for (const double side : {1.0, -1.0})
                canvas.hatched(strip_in_ring(dome, form.bearing, side * a, side * laid_half,
                                             ring.inside_radius, ring.outside_radius),
                               pens::seen);
        } else {
            canvas.hatched(strip_in_ring(dome, form.bearing, -laid_half, laid_half,
                                         ring.inside_radius, ring.outside_radius),
                           pens::seen);
        }
        label_gap(canvas, frame.at(form.bearing.degrees, ring.inside_radius), -along(form.bearing),
                  "fan");
    }
    if (form.niche_depth > 0 && ring.inside_radius + form.niche_depth < ring.outside_radius - 0.005)
        canvas.hatched(strip_in_ring(dome, form.bearing, -laid_half, laid_half,
                                     ring.inside_radius + form.niche_depth, ring.outside_radius,
                                     true),
                       pens::seen);
}

void draw_sleeve(PlanCanvas& canvas, const CoursePart& part, const Ring& ring,
                 const SleeveForm& sleeve) {
    const double half = sleeve.diameter / 2;
    canvas.outline(strip_in_ring(*part.dome, sleeve.bearing, -half, half, ring.inside_radius,
                                 ring.outside_radius),
                   {1}, pens::seen);
}

} // namespace

void draw_gaps(PlanCanvas& canvas, const BuildingPlan& plan, const CoursePart& part,
               const Ring& ring) {
    std::set<std::string> drawn;
    for (const Cut& cut : ring.cuts)
        if (const OpeningPlan* opening = find_opening_plan(plan.schedule, cut.by);
            opening && drawn.insert(cut.by).second)
            draw_gap(canvas, plan, part, ring, opening->form, cut.half_width);
    for (const SleevePlan* sleeve : sleeves_of(plan, part))
        draw_sleeve(canvas, part, ring, sleeve->form);
}

bool draw_lintel(PlanCanvas& canvas, const Schedule& schedule, const OpeningForm& form,
                 int course) {
    const Lintel* lintel = lintel_in(schedule, form.id, course);
    if (!lintel)
        return false;
    const Vec2 ahead = form.axis, aside(ahead.y(), -ahead.x());
    const auto at = [&](double x, double y) { return Vec2(form.origin + ahead * x + aside * y); };
    const double in = lintel->centre_distance - lintel->width / 2, out = in + lintel->width;
    const double half = lintel->length / 2;
    canvas.hatched(
        {at(in, -half),
         {{at(out, -half), 0}, {at(out, half), 0}, {at(in, half), 0}, {at(in, -half), 0}}},
        pens::cut);
    label_gap(canvas, canvas.frame().of(at(in, 0)), -ahead, "lintel");
    return true;
}

void draw_wedges(PlanCanvas& canvas, const DomeForm& dome, const Ring& ring) {
    const auto turn = [](double from, double to) { return std::remainder(to - from, 360); };
    const auto cut_at = [&](const std::string& by, Side side, double bearing) {
        const Cut* best = nullptr;
        for (const Cut& cut : ring.cuts)
            if (cut.by == by && cut.side == side &&
                (!best || std::abs(turn(cut.centre_bearing, bearing)) <
                              std::abs(turn(best->centre_bearing, bearing))))
                best = &cut;
        return best;
    };
    for (const Piece& piece : ring.pieces) {
        if (piece.kind != PieceKind::wedge)
            continue;
        const Cut* start = cut_at(piece.of, Side::right, piece.start_bearing);
        const Cut* end = cut_at(piece.other, Side::left, piece.end_bearing);
        if (!start || !end)
            continue;
        const auto point = [&](double bearing, double radius) {
            return Vec2(dome.at + along({bearing}) * radius);
        };
        const auto face = [&](double from, double to, double radius) {
            const double degrees = std::max(0.0, turn(from, to));
            return OutlineEdge{point(from + degrees, radius),
                               -std::tan(degrees * radians_per_degree / 4)};
        };
        Outline outline;
        outline.from = point(start->inside_bearing, ring.inside_radius);
        outline.edges = {{point(start->outside_bearing, ring.outside_radius), 0},
                         face(start->outside_bearing, end->outside_bearing, ring.outside_radius)};
        const OutlineEdge inside =
            face(start->inside_bearing, end->inside_bearing, ring.inside_radius);
        outline.edges.push_back({inside.to, 0});
        outline.edges.push_back({outline.from, -inside.bulge});
        canvas.outline(outline, inks::tube, pens::cut);
    }
}

void name_elements(PlanCanvas& canvas, const BuildingPlan& plan, const CoursePart& part) {
    const Schedule& schedule = plan.schedule;
    const DomeForm& dome = *part.dome;
    const PlanFrame& frame = canvas.frame();
    const double inside = part.rings.front()->inside_radius;
    const double outside = part.rings.back()->outside_radius;
    std::set<std::string> named;
    const auto name = [&](const std::string& id, Bearing bearing, double out) {
        if (named.insert(id).second)
            canvas.name_between(id, frame.at(bearing.degrees, inside),
                                frame.at(bearing.degrees, out), along(bearing));
    };
    for (const Ring* ring : part.rings)
        for (const Cut& cut : ring->cuts)
            if (const OpeningPlan* opening = find_opening_plan(schedule, cut.by))
                name(cut.by, opening->form.bearing, outside);
    for (const Straight* straight : part.straights)
        if (const ButtressForm* pier = find_pier(schedule, straight->of))
            name(pier->id, pier->bearing, outer_face(*pier, part.course->middle));
    for (const Straight& straight : part.course->straights)
        if (const TunnelForm* tunnel = find_tunnel(schedule.building, straight.of))
            if (const auto bearing = bearing_from(*tunnel, dome.id))
                name(tunnel->id, *bearing, outside);
    for (const Ring* ring : part.rings)
        for (const Cut& cut : ring->cuts)
            if (const DomeForm* other = find_dome(schedule.building, cut.by)) {
                const Vec2 way = other->at - dome.at;
                name(cut.by, to_bearing({std::atan2(way.y(), way.x())}), outside);
            }
    for (const SleevePlan* sleeve : sleeves_of(plan, part))
        name(sleeve->form.id, sleeve->form.bearing, outside);
}

void name_straight_tube(PlanCanvas& canvas, const StraightShape& shape) {
    const PlanFrame& frame = canvas.frame();
    const Vec2 start = frame.of(shape.start), end = frame.of(shape.end);
    const Vec2 ahead = (end - start).normalized();
    std::vector<TextItem> in_band, beside;
    constexpr double parts[] = {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8};
    for (const double size : {sizes::body, sizes::small})
        for (const bool turned : {false, true})
            for (const double part : parts)
                in_band.push_back(canvas.in_band(start + (end - start) * part, ahead,
                                                 shape.tube->id, size, turned));
    const Vec2 aside = Vec2(-ahead.y(), ahead.x());
    const double half = shape.width / 2 * frame.mm_per_metre;
    for (const double part : parts)
        for (const double off : {3.0, 4.5, 6.5})
            for (const double side : {1.0, -1.0})
                beside.push_back(
                    PlanCanvas::centred(start + (end - start) * part + aside * side * (half + off),
                                        shape.tube->id, sizes::small, true));
    std::vector<TextItem> led;
    const Vec2 middle = (start + end) / 2;
    for (const Vec2& place : places_about(middle, aside, half + 3, half + 30, pi))
        led.push_back(PlanCanvas::centred(place, shape.tube->id, sizes::small, true));
    if (!canvas.name(in_band, 0.2) && !canvas.name(beside))
        canvas.led_name(led, middle, 0);
}

} // namespace coilwright
