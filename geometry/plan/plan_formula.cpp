#include "geometry/plan/plan_formula.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace coilwright {

namespace {

/// Counts at [i + 1] turned into first places at [i].
void sum_up(std::vector<int>& counts) {
    std::partial_sum(counts.begin(), counts.end(), counts.begin());
}

/// A point nearer to a boundary is on no side of it: well above rounding, well below plan_weld.
constexpr double least_distance = 1e-11;

} // namespace

ShapeSide side_of(const Shape& shape, const Vec2& point) {
    double outside = 0; // of a disc and beyond a box's corners not to scale, which is enough here
    if (const Disc* disc = std::get_if<Disc>(&shape)) {
        const double r = disc->radius;
        outside = ((point - disc->centre).squaredNorm() - r * r) / (2 * r);
    } else {
        const Box& box = std::get<Box>(shape);
        const Vec2 from_origin = point - box.origin;
        const double along = box.axis.dot(from_origin), left = cross(box.axis, from_origin);
        outside = std::max(std::max(box.from - along, along - box.to),
                           std::max(box.low - left, left - box.high));
    }
    if (std::abs(outside) < least_distance)
        return ShapeSide::unsure;
    return outside < 0 ? ShapeSide::in : ShapeSide::out;
}

PlanFormula::PlanFormula(const PlanExpression& expression, const PlanOutline& outline) {
    const std::size_t shapes = expression.shapes.size();
    const auto stand_in = [&](int shape) {
        return outline.same_as[static_cast<std::size_t>(shape)];
    };

    first_around_.assign(shapes + 1, 0);
    for (std::size_t i = 0; i < shapes; ++i)
        ++first_around_[i + 1];
    for (const auto& [i, j] : outline.neighbours) {
        ++first_around_[static_cast<std::size_t>(i) + 1];
        ++first_around_[static_cast<std::size_t>(j) + 1];
    }
    sum_up(first_around_);
    around_.resize(static_cast<std::size_t>(first_around_.back()));
    std::vector<int> next(first_around_.begin(), first_around_.end() - 1);
    const auto put = [&](int shape, int other) {
        around_[static_cast<std::size_t>(next[static_cast<std::size_t>(shape)]++)] = other;
    };
    for (std::size_t i = 0; i < shapes; ++i)
        put(static_cast<int>(i), static_cast<int>(i));
    for (const auto& [i, j] : outline.neighbours) {
        put(i, j);
        put(j, i);
    }

    used_.assign(shapes, false);
    first_term_.assign(shapes + 1, 0);
    first_less_.push_back(0);
    for (const PlanTerm& term : expression.terms) {
        const int solid = stand_in(term.solid);
        ++first_term_[static_cast<std::size_t>(solid) + 1];
        used_[static_cast<std::size_t>(solid)] = true;
        for (const int index : term.less) {
            const int less = stand_in(index);
            if (!outline.has_curves(less))
                continue;
            used_[static_cast<std::size_t>(less)] = true;
            less_.push_back(less);
        }
        first_less_.push_back(static_cast<int>(less_.size()));
    }
    sum_up(first_term_);
    terms_.resize(expression.terms.size());
    next.assign(first_term_.begin(), first_term_.end() - 1);
    for (std::size_t t = 0; t < expression.terms.size(); ++t) {
        const auto solid = static_cast<std::size_t>(stand_in(expression.terms[t].solid));
        terms_[static_cast<std::size_t>(next[solid]++)] = static_cast<int>(t);
    }
}

ShapeSide PlanFormula::value(std::span<const int> near, const std::vector<ShapeSide>& sides) const {
    ShapeSide value = ShapeSide::out;
    for (const int solid : near) {
        const ShapeSide in_solid = sides[static_cast<std::size_t>(solid)];
        if (in_solid == ShapeSide::out)
            continue;
        for (const int term : part(terms_, first_term_, solid)) {
            ShapeSide in_term = in_solid;
            for (const int less : part(less_, first_less_, term)) {
                const ShapeSide in_less = sides[static_cast<std::size_t>(less)];
                if (in_less == ShapeSide::out)
                    continue;
                in_term = in_less == ShapeSide::in ? ShapeSide::out : ShapeSide::unsure;
                if (in_term == ShapeSide::out)
                    break;
            }
            if (in_term == ShapeSide::in)
                return ShapeSide::in;
            if (in_term == ShapeSide::unsure)
                value = ShapeSide::unsure;
        }
    }
    return value;
}

} // namespace coilwright
