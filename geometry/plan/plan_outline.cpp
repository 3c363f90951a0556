#include "geometry/plan/plan_outline.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace coilwright {

namespace {

std::array<Vec2, 4> corners_of(const Box& box) {
    const Vec2 across = turned_left(box.axis);
    const auto corner = [&](double along, double left) -> Vec2 {
        return box.origin + along * box.axis + left * across;
    };
    return {corner(box.from, box.low), corner(box.to, box.low), corner(box.to, box.high),
            corner(box.from, box.high)};
}

bool holds_nothing(const Shape& shape) {
    if (const Disc* disc = std::get_if<Disc>(&shape))
        return disc->radius <= plan_weld;
    const Box& box = std::get<Box>(shape);
    return box.to - box.from <= plan_weld || box.high - box.low <= plan_weld;
}

PlanBounds bounds_of(const Shape& shape, double margin) {
    const Vec2 widened(margin, margin);
    if (const Disc* disc = std::get_if<Disc>(&shape)) {
        const Vec2 reach(disc->radius, disc->radius);
        return {disc->centre - reach - widened, disc->centre + reach + widened};
    }
    const auto corners = corners_of(std::get<Box>(shape));
    PlanBounds bounds{corners[0], corners[0]};
    for (const Vec2& corner : corners) {
        bounds.low = bounds.low.cwiseMin(corner);
        bounds.high = bounds.high.cwiseMax(corner);
    }
    return {bounds.low - widened, bounds.high + widened};
}

bool one_place(const Vec2& a, const Vec2& b) {
    return (a - b).squaredNorm() <= plan_weld * plan_weld;
}

bool coincide(const Shape& a, const Shape& b) {
    if (a.index() != b.index())
        return false;
    if (const Disc* disc = std::get_if<Disc>(&a)) {
        const Disc& other = std::get<Disc>(b);
        return std::abs(disc->radius - other.radius) <= plan_weld &&
               one_place(disc->centre, other.centre);
    }
    const Box &one = std::get<Box>(a), &other = std::get<Box>(b);
    const double difference = (one.to - one.from) * (one.high - one.low) -
                              (other.to - other.from) * (other.high - other.low);
    if (std::abs(difference) > 1e-3) // far more than plan_weld can make of any area
        return false;
    const auto p = corners_of(one), q = corners_of(other);
    for (std::size_t shift = 0; shift < 4; ++shift) {
        std::size_t matched = 0;
        while (matched < 4 && one_place(p[matched], q[(matched + shift) % 4]))
            ++matched;
        if (matched == 4)
            return true;
    }
    return false;
}

void add_curves(PlanOutline& outline, const Shape& shape, int index) {
    if (const Disc* disc = std::get_if<Disc>(&shape)) {
        PlanCurve circle;
        circle.shape = index;
        circle.circle = true;
        circle.start = disc->centre;
        circle.length = disc->radius;
        outline.curves.push_back(circle);
        return;
    }
    const Box& box = std::get<Box>(shape);
    const auto corners = corners_of(box);
    const int first = static_cast<int>(outline.corners.size());
    Vec2 direction = box.axis;
    for (int side = 0; side < 4; ++side) {
        PlanCurve curve;
        curve.shape = index;
        curve.start = corners[static_cast<std::size_t>(side)];
        curve.direction = direction;
        curve.length = side % 2 == 0 ? box.to - box.from : box.high - box.low;
        curve.start_corner = first + side;
        curve.end_corner = first + (side + 1) % 4;
        outline.curves.push_back(curve);
        direction = turned_left(direction);
    }
    outline.corners.insert(outline.corners.end(), corners.begin(), corners.end());
}

void cover(PlanBounds& bounds, const PlanBounds& more) {
    if (more.empty())
        return;
    bounds = {bounds.low.cwiseMin(more.low), bounds.high.cwiseMax(more.high)};
}

/// Bounds of every solid, and of every other shape as far as it meets what it is taken from: beyond
/// that it bounds nothing, and an opening's box may be long.
std::vector<PlanBounds> bounds_where_used(const PlanExpression& expression, double margin) {
    std::vector<PlanBounds> whole, used(expression.shapes.size());
    whole.reserve(expression.shapes.size());
    for (const Shape& shape : expression.shapes)
        whole.push_back(holds_nothing(shape) ? PlanBounds{} : bounds_of(shape, margin));
    for (const PlanTerm& term : expression.terms) {
        const auto solid = static_cast<std::size_t>(term.solid);
        for (const int index : term.less) {
            const auto less = static_cast<std::size_t>(index);
            cover(used[less], {whole[less].low.cwiseMax(whole[solid].low),
                               whole[less].high.cwiseMin(whole[solid].high)});
        }
    }
    for (const PlanTerm& term : expression.terms) // a solid that is also taken away stays whole
        used[static_cast<std::size_t>(term.solid)] = whole[static_cast<std::size_t>(term.solid)];
    return used;
}

/// Of a box's extent along a unit vector from a point, low and high.
std::pair<double, double> extent(const Box& box, const Vec2& axis, const Vec2& from) {
    const double along = axis.dot(box.axis), across = axis.dot(turned_left(box.axis));
    const double start = axis.dot(box.origin - from);
    return {start + std::min(box.from * along, box.to * along) +
                std::min(box.low * across, box.high * across),
            start + std::max(box.from * along, box.to * along) +
                std::max(box.low * across, box.high * across)};
}

/// Whether some side of `box` has the other box beyond it.
bool side_parts(const Box& box, const Box& other, double margin) {
    const auto along = extent(other, box.axis, box.origin);
    const auto across = extent(other, turned_left(box.axis), box.origin);
    return along.first > box.to + margin || along.second < box.from - margin ||
           across.first > box.high + margin || across.second < box.low - margin;
}

/// Whether two shapes lie more than `margin` apart.
bool apart(const Shape& a, const Shape& b, double margin) {
    if (const Disc* disc = std::get_if<Disc>(&a))
        return distance_outside(b, disc->centre) > disc->radius + margin;
    if (const Disc* disc = std::get_if<Disc>(&b))
        return distance_outside(a, disc->centre) > disc->radius + margin;
    const Box &one = std::get<Box>(a), &other = std::get<Box>(b);
    return side_parts(one, other, margin) || side_parts(other, one, margin);
}

/// Fills same_as from the neighbours; whether there were any.
bool find_same(const std::vector<Shape>& shapes, PlanOutline& outline) {
    bool found = false;
    for (const auto& [i, j] : outline.neighbours) { // ascending: `i` knows its own first already
        int& same = outline.same_as[static_cast<std::size_t>(j)];
        if (same == j &&
            coincide(shapes[static_cast<std::size_t>(i)], shapes[static_cast<std::size_t>(j)])) {
            same = outline.same_as[static_cast<std::size_t>(i)];
            found = true;
        }
    }
    return found;
}

} // namespace

PlanOutline make_outline(const PlanExpression& expression, double margin) {
    const std::vector<Shape>& shapes = expression.shapes;
    PlanOutline outline;
    for (std::size_t i = 0; i < shapes.size(); ++i)
        outline.same_as.push_back(static_cast<int>(i));
    std::vector<PlanBounds>& bounds = outline.bounds = bounds_where_used(expression, margin);
    const auto find_neighbours = [&] {
        outline.neighbours = meeting_pairs(bounds);
        std::erase_if(outline.neighbours, [&](const std::pair<int, int>& pair) {
            return apart(shapes[static_cast<std::size_t>(pair.first)],
                         shapes[static_cast<std::size_t>(pair.second)], margin);
        });
    };
    find_neighbours();
    if (find_same(shapes, outline)) {
        for (std::size_t i = 0; i < shapes.size(); ++i)
            if (outline.same_as[i] != static_cast<int>(i)) {
                cover(bounds[static_cast<std::size_t>(outline.same_as[i])], bounds[i]);
                bounds[i] = PlanBounds{};
            }
        find_neighbours();
    }
    outline.curves.reserve(4 * shapes.size());
    outline.first_curve.reserve(shapes.size() + 1);
    for (std::size_t i = 0; i < shapes.size(); ++i) {
        outline.first_curve.push_back(static_cast<int>(outline.curves.size()));
        if (outline.same_as[i] == static_cast<int>(i) && !holds_nothing(shapes[i]))
            add_curves(outline, shapes[i], static_cast<int>(i));
    }
    outline.first_curve.push_back(static_cast<int>(outline.curves.size()));
    return outline;
}

bool is_sound(const PlanExpression& expression) {
    const auto fits = [](double value) { return std::abs(value) < 1e5; }; // not of a NaN
    for (const Shape& shape : expression.shapes) {
        if (const Disc* disc = std::get_if<Disc>(&shape)) {
            if (!fits(disc->centre.x()) || !fits(disc->centre.y()) || !fits(disc->radius))
                return false;
        } else {
            const Box& box = std::get<Box>(shape);
            const bool unit = std::abs(box.axis.squaredNorm() - 1) < 1e-12;
            if (!unit || !fits(box.origin.x()) || !fits(box.origin.y()) || !fits(box.from) ||
                !fits(box.to) || !fits(box.low) || !fits(box.high))
                return false;
        }
    }
    const auto names_shape = [&](int index) {
        return index >= 0 && static_cast<std::size_t>(index) < expression.shapes.size();
    };
    return std::all_of(expression.terms.begin(), expression.terms.end(), [&](const PlanTerm& term) {
        return names_shape(term.solid) &&
               std::all_of(term.less.begin(), term.less.end(), names_shape);
    });
}

double distance_outside(const Shape& shape, const Vec2& point) {
    if (const Disc* disc = std::get_if<Disc>(&shape))
        return (point - disc->centre).norm() - disc->radius;
    const Box& box = std::get<Box>(shape);
    const Vec2 from_origin = point - box.origin;
    const double along = box.axis.dot(from_origin), left = cross(box.axis, from_origin);
    const double beyond = std::max(box.from - along, along - box.to);
    const double beside = std::max(box.low - left, left - box.high);
    return beyond > 0 && beside > 0 ? std::hypot(beyond, beside) : std::max(beyond, beside);
}

} // namespace coilwright
