// The one file that pays for corefinement: about a minute to compile.
#include "tests/solids/boolean_oracle.hpp"

#include <CGAL/Exact_predicates_inexact_constructions_kernel.h>
#include <CGAL/Polygon_mesh_processing/corefinement.h>
#include <CGAL/Side_of_triangle_mesh.h>
#include <CGAL/Surface_mesh.h>

#include <stdexcept>

namespace coilwright {

namespace {

namespace pmp = CGAL::Polygon_mesh_processing;
using Kernel = CGAL::Exact_predicates_inexact_constructions_kernel;
using Surface = CGAL::Surface_mesh<Kernel::Point_3>;
using Vertex = Surface::Vertex_index;

Mesh mesh_of(const Surface& surface) {
    Mesh mesh;
    for (const Vertex v : surface.vertices())
        mesh.vertices.emplace_back(surface.point(v).x(), surface.point(v).y(),
                                   surface.point(v).z());
    for (const auto face : surface.faces()) {
        std::array<std::uint32_t, 3> corners{};
        int k = 0;
        for (const Vertex v : CGAL::vertices_around_face(surface.halfedge(face), surface))
            corners[k++] = static_cast<std::uint32_t>(v);
        mesh.triangles.push_back(corners);
    }
    return mesh;
}

Surface surface_of(const Mesh& mesh) {
    Surface surface;
    for (const Vec3& v : mesh.vertices)
        surface.add_vertex({v.x(), v.y(), v.z()});
    for (const auto& [a, b, c] : mesh.triangles)
        surface.add_face(Vertex(a), Vertex(b), Vertex(c));
    return surface;
}

Surface operand(const Mesh& mesh) {
    Surface surface = surface_of(mesh);
    if (!CGAL::is_closed(surface))
        throw std::runtime_error("an operand is not a closed solid");
    return surface;
}

void subtract(Surface& from, Surface what) {
    Surface result;
    if (!pmp::corefine_and_compute_difference(from, what, result))
        throw std::runtime_error("a Boolean gave no solid");
    from = std::move(result);
    from.collect_garbage();
}

void unite(Surface& with, Surface what) {
    Surface result;
    if (!pmp::corefine_and_compute_union(with, what, result))
        throw std::runtime_error("a Boolean gave no solid");
    with = std::move(result);
    with.collect_garbage();
}

} // namespace

Mesh by_booleans(const std::vector<BooleanStep>& steps) {
    Surface wall = operand(steps.at(0).body);
    for (std::size_t k = 1; k < steps.size(); ++k) {
        Surface body = operand(steps[k].body);
        for (const Mesh& taken : steps[k].less)
            subtract(body, operand(taken));
        if (steps[k].adds)
            unite(wall, std::move(body));
        else
            subtract(wall, std::move(body));
    }
    return mesh_of(wall);
}

std::vector<bool> inside(const Mesh& mesh, const std::vector<Vec3>& points) {
    const Surface surface = surface_of(mesh);
    const CGAL::Side_of_triangle_mesh<Surface, Kernel> side(surface);
    std::vector<bool> result;
    for (const Vec3& at : points)
        result.push_back(side({at.x(), at.y(), at.z()}) == CGAL::ON_BOUNDED_SIDE);
    return result;
}

} // namespace coilwright
