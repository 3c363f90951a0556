// A plan expression as a truth function of the sides of its shapes.
#pragma once

#include "geometry/plan/plan_outline.hpp"

#include <span>

namespace coilwright {

/// Where a point lies against a shape, or a formula's value.
enum class ShapeSide : unsigned char { out, in, unsure };

/// Unsure within 1e-11 m of the boundary.
ShapeSide side_of(const Shape& shape, const Vec2& point);

/// Shapes stand for themselves and for those that coincide with them; shapes that hold nothing are
/// left out.
class PlanFormula {
public:
    PlanFormula(const PlanExpression& expression, const PlanOutline& outline);

    /// Shapes whose bounds meet those of a shape; and the shape itself, first.
    std::span<const int> around(int shape) const { return part(around_, first_around_, shape); }
    /// Whether any term is about the shape.
    bool uses(int shape) const { return used_[static_cast<std::size_t>(shape)]; }

    /// Value where all shapes but `near` are out. `sides` has one entry a shape. By three-valued
    /// logic: unsure if a shape is unsure and may decide it.
    ShapeSide value(std::span<const int> near, const std::vector<ShapeSide>& sides) const;

private:
    static std::span<const int> part(const std::vector<int>& all, const std::vector<int>& first,
                                     int index) {
        const auto begin = static_cast<std::size_t>(first[static_cast<std::size_t>(index)]);
        const auto end = static_cast<std::size_t>(first[static_cast<std::size_t>(index) + 1]);
        return {all.data() + begin, end - begin};
    }

    std::vector<int> around_, first_around_;
    std::vector<int> terms_, first_term_; // terms by their solid
    std::vector<int> less_, first_less_;  // shapes by the term that they are taken from
    std::vector<bool> used_;
};

} // namespace coilwright
