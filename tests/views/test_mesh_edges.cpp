// Normals and creases of a mesh, told by hand.
#include "geometry/views/mesh_edges.hpp"

#include <Eigen/Geometry>

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;

namespace {

constexpr double turn = 3.14159265358979323846;

/// An upright prism of `sides` sides and radius 1, its rims at 0 and 1.
Mesh prism(std::uint32_t sides) {
    Mesh mesh;
    for (const double z : {0.0, 1.0})
        for (std::uint32_t i = 0; i < sides; ++i)
            mesh.vertices.emplace_back(std::cos(2 * turn * i / sides),
                                       std::sin(2 * turn * i / sides), z);
    for (std::uint32_t i = 0; i < sides; ++i) {
        const std::uint32_t next = (i + 1) % sides;
        mesh.triangles.push_back({i, next, sides + next});
        mesh.triangles.push_back({i, sides + next, sides + i});
    }
    for (std::uint32_t i = 1; i + 1 < sides; ++i) {
        mesh.triangles.push_back({0, i + 1, i});
        mesh.triangles.push_back({sides, sides + i, sides + i + 1});
    }
    return mesh;
}

} // namespace

TEST_CASE("a box has twelve creases, a fine prism those of its rims alone") {
    const EdgedMesh box = with_edges(prism(4));
    CHECK(box.mesh.triangles.size() == 12);
    CHECK(box.creases.size() == 12);
    CHECK(with_edges(prism(6)).creases.size() == 6 + 12); // sides meet at 60 degrees
    CHECK(with_edges(prism(40)).creases.size() == 80);    // at 9: they stand for a cylinder
}

TEST_CASE("normals at the corners are those of the round surface") {
    const EdgedMesh round = with_edges(prism(40));
    for (std::size_t i = 0; i < 80; ++i) // its side
        for (std::size_t k = 0; k < 3; ++k) {
            const Vec3& at = round.mesh.vertices[round.mesh.triangles[i][k]];
            const Vec3& normal = round.normals.corners[i][k];
            CHECK(normal.norm() == Approx(1));
            CHECK(normal.z() == Approx(0).margin(1e-12)); // the flat ends have no part in it
            // Two facets of one side count against one of the other: within a quarter of 9 degrees.
            CHECK(normal.dot(Vec3(at.x(), at.y(), 0)) > std::cos(2.25 * turn / 180));
        }
    CHECK(round.normals.facets.back() == Vec3(0, 0, 1));
}
