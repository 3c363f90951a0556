#include "geometry/plan/region_pieces.hpp"

#include "geometry/base/bearing.hpp"
#include "geometry/plan/stacked_sides.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace coilwright {

namespace {

/// A point of the anticlockwise arc between two points (seen from the circle's centre); of the
/// whole circle where they are one.
Vec2 arc_point(const PlanCurve& circle, const Vec2& from, const Vec2& to, double share) {
    double sweep = std::atan2(cross(from, to), from.dot(to));
    if (sweep <= 0)
        sweep += 2 * pi;
    const double angle = share * sweep, r = circle.length / from.norm();
    return circle.start + r * (std::cos(angle) * from + std::sin(angle) * turned_left(from));
}

/// arc_point at half, without trigonometry.
Vec2 arc_middle(const PlanCurve& circle, const Vec2& from, const Vec2& to) {
    Vec2 towards = turned_left(from - to); // right of the chord
    if (from.dot(to) > 0)
        towards = cross(from, to) > 0 ? Vec2(from + to) : Vec2(-from - to);
    return circle.start + circle.length / towards.norm() * towards;
}

class Sorter {
public:
    Sorter(const PlanExpression& expression, const PlanOutline& outline, const Crossings& crossings,
           const PlanFormula& formula)
        : expression_(expression), outline_(outline), crossings_(crossings), formula_(formula),
          stack_(outline, crossings, formula), sides_(expression.shapes.size(), ShapeSide::out) {}

    std::optional<std::vector<BoundaryPiece>> sort() {
        for (std::size_t shape = 0; shape < expression_.shapes.size(); ++shape) {
            around_ = formula_.around(static_cast<int>(shape));
            for (int c = outline_.first_curve[shape]; c < outline_.first_curve[shape + 1]; ++c)
                if (formula_.uses(static_cast<int>(shape)) && !sort_curve(c))
                    return std::nullopt;
        }
        return std::move(kept_);
    }

private:
    bool sort_curve(int index) {
        const PlanCurve& curve = outline_.curves[static_cast<std::size_t>(index)];
        const auto first =
            static_cast<std::size_t>(crossings_.first_node[static_cast<std::size_t>(index)]);
        const auto last =
            static_cast<std::size_t>(crossings_.first_node[static_cast<std::size_t>(index) + 1]);
        const std::size_t count = last - first;
        if (count == 0)
            return !curve.circle || sort_piece(index, -1, -1);
        if (count == 1 && curve.circle)
            return sort_piece(index, crossings_.nodes[first].vertex,
                              crossings_.nodes[first].vertex);
        for (std::size_t i = 0; i < (curve.circle ? count : count - 1); ++i) {
            const int from = crossings_.nodes[first + i].vertex;
            const int to = crossings_.nodes[first + (i + 1) % count].vertex;
            if (from != to && !sort_piece(index, from, to))
                return false;
        }
        return true;
    }

    Vec2 sample(const PlanCurve& curve, int from, int to, double share) const {
        const auto at = [&](int vertex) -> const Vec2& {
            return crossings_.vertices[static_cast<std::size_t>(vertex)];
        };
        if (!curve.circle)
            return at(from) + share * (at(to) - at(from));
        if (from == to) {
            const Vec2 start = from < 0 ? Vec2(1, 0) : Vec2(at(from) - curve.start);
            return arc_point(curve, start, start, share);
        }
        const Vec2 start = at(from) - curve.start, end = at(to) - curve.start;
        return share == 0.5 ? arc_middle(curve, start, end) : arc_point(curve, start, end, share);
    }

    bool sort_piece(int index, int from, int to) {
        const PlanCurve& curve = outline_.curves[static_cast<std::size_t>(index)];
        for (const double share : {0.5, 0.25, 0.8125}) {
            const Vec2 point = sample(curve, from, to, share);
            if (!outline_.bounds_of(curve).holds(point))
                return true;
            find_present(point);
            stack_.gather(index, point);
            stack_.add_shapes(present_);
            const ShapeSide left = value_beside(true), right = value_beside(false);
            if (left == ShapeSide::unsure || right == ShapeSide::unsure)
                continue;
            if (left != right && stack_.first() == index)
                keep(index, from, to, left == ShapeSide::in);
            return true;
        }
        return false;
    }

    /// Sets the sides of all shapes for a point, and lists those that it may lie in.
    void find_present(const Vec2& point) {
        for (const int shape : present_)
            sides_[static_cast<std::size_t>(shape)] = ShapeSide::out;
        present_.clear();
        for (const int other : around_) {
            const auto shape = static_cast<std::size_t>(other);
            if (!outline_.bounds[shape].holds(point))
                continue;
            const ShapeSide side = side_of(expression_.shapes[shape], point);
            if (side == ShapeSide::out)
                continue;
            sides_[shape] = side;
            present_.push_back(other);
        }
    }

    void keep(int index, int from, int to, bool region_left) {
        BoundaryPiece piece{
            index, region_left, region_left ? from : to, region_left ? to : from, {}};
        if (!stack_.alone()) {
            piece.also = stack_.bounding(present_, sides_);
            piece.curve = piece.also.front();
            piece.also.erase(piece.also.begin());
        }
        kept_.push_back(std::move(piece));
    }

    ShapeSide value_beside(bool left) {
        stack_.set_sides(sides_, left);
        return formula_.value(present_, sides_);
    }

    const PlanExpression& expression_;
    const PlanOutline& outline_;
    const Crossings& crossings_;
    const PlanFormula& formula_;
    StackedSides stack_;
    std::vector<ShapeSide> sides_;
    std::span<const int> around_;
    std::vector<int> present_;
    std::vector<BoundaryPiece> kept_;
};

} // namespace

std::optional<std::vector<BoundaryPiece>> boundary_pieces(const PlanExpression& expression,
                                                          const PlanOutline& outline,
                                                          const Crossings& crossings,
                                                          const PlanFormula& formula) {
    return Sorter(expression, outline, crossings, formula).sort();
}

} // namespace coilwright
