// The one file that pays for corefinement: about a minute to compile.
#include "tests/solids/boolean_oracle.hpp"

#include <CGAL/Exact_predicates_inexact_constructions_kernel.h>
#include <CGAL/Polygon_mesh_processing/corefinement.h>
#include <CGAL/Polygon_mesh_processing/orientation.h>
#include <CGAL/Side_of_triangle_mesh.h>
#include <CGAL/Surface_mesh.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <stdexcept>

namespace coilwright {

namespace {

namespace pmp = CGAL::Polygon_mesh_processing;
using Kernel = CGAL::Exact_predicates_inexact_constructions_kernel;
using Surface = CGAL::Surface_mesh<Kernel::Point_3>;
using Vertex = Surface::Vertex_index;

/// Coordinates on a grid of 2^-20 m: sums and differences of them are then exact.
Kernel::Point_3 snapped(double x, double y, double z) {
    const auto snap = [](double v) { return std::ldexp(std::round(std::ldexp(v, 20)), -20); };
    return {snap(x), snap(y), snap(z)};
}

/// Closes a loop of vertices in zig-zag: a fan would crowd its edges into one point.
void close(Surface& mesh, const std::vector<Vertex>& loop) {
    for (std::size_t i = 0, j = loop.size() - 1; i + 1 < j;) {
        mesh.add_face(loop[i], loop[i + 1], loop[j]);
        ++i;
        if (i + 1 < j) {
            mesh.add_face(loop[i], loop[j - 1], loop[j]);
            --j;
        }
    }
}

/// A solid between loops of as many points each, lowest first or nearest first; loops run
/// anticlockwise for someone who looks back along the way from the first to the last.
Surface stacked(const std::vector<std::vector<Kernel::Point_3>>& loops) {
    Surface mesh;
    std::vector<std::vector<Vertex>> vertices;
    for (const auto& loop : loops) {
        vertices.emplace_back();
        for (const auto& point : loop)
            vertices.back().push_back(mesh.add_vertex(point));
    }
    const std::size_t count = loops.front().size();
    for (std::size_t k = 0; k + 1 < loops.size(); ++k)
        for (std::size_t i = 0; i < count; ++i) {
            const std::size_t next = (i + 1) % count;
            mesh.add_face(vertices[k][i], vertices[k][next], vertices[k + 1][next]);
            mesh.add_face(vertices[k][i], vertices[k + 1][next], vertices[k + 1][i]);
        }
    close(mesh, vertices.back());
    close(mesh, {vertices.front().rbegin(), vertices.front().rend()});
    if (!CGAL::is_closed(mesh) || !pmp::is_outward_oriented(mesh))
        throw std::runtime_error("an operand is not a closed solid");
    return mesh;
}

/// `turn` in radians keeps the vertices of two solids off common spokes.
Surface revolved(const std::function<double(double)>& radius, const std::vector<double>& heights,
                 int around, double turn) {
    std::vector<std::vector<Kernel::Point_3>> loops;
    for (const double z : heights) {
        loops.emplace_back();
        for (int i = 0; i < around; ++i) {
            const double angle = turn + 2 * pi * i / around;
            loops.back().push_back(
                snapped(radius(z) * std::cos(angle), radius(z) * std::sin(angle), z));
        }
    }
    return stacked(loops);
}

std::vector<double> heights(const DomeForm& form, double low, double high) {
    std::vector<double> heights{low};
    for (const double bend : {form.springline, form.course_middle(form.last_ring), form.cap.line_z,
                              form.course_middle(form.courses()), high})
        if (bend > heights.back() + 1e-3 && bend <= high) {
            const double start = heights.back();
            const int steps = static_cast<int>(std::ceil((bend - start) / 0.06));
            for (int i = 1; i <= steps; ++i)
                heights.push_back(start + (bend - start) * i / steps);
        }
    return heights;
}

Surface prism(const DomeForm& form, const OpeningForm& opening, int around) {
    std::vector<Vec2> outline; // to the left of the axis, up; anticlockwise seen from outside
    const auto add_right_half = [&](bool up) {
        for (int i = 1; i < around / 4; ++i) {
            const double share = std::sin(pi / 2 * i / (around / 4));
            const double z = opening.springing + share * (opening.top - opening.springing);
            outline.emplace_back(half_width(*opening.head, z - opening.springing),
                                 up ? z : 2 * opening.springing - z);
        }
    };
    const double a = opening.half_width;
    const bool circle = opening.head_kind == HeadKind::circle;
    if (circle) {
        for (int i = 0; i < around; ++i)
            outline.emplace_back(a * std::cos(2 * pi * i / around),
                                 opening.springing + a * std::sin(2 * pi * i / around));
    } else {
        // Below the foot where the hole is open there: no faces of the two may coincide.
        const double sill = opening.sill <= form.bottom() ? form.bottom() - 0.1 : opening.sill;
        outline = {{-a, sill}, {a, sill}};
        if (opening.springing > sill + 1e-6)
            outline.emplace_back(a, opening.springing);
        if (opening.head) {
            add_right_half(true);
            outline.emplace_back(0, opening.top);
            const std::size_t crest = outline.size() - 1;
            for (std::size_t i = crest; i-- > 3;)
                outline.emplace_back(-outline[i].x(), outline[i].y());
        }
        if (opening.springing > sill + 1e-6)
            outline.emplace_back(-a, opening.springing);
    }
    const double angle = (form.datum.degrees - opening.bearing.degrees) * radians_per_degree;
    const Vec2 along(std::cos(angle), std::sin(angle)), left(-along.y(), along.x());
    std::vector<std::vector<Kernel::Point_3>> loops;
    for (const double x : {0.0, outside_radius(form, form.bottom()) + 0.3}) {
        loops.emplace_back();
        for (const Vec2& at : outline) {
            const Vec2 plan = x * along + at.x() * left;
            loops.back().push_back(snapped(plan.x(), plan.y(), at.y()));
        }
    }
    return stacked(loops);
}

void subtract(Surface& from, Surface& what) {
    Surface result;
    if (!pmp::corefine_and_compute_difference(from, what, result))
        throw std::runtime_error("a Boolean gave no solid");
    from = std::move(result);
    from.collect_garbage();
}

Surface surface_of(const Mesh& mesh) {
    Surface surface;
    for (const Vec3& v : mesh.vertices)
        surface.add_vertex({v.x(), v.y(), v.z()});
    for (const auto& [a, b, c] : mesh.triangles)
        surface.add_face(Vertex(a), Vertex(b), Vertex(c));
    return surface;
}

} // namespace

Mesh wall_by_booleans(const DomeForm& form, const std::vector<OpeningForm>& openings, int around) {
    Surface wall = revolved([&](double z) { return outside_radius(form, z); },
                            heights(form, form.bottom(), form.top()), around, 0.001);
    const double room_top = form.cap_courses > 0 ? form.ceiling() : form.top() + 0.1;
    // The room overshoots the wall's foot, and its top where it is open.
    Surface room = revolved(
        [&](double z) {
            return inside_radius(
                form, std::clamp(z, form.bottom(), std::min(form.ceiling() - 2e-6, form.top())));
        },
        heights(form, form.bottom() - 0.1, room_top), around, 0.0123);
    subtract(wall, room);
    for (const OpeningForm& opening : openings) {
        Surface hole = prism(form, opening, around);
        subtract(wall, hole);
    }
    Mesh mesh;
    for (const Vertex v : wall.vertices())
        mesh.vertices.emplace_back(wall.point(v).x(), wall.point(v).y(), wall.point(v).z());
    for (const auto face : wall.faces()) {
        std::array<std::uint32_t, 3> corners{};
        int k = 0;
        for (const Vertex v : CGAL::vertices_around_face(wall.halfedge(face), wall))
            corners[k++] = static_cast<std::uint32_t>(v);
        mesh.triangles.push_back(corners);
    }
    return mesh;
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
