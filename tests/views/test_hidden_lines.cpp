// Every crease of a building against rays in space: what rays see is drawn, what they do not is
// not.
#include "geometry/views/role_strokes.hpp"
#include "geometry/views/seen_edges.hpp"
#include "geometry/views/upright_views.hpp"
#include "tests/views/building.hpp"

#include <Eigen/Geometry>

#include <cmath>
#include <map>
#include <random>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

/// Whether the mesh stands in the way of a ray, more than `beyond` from its start. Solves for the
/// crossing with each triangle in space: shares nothing with the grid of SightBlock.
bool blocked(const Mesh& mesh, const Vec3& from, const Vec3& toward, double beyond) {
    for (const auto& t : mesh.triangles) {
        const Vec3 a = mesh.vertices[t[0]], e1 = mesh.vertices[t[1]] - a,
                   e2 = mesh.vertices[t[2]] - a;
        const Vec3 p = toward.cross(e2);
        const double det = e1.dot(p);
        if (std::abs(det) < 1e-12)
            continue;
        const Vec3 off = from - a;
        const double u = off.dot(p) / det;
        if (u < 0 || u > 1)
            continue;
        const Vec3 q = off.cross(e1);
        const double v = toward.dot(q) / det;
        if (v >= 0 && u + v <= 1 && e2.dot(q) / det > beyond)
            return true;
    }
    return false;
}

struct Edge {
    Vec3 from, to;
    Vec3 off{0, 0, 1}; // off the body: the middle of its faces' normals
    bool away = false; // both its faces look away from the viewer
};

/// Edges whose faces meet at more than 35 degrees (the drawing's own limit is 30), over 30 mm long.
std::vector<Edge> creases(const Mesh& mesh, const Vec3& toward) {
    std::map<std::pair<std::uint32_t, std::uint32_t>, Vec3> first;
    std::vector<Edge> found;
    for (const auto& t : mesh.triangles) {
        const Vec3 a = mesh.vertices[t[0]];
        const Vec3 normal = (mesh.vertices[t[1]] - a).cross(mesh.vertices[t[2]] - a).normalized();
        for (std::size_t k = 0; k < 3; ++k) {
            const auto key = std::minmax(t[k], t[(k + 1) % 3]);
            const auto [at, fresh] = first.emplace(key, normal);
            const Vec3 from = mesh.vertices[key.first], to = mesh.vertices[key.second];
            if (!fresh && at->second.dot(normal) < std::cos(35 * radians_per_degree) &&
                (to - from).norm() > 0.03)
                found.push_back({from, to, (at->second + normal).normalized(),
                                 at->second.dot(toward) < -0.05 && normal.dot(toward) < -0.05});
        }
    }
    return found;
}

/// Whether a drawn line passes within `near` of a point of the view, at about its depth.
bool is_drawn(const std::vector<SeenLine>& lines, const Vec3& at, double near, double depth) {
    for (const SeenLine& line : lines)
        for (std::size_t i = 0; i + 1 < line.points.size(); ++i) {
            const Vec2 way = line.points[i + 1] - line.points[i];
            const double part =
                way.squaredNorm() > 0
                    ? std::clamp((at.head<2>() - line.points[i]).dot(way) / way.squaredNorm(), 0.0,
                                 1.0)
                    : 0;
            const double z = line.depths[i] + part * (line.depths[i + 1] - line.depths[i]);
            if ((line.points[i] + part * way - at.head<2>()).norm() < near &&
                std::abs(z - at.z()) < depth)
                return true;
        }
    return false;
}

/// Whether a point lies in the mesh: the faces over it, counted along a slanting ray.
bool is_inside(const Mesh& mesh, const Vec3& point) {
    const Vec3 toward = Vec3(0.013, 0.029, 1).normalized();
    int over = 0;
    for (const auto& t : mesh.triangles) {
        Eigen::Matrix3d system;
        const Vec3 a = mesh.vertices[t[0]];
        system << mesh.vertices[t[1]] - a, mesh.vertices[t[2]] - a, -toward;
        if (std::abs(system.determinant()) < 1e-14)
            continue;
        const Vec3 found = system.inverse() * (point - a);
        over += found.x() >= 0 && found.y() >= 0 && found.x() + found.y() <= 1 && found.z() > 0;
    }
    return over % 2 == 1;
}

} // namespace

TEST_CASE("hidden lines: nothing is seen through the cut face of a section") {
    for (const char* const name : {"square-door", "retreat", "home", "seed-house"}) {
        const BuildingPlan plan = demo_plan(name);
        const EdgedMesh shell = whole_shell(shell_model(plan.schedule, default_tolerance).model);
        const MainAxis axis = main_axis(plan.schedule);
        for (const double turn : {0.0, 90.0}) {
            const Bearing right = turned(axis.bearing, turn);
            CAPTURE(name, right.degrees);
            const View view = section(plan, shell, default_tolerance, *axis.dome, right, "A");
            const SightFrame frame = sight_from(turned(right, 90));
            const double depth = frame.of(Vec3(axis.dome->at.x(), axis.dome->at.y(), 0)).z();
            int looked_at = 0;
            std::size_t paths = 0;
            for (const ViewPath& path : view.paths) {
                if (path.role != LineRole::seen || ++paths % 3 != 0)
                    continue;
                const std::vector<Vec2> points = flattened(path.path, 0.001);
                for (std::size_t i = 0; i + 1 < points.size() && i < 6; ++i) {
                    const Vec2 middle = (points[i] + points[i + 1]) / 2;
                    // Inside by more than 5 mm on all sides: lines along the outline are its own.
                    bool deep = true;
                    for (const Vec2& off :
                         {Vec2(0.005, 0), Vec2(-0.005, 0), Vec2(0, 0.005), Vec2(0, -0.005)}) {
                        const Vec2 at = middle + off;
                        const Vec3 place =
                            at.x() * frame.right + at.y() * frame.up + depth * frame.toward;
                        deep = deep && is_inside(shell.mesh, place);
                    }
                    CAPTURE(middle.x(), middle.y());
                    CHECK_FALSE(deep);
                    ++looked_at;
                }
            }
            CHECK(looked_at > 3);
        }
    }
}

TEST_CASE("hidden lines: creases that rays see are drawn, creases that they do not are not") {
    std::mt19937 random(20261126);
    std::uniform_real_distribution<double> turn(0, 360), pitch(0, 55), unit(0.1, 0.9);
    for (const char* const name : {"washroom", "cabin-metric", "home"}) {
        const BuildingPlan plan = demo_plan(name);
        const EdgedMesh shell = whole_shell(shell_model(plan.schedule, default_tolerance).model);
        for (int view = 0; view < 2; ++view) {
            const double bearing = turn(random), rise = pitch(random);
            const SightFrame frame = sight_from(Bearing{bearing}, rise);
            CAPTURE(name, bearing, rise);
            const SightBlock block(shell.mesh, frame);
            const std::vector<SeenLine> lines = seen_edges(shell, block, default_tolerance);
            const std::vector<Edge> edges = creases(shell.mesh, frame.toward);
            REQUIRE(edges.size() > 100);
            int seen = 0, hidden = 0;
            for (int sample = 0; sample < 120; ++sample) {
                const Edge& edge = edges[random() % edges.size()];
                const Vec3 at = edge.from + unit(random) * (edge.to - edge.from);
                // From the air beside it. Seen: nothing at all is in the way; hidden: something
                // well before it is.
                int free = 0, behind = 0;
                for (const double lift : {0.003, 0.006, 0.012}) {
                    const Vec3 start = at + lift * edge.off;
                    free += blocked(shell.mesh, start, frame.toward, 1e-6) ? 0 : 1;
                    behind += blocked(shell.mesh, start, frame.toward, 0.03) ? 1 : 0;
                }
                const Vec3 place = frame.of(at);
                CAPTURE(at.x(), at.y(), at.z(), free, behind);
                if (behind == 3) {
                    ++hidden;
                    CHECK_FALSE(is_drawn(lines, place, 0.003, 0.02));
                } else if (free == 3 && !edge.away) {
                    ++seen;
                    CHECK(is_drawn(lines, place, 0.003, 0.02));
                }
            }
            CHECK(seen > 5);
            CHECK(hidden > 20);
        }
    }
}
