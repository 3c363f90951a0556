// Vertices met on several curves, and the welding of those that are one place.
#pragma once

#include "geometry/plan/region_crossings.hpp"

namespace coilwright {

/// A number in [0, 4) that grows with the angle of a vector, anticlockwise from the x axis; cheaper
/// than the angle. (0, 1) -> 1.
double turn_order(const Vec2& v);

class VertexWeld {
public:
    /// Starts with the corners of all boxes: a place welded from several keeps the corner's point.
    explicit VertexWeld(const std::vector<Vec2>& corners);

    int add_vertex(const Vec2& at);
    void add_node(int curve, double along, int vertex) { nodes_.push_back({curve, along, vertex}); }
    const Vec2& at(int vertex) const { return vertices_[static_cast<std::size_t>(vertex)]; }
    /// The two are one vertex, for which the smaller index stands.
    void unite(int a, int b);

    /// Welds neighbours along each curve, orders the nodes, and doubts neighbours within `near`.
    /// `shared` stays empty.
    Crossings finish(const PlanOutline& outline, double near);

private:
    int root(int vertex);
    std::vector<int> sort_nodes(std::size_t curves);
    /// Calls join(a, b) on every two nodes that follow each other on a curve; a circle's last and
    /// first too.
    template <typename Join>
    void each_neighbours(const PlanOutline& outline, const std::vector<int>& first,
                         Join join) const;

    std::vector<Vec2> vertices_;
    std::vector<int> root_;
    std::vector<CurveNode> nodes_;
};

} // namespace coilwright
