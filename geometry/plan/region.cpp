#include "geometry/plan/region.hpp"

#include "geometry/plan/plan_parts.hpp"
#include "geometry/plan/region_loops.hpp"

#include <cmath>

namespace coilwright {

std::optional<Region> fast_region(const PlanExpression& expression, double near) {
    if (!is_sound(expression))
        return std::nullopt;
    const PlanOutline outline = make_outline(expression, near);
    const Crossings crossings = find_crossings(outline, near);
    const PlanFormula formula(expression, outline);
    if (!doubts_are_idle(expression, outline, crossings, formula))
        return std::nullopt;
    const auto pieces = boundary_pieces(expression, outline, crossings, formula);
    if (!pieces)
        return std::nullopt;
    auto loops = walk_loops(outline, crossings, *pieces);
    if (!loops)
        return std::nullopt;
    return make_region(outline, *loops);
}

bool contains(const PlanExpression& expression, const Vec2& point) {
    const auto inside = [&](int shape) {
        return distance_outside(expression.shapes[static_cast<std::size_t>(shape)], point) < 0;
    };
    for (const PlanTerm& term : expression.terms) {
        bool in = inside(term.solid);
        for (std::size_t i = 0; in && i < term.less.size(); ++i)
            in = !inside(term.less[i]);
        if (in)
            return true;
    }
    return false;
}

Region region_of(const PlanExpression& expression, const DecideRegion& decide) {
    if (std::optional<Region> region = fast_region(expression))
        return std::move(*region);
    Region undecided;
    undecided.decided = false;
    if (!decide || !is_sound(expression))
        return undecided;
    // Only those parts that doubles cannot decide are handed over.
    std::vector<BoundaryLoop> loops;
    for (const PlanPart& part : separate_parts(expression)) {
        std::optional<Region> region = fast_region(part.expression);
        if (!region)
            region = decide(part.expression);
        if (!region->decided)
            return undecided;
        for (BoundaryLoop& loop : region->loops) {
            for (BoundaryEdge& edge : loop.edges)
                edge.shape = part.shapes[static_cast<std::size_t>(edge.shape)];
            loops.push_back(std::move(loop));
        }
    }
    return region_of_loops(std::move(loops));
}

std::optional<EdgeArc> arc_of(const BoundaryEdge& edge) {
    if (edge.bulge == 0)
        return std::nullopt;
    // The centre lies off the chord's middle, to its left for an anticlockwise arc of less than
    // half a circle.
    const Vec2 chord = edge.to - edge.from;
    const double square = edge.bulge * edge.bulge;
    return EdgeArc{(edge.from + edge.to) / 2 +
                       Vec2(-chord.y(), chord.x()) * ((1 - square) / (4 * edge.bulge)),
                   chord.norm() * (1 + square) / (4 * std::abs(edge.bulge)), edge.bulge < 0};
}

double length_of(const BoundaryEdge& edge) {
    const double chord = (edge.to - edge.from).norm(), bulge = std::abs(edge.bulge);
    // Radius = chord (1 + b^2) / (4 b), sweep = 4 atan b.
    return bulge < 1e-8 ? chord : chord * (1 + bulge * bulge) / bulge * std::atan(bulge);
}

double perimeter(const Region& region) {
    double length = 0;
    for (const BoundaryLoop& loop : region.loops)
        for (const BoundaryEdge& edge : loop.edges)
            length += length_of(edge);
    return length;
}

} // namespace coilwright
