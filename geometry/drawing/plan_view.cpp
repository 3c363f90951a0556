#include "geometry/drawing/plan_view.hpp"

#include "geometry/drawing/figures.hpp"
#include "geometry/drawing/pen.hpp"
#include "geometry/plan/tubes.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {
namespace {

constexpr double letter_radius = 2.9; // mm, of the circle around a cut's letter
constexpr Ink tube_ink{0.88};

double math_angle(double bearing) {
    return to_angle({bearing}).radians;
}

/// Draws what is drawn once per plan, and remembers what the labels must avoid.
class Drawer {
public:
    Drawer(Sheet& sheet, Placer& placer, const CoursePlan& plan, const PlanFrame& frame)
        : sheet_(sheet), placer_(placer), plan_(plan), ring_(plan.ring), frame_(frame) {}

    void draw() {
        if (ring_.kind == RingKind::cap)
            draw_disc();
        else
            draw_tubes();
        draw_joints_below();
        draw_step();
        draw_pole_and_datum();
        add_north(sheet_, placer_);
        if (plan_.lettered)
            for (const Cut& cut : ring_.cuts)
                letter(cut);
        write_datum();
        if (!plan_.arm_text.empty())
            draw_arm();
        if (plan_.lettered && ring_.kind == RingKind::ring)
            name_tubes();
        name_openings();
        write_labels();
    }

private:
    void line(Vec2 from, Vec2 to, const Stroke& stroke) {
        add_line(sheet_, from, to, stroke);
        placer_.take_line(from, to);
    }

    /// An arc about the pole from one bearing clockwise to another.
    void arc(double from, double to, double radius, const Stroke& stroke) {
        ArcItem item{frame_.pole, radius * frame_.mm_per_metre, math_angle(to), math_angle(from),
                     stroke};
        if (to - from >= 360 - 1e-9)
            item.end = item.start + 2 * pi;
        placer_.take_arc(item.centre, item.radius, item.start, item.end);
        sheet_.items.push_back(item);
    }

    void draw_tubes() {
        for (const Run& run : ring_.runs) {
            for (const LaidTube& tube : run.tubes)
                sheet_.items.push_back(band_fill(tube_shape(ring_, run, tube), frame_, tube_ink));
            for (const LaidTube& tube : run.tubes) {
                const BandShape shape = tube_shape(ring_, run, tube);
                arc(shape.inside_start, shape.inside_end, shape.inside_radius, pens::cut);
                arc(shape.outside_start, shape.outside_end, shape.outside_radius, pens::cut);
                line(frame_.at(shape.inside_start, shape.inside_radius),
                     frame_.at(shape.outside_start, shape.outside_radius), pens::cut);
                line(frame_.at(shape.inside_end, shape.inside_radius),
                     frame_.at(shape.outside_end, shape.outside_radius), pens::cut);
            }
        }
    }

    /// A cap: bags side by side along the datum line.
    void draw_disc() {
        const double radius = ring_.outside_radius * frame_.mm_per_metre;
        add_disc(sheet_, frame_.pole, radius, tube_ink);
        arc(0, 360, ring_.outside_radius, pens::cut);
        const std::size_t count = ring_.runs.empty() ? 0 : ring_.runs.front().tubes.size();
        const Vec2 ahead = along(plan_.dome.datum), aside = right_of(plan_.dome.datum);
        for (std::size_t i = 0; i < count; ++i) {
            const double n = static_cast<double>(count);
            const double edge = (2 * static_cast<double>(i) / n - 1) * radius;
            const double half = std::sqrt(std::max(0.0, radius * radius - edge * edge));
            if (i > 0)
                line(frame_.pole + aside * edge - ahead * half,
                     frame_.pole + aside * edge + ahead * half, pens::cut);
            const double middle = ((2 * static_cast<double>(i) + 1) / n - 1) * radius;
            const double half_bag = std::sqrt(std::max(0.0, radius * radius - middle * middle));
            TextItem id = text_at(frame_.pole + aside * middle - ahead * (half_bag * 0.5),
                                  ring_.runs.front().tubes[i].id, sizes::body, true, Align::centre);
            id.at.y() -= 0.36 * id.size;
            later_.push_back({id});
        }
    }

    void draw_joints_below() {
        if (!plan_.below || ring_.kind == RingKind::cap)
            return;
        const Stroke tick{0.35, {0.45}, {1.2, 0.9}};
        for (const double bearing : joint_bearings(*plan_.below)) {
            const double width = ring_.outside_radius - ring_.inside_radius;
            line(frame_.at(bearing, ring_.inside_radius),
                 frame_.at(bearing, ring_.outside_radius + width * 0.25), tick);
        }
    }

    /// The inside face of the course below, where it shows at this scale.
    void draw_step() {
        if (!plan_.below || ring_.kind == RingKind::cap ||
            ring_.step_in * frame_.mm_per_metre < 1.0)
            return;
        arc(0, 360, plan_.below->inside_radius, pens::hidden);
    }

    void draw_pole_and_datum() {
        const Vec2 pole = frame_.pole;
        const double datum = plan_.dome.datum.degrees;
        line(pole - Vec2(2.5, 0), pole + Vec2(2.5, 0), pens::seen);
        line(pole - Vec2(0, 2.5), pole + Vec2(0, 2.5), pens::seen);
        add_circle(sheet_, pole, 1.2, pens::cut);
        placer_.take(PaperBox{pole.x() - 2.5, pole.y() - 2.5, pole.x() + 2.5, pole.y() + 2.5});
        datum_end_ = frame_.at(datum, ring_.outside_radius) + along({datum}) * 6;
        line(pole, datum_end_, pens::axis);
        if (ring_.kind == RingKind::cap)
            return;
        // The mark: a triangle whose tip touches the inside face.
        const Vec2 tip = frame_.at(datum, ring_.inside_radius);
        const Vec2 back = tip - along({datum}) * 3.4, aside = right_of({datum}) * 1.6;
        add_fill(sheet_, {tip, back + aside, back - aside}, {0});
        placer_.take(corners(back, tip, 3.2));
    }

    void letter(const Cut& cut) {
        const Vec2 target = frame_.at(cut.inside_bearing, ring_.inside_radius);
        const Vec2 inward = (frame_.pole - target).normalized();
        // Away from the opening's axis, so that the two letters of a narrow one part.
        const double sign = cut.side == Side::right ? 1 : -1;
        const Vec2 aside = right_of({cut.inside_bearing}) * sign;
        const Vec2 wanted = (inward + aside * 0.5).normalized();
        std::vector<Vec2> centres =
            places_about(target, wanted, letter_radius + 2, letter_radius + 16, pi * 0.45);
        for (const Vec2& outside :
             places_about(frame_.at(cut.outside_bearing, ring_.outside_radius), -inward,
                          letter_radius + 2, letter_radius + 14, pi * 0.45))
            centres.push_back(outside);
        // Where many cuts crowd: farther in, else anywhere in the frame, the nearest first.
        const double inner = ring_.inside_radius * frame_.mm_per_metre;
        for (const Vec2& farther :
             places_about(target, wanted, letter_radius + 16, inner * 0.9, pi * 0.45))
            centres.push_back(farther);
        auto centre = placer_.place_disc(centres, letter_radius, target);
        for (const bool over_all : {false, true})
            if (!centre)
                centre = placer_.place_disc(frame_places(target), letter_radius, target, over_all);
        const Vec2 at = centre.value_or(centres.front());
        const Vec2 to_target = target - at;
        add_line(sheet_, at + to_target.normalized() * letter_radius, target, pens::seen);
        add_disc(sheet_, target, 0.6, {0});
        add_disc(sheet_, at, letter_radius, {1});
        add_circle(sheet_, at, letter_radius, pens::seen);
        const double size = cut.letter.size() > 1 ? sizes::small : sizes::body;
        add_text(sheet_, at - Vec2(0, 0.365 * size), cut.letter, size, true, Align::centre);
    }

    /// A grid over the frame, the places nearest to a point first.
    std::vector<Vec2> frame_places(Vec2 target) const {
        constexpr double step = 2; // mm
        const PaperBox& box = placer_.frame();
        std::vector<Vec2> places;
        const int columns = static_cast<int>(box.width() / step);
        const int rows = static_cast<int>(box.height() / step);
        for (int row = 0; row <= rows; ++row)
            for (int column = 0; column <= columns; ++column)
                places.emplace_back(box.left + column * step, box.bottom + row * step);
        std::stable_sort(places.begin(), places.end(), [&](const Vec2& a, const Vec2& b) {
            return (a - target).squaredNorm() < (b - target).squaredNorm();
        });
        return places;
    }

    void write_datum() {
        if (plan_.datum_label.empty())
            return;
        const Vec2 outward = along(plan_.dome.datum);
        std::vector<TextItem> candidates;
        for (const Vec2& place : places_about(datum_end_, outward, 2.5, 24, pi * 0.6))
            candidates.push_back(centred(place, plan_.datum_label, sizes::small, true));
        write_led(placer_.place_led(candidates, datum_end_, 4));
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
            const double start = run->closed ? plan_.dome.datum.degrees + 30 : run->start_bearing;
            const double end = run->closed ? start + 300 : run->end_bearing;
            for (const double part : {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88})
                bearings.push_back(start + (end - start) * (run->closed ? part - 0.25 : part));
        }
        return bearings;
    }

    /// The arm drawn where it is free of cuts and letters, its setting along it.
    void draw_arm() {
        const double length = ring_.inside_radius * frame_.mm_per_metre;
        const TextExtent extent = placer_.measure()(plan_.arm_text, sizes::small, false);
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
            if (!placer_.free_for_leader(start, tip - ahead * 0.5))
                continue;
            const bool fits = extent.width + 9 < length;
            if (fits && !placer_.free(corners(text, placer_.measure())))
                continue;
            line(frame_.pole + ahead * 1.2, tip, pens::seen);
            add_arrowhead(sheet_, tip, ahead);
            placer_.take(corners(tip - ahead * 3, tip, 1.2));
            if (fits) {
                placer_.take(corners(text, placer_.measure()));
                labels_.push_back(text);
            }
            return;
        }
    }

    void name_tubes() {
        for (const Run& run : ring_.runs)
            for (const LaidTube& tube : run.tubes) {
                const BandShape shape = tube_shape(ring_, run, tube);
                const double span = shape.inside_end - shape.inside_start;
                const auto bearing = [&](double part) { return shape.inside_start + span * part; };
                constexpr double parts[] = {0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82};
                // In the band, level or along it; where it is too narrow, outside it or inside.
                std::vector<TextItem> in_band, beside;
                for (const double size : {sizes::body, sizes::small})
                    for (const bool turned : {false, true})
                        for (const double part : parts)
                            in_band.push_back(in_tube(bearing(part), tube.id, size, turned));
                for (const double part : parts)
                    for (const double off : {3.5, 5.0, 7.0, 9.0, 11.0})
                        for (const bool out : {true, false}) {
                            const Vec2 face = frame_.at(bearing(part), out ? ring_.outside_radius
                                                                           : ring_.inside_radius);
                            beside.push_back(
                                centred(face + along({bearing(part)}) * (out ? off : -off), tube.id,
                                        sizes::small, true));
                        }
                auto placed = placer_.place(in_band, 0.35);
                if (!placed)
                    placed = placer_.place(beside);
                if (placed)
                    labels_.push_back(*placed);
            }
    }

    /// A name in the middle of the band at a bearing, level or turned along the tube.
    TextItem in_tube(double bearing, const std::string& text, double size, bool turned) const {
        const Vec2 middle = frame_.at(bearing, ring_.centre_radius);
        if (!turned)
            return centred(middle, text, size, true);
        Vec2 reading = right_of({bearing});
        if (reading.x() < -1e-9 || (reading.x() < 1e-9 && reading.y() < 0))
            reading = -reading;
        TextItem item = text_at(middle - Vec2(-reading.y(), reading.x()) * (0.365 * size), text,
                                size, true, Align::centre);
        item.turn = std::atan2(reading.y(), reading.x());
        return item;
    }

    void name_openings() {
        std::vector<std::string> named;
        for (const Cut& cut : ring_.cuts) {
            if (std::find(named.begin(), named.end(), cut.by) != named.end())
                continue;
            named.push_back(cut.by);
            for (const OpeningPlan& opening : plan_.schedule.openings)
                if (opening.form.id == cut.by)
                    name_opening(opening.form);
        }
    }

    void name_opening(const OpeningForm& opening) {
        const Vec2 outward = along(opening.bearing);
        const Vec2 outer = frame_.at(opening.bearing.degrees, ring_.outside_radius);
        const Vec2 inner = frame_.at(opening.bearing.degrees, ring_.inside_radius);
        const auto about = [&](Vec2 point, Vec2 direction, double from, double to, double size) {
            std::vector<TextItem> candidates;
            for (const Vec2& place : places_about(point, direction, from, to, pi * 0.45))
                candidates.push_back(centred(place, opening.id, size, false));
            return candidates;
        };
        // Outside near the hole, inside, then outside farther off.
        for (const double size : {sizes::body, sizes::small}) {
            auto placed = placer_.place_led(about(outer, outward, 4, 13, size), outer, 5);
            if (!placed)
                placed = placer_.place_led(about(inner, -outward, 6, 18, size), inner, 6);
            if (!placed)
                placed = placer_.place_led(about(outer, outward, 13, 40, size), outer, 5);
            if (!placed)
                continue;
            write_led(placed);
            return;
        }
    }

    TextItem centred(Vec2 middle, const std::string& text, double size, bool bold) const {
        return text_at(middle - Vec2(0, 0.365 * size), text, size, bold, Align::centre);
    }

    void write(const std::vector<TextItem>& candidates) {
        if (const auto placed = placer_.place(candidates))
            labels_.push_back(*placed);
    }

    void write_led(const std::optional<Placer::Led>& placed) {
        if (!placed)
            return;
        labels_.push_back(placed->text);
        if ((placed->to - placed->from).norm() > 0)
            add_line(sheet_, placed->from, placed->to, pens::fine);
    }

    void write_labels() {
        for (const std::vector<TextItem>& candidates : later_)
            write(candidates);
        for (const TextItem& label : labels_)
            sheet_.items.push_back(label);
    }

    Sheet& sheet_;
    Placer& placer_;
    const CoursePlan& plan_;
    const Ring& ring_;
    const PlanFrame& frame_;
    Vec2 datum_end_{0, 0};
    std::vector<TextItem> labels_;
    std::vector<std::vector<TextItem>> later_;
};

} // namespace

void add_north(Sheet& sheet, Placer& placer) {
    const PaperBox& box = placer.frame();
    const Vec2 foot(box.left + 4, box.top - 13), tip(box.left + 4, box.top - 5.5);
    add_line(sheet, foot, tip, pens::cut);
    add_arrowhead(sheet, tip + Vec2(0, 1), {0, 1}, 4);
    add_text(sheet, {box.left + 4, box.top - 3.6}, "N", sizes::body, true, Align::centre);
    placer.take(PaperBox{box.left, box.top - 13.5, box.left + 8, box.top});
}

void add_course_plan(Sheet& sheet, Placer& placer, const CoursePlan& plan, const PlanFrame& frame) {
    Drawer(sheet, placer, plan, frame).draw();
}

} // namespace coilwright
