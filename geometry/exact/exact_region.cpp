#include "geometry/exact/exact_region.hpp"

#include "geometry/plan/region_loops.hpp"
#include "geometry/plan/stacked_sides.hpp"

#include <CGAL/Exact_predicates_exact_constructions_kernel.h>
#include <CGAL/General_polygon_set_2.h>
#include <CGAL/Gps_circle_segment_traits_2.h>

#include <algorithm>
#include <cmath>
#include <exception>
#include <list>
#include <optional>
#include <vector>

namespace coilwright {

namespace {

using Kernel = CGAL::Exact_predicates_exact_constructions_kernel;
using Number = Kernel::FT;
using Traits = CGAL::Gps_circle_segment_traits_2<Kernel>;
using PolygonSet = CGAL::General_polygon_set_2<Traits>;
using Polygon = Traits::General_polygon_2;
using PolygonWithHoles = Traits::Polygon_with_holes_2;
using Arc = Traits::X_monotone_curve_2;
using Point = Kernel::Point_2;
using Line = Kernel::Line_2;

Point exact(const Vec2& point) {
    return {Number(point.x()), Number(point.y())};
}

/// a0 + a1 sqrt(root) to the nearest double or next to it, whatever cancels.
double rounded(const Traits::Point_2::CoordNT& value) {
    const auto a0 = CGAL::exact(value.a0());
    if (!value.is_extended())
        return CGAL::to_double(a0);
    const auto a1 = CGAL::exact(value.a1()), root = CGAL::exact(value.root());
    const double first = CGAL::to_double(a0);
    const double second = CGAL::to_double(a1) * std::sqrt(CGAL::to_double(root));
    if (first * second >= 0)
        return first + second;
    using Exact = std::decay_t<decltype(a0)>;
    const Exact product = a0 * a0 - a1 * a1 * root;
    return CGAL::to_double(product) / (first - second);
}

Vec2 rounded(const Traits::Point_2& point) {
    return {rounded(point.x()), rounded(point.y())};
}

/// The loop, cut where it comes back to a vertex: parts that touch in a point come as one.
void add_without_repeats(const LoopPieces& loop, std::vector<LoopPieces>& result) {
    LoopPieces path;
    for (const LoopPiece& piece : loop) {
        path.push_back(piece);
        const auto back = std::find_if(path.rbegin(), path.rend(), [&](const LoopPiece& earlier) {
            return (earlier.from - piece.to).norm() <= plan_weld;
        });
        if (back == path.rend())
            continue;
        const auto first = back.base() - 1;
        result.emplace_back(first, path.end());
        result.back().back().to = first->from;
        path.erase(first, path.end());
    }
}

/// All within some plan_weld: what three curves through one point leave between them.
bool is_speck(const LoopPieces& loop) {
    return std::all_of(loop.begin(), loop.end(), [&](const LoopPiece& piece) {
        return (piece.to - loop.front().from).norm() <= 10 * plan_weld;
    });
}

class ExactBuilder {
public:
    ExactBuilder(const PlanExpression& expression, const PlanOutline& outline)
        : expression_(expression), outline_(outline), formula_(expression, outline),
          crossings_(find_crossings(outline, 0)) {
        choose_lines();
    }

    std::vector<LoopPieces> loops() const {
        std::vector<PolygonWithHoles> parts;
        for (const PlanTerm& term : expression_.terms) {
            const std::optional<Polygon> solid = polygon(term.solid);
            if (!solid)
                continue;
            PolygonSet part(*solid);
            for (const int index : term.less)
                if (const std::optional<Polygon> less = polygon(index))
                    part.difference(*less);
            part.polygons_with_holes(std::back_inserter(parts));
        }
        PolygonSet region;
        region.join(parts.begin(), parts.end());
        parts.clear();
        region.polygons_with_holes(std::back_inserter(parts));
        std::vector<LoopPieces> result;
        for (const PolygonWithHoles& part : parts) {
            add_loop(part.outer_boundary(), result);
            for (auto hole = part.holes_begin(); hole != part.holes_end(); ++hole)
                add_loop(*hole, result);
        }
        return result;
    }

private:
    /// Sides that lie on one line within plan_weld get one exact line.
    void choose_lines() {
        line_of_.resize(outline_.curves.size());
        for (std::size_t i = 0; i < line_of_.size(); ++i)
            line_of_[i] = static_cast<int>(i);
        for (const SharedLine& shared : crossings_.shared) {
            const int a = line_of_[static_cast<std::size_t>(shared.curve)];
            const int b = line_of_[static_cast<std::size_t>(shared.other)];
            for (int& line : line_of_)
                if (line == std::max(a, b))
                    line = std::min(a, b);
        }
    }

    Line line(int curve) const {
        const PlanCurve& side =
            outline_.curves[static_cast<std::size_t>(line_of_[static_cast<std::size_t>(curve)])];
        return {exact(side.start), Kernel::Vector_2(side.direction.x(), side.direction.y())};
    }

    /// None of a shape that holds nothing.
    std::optional<Polygon> polygon(int shape) const {
        const int stand_in = outline_.same_as[static_cast<std::size_t>(shape)];
        if (!outline_.has_curves(stand_in))
            return std::nullopt;
        const int first = outline_.first_curve[static_cast<std::size_t>(stand_in)];
        const PlanCurve& curve = outline_.curves[static_cast<std::size_t>(first)];
        return curve.circle ? circle(curve) : box(first);
    }

    static Polygon circle(const PlanCurve& curve) {
        const Traits::Curve_2 whole(exact(curve.start), Number(curve.length),
                                    CGAL::COUNTERCLOCKWISE);
        std::list<CGAL::Object> halves;
        Traits().make_x_monotone_2_object()(whole, std::back_inserter(halves));
        Polygon polygon;
        for (const CGAL::Object& half : halves)
            polygon.push_back(CGAL::object_cast<Arc>(half));
        return polygon;
    }

    std::optional<Polygon> box(int first) const {
        std::vector<Point> corners;
        for (int side = 0; side < 4; ++side) {
            const auto corner =
                CGAL::intersection(line(first + (side + 3) % 4), line(first + side));
            corners.push_back(boost::get<Point>(*corner));
        }
        // Lines shared with other boxes can turn a box of a few plan_weld inside out.
        for (std::size_t side = 0; side < 4; ++side)
            if (!CGAL::left_turn(corners[side], corners[(side + 1) % 4], corners[(side + 2) % 4]))
                return std::nullopt;
        Polygon polygon;
        for (std::size_t side = 0; side < 4; ++side)
            polygon.push_back(Arc(corners[side], corners[(side + 1) % 4]));
        return polygon;
    }

    void add_loop(const Polygon& polygon, std::vector<LoopPieces>& result) const {
        LoopPieces loop;
        for (auto arc = polygon.curves_begin(); arc != polygon.curves_end(); ++arc) {
            LoopPiece piece;
            piece.from = rounded(arc->source());
            piece.to = rounded(arc->target());
            if ((piece.to - piece.from).norm() <= plan_weld)
                continue;
            if (arc->is_linear()) {
                piece.also = sides_under(piece);
                piece.curve = piece.also.front();
                piece.also.erase(piece.also.begin());
            } else {
                piece.curve = circle_under(*arc);
                piece.anticlockwise = arc->orientation() == CGAL::COUNTERCLOCKWISE;
            }
            if (!loop.empty())
                piece.from = loop.back().to;
            loop.push_back(piece);
        }
        if (is_speck(loop))
            return;
        const Vec2 start = loop.front().from;
        while ((loop.back().from - start).norm() <= plan_weld)
            loop.pop_back();
        loop.back().to = start;
        add_without_repeats(loop, result);
    }

    int circle_under(const Arc& arc) const {
        const auto circle = arc.supporting_circle();
        const Vec2 centre(CGAL::to_double(circle.center().x()),
                          CGAL::to_double(circle.center().y()));
        const double radius = std::sqrt(CGAL::to_double(circle.squared_radius()));
        return nearest([&](const PlanCurve& curve) {
            return curve.circle ? (curve.start - centre).norm() + std::abs(curve.length - radius)
                                : far;
        });
    }

    std::vector<int> sides_under(const LoopPiece& piece) const {
        const Vec2 middle = (piece.from + piece.to) / 2;
        const int side = nearest([&](const PlanCurve& curve) {
            const double along = curve.direction.dot(middle - curve.start);
            if (curve.circle || along < -plan_weld || along > curve.length + plan_weld ||
                !outline_.bounds_of(curve).holds(middle))
                return far;
            return std::max(std::abs(cross(curve.direction, piece.from - curve.start)),
                            std::abs(cross(curve.direction, piece.to - curve.start)));
        });
        const auto around = formula_.around(outline_.curves[static_cast<std::size_t>(side)].shape);
        std::vector<ShapeSide> sides(expression_.shapes.size(), ShapeSide::out);
        for (const int shape : around)
            sides[static_cast<std::size_t>(shape)] =
                side_of(expression_.shapes[static_cast<std::size_t>(shape)], middle);
        StackedSides stack(outline_, crossings_, formula_);
        stack.gather(side, middle);
        return stack.bounding(around, sides);
    }

    template <typename Distance>
    int nearest(Distance distance) const {
        int best = 0;
        double least = far;
        for (std::size_t i = 0; i < outline_.curves.size(); ++i) {
            const double d =
                formula_.uses(outline_.curves[i].shape) ? distance(outline_.curves[i]) : far;
            if (d < least) {
                least = d;
                best = static_cast<int>(i);
            }
        }
        return best;
    }

    static constexpr double far = 1e300;
    const PlanExpression& expression_;
    const PlanOutline& outline_;
    PlanFormula formula_;
    Crossings crossings_;
    std::vector<int> line_of_; // per side: the side whose line it takes
};

} // namespace

Region exact_region(const PlanExpression& expression) {
    Region undecided;
    undecided.decided = false;
    if (!is_sound(expression))
        return undecided;
    try {
        const PlanOutline outline = make_outline(expression, plan_weld);
        return make_region(outline, ExactBuilder(expression, outline).loops());
    } catch (const std::exception&) {
        return undecided;
    }
}

} // namespace coilwright
