#include "geometry/plan/plan_bounds.hpp"

#include <algorithm>
#include <cstddef>

namespace coilwright {

namespace {

constexpr int leaf_size = 16;

struct Node {
    PlanBounds bounds;
    int first, last;           // of Tree::order
    int left = -1, right = -1; // nodes; none in a leaf
};

struct Tree {
    const std::vector<PlanBounds>& bounds;
    std::vector<int> order;
    std::vector<Node> nodes;
    std::vector<std::pair<int, int>> pairs;

    const PlanBounds& at(int place) const {
        return bounds[static_cast<std::size_t>(order[static_cast<std::size_t>(place)])];
    }

    int build(int first, int last) {
        Node node{at(first), first, last};
        for (int i = first + 1; i < last; ++i) {
            node.bounds.low = node.bounds.low.cwiseMin(at(i).low);
            node.bounds.high = node.bounds.high.cwiseMax(at(i).high);
        }
        const auto index = nodes.size();
        nodes.push_back(node);
        if (last - first > leaf_size) {
            const Vec2 extent = node.bounds.high - node.bounds.low;
            const int side = extent.x() >= extent.y() ? 0 : 1;
            const int middle = (first + last) / 2;
            std::nth_element(order.begin() + first, order.begin() + middle, order.begin() + last,
                             [&](int a, int b) {
                                 const auto& p = bounds[static_cast<std::size_t>(a)];
                                 const auto& q = bounds[static_cast<std::size_t>(b)];
                                 const double centre_p = p.low[side] + p.high[side];
                                 const double centre_q = q.low[side] + q.high[side];
                                 return centre_p != centre_q ? centre_p < centre_q : a < b;
                             });
            const int left = build(first, middle), right = build(middle, last);
            nodes[index].left = left;
            nodes[index].right = right;
        }
        return static_cast<int>(index);
    }

    void try_pair(int a, int b) {
        if (at(a).meets(at(b)))
            pairs.push_back(std::minmax(order[static_cast<std::size_t>(a)],
                                        order[static_cast<std::size_t>(b)]));
    }

    void within(int index) {
        const Node node = nodes[static_cast<std::size_t>(index)];
        if (node.left < 0) {
            for (int i = node.first; i < node.last; ++i)
                for (int j = i + 1; j < node.last; ++j)
                    try_pair(i, j);
            return;
        }
        within(node.left);
        within(node.right);
        between(node.left, node.right);
    }

    void between(int a, int b) {
        const Node p = nodes[static_cast<std::size_t>(a)], q = nodes[static_cast<std::size_t>(b)];
        if (!p.bounds.meets(q.bounds))
            return;
        if (p.left < 0 && q.left < 0) {
            for (int i = p.first; i < p.last; ++i)
                for (int j = q.first; j < q.last; ++j)
                    try_pair(i, j);
        } else if (q.left < 0 || (p.left >= 0 && p.last - p.first >= q.last - q.first)) {
            between(p.left, b);
            between(p.right, b);
        } else {
            between(a, q.left);
            between(a, q.right);
        }
    }
};

} // namespace

std::vector<std::pair<int, int>> meeting_pairs(const std::vector<PlanBounds>& bounds) {
    Tree tree{bounds, {}, {}, {}};
    for (std::size_t i = 0; i < bounds.size(); ++i)
        if (!bounds[i].empty())
            tree.order.push_back(static_cast<int>(i));
    if (tree.order.empty())
        return {};
    tree.within(tree.build(0, static_cast<int>(tree.order.size())));
    std::sort(tree.pairs.begin(), tree.pairs.end());
    return tree.pairs;
}

} // namespace coilwright
