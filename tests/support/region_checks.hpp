// What every region must be, reckoned from its edges alone.
#pragma once

#include "geometry/plan/region.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <vector>

namespace coilwright::testing {

/// The point half-way along an edge: from the chord's middle to the right by bulge times half the
/// chord (a positive bulge turns left, so the arc bows out to the right).
inline Vec2 edge_middle(const BoundaryEdge& edge) {
    const Vec2 chord = edge.to - edge.from;
    return (edge.from + edge.to) / 2 + edge.bulge / 2 * Vec2(chord.y(), -chord.x());
}

inline double distance_from_boundary(const Shape& shape, const Vec2& point) {
    if (const Disc* disc = std::get_if<Disc>(&shape))
        return std::abs((point - disc->centre).norm() - disc->radius);
    const Box& box = std::get<Box>(shape);
    const Vec2 across(-box.axis.y(), box.axis.x());
    const double x = box.axis.dot(point - box.origin), y = across.dot(point - box.origin);
    const double in_x = std::clamp(x, box.from, box.to), in_y = std::clamp(y, box.low, box.high);
    const double out = std::hypot(x - in_x, y - in_y);
    const double in = std::min({x - box.from, box.to - x, y - box.low, box.high - y});
    return std::max(out, in);
}

/// Loops closed, edges on the shapes that they name, no two edges that could be one, the region on
/// the left of each edge and not on its right (`beside` it, metres), loops in their order, areas
/// adding up.
inline void check_region(const PlanExpression& plan, const Region& region, double beside = 1e-7) {
    REQUIRE(region.decided);
    double area = 0, last_size = 1e300;
    for (const BoundaryLoop& loop : region.loops) {
        REQUIRE(loop.edges.size() >= 2);
        CHECK(std::abs(loop.area) > 0);
        CHECK(std::abs(loop.area) <= last_size + 1e-8);
        last_size = std::abs(loop.area);
        area += loop.area;
        for (std::size_t i = 0; i < loop.edges.size(); ++i) {
            const BoundaryEdge& edge = loop.edges[i];
            const BoundaryEdge& next = loop.edges[(i + 1) % loop.edges.size()];
            CHECK(edge.to == next.from);
            CHECK(edge.from.x() >= loop.edges[0].from.x() - 2e-9);
            const Shape& shape = plan.shapes[static_cast<std::size_t>(edge.shape)];
            const Vec2 middle = edge_middle(edge), chord = edge.to - edge.from;
            for (const Vec2& point : {edge.from, edge.to, middle})
                CHECK(distance_from_boundary(shape, point) < 3e-9);
            CHECK(std::holds_alternative<Disc>(shape) == (edge.bulge != 0));
            const double length = length_of(edge);
            CHECK(length >= chord.norm() * (1 - 1e-12));
            if (length < 1e-4)
                continue;
            const Vec2 left = Vec2(-chord.y(), chord.x()).normalized() * beside;
            CHECK(contains(plan, middle + left));
            CHECK_FALSE(contains(plan, middle - left));
        }
    }
    CHECK(region.area == Approx(area).margin(1e-12));
    CHECK(region.area >= 0);
}

/// Two edges start at one point: the region touches itself there, and loops may be cut either way.
inline bool touches_itself(const Region& region) {
    std::vector<Vec2> starts;
    for (const BoundaryLoop& loop : region.loops)
        for (const BoundaryEdge& edge : loop.edges)
            starts.push_back(edge.from);
    for (std::size_t i = 0; i < starts.size(); ++i)
        for (std::size_t k = 0; k < i; ++k)
            if ((starts[i] - starts[k]).norm() < 1e-8)
                return true;
    return false;
}

/// The two have the same edges to a tolerance in metres, in the same loops. Shapes may be numbered
/// otherwise.
inline void check_same_region(const Region& a, const Region& b, double tolerance) {
    CHECK(std::abs(a.area - b.area) <= tolerance * std::max(1.0, std::abs(b.area)));
    CHECK(std::abs(perimeter(a) - perimeter(b)) <= tolerance * std::max(1.0, perimeter(b)));
    std::vector<BoundaryEdge> edges;
    for (const BoundaryLoop& loop : b.loops)
        edges.insert(edges.end(), loop.edges.begin(), loop.edges.end());
    for (const BoundaryLoop& loop : a.loops)
        for (const BoundaryEdge& edge : loop.edges) {
            const auto found = std::find_if(edges.begin(), edges.end(), [&](const auto& other) {
                return (edge.from - other.from).norm() <= tolerance &&
                       (edge_middle(edge) - edge_middle(other)).norm() <= tolerance;
            });
            REQUIRE(found != edges.end());
            edges.erase(found);
        }
    CHECK(edges.empty());
    if (touches_itself(b))
        return;
    REQUIRE(a.loops.size() == b.loops.size());
    for (std::size_t i = 0; i < a.loops.size(); ++i) {
        CHECK(std::abs(a.loops[i].area - b.loops[i].area) <= 10 * tolerance);
        CHECK((a.loops[i].edges[0].from - b.loops[i].edges[0].from).norm() <= tolerance);
    }
}

} // namespace coilwright::testing
