#include "geometry/plan/region_pieces.hpp"

#include "geometry/base/bearing.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

/// A point nearer to a boundary is on no side of it: well above rounding, well below plan_weld.
constexpr double least_distance = 1e-11;

Side side_of(const Shape& shape, const Vec2& point) {
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
        return Side::unsure;
    return outside < 0 ? Side::in : Side::out;
}

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
          sides_(expression.shapes.size(), Side::out) {}

    std::optional<std::vector<BoundaryPiece>> sort() {
        for (std::size_t shape = 0; shape < expression_.shapes.size(); ++shape) {
            around_ = formula_.around(static_cast<int>(shape));
            for (int c = outline_.first_curve[shape]; c < outline_.first_curve[shape + 1]; ++c)
                if (formula_.uses(static_cast<int>(shape)) && !sort_curve(c))
                    return std::nullopt;
            for (const int other : around_)
                sides_[static_cast<std::size_t>(other)] = Side::out;
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
            for (const int other : around_)
                if (other != curve.shape)
                    sides_[static_cast<std::size_t>(other)] =
                        side_of(expression_.shapes[static_cast<std::size_t>(other)], point);
            if (!set_shared_sides(index, point, true))
                return true; // another side on this line stands for both
            const Side left = value_beside(curve, true);
            set_shared_sides(index, point, false);
            const Side right = value_beside(curve, false);
            if (left == Side::unsure || right == Side::unsure)
                continue;
            if (left == Side::in && right == Side::out)
                kept_.push_back({index, true, from, to});
            else if (left == Side::out && right == Side::in)
                kept_.push_back({index, false, to, from});
            return true;
        }
        return false;
    }

    Side value_beside(const PlanCurve& curve, bool left) {
        sides_[static_cast<std::size_t>(curve.shape)] = left ? Side::in : Side::out;
        return formula_.value(around_, sides_);
    }

    /// The sides of shapes whose boundary runs along this piece too, for a point just left or right
    /// of it. False if one of them is to stand for all: the longest side, then the first.
    bool set_shared_sides(int index, const Vec2& point, bool left) {
        if (crossings_.shared.empty())
            return true;
        const auto [first, last] = shared_lines_of(crossings_, index);
        const double length = outline_.curves[static_cast<std::size_t>(index)].length;
        for (std::size_t i = first; i < last; ++i) {
            const SharedLine& line = crossings_.shared[i];
            const PlanCurve& other = outline_.curves[static_cast<std::size_t>(line.other)];
            const double along = other.direction.dot(point - other.start);
            if (along <= 0 || along >= other.length || !formula_.uses(other.shape))
                continue;
            if (other.length > length || (other.length == length && line.other < index))
                return false;
            sides_[static_cast<std::size_t>(other.shape)] =
                line.same_direction == left ? Side::in : Side::out;
        }
        return true;
    }

    const PlanExpression& expression_;
    const PlanOutline& outline_;
    const Crossings& crossings_;
    const PlanFormula& formula_;
    std::vector<Side> sides_;
    std::span<const int> around_;
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
