#include "geometry/drawing/plan_view.hpp"

#include "geometry/drawing/figures.hpp"
#include "geometry/drawing/plan_gaps.hpp"
#include "geometry/plan/tubes.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {
namespace {

constexpr double stub_tubes = 1.4; // tube widths of a tunnel that its dome's plan shows

/// The straights of the tunnels that start or end at a dome, cut off a little way out.
std::vector<Straight> tunnel_stubs(const CoursePlan& plan) {
    const DomeForm& dome = *plan.part.dome;
    std::vector<Straight> stubs;
    for (const Straight& straight : plan.part.course->straights) {
        if (straight.start_by != dome.id && straight.end_by != dome.id)
            continue;
        if (!find_tunnel(plan.plan.schedule.building, straight.of))
            continue;
        Straight stub = straight;
        const Vec2 ahead = (straight.end - straight.start).normalized();
        const double kept = std::min(straight.length, (1 + stub_tubes) * straight.width);
        if (straight.start_by == dome.id)
            stub.end = stub.start + ahead * kept;
        else
            stub.start = stub.end - ahead * kept;
        if (kept < straight.length) // the end that is cut off butts against nothing
            (straight.start_by == dome.id ? stub.end_by : stub.start_by).clear();
        stub.length = kept;
        stub.tubes = {LaidTube{}};
        stub.tubes.front().length = kept;
        stubs.push_back(std::move(stub));
    }
    return stubs;
}

/// Draws what is drawn once per plan, and remembers what the labels must avoid.
class Drawer {
public:
    Drawer(Sheet& sheet, Placer& placer, const CoursePlan& plan, const PlanFrame& frame)
        : sheet_(sheet), plan_(plan), part_(plan.part), ring_(*part_.rings.front()),
          dome_(*part_.dome), frame_(frame), canvas_(sheet, placer, frame_) {
        frame_.origin = dome_.at;
    }

    void draw() {
        if (part_.course->straights.size() + plan_.plan.schedule.building.domes.size() > 1)
            canvas_.boundary(part_.course->wall, pens::fine);
        for (const Straight& stub : tunnel_stubs(plan_))
            draw_straight(stub, inks::other, pens::seen);
        for (const Straight* straight : part_.straights)
            draw_straight(*straight, inks::tube, pens::cut);
        if (ring_.kind == RingKind::cap)
            draw_disc();
        else
            for (const Ring* ring : part_.rings)
                draw_tubes(*ring);
        for (const Ring* ring : part_.rings)
            draw_gaps(canvas_, plan_.plan, part_, *ring);
        for (const Ring* ring : part_.rings)
            draw_wedges(canvas_, dome_, *ring);
        draw_joints_below();
        draw_step();
        draw_pole_and_datum();
        add_north(sheet_, canvas_.placer());
        if (plan_.lettered)
            for (const Ring* ring : part_.rings)
                for (const Cut& cut : ring->cuts)
                    letter(*ring, cut);
        write_datum();
        if (!plan_.arm_text.empty())
            draw_arm();
        if (plan_.lettered && ring_.kind == RingKind::ring)
            name_tubes();
        name_elements(canvas_, plan_.plan, part_);
        canvas_.write_labels();
    }

private:
    void draw_straight(const Straight& straight, Ink ink, const Stroke& stroke) {
        for (const StraightShape& shape :
             straight_shapes(plan_.plan.schedule.building, *part_.course, straight))
            canvas_.outline(shape.outline, ink, stroke);
    }

    void draw_tubes(const Ring& ring) {
        for (const Run& run : ring.runs) {
            for (const LaidTube& tube : run.tubes)
                sheet_.items.push_back(band_fill(tube_shape(ring, run, tube), frame_, inks::tube));
            for (const LaidTube& tube : run.tubes) {
                const BandShape shape = tube_shape(ring, run, tube);
                canvas_.arc(shape.inside_start, shape.inside_end, shape.inside_radius, pens::cut);
                canvas_.arc(shape.outside_start, shape.outside_end, shape.outside_radius,
                            pens::cut);
                canvas_.line(frame_.at(shape.inside_start, shape.inside_radius),
                             frame_.at(shape.outside_start, shape.outside_radius), pens::cut);
                canvas_.line(frame_.at(shape.inside_end, shape.inside_radius),
                             frame_.at(shape.outside_end, shape.outside_radius), pens::cut);
            }
        }
    }

    /// A cap: bags side by side along the datum line.
    void draw_disc() {
        const double radius = ring_.outside_radius * frame_.mm_per_metre;
        add_disc(sheet_, frame_.pole, radius, inks::tube);
        canvas_.arc(0, 360, ring_.outside_radius, pens::cut);
        const std::size_t count = ring_.runs.empty() ? 0 : ring_.runs.front().tubes.size();
        const Bearing way = count > 0 ? Bearing{ring_.runs.front().start_bearing} : dome_.datum;
        const Vec2 ahead = along(way), aside = right_of(way);
        for (std::size_t i = 0; i < count; ++i) {
            const double n = static_cast<double>(count);
            const double edge = (2 * static_cast<double>(i) / n - 1) * radius;
            const double half = std::sqrt(std::max(0.0, radius * radius - edge * edge));
            if (i > 0)
                canvas_.line(frame_.pole + aside * edge - ahead * half,
                             frame_.pole + aside * edge + ahead * half, pens::cut);
            const double middle = ((2 * static_cast<double>(i) + 1) / n - 1) * radius;
            const double half_bag = std::sqrt(std::max(0.0, radius * radius - middle * middle));
            canvas_.later(
                {PlanCanvas::centred(frame_.pole + aside * middle - ahead * (half_bag * 0.5),
                                     ring_.runs.front().tubes[i].id, sizes::body, true)});
        }
    }

    void draw_joints_below() {
        if (!plan_.below || ring_.kind == RingKind::cap)
            return;
        const Stroke tick{0.35, {0.45}, {1.2, 0.9}};
        for (const Ring* ring : part_.rings)
            for (const Ring* under : plan_.below->rings) {
                if (under->wythe != ring->wythe)
                    continue;
                const double width = ring->outside_radius - ring->inside_radius;
                const bool outermost = ring == part_.rings.back();
                for (const double bearing : joint_bearings(*under))
                    canvas_.line(
                        frame_.at(bearing, ring->inside_radius),
                        frame_.at(bearing, ring->outside_radius + (outermost ? width * 0.25 : 0)),
                        tick);
            }
    }

    /// The inside face of the course below, where it shows at this scale and lies under this one.
    void draw_step() {
        if (!plan_.below || ring_.kind == RingKind::cap ||
            ring_.step_in * frame_.mm_per_metre < least_step_shown)
            return;
        const double radius = plan_.below->rings.front()->inside_radius;
        if (radius < outside_radius_of_all())
            canvas_.arc(0, 360, radius, pens::hidden);
    }

    double outside_radius_of_all() const { return part_.rings.back()->outside_radius; }

    void draw_pole_and_datum() {
        const Vec2 pole = frame_.pole;
        const double datum = dome_.datum.degrees;
        canvas_.line(pole - Vec2(2.5, 0), pole + Vec2(2.5, 0), pens::seen);
        canvas_.line(pole - Vec2(0, 2.5), pole + Vec2(0, 2.5), pens::seen);
        add_circle(sheet_, pole, 1.2, pens::cut);
        canvas_.placer().take(
            PaperBox{pole.x() - 2.5, pole.y() - 2.5, pole.x() + 2.5, pole.y() + 2.5});
        datum_end_ = frame_.at(datum, outside_radius_of_all()) + along({datum}) * 6;
        canvas_.line(pole, datum_end_, pens::axis);
        if (ring_.kind == RingKind::cap)
            return;
        // The mark: a triangle whose tip touches the inside face.
        const Vec2 tip = frame_.at(datum, ring_.inside_radius);
        const Vec2 back = tip - along({datum}) * 3.4, aside = right_of({datum}) * 1.6;
        add_fill(sheet_, {tip, back + aside, back - aside}, {0});
        canvas_.placer().take(corners(back, tip, 3.2));
    }

    void letter(const Ring& ring, const Cut& cut) {
        const Vec2 outside = frame_.at(cut.outside_bearing, ring.outside_radius);
        // The inside of a second wythe none can reach.
        const bool from_outside = ring.wythe > 1;
        const double bearing = from_outside ? cut.outside_bearing : cut.inside_bearing;
        PlanCanvas::LetterPlace place;
        place.target = from_outside ? outside : frame_.at(bearing, ring.inside_radius);
        const Vec2 outward = (place.target - frame_.pole).normalized();
        // Away from the opening's axis, so that the two letters of a narrow one part.
        const Vec2 aside = right_of({bearing}) * (cut.side == Side::right ? 1 : -1);
        place.wanted = ((from_outside ? outward : Vec2(-outward)) + aside * 0.5).normalized();
        place.beyond = outside;
        place.other = outward;
        place.farthest = ring.inside_radius * frame_.mm_per_metre * 0.9;
        canvas_.letter(cut_letter(ring, cut), place);
    }

    void write_datum() {
        if (plan_.datum_label.empty())
            return;
        std::vector<TextItem> candidates;
        for (const Vec2& place : places_about(datum_end_, along(dome_.datum), 2.5, 24, pi * 0.6))
            candidates.push_back(PlanCanvas::centred(place, plan_.datum_label, sizes::small, true));
        canvas_.led_name(candidates, datum_end_, 4);
    }

    /// Where the arm meets wall: along the runs, the longest first, from their middles outwards.
    std::vector<double> arm_bearings() const {
        std::vector<const Run*> runs;
        for (const Run& run : ring_.runs)
            runs.push_back(&run);
        std::stable_sort(runs.begin(), runs.end(),
                         [](const Run* a, const Run* b) { return a->length > b->length; });
        std::vector<double> bearings;
        for (const Run* run : runs) {
            // A full ring has no middle: a quarter turn off the datum stands clear of its line.
            const double start = run->closed ? dome_.datum.degrees + 30 : run->start_bearing;
            const double end = run->closed ? start + 300 : run->end_bearing;
            for (const double part : {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88})
                bearings.push_back(start + (end - start) * (run->closed ? part - 0.25 : part));
        }
        return bearings;
    }

    /// The arm drawn where it is free of cuts and letters, its setting along it.
    void draw_arm() {
        Placer& placer = canvas_.placer();
        const double length = ring_.inside_radius * frame_.mm_per_metre;
        const TextExtent extent = placer.measure()(plan_.arm_text, sizes::small, false);
        for (const double bearing : arm_bearings()) {
            const Vec2 ahead = along({bearing});
            const Vec2 tip = frame_.pole + ahead * length;
            double turn = std::atan2(ahead.y(), ahead.x());
            if (turn > pi / 2 || turn <= -pi / 2)
                turn += turn > 0 ? -pi : pi;
            const Vec2 up(-std::sin(turn), std::cos(turn));
            const Vec2 start = frame_.pole + ahead * 3.2;
            TextItem text = text_at(frame_.pole + ahead * ((length + 2) / 2) + up * 1.2,
                                    plan_.arm_text, sizes::small, false, Align::centre);
            text.turn = turn;
            if (!placer.free_for_leader(start, tip - ahead * 0.5))
                continue;
            const bool fits = extent.width + 9 < length;
            if (fits && !placer.free(corners(text, placer.measure())))
                continue;
            canvas_.line(frame_.pole + ahead * 1.2, tip, pens::seen);
            add_arrowhead(sheet_, tip, ahead);
            placer.take(corners(tip - ahead * 3, tip, 1.2));
            if (fits)
                canvas_.put(text);
            return;
        }
    }

    void name_tubes() {
        for (const Ring* ring : part_.rings)
            for (const Run& run : ring->runs)
                for (const LaidTube& tube : run.tubes)
                    name_tube(*ring, tube_shape(*ring, run, tube), tube.id);
        std::vector<StraightShape> straights;
        for (const Straight* straight : part_.straights)
            for (const StraightShape& shape :
                 straight_shapes(plan_.plan.schedule.building, *part_.course, *straight))
                straights.push_back(shape);
        for (const StraightShape& shape : straights)
            name_straight_tube(canvas_, shape);
        for (const StraightShape& shape : straights) // no other name stands in them
            canvas_.placer().take(corners(frame_.of(shape.start), frame_.of(shape.end),
                                          std::max(0.1, shape.width * frame_.mm_per_metre - 0.6)));
        for (const Ring* ring : part_.rings)
            for (const Piece& piece : ring->pieces)
                if (piece.kind == PieceKind::wedge)
                    name_wedge(*ring, piece);
    }

    void name_wedge(const Ring& ring, const Piece& piece) {
        const double bearing = (piece.start_bearing + piece.end_bearing) / 2;
        const Vec2 middle = frame_.at(bearing, ring.centre_radius);
        std::vector<TextItem> led;
        for (const Vec2& place : places_about(middle, along({bearing}), 5, 34, pi))
            led.push_back(PlanCanvas::centred(place, piece.id, sizes::small, true));
        canvas_.led_name(led, middle, 0);
    }

    void name_tube(const Ring& ring, const BandShape& shape, const std::string& id) {
        const double span = shape.inside_end - shape.inside_start;
        const auto bearing = [&](double part) { return shape.inside_start + span * part; };
        constexpr double parts[] = {0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82};
        // In the band, level or along it; where it is too narrow, outside it or inside.
        std::vector<TextItem> in_band, beside;
        for (const double size : {sizes::body, sizes::small})
            for (const bool turned : {false, true})
                for (const double part : parts)
                    in_band.push_back(canvas_.in_band(frame_.at(bearing(part), ring.centre_radius),
                                                      right_of({bearing(part)}), id, size, turned));
        for (const double part : parts)
            for (const double off : {3.5, 5.0, 7.0, 9.0, 11.0})
                for (const bool out : {true, false}) {
                    const Vec2 face =
                        frame_.at(bearing(part), out ? ring.outside_radius : ring.inside_radius);
                    beside.push_back(
                        PlanCanvas::centred(face + along({bearing(part)}) * (out ? off : -off), id,
                                            sizes::small, true));
                }
        std::vector<TextItem> led;
        const Vec2 middle = frame_.at(bearing(0.5), ring.centre_radius);
        for (const Vec2& place : places_about(middle, along({bearing(0.5)}), 5, 34, pi))
            led.push_back(PlanCanvas::centred(place, id, sizes::small, true));
        if (!canvas_.name(in_band, 0.35) && !canvas_.name(beside))
            canvas_.led_name(led, middle, 0);
    }

    Sheet& sheet_;
    const CoursePlan& plan_;
    const CoursePart& part_;
    const Ring& ring_;
    const DomeForm& dome_;
    PlanFrame frame_;
    PlanCanvas canvas_;
    Vec2 datum_end_{0, 0};
};

} // namespace

GroundBox plan_extent(const BuildingPlan& plan, const CoursePart& part) {
    const DomeForm& dome = *part.dome;
    const double radius = part.rings.back()->outside_radius;
    GroundBox box{{-radius, -radius}, {radius, radius}};
    const auto take = [&](Vec2 point) {
        box.low = box.low.cwiseMin(point - dome.at);
        box.high = box.high.cwiseMax(point - dome.at);
    };
    std::vector<Straight> shown = tunnel_stubs({plan, part, nullptr, false, "", ""});
    for (const Straight* straight : part.straights)
        shown.push_back(*straight);
    for (const Straight& straight : shown)
        for (const StraightShape& shape :
             straight_shapes(plan.schedule.building, *part.course, straight))
            for (const OutlineEdge& edge : shape.outline.edges)
                take(edge.to);
    return box;
}

void add_course_plan(Sheet& sheet, Placer& placer, const CoursePlan& plan, const PlanFrame& frame) {
    Drawer(sheet, placer, plan, frame).draw();
}

} // namespace coilwright
