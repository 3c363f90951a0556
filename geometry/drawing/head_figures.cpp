#include "geometry/drawing/head_figures.hpp"

#include "geometry/drawing/course_tables.hpp"
#include "geometry/drawing/dimension.hpp"
#include "geometry/drawing/figures.hpp"
#include "geometry/drawing/plan_canvas.hpp"
#include "geometry/drawing/scale.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {
namespace {

constexpr double figure_width = 84, figure_height = 52; // mm

const OpeningForm* form_of(const Schedule& schedule, const std::string& id) {
    for (const OpeningPlan& opening : schedule.openings)
        if (opening.form.id == id)
            return &opening.form;
    return nullptr;
}

bool belongs(const BuildingPlan& plan, const CoursePart& part, const std::string& opening) {
    const OpeningForm* form = form_of(plan.schedule, opening);
    return form && form->in == part.id();
}

/// The arcs of a head's form and of a fan over it: points at parts of the way round, from the right
/// springing to the left, metres from the axis and above the springing.
class HeadArcs {
public:
    explicit HeadArcs(const Profile& head) : radius_(head.radius) {
        if (head.kind == ProfileKind::segmental) {
            flat_ = true;
            below_ = head.radius - head.rise;
            half_ = std::asin(std::min(1.0, head.half_span / head.radius));
        } else {
            beyond_ = head.radius - head.half_span;
            half_ = std::acos(std::clamp(beyond_ / head.radius, -1.0, 1.0));
        }
    }

    /// `out` metres outside the form, `part` in 0..1.
    Vec2 at(double part, double out) const {
        const double r = radius_ + out;
        if (flat_) {
            const double angle = half_ * (1 - 2 * part);
            return {r * std::sin(angle), r * std::cos(angle) - below_};
        }
        const bool right = part <= 0.5;
        const double angle = half_ * 2 * (right ? part : 1 - part);
        const double x = r * std::cos(angle) - beyond_;
        return {right ? x : -x, r * std::sin(angle)};
    }

    /// The crest of the outer curve over a pointed form.
    Vec2 crest(double out) const {
        if (flat_)
            return at(0.5, out);
        const double r = radius_ + out;
        return {0, std::sqrt(r * r - beyond_ * beyond_)};
    }

private:
    bool flat_ = false;
    double radius_ = 0, beyond_ = 0, below_ = 0, half_ = 0;
};

/// The outline of one bag, its outer edge through the crest if it is the keystone.
std::vector<Vec2> bag_outline(const HeadArcs& arcs, double from, double to, double depth,
                              bool keystone) {
    constexpr int steps = 8;
    std::vector<Vec2> points;
    for (int i = 0; i <= steps; ++i)
        points.push_back(arcs.at(from + (to - from) * i / steps, 0));
    for (int i = steps; i >= 0; --i) {
        points.push_back(arcs.at(from + (to - from) * i / steps, depth));
        if (keystone && i == steps / 2)
            points.push_back(arcs.crest(depth));
    }
    return points;
}

void caption(Sheet& sheet, const PaperBox& box, const Scale& scale) {
    add_text(sheet, {box.left, box.bottom + 0.8}, "From inside, " + scale.text, sizes::small);
}

void draw_fan(Sheet& sheet, const PaperBox& box, const Drafting& drafting, const Fan& fan,
              const OpeningForm& form) {
    const HeadArcs arcs(*form.head);
    const double half = std::max(arcs.at(0, fan.depth).x(), form.half_width);
    const double jamb = std::min(form.springing - form.sill, 0.3);
    const double high = arcs.crest(fan.depth).y();
    const double caption_height = 6;
    const Scale scale = largest_scale(2 * half, high + jamb, box.width() - 4,
                                      box.height() - caption_height - 2, drafting.unit());
    const Vec2 springing(box.centre().x(), box.bottom + caption_height + scale.on_paper(jamb));
    const auto on_paper = [&](Vec2 point) { return Vec2(springing + point * scale.on_paper(1)); };
    const double n = fan.count;
    for (int i = 0; i < fan.count; ++i) {
        const bool keystone = 2 * i + 1 == fan.count;
        std::vector<Vec2> points;
        for (const Vec2& point : bag_outline(arcs, i / n, (i + 1) / n, fan.depth, keystone))
            points.push_back(on_paper(point));
        add_fill(sheet, points, {keystone ? 0.72 : inks::tube.grey});
        sheet.items.push_back(LineItem{points, true, pens::cut});
        // Numbered in the order of laying, from both sides; the right side comes first.
        const int order = std::min(i, fan.count - 1 - i) + 1;
        const std::string name =
            keystone ? "FK" : "F" + std::to_string(order) + (2 * i < fan.count ? "R" : "L");
        const Vec2 middle = on_paper(arcs.at((i + 0.5) / n, fan.depth / 2));
        const double room = std::min((fan.outer_width + fan.inner_width) / 2, fan.depth);
        const double size = fitting_size(name, scale.on_paper(room) - 1, sizes::body, sizes::least,
                                         true, drafting.measure);
        sheet.items.push_back(PlanCanvas::centred(middle, name, size, true));
    }
    // The jambs of the form under it, and the springing.
    const double a = form.half_width;
    for (const double side : {1.0, -1.0})
        add_line(sheet, on_paper({side * a, 0}), on_paper({side * a, -jamb}), pens::cut);
    add_line(sheet, on_paper({-a, 0}), on_paper({a, 0}), pens::hidden);
    caption(sheet, box, scale);
}

std::string joint_text(const Drafting& drafting, double height) {
    for (const Course& course : drafting.schedule().courses)
        if (std::abs(course.top - height) < 0.001)
            return drafting.length(height) + ", top of course " + std::to_string(course.number);
    return drafting.length(height);
}

void add_figure(Flow& flow, const Drafting& drafting, const std::string& heading,
                const std::vector<Fact>& facts, double text_size,
                const std::function<void(Sheet&, const PaperBox&)>& figure) {
    const double width = flow.width() - figure_width - 5;
    const double height =
        std::max(figure_height, facts_height(facts, width, text_size, drafting.measure));
    flow.heading(heading, height);
    flow.block(height, [&](Sheet& sheet, const PaperBox& box) {
        add_facts(sheet, {box.left + figure_width + 5, box.top}, width, facts, text_size,
                  drafting.measure);
        figure(sheet, {box.left, box.top - figure_height, box.left + figure_width, box.top});
    });
}

void draw_lintel(Sheet& sheet, const PaperBox& box, const Drafting& drafting, const Lintel& lintel,
                 const OpeningForm& form) {
    const double t = drafting.schedule().course_height;
    const double side = 0.45 * lintel.bearing, half = lintel.length / 2 + side;
    const int under = 2; // courses of the jambs that are drawn
    const double high = lintel.depth + lintel.packing;
    const double caption_height = 6, above = 8, below = 8;
    const Scale scale =
        largest_scale(2 * half, high + under * t, box.width() - 4,
                      box.height() - caption_height - above - below, drafting.unit());
    const Vec2 joint(box.centre().x(),
                     box.bottom + caption_height + below + scale.on_paper(under * t));
    const auto on_paper = [&](double x, double y) {
        return Vec2(joint + Vec2(x, y) * scale.on_paper(1));
    };
    const auto block = [&](double x0, double x1, double y0, double y1, double grey,
                           const Stroke& pen) {
        const Vec2 low = on_paper(x0, y0), up = on_paper(x1, y1);
        const PaperBox part{low.x(), low.y(), up.x(), up.y()};
        add_fill(sheet, part, {grey});
        add_box(sheet, part, pen);
    };
    const double a = form.half_width, b = lintel.length / 2;
    for (int i = 1; i <= under; ++i) {
        block(-half, -a, -i * t, (1 - i) * t, inks::tube.grey, pens::seen);
        block(a, half, -i * t, (1 - i) * t, inks::tube.grey, pens::seen);
    }
    for (double y = 0; y < high - 1e-6; y += t) { // the tubes that stop at its ends
        block(-half, -b, y, y + t, inks::tube.grey, pens::seen);
        block(b, half, y, y + t, inks::tube.grey, pens::seen);
    }
    block(-b, b, 0, lintel.depth, 0.72, pens::cut);
    if (lintel.packing > 0.001) {
        block(-b, b, lintel.depth, high, 1, pens::seen);
        if (scale.on_paper(lintel.packing) > 4)
            sheet.items.push_back(PlanCanvas::centred(
                on_paper(0, lintel.depth + lintel.packing / 2), "packing", sizes::small, false));
    }
    Placer placer(box, drafting.measure);
    const auto dimension = [&](double x0, double x1, double y, bool over) {
        const Vec2 left = on_paper(x0, y), right = on_paper(x1, y);
        add_dimension(sheet, placer, over ? left : right, over ? right : left,
                      {over ? 1.0 : -1.0, 0}, over ? 3 : 5, drafting.length(x1 - x0), sizes::small);
    };
    dimension(-b, b, high, true);
    dimension(a, b, -under * t, false);
    const std::string wide = drafting.length(2 * a);
    const double size = fitting_size(wide, scale.on_paper(2 * a) - 2, sizes::body, sizes::least,
                                     true, drafting.measure);
    sheet.items.push_back(PlanCanvas::centred(on_paper(0, -t), wide, size, true));
    caption(sheet, box, scale);
}

} // namespace

std::vector<const Fan*> fans_of(const BuildingPlan& plan, const CoursePart& part) {
    std::vector<const Fan*> fans;
    for (const Fan& fan : plan.schedule.fans)
        if (fan.set_before_course == part.course->number && belongs(plan, part, fan.opening))
            fans.push_back(&fan);
    return fans;
}

std::vector<const Lintel*> lintels_of(const BuildingPlan& plan, const CoursePart& part) {
    std::vector<const Lintel*> lintels;
    for (const Lintel& lintel : plan.schedule.lintels)
        if (lintel.first_course == part.course->number && belongs(plan, part, lintel.opening))
            lintels.push_back(&lintel);
    return lintels;
}

void add_fan(Flow& flow, const Drafting& drafting, const Fan& fan, double text_size) {
    const OpeningForm& form = *form_of(drafting.schedule(), fan.opening);
    const std::vector<Fact> facts{
        {"Springing", joint_text(drafting, form.springing)},
        {"Bags, the keystone among them", std::to_string(fan.count)},
        {"Each bag, along the outer curve", drafting.length(fan.outer_width)},
        {"Each bag, at the form", drafting.length(fan.inner_width)},
        {"Depth of the fan", drafting.length(fan.depth)},
        {"Order of laying", "F1, F2 … L and R"},
        {"Keystone FK", "last, tamped tight"}};
    add_figure(
        flow, drafting, "Fan over the form of '" + fan.opening + "'", facts, text_size,
        [&](Sheet& sheet, const PaperBox& box) { draw_fan(sheet, box, drafting, fan, form); });
}

void add_lintel(Flow& flow, const Drafting& drafting, const Lintel& lintel, double text_size) {
    const OpeningForm& form = *form_of(drafting.schedule(), lintel.opening);
    std::vector<Fact> facts{
        {"On the joint at", joint_text(drafting, lintel.bottom)},
        {"Lintel", lintel.kind == LintelKind::timber ? "timber" : "concrete"},
        {"Its length", drafting.length(lintel.length)},
        {"Bearing on each side", drafting.length(lintel.bearing)},
        {"Height and width", drafting.length(lintel.depth) + " × " + drafting.length(lintel.width)},
        {form.in_tunnel && form.side != TunnelSide::end ? "Its long axis, from the tunnel's axis"
                                                        : "Its long axis, from the pole's axis",
         drafting.length(lintel.centre_distance)}};
    if (lintel.shows_inside > 0.001)
        facts.push_back({"Stands into the room at mid-span", drafting.length(lintel.shows_inside)});
    if (lintel.open_behind > narrowest_pocket) {
        facts.push_back(
            {"Pocket behind it, deep at mid-span", drafting.length(lintel.open_behind)});
        facts.push_back({"Pocket at its ends", drafting.length(lintel.open_behind_ends)});
        facts.push_back({"Fill the pocket with", "folded bags, on planks"});
    }
    facts.push_back({"Packing on it, up to the joint",
                     lintel.packing > 0.001 ? drafting.length(lintel.packing) : "none"});
    add_figure(flow, drafting, "Lintel of '" + lintel.opening + "'", facts, text_size,
               [&](Sheet& sheet, const PaperBox& box) {
                   draw_lintel(sheet, box, drafting, lintel, form);
               });
}

} // namespace coilwright
