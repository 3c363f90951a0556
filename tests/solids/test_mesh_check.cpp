// What check_mesh must tell apart: small meshes whose faults are known.
#include "geometry/solids/mesh_check.hpp"

#include <catch2/catch.hpp>

#include <limits>

using namespace coilwright;

namespace {

/// A regular tetrahedron with edges of sqrt 2, volume 1/3, moved by `by`.
Mesh tetrahedron(const Vec3& by = Vec3::Zero()) {
    Mesh mesh;
    for (const Vec3& corner : {Vec3(0, 0, 0), Vec3(1, 1, 0), Vec3(1, 0, 1), Vec3(0, 1, 1)})
        mesh.vertices.push_back(corner + by);
    mesh.triangles = {{0, 2, 1}, {0, 1, 3}, {0, 3, 2}, {1, 2, 3}};
    if (volume(mesh) < 0)
        for (auto& triangle : mesh.triangles)
            std::swap(triangle[1], triangle[2]);
    return mesh;
}

Mesh together(Mesh a, const Mesh& b) {
    const auto offset = static_cast<std::uint32_t>(a.vertices.size());
    a.vertices.insert(a.vertices.end(), b.vertices.begin(), b.vertices.end());
    for (const auto& [i, j, k] : b.triangles)
        a.triangles.push_back({i + offset, j + offset, k + offset});
    return a;
}

} // namespace

TEST_CASE("a regular tetrahedron is a solid with angles of 60 degrees") {
    const MeshCheck check = check_mesh(tetrahedron(), true);
    CHECK(check.solid());
    CHECK(check.components == 1);
    CHECK(check.least_angle_degrees == Approx(60).epsilon(1e-9));
    CHECK(volume(tetrahedron()) == Approx(1.0 / 3));
}

TEST_CASE("a missing face leaves a mesh open") {
    Mesh mesh = tetrahedron();
    mesh.triangles.pop_back();
    const MeshCheck check = check_mesh(mesh, false);
    CHECK_FALSE(check.closed);
    CHECK_FALSE(check.manifold);
    CHECK_FALSE(check.solid());
}

TEST_CASE("a face turned over spoils the orientation, all turned over the outside") {
    Mesh one = tetrahedron();
    std::swap(one.triangles[2][0], one.triangles[2][1]);
    CHECK(check_mesh(one, false).closed);
    CHECK_FALSE(check_mesh(one, false).oriented);
    Mesh all = tetrahedron();
    for (auto& triangle : all.triangles)
        std::swap(triangle[0], triangle[1]);
    const MeshCheck check = check_mesh(all, false);
    CHECK(check.oriented);
    CHECK_FALSE(check.outward);
    CHECK_FALSE(check.solid());
}

TEST_CASE("two bodies on one vertex or one edge are not a manifold") {
    Mesh vertex = together(tetrahedron(), tetrahedron({2, 2, 0}));
    for (auto& triangle : vertex.triangles)
        for (auto& corner : triangle)
            corner = corner == 4 ? 1 : corner; // (2, 2, 0) of the second is moved onto...
    vertex.vertices[4] = {9, 9, 9};
    Mesh touching = vertex; // ...a vertex of the first
    touching.vertices.erase(touching.vertices.begin() + 4);
    for (auto& triangle : touching.triangles)
        for (auto& corner : triangle)
            corner -= corner > 4 ? 1 : 0;
    const MeshCheck check = check_mesh(touching, false);
    CHECK(check.closed);
    CHECK(check.oriented);
    CHECK_FALSE(check.manifold);
    CHECK_FALSE(check.solid());

    // Three triangles and more on one edge.
    Mesh fins = tetrahedron();
    fins.vertices.push_back({-1, -1, 3});
    fins.triangles.push_back({0, 1, 4});
    CHECK_FALSE(check_mesh(fins, false).closed);
}

TEST_CASE("bodies apart are two components, bodies that overlap or touch cross") {
    const MeshCheck apart = check_mesh(together(tetrahedron(), tetrahedron({5, 0, 0})), true);
    CHECK(apart.solid());
    CHECK(apart.components == 2);
    const MeshCheck overlapping =
        check_mesh(together(tetrahedron(), tetrahedron({0.25, 0.2, 0.1})), true);
    CHECK(overlapping.self_intersecting);
    REQUIRE(overlapping.crossing);
    CHECK(overlapping.crossing->first < 4);
    CHECK(overlapping.crossing->second >= 4);
    // Corner (1, 1, 0) of the first is corner (0, 0, 0) of the second, by place but not by index.
    CHECK(check_mesh(together(tetrahedron(), tetrahedron({1, 1, 0})), true).self_intersecting);
}

TEST_CASE("a crossing between triangles that share a vertex or an edge is found") {
    Mesh mesh;
    mesh.vertices = {{0, 0, 0}, {2, 0, 0}, {0, 2, 0}, {0.5, 0.5, -1}, {0.5, 0.5, 1}, {1, -1, 0}};
    mesh.triangles = {{0, 1, 2}, {0, 3, 4}};
    CHECK(first_crossing(mesh) == TrianglePair(0, 1)); // the edge 3-4 pierces the first
    mesh.triangles = {{0, 1, 2}, {0, 5, 3}};
    CHECK_FALSE(first_crossing(mesh));
    // On one edge: flat out is no crossing, folded back on itself is one.
    mesh.triangles = {{0, 1, 2}, {1, 0, 5}};
    CHECK_FALSE(first_crossing(mesh));
    mesh.vertices[5] = {1, 1.5, 0};
    CHECK(first_crossing(mesh) == TrianglePair(0, 1));
    // In one plane about one vertex: beside each other, and overlapping.
    mesh.vertices = {{0, 0, 0}, {2, 0, 0}, {2, 1, 0}, {-2, 0, 0}, {-2, 1, 0}, {1, 0.25, 0}};
    mesh.triangles = {{0, 1, 2}, {0, 4, 3}};
    CHECK_FALSE(first_crossing(mesh));
    mesh.triangles = {{0, 1, 2}, {0, 5, 4}};
    CHECK(first_crossing(mesh) == TrianglePair(0, 1));
    mesh.triangles = {{0, 1, 2}, {1, 2, 0}};
    CHECK(first_crossing(mesh) == TrianglePair(0, 1)); // twice the same
}

TEST_CASE("rounding to single precision can flatten a face; only the rounded check says so") {
    Mesh mesh = tetrahedron({4096, 0, 0});
    // Single precision counts in steps of 0.5 mm there.
    mesh.vertices[1] = mesh.vertices[0] + Vec3(1e-4, 1, 0);
    mesh.vertices[2] = mesh.vertices[0] + Vec3(0, 0, 1);
    mesh.vertices[3] = mesh.vertices[0] + Vec3(0, 0.5, 0.5);
    if (volume(mesh) < 0)
        for (auto& triangle : mesh.triangles)
            std::swap(triangle[0], triangle[1]);
    CHECK(check_mesh(mesh, false).solid());
    CHECK_FALSE(check_mesh(mesh, true).solid());
    CHECK(rounded_to_float(mesh).vertices[1].x() == 4096);
}

TEST_CASE("faces without area are counted") {
    Mesh mesh = tetrahedron();
    mesh.vertices[3] = (mesh.vertices[0] + mesh.vertices[1]) / 2; // binary fractions: exact
    const MeshCheck check = check_mesh(mesh, false);
    CHECK(check.degenerate_faces == 1);
    CHECK(check.least_angle_degrees == Approx(0).margin(1e-6));
    CHECK_FALSE(check.solid());
}

TEST_CASE("meshes that cannot be read are no solids") {
    CHECK_FALSE(check_mesh({}, true).solid());
    Mesh wild = tetrahedron();
    wild.triangles[0][0] = 77;
    CHECK_FALSE(check_mesh(wild, true).solid());
    Mesh not_a_number = tetrahedron();
    not_a_number.vertices[2].y() = std::numeric_limits<double>::quiet_NaN();
    CHECK_FALSE(check_mesh(not_a_number, true).solid());
    Mesh endless = tetrahedron();
    endless.vertices[2].y() = 1e300; // beyond single precision
    CHECK_FALSE(check_mesh(endless, true).solid());
}
