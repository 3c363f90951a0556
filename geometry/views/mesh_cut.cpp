#include "geometry/views/mesh_cut.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace coilwright {

std::vector<std::vector<Vec2>> mesh_cut(const Mesh& mesh, const SightFrame& frame, double depth) {
    using EdgeKey = std::pair<std::uint32_t, std::uint32_t>;
    std::map<EdgeKey, EdgeKey> next; // along the cut, the solid on the left as seen
    std::map<EdgeKey, Vec2> points;
    std::vector<double> over;
    over.reserve(mesh.vertices.size());
    for (const Vec3& vertex : mesh.vertices)
        over.push_back(frame.toward.dot(vertex) - depth);
    for (const auto& triangle : mesh.triangles) {
        EdgeKey enters, leaves;
        int crossings = 0;
        for (std::size_t k = 0; k < 3; ++k) {
            const std::uint32_t a = triangle[k], b = triangle[(k + 1) % 3];
            if ((over[a] >= 0) == (over[b] >= 0))
                continue;
            const EdgeKey key = std::minmax(a, b);
            const double part = over[key.first] / (over[key.first] - over[key.second]);
            const Vec3 at = mesh.vertices[key.first] +
                            part * (mesh.vertices[key.second] - mesh.vertices[key.first]);
            points[key] = frame.of(at).head<2>();
            (over[a] >= 0 ? leaves : enters) = key;
            ++crossings;
        }
        if (crossings == 2)
            next[leaves] = enters;
    }
    std::vector<std::vector<Vec2>> loops;
    while (!next.empty()) {
        std::vector<Vec2> loop;
        auto at = next.begin();
        while (at != next.end()) {
            const EdgeKey following = at->second;
            loop.push_back(points[at->first]);
            next.erase(at);
            at = next.find(following);
        }
        if (loop.size() >= 3)
            loops.push_back(std::move(loop));
    }
    return loops;
}

namespace {

double cross(Vec2 a, Vec2 b) {
    return a.x() * b.y() - a.y() * b.x();
}

bool within(const std::vector<std::vector<Vec2>>& loops, Vec2 point) {
    bool inside = false;
    for (const std::vector<Vec2>& loop : loops)
        for (std::size_t i = 0; i < loop.size(); ++i) {
            const Vec2 a = loop[i], b = loop[(i + 1) % loop.size()];
            if ((a.y() > point.y()) != (b.y() > point.y()) &&
                point.x() < a.x() + (point.y() - a.y()) / (b.y() - a.y()) * (b.x() - a.x()))
                inside = !inside;
        }
    return inside;
}

/// Where a segment crosses the loops, 0 to 1, in order, with both ends.
std::vector<double> crossings(Vec2 from, Vec2 to, const std::vector<std::vector<Vec2>>& loops) {
    std::vector<double> places{0, 1};
    const Vec2 way = to - from;
    for (const std::vector<Vec2>& loop : loops)
        for (std::size_t i = 0; i < loop.size(); ++i) {
            const Vec2 a = loop[i] - from, edge = loop[(i + 1) % loop.size()] - loop[i];
            const double turn = cross(way, edge);
            if (turn == 0)
                continue;
            const double along = cross(a, edge) / turn, across = cross(a, way) / turn;
            if (along > 0 && along < 1 && across >= 0 && across <= 1)
                places.push_back(along);
        }
    std::sort(places.begin(), places.end());
    return places;
}

} // namespace

std::vector<SeenLine> before_cut_face(const std::vector<SeenLine>& lines,
                                      const std::vector<std::vector<Vec2>>& loops) {
    constexpr double least = 1e-4; // m: shorter pieces are of no matter in a drawing
    std::vector<SeenLine> kept;
    for (const SeenLine& line : lines) {
        bool goes_on = false;
        for (std::size_t i = 0; i + 1 < line.points.size(); ++i) {
            const Vec2 from = line.points[i], way = line.points[i + 1] - from;
            const double depth = line.depths[i], deeper = line.depths[i + 1] - depth;
            const std::vector<double> places = crossings(from, line.points[i + 1], loops);
            for (std::size_t k = 0; k + 1 < places.size(); ++k) {
                const double a = places[k], b = places[k + 1];
                if ((b - a) * way.norm() < least && places.size() > 2)
                    continue;
                if (within(loops, from + (a + b) / 2 * way)) {
                    goes_on = false;
                    continue;
                }
                if (!goes_on) {
                    kept.emplace_back();
                    kept.back().points.push_back(from + a * way);
                    kept.back().depths.push_back(depth + a * deeper);
                }
                kept.back().points.push_back(from + b * way);
                kept.back().depths.push_back(depth + b * deeper);
                goes_on = true;
            }
        }
    }
    return kept;
}

std::vector<CutCircle> circles_of(const DomeForm& dome, double pole) {
    const Profile& profile = dome.profile;
    if (profile.radius <= 0 ||
        (profile.kind != ProfileKind::pointed && profile.kind != ProfileKind::round))
        return {};
    const double behind = profile.radius - profile.half_span;
    std::vector<CutCircle> circles;
    for (const double side : {1.0, -1.0})
        for (const double out : {0.0, dome.width})
            circles.push_back(
                {{pole + side * (out - behind), dome.springline}, profile.radius, dome.springline});
    return circles;
}

namespace {

/// Which circle each stretch from a point to the next runs along; -1: none.
std::vector<int> circles_along(const std::vector<Vec2>& loop, const std::vector<CutCircle>& circles,
                               double slack) {
    const auto on = [&](Vec2 point, const CutCircle& circle) {
        return point.y() > circle.above - 1e-6 &&
               std::abs((point - circle.centre).norm() - circle.radius) < slack;
    };
    std::vector<int> along(loop.size(), -1);
    for (std::size_t i = 0; i < loop.size(); ++i) {
        const Vec2 a = loop[i], b = loop[(i + 1) % loop.size()];
        for (std::size_t k = 0; k < circles.size(); ++k)
            if (on(a, circles[k]) && on(b, circles[k]) && on((a + b) / 2, circles[k]) &&
                (a - b).norm() > 1e-9) {
                along[i] = static_cast<int>(k);
                break;
            }
    }
    return along;
}

double bulge_between(Vec2 centre, Vec2 from, Vec2 to) {
    const Vec2 a = from - centre, b = to - centre;
    const double sweep = std::atan2(a.x() * b.y() - a.y() * b.x(), a.dot(b));
    return std::tan(sweep / 4);
}

} // namespace

Outline with_arcs(const std::vector<Vec2>& loop, const std::vector<CutCircle>& circles,
                  double slack) {
    const std::vector<int> along = circles_along(loop, circles, slack);
    const std::size_t n = loop.size();
    // Start where a stretch ends.
    std::size_t start = 0;
    for (std::size_t i = 0; i < n; ++i)
        if (along[i] < 0 || along[i] != along[(i + n - 1) % n]) {
            start = i;
            break;
        }
    const auto point = [&](std::size_t i) { return loop[(start + i) % n]; };
    Outline outline;
    outline.from = point(0);
    Vec2 last = outline.from;
    for (std::size_t i = 0; i < n;) {
        const int circle = along[(start + i) % n];
        std::size_t j = i + 1;
        while (circle >= 0 && j < n && along[(start + j) % n] == circle)
            ++j;
        if (circle >= 0 && j - i >= 3) {
            const CutCircle& on = circles[static_cast<std::size_t>(circle)];
            outline.edges.push_back({point(j), bulge_between(on.centre, last, point(j))});
            last = point(j);
            i = j;
            continue;
        }
        // Straight: as far as all points between lie on the line.
        j = i + 1;
        while (j < n && along[(start + j) % n] < 0) {
            const Vec2 chord = point(j + 1) - last;
            const double length = std::max(chord.norm(), 1e-12);
            bool straight = true;
            for (std::size_t k = i + 1; k <= j && straight; ++k) {
                const Vec2 d = point(k) - last;
                straight = std::abs(chord.x() * d.y() - chord.y() * d.x()) / length < 1e-4;
            }
            if (!straight)
                break;
            ++j;
        }
        outline.edges.push_back({point(j), 0});
        last = point(j);
        i = j;
    }
    return outline;
}

} // namespace coilwright
