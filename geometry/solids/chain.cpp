#include "geometry/solids/chain.hpp"

#include <algorithm>

namespace coilwright {

namespace {

double side(const Vec2& from, const Vec2& to, const Vec2& point) {
    const Vec2 run = to - from, off = point - from;
    return run.x() * off.y() - run.y() * off.x();
}

} // namespace

std::vector<ChainEdge> edges_of(const Chain& chain) {
    std::vector<ChainEdge> edges;
    for (std::size_t i = 0; i + 1 < chain.vertices.size(); ++i)
        edges.emplace_back(chain.vertices[i], chain.vertices[i + 1]);
    if (chain.closed && chain.vertices.size() > 2)
        edges.emplace_back(chain.vertices.back(), chain.vertices.front());
    return edges;
}

std::vector<ChainEdge> sorted_edges(const std::vector<Chain>& chains) {
    std::vector<ChainEdge> edges;
    for (const Chain& chain : chains)
        for (const auto& [a, b] : edges_of(chain))
            edges.emplace_back(std::min(a, b), std::max(a, b));
    std::sort(edges.begin(), edges.end());
    return edges;
}

std::optional<std::uint32_t> loose_end(const std::vector<ChainEdge>& edges) {
    std::vector<std::uint32_t> ends;
    for (const auto& [a, b] : edges) {
        ends.push_back(a);
        ends.push_back(b);
    }
    std::sort(ends.begin(), ends.end());
    for (std::size_t i = 0, next = 0; i < ends.size(); i = next) {
        while (next < ends.size() && ends[next] == ends[i])
            ++next;
        if ((next - i) % 2 != 0)
            return ends[i];
    }
    return {};
}

std::string element_at(const std::vector<Chain>& chains, std::uint32_t vertex) {
    for (const Chain& chain : chains)
        if (std::find(chain.vertices.begin(), chain.vertices.end(), vertex) != chain.vertices.end())
            return chain.element;
    return {};
}

std::string element_across(const std::vector<Chain>& chains, const Chain& own, ChainEdge edge,
                           const std::function<Vec2(std::uint32_t)>& flat) {
    const Vec2 a = flat(edge.first), b = flat(edge.second);
    for (const Chain& chain : chains) {
        if (&chain == &own)
            continue;
        for (const auto& [i, j] : edges_of(chain)) {
            if (i == edge.first || i == edge.second || j == edge.first || j == edge.second)
                continue;
            const Vec2 c = flat(i), d = flat(j);
            if (side(a, b, c) * side(a, b, d) <= 0 && side(c, d, a) * side(c, d, b) <= 0)
                return chain.element;
        }
    }
    return {};
}

} // namespace coilwright
