// The patch mesher on surfaces whose areas and volumes are known.
#include "geometry/base/bearing.hpp"
#include "geometry/solids/mesh_check.hpp"
#include "geometry/solids/patch.hpp"
#include "geometry/solids/revolved_surface.hpp"

#include <Eigen/Geometry>
#include <catch2/catch.hpp>

#include <cmath>
#include <map>

using namespace coilwright;

namespace {

Chain circle(Mesh& mesh, double r, double z, int count, const std::string& element = "circle",
             Vec2 centre = {0, 0}) {
    Chain chain{{}, true, element};
    for (int i = 0; i < count; ++i) {
        const double angle = 2 * pi * i / count;
        chain.vertices.push_back(static_cast<std::uint32_t>(mesh.vertices.size()));
        mesh.vertices.emplace_back(centre.x() + r * std::cos(angle),
                                   centre.y() + r * std::sin(angle), z);
    }
    return chain;
}

/// Area of the regular polygon that a circle's chords make.
double polygon_area(double r, int count) {
    return count * r * r * std::sin(2 * pi / count) / 2;
}

double least_angle(const Mesh& mesh) {
    return check_mesh(mesh, false).least_angle_degrees;
}

} // namespace

TEST_CASE("a disc is covered exactly, in well-shaped triangles, normals up") {
    Mesh mesh;
    const LevelSurface level(1.5);
    const Chain rim = circle(mesh, 2, 1.5, 60);
    REQUIRE_FALSE(mesh_patch({&level, {rim}, {}, false}, 0.002, mesh));
    CHECK(surface_area(mesh) == Approx(polygon_area(2, 60)).epsilon(1e-12));
    CHECK(least_angle(mesh) > 20);
    for (const auto& [a, b, c] : mesh.triangles) {
        const Vec3 u = mesh.vertices[b] - mesh.vertices[a], v = mesh.vertices[c] - mesh.vertices[a];
        CHECK(u.x() * v.y() - u.y() * v.x() > 0);
    }
    Mesh turned = mesh;
    turned.triangles.clear();
    REQUIRE_FALSE(mesh_patch({&level, {rim}, {}, true}, 0.002, turned));
    const auto& [a, b, c] = turned.triangles.front();
    CHECK((turned.vertices[b] - turned.vertices[a])
              .cross(turned.vertices[c] - turned.vertices[a])
              .z() < 0);
}

TEST_CASE("inside is told by nesting: a ring, an island in its hole, and a disc apart") {
    Mesh mesh;
    const LevelSurface level(0);
    const std::vector<Chain> loops{circle(mesh, 3, 0, 64), circle(mesh, 2, 0, 48),
                                   circle(mesh, 1, 0, 24), circle(mesh, 1, 0, 24, "apart", {8, 0})};
    REQUIRE_FALSE(mesh_patch({&level, loops, {}, false}, 0.002, mesh));
    CHECK(
        surface_area(mesh) ==
        Approx(polygon_area(3, 64) - polygon_area(2, 48) + 2 * polygon_area(1, 24)).epsilon(1e-12));
    CHECK(check_mesh(mesh, false).components == 3);
}

TEST_CASE("shared edges are never divided, and each is used once") {
    Mesh mesh;
    const LevelSurface level(0);
    const Chain outer = circle(mesh, 1, 0, 12), inner = circle(mesh, 0.9, 0, 40);
    REQUIRE_FALSE(mesh_patch({&level, {outer, inner}, {}, false}, 0.002, mesh));
    std::map<ChainEdge, int> uses;
    for (const auto& triangle : mesh.triangles)
        for (int k = 0; k < 3; ++k)
            ++uses[std::minmax(triangle[k], triangle[(k + 1) % 3])];
    for (const Chain& chain : {outer, inner})
        for (const auto& [a, b] : edges_of(chain))
            CHECK(uses[std::minmax(a, b)] == 1);
}

TEST_CASE("facets meet along a crease") {
    Mesh mesh;
    const LevelSurface level(0);
    const Chain rim = circle(mesh, 2, 0, 40);
    const Chain crease = circle(mesh, 1.2, 0, 30);
    REQUIRE_FALSE(mesh_patch({&level, {rim}, {crease}, false}, 0.002, mesh));
    CHECK(surface_area(mesh) == Approx(polygon_area(2, 40)).epsilon(1e-12));
    std::map<ChainEdge, int> uses;
    for (const auto& triangle : mesh.triangles)
        for (int k = 0; k < 3; ++k)
            ++uses[std::minmax(triangle[k], triangle[(k + 1) % 3])];
    for (const auto& [a, b] : edges_of(crease))
        CHECK(uses[std::minmax(a, b)] == 2);
}

TEST_CASE("the zone of a sphere: area, tolerance and angles") {
    // Zone of height H on a sphere of radius R: area 2 pi R H (Archimedes).
    const double R = 2, H = 1.6, r = std::sqrt(R * R - H * H);
    for (const double tolerance : {0.02, 0.005, 0.00125}) {
        CAPTURE(tolerance);
        Mesh mesh;
        const RevolvedSurface sphere({[=](double z) { return std::sqrt(R * R - z * z); }, 0, H, {}},
                                     0.9 * tolerance);
        const double step = std::sqrt(8 * 0.8 * tolerance / R);
        const Chain low = circle(mesh, R, 0, static_cast<int>(std::ceil(2 * pi / step)));
        const Chain high = circle(mesh, r, H, static_cast<int>(std::ceil(2 * pi / step)));
        REQUIRE_FALSE(mesh_patch({&sphere, {low, high}, {}, false}, tolerance, mesh));
        double worst = 0;
        for (const auto& [a, b, c] : mesh.triangles)
            for (int i = 0; i <= 6; ++i)
                for (int j = 0; i + j <= 6; ++j) {
                    const Vec3 at = (i * mesh.vertices[a] + j * mesh.vertices[b] +
                                     (6 - i - j) * mesh.vertices[c]) /
                                    6;
                    worst = std::max(worst, std::abs(at.norm() - R));
                }
        CHECK(worst <= tolerance);
        CHECK(worst > 0.5 * tolerance); // no finer than asked for
        CHECK(least_angle(mesh) > 20);
        // The area of chords falls short by about twice the mean sag over R.
        CHECK(surface_area(mesh) < 2 * pi * R * H);
        CHECK(surface_area(mesh) > 2 * pi * R * H * (1 - 2 * tolerance / R));
    }
}

TEST_CASE("a patch beside short edges is graded") {
    Mesh mesh;
    const LevelSurface level(0);
    const std::vector<Chain> loops{circle(mesh, 2, 0, 24), circle(mesh, 0.05, 0, 32)};
    REQUIRE_FALSE(mesh_patch({&level, loops, {}, false}, 0.002, mesh));
    CHECK(least_angle(mesh) > 20);
    CHECK(mesh.triangles.size() < 1500);
}

TEST_CASE("the same patch gives the same triangles") {
    Mesh first, second;
    for (Mesh* mesh : {&first, &second}) {
        const LevelSurface level(0);
        const std::vector<Chain> loops{circle(*mesh, 2, 0, 37), circle(*mesh, 0.3, 0, 16)};
        REQUIRE_FALSE(mesh_patch({&level, loops, {}, false}, 0.002, *mesh));
    }
    CHECK(first.triangles == second.triangles);
    CHECK(first.vertices == second.vertices);
}

TEST_CASE("curves that cannot bound a face are refused by name, and nothing is added") {
    Mesh mesh;
    const LevelSurface level(0);
    const Chain left = circle(mesh, 1, 0, 20, "left"),
                right = circle(mesh, 1, 0, 20, "right", {1, 0});
    const std::size_t vertices = mesh.vertices.size();
    const auto crossing = mesh_patch({&level, {left, right}, {}, false}, 0.002, mesh);
    REQUIRE(crossing);
    CHECK(crossing->kind == ShapeFault::crossing);
    CHECK(((crossing->first == "left" && crossing->second == "right") ||
           (crossing->first == "right" && crossing->second == "left")));

    Chain open = left;
    open.closed = false;
    const auto gap = mesh_patch({&level, {open}, {}, false}, 0.002, mesh);
    REQUIRE(gap);
    CHECK(gap->kind == ShapeFault::open_boundary);
    CHECK(gap->first == "left");

    const Chain beside = circle(mesh, 1, 0, 20, "beside", {2, 0});
    mesh.vertices[beside.vertices[10]] = mesh.vertices[left.vertices[0]];
    const auto touching = mesh_patch({&level, {left, beside}, {}, false}, 0.002, mesh);
    REQUIRE(touching);
    CHECK(touching->kind == ShapeFault::touching);
    CHECK(mesh.vertices.size() == vertices + 20);
    CHECK(mesh.triangles.empty());
}
