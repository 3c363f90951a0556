#include "geometry/plan/vertex_weld.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
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

/// The nodes by curve, then along it; returns the first of each curve, and the end.
std::vector<int> VertexWeld::sort_nodes(std::size_t curves) {
    std::vector<int> first(curves + 1, 0);
    for (const CurveNode& node : nodes_)
        ++first[static_cast<std::size_t>(node.curve) + 1];
    std::partial_sum(first.begin(), first.end(), first.begin());
    std::vector<CurveNode> sorted(nodes_.size());
    std::vector<int> next(first.begin(), first.end() - 1);
    for (const CurveNode& node : nodes_)
        sorted[static_cast<std::size_t>(next[static_cast<std::size_t>(node.curve)]++)] = node;
    for (std::size_t curve = 0; curve < curves; ++curve)
        std::sort(sorted.begin() + first[curve], sorted.begin() + first[curve + 1],
                  [](const CurveNode& a, const CurveNode& b) {
                      return a.along != b.along ? a.along < b.along : a.vertex < b.vertex;
                  });
    nodes_ = std::move(sorted);
    return first;
}

template <typename Join>
void VertexWeld::each_neighbours(const PlanOutline& outline, const std::vector<int>& first,
                                 Join join) const {
    for (std::size_t curve = 0; curve + 1 < first.size(); ++curve) {
        const auto begin = static_cast<std::size_t>(first[curve]);
        const auto end = static_cast<std::size_t>(first[curve + 1]);
        for (std::size_t i = begin + 1; i < end; ++i)
            join(nodes_[i - 1], nodes_[i]);
        if (outline.curves[curve].circle && end > begin + 1)
            join(nodes_[end - 1], nodes_[begin]);
    }
}

Crossings VertexWeld::finish(const PlanOutline& outline, double near) {
    Crossings found;
    found.first_node = sort_nodes(outline.curves.size());
    each_neighbours(outline, found.first_node, [&](const CurveNode& a, const CurveNode& b) {
        if ((at(a.vertex) - at(b.vertex)).squaredNorm() <= plan_weld * plan_weld)
            unite(a.vertex, b.vertex);
    });
    // Each vertex once on a curve.
    int kept = 0;
    for (std::size_t curve = 0; curve < outline.curves.size(); ++curve) {
        const int begin = std::exchange(found.first_node[curve], kept);
        for (int i = begin; i < found.first_node[curve + 1]; ++i) {
            CurveNode node = nodes_[static_cast<std::size_t>(i)];
            node.vertex = root(node.vertex);
            if (kept == found.first_node[curve] ||
                nodes_[static_cast<std::size_t>(kept) - 1].vertex != node.vertex)
                nodes_[static_cast<std::size_t>(kept++)] = node;
        }
    }
    found.first_node.back() = kept;
    nodes_.resize(static_cast<std::size_t>(kept));
    each_neighbours(outline, found.first_node, [&](const CurveNode& a, const CurveNode& b) {
        const Vec2 gap = at(b.vertex) - at(a.vertex);
        if (a.vertex != b.vertex && gap.squaredNorm() < near * near)
            found.doubts.push_back({at(a.vertex) + gap / 2, 4 * near, a.curve, a.curve, false});
    });
    found.vertices = std::move(vertices_);
    found.nodes = std::move(nodes_);
    return found;
}

} // namespace coilwright
