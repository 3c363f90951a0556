#include "geometry/solids/mesh.hpp"

#include <Eigen/Geometry>

namespace coilwright {

double volume(const Mesh& mesh) {
    if (mesh.vertices.empty())
        return 0;
    // Taken about a vertex of the mesh, so that a building far from the origin loses no digits.
    const Vec3 origin = mesh.vertices.front();
    double six_volumes = 0;
    for (const auto& [a, b, c] : mesh.triangles) {
        const Vec3 p = mesh.vertices[a] - origin;
        const Vec3 q = mesh.vertices[b] - origin;
        const Vec3 r = mesh.vertices[c] - origin;
        six_volumes += p.dot(q.cross(r));
    }
    return six_volumes / 6;
}

double surface_area(const Mesh& mesh) {
    double twice_area = 0;
    for (const auto& [a, b, c] : mesh.triangles) {
        const Vec3 u = mesh.vertices[b] - mesh.vertices[a];
        const Vec3 v = mesh.vertices[c] - mesh.vertices[a];
        twice_area += u.cross(v).norm();
    }
    return twice_area / 2;
}

Bounds bounds(const Mesh& mesh) {
    Bounds box{Vec3::Zero(), Vec3::Zero()};
    if (mesh.vertices.empty())
        return box;
    box.low = box.high = mesh.vertices.front();
    for (const Vec3& vertex : mesh.vertices) {
        box.low = box.low.cwiseMin(vertex);
        box.high = box.high.cwiseMax(vertex);
    }
    return box;
}

} // namespace coilwright
