#include "geometry/plan/vertex_weld.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>
#include <utility>

namespace coilwright {

double turn_order(const Vec2& v) {
    const double sum = std::abs(v.x()) + std::abs(v.y());
    if (sum == 0)
        return 0;
    const double slant = v.y() / sum;
    if (v.x() < 0)
        return 2 - slant;
    return slant < 0 ? std::min(4 + slant, std::nextafter(4.0, 0.0)) : slant;
}

VertexWeld::VertexWeld(const std::vector<Vec2>& corners) {
    vertices_.reserve(2 * corners.size() + 32);
    root_.reserve(2 * corners.size() + 32);
    nodes_.reserve(4 * corners.size() + 64);
    for (const Vec2& corner : corners)
        add_vertex(corner);
}

int VertexWeld::add_vertex(const Vec2& at) {
    const int index = static_cast<int>(vertices_.size());
    vertices_.push_back(at);
    root_.push_back(index);
    return index;
}

int VertexWeld::root(int vertex) {
    const auto parent = [&](int v) -> int& { return root_[static_cast<std::size_t>(v)]; };
    while (parent(vertex) != vertex)
        vertex = parent(vertex) = parent(parent(vertex));
    return vertex;
}

void VertexWeld::unite(int a, int b) {
    a = root(a);
    b = root(b);
    root_[static_cast<std::size_t>(std::max(a, b))] = std::min(a, b);
}

template <typename Join>
void VertexWeld::each_neighbours(const PlanOutline& outline, Join join) {
    for (std::size_t first = 0; first < nodes_.size();) {
        std::size_t last = first + 1;
        while (last < nodes_.size() && nodes_[last].curve == nodes_[first].curve) {
            join(nodes_[last - 1], nodes_[last]);
            ++last;
        }
        if (outline.curves[static_cast<std::size_t>(nodes_[first].curve)].circle &&
            last > first + 1)
            join(nodes_[last - 1], nodes_[first]);
        first = last;
    }
}

Crossings VertexWeld::finish(const PlanOutline& outline, double near) {
    std::sort(nodes_.begin(), nodes_.end(), [](const CurveNode& a, const CurveNode& b) {
        return std::tie(a.curve, a.along, a.vertex) < std::tie(b.curve, b.along, b.vertex);
    });
    each_neighbours(outline, [&](const CurveNode& a, const CurveNode& b) {
        if ((at(a.vertex) - at(b.vertex)).squaredNorm() <= plan_weld * plan_weld)
            unite(a.vertex, b.vertex);
    });
    for (CurveNode& node : nodes_)
        node.vertex = root(node.vertex);
    nodes_.erase(std::unique(nodes_.begin(), nodes_.end(),
                             [](const CurveNode& a, const CurveNode& b) {
                                 return a.curve == b.curve && a.vertex == b.vertex;
                             }),
                 nodes_.end());

    Crossings found;
    each_neighbours(outline, [&](const CurveNode& a, const CurveNode& b) {
        const Vec2 gap = at(b.vertex) - at(a.vertex);
        if (a.vertex != b.vertex && gap.squaredNorm() < near * near)
            found.doubts.push_back({at(a.vertex) + gap / 2, 4 * near, a.curve, a.curve, false});
    });
    found.first_node.reserve(outline.curves.size() + 1);
    std::size_t next = 0;
    for (std::size_t curve = 0; curve < outline.curves.size(); ++curve) {
        found.first_node.push_back(static_cast<int>(next));
        while (next < nodes_.size() && static_cast<std::size_t>(nodes_[next].curve) == curve)
            ++next;
    }
    found.first_node.push_back(static_cast<int>(next));
    found.vertices = std::move(vertices_);
    found.nodes = std::move(nodes_);
    return found;
}

} // namespace coilwright
