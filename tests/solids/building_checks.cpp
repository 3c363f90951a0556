#include "tests/solids/building_checks.hpp"

#include "geometry/exact/exact_region.hpp"
#include "geometry/solids/mesh_check.hpp"
#include "geometry/solids/wall_slabs.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

namespace coilwright::testing {

namespace {

Region wall_at(const BuildingForm& building, double z) {
    const Region region = region_of(wall_expression(building, z), exact_region);
    REQUIRE(region.decided);
    return region;
}

} // namespace

double section_bound(const BuildingForm& building, double tolerance, double z) {
    constexpr double h = 0.01; // metres: facets reach a little up and down
    double steepest = 0;
    for (const DomeForm& dome : building.domes)
        for (const double at : {z - h, z, z + h})
            for (const auto& radius : {outside_radius, inside_radius})
                if (const double r = radius(dome, at), over = radius(dome, at + h);
                    r > 0 && over > 0)
                    steepest = std::max(steepest, (r - over) / h);
    return std::max(2.0, std::hypot(1, steepest)) * tolerance;
}

double slice_area(const Mesh& mesh, double z) {
    double twice = 0;
    for (const auto& corners : mesh.triangles) {
        Vec2 up, down; // where the section enters and leaves the triangle
        int crossed = 0;
        for (int i = 0; i < 3; ++i) {
            const Vec3& a = mesh.vertices[corners[i]];
            const Vec3& b = mesh.vertices[corners[(i + 1) % 3]];
            if ((a.z() > z) == (b.z() > z))
                continue;
            const Vec3 at = a + (z - a.z()) / (b.z() - a.z()) * (b - a);
            (a.z() > z ? down : up) = at.head<2>();
            ++crossed;
        }
        if (crossed == 2)
            twice += down.x() * up.y() - down.y() * up.x();
    }
    return twice / 2;
}

// Between events the area is smooth but for roots at their ends, which the sine stretches out.
double volume_by_areas(const BuildingForm& building) {
    const WallFaces faces(building);
    std::vector<double> joints;
    for (const WallSlab& slab : find_slabs(faces).slabs)
        joints.insert(joints.end(), {slab.low, slab.high});
    for (int face = 0; face < faces.size(); ++face)
        for (const double z : faces[face].breaks)
            if (z > faces.bottom() && z < faces.top())
                joints.push_back(z);
    std::sort(joints.begin(), joints.end());
    double volume = 0;
    for (std::size_t i = 1; i < joints.size(); ++i) {
        const double half = (joints[i] - joints[i - 1]) / 2;
        if (half < 1e-6)
            continue;
        // Gauss-Legendre over the angle.
        static const double place[] = {0.1834346424956498, 0.5255324099163290, 0.7966664774136267,
                                       0.9602898564975363};
        static const double weight[] = {0.3626837833783620, 0.3137066458778873, 0.2223810344533745,
                                        0.1012285362903763};
        for (int k = 0; k < 8; ++k) {
            const double angle = pi / 2 * (k % 2 == 0 ? place[k / 2] : -place[k / 2]);
            const double z = joints[i - 1] + half * (1 + std::sin(angle));
            volume += weight[k / 2] * pi / 2 * half * std::cos(angle) * wall_at(building, z).area;
        }
    }
    return volume;
}

int genus(const Mesh& mesh) {
    // V - E + F = 2 - 2 g, and every face has three half edges.
    const long long euler = static_cast<long long>(mesh.vertices.size()) -
                            static_cast<long long>(mesh.triangles.size()) / 2;
    return static_cast<int>((2 - euler) / 2);
}

void check_solid(const Mesh& mesh, double least_angle) {
    const MeshCheck check = check_mesh(mesh, true);
    CHECK(check.closed);
    CHECK(check.oriented);
    CHECK(check.manifold);
    CHECK_FALSE(check.self_intersecting);
    CHECK(check.degenerate_faces == 0);
    CHECK(check.solid());
    CHECK(check.components == 1);
    CHECK(check.least_angle_degrees > least_angle);
}

BuildingShell checked_shell(const BuildingForm& building, double tolerance, double least_angle) {
    BuildingShell shell = mesh_building_shell(building, tolerance);
    for (int finer = 1; finer < 3 && shell.fault && shell.fault->kind == ShapeFault::crossing;
         ++finer)
        shell = mesh_building_shell(building, tolerance / std::pow(4, finer));
    if (shell.fault)
        FAIL(fault_text(shell.fault->kind, shell.fault->first, shell.fault->second));
    check_solid(shell.mesh, least_angle);
    CHECK(std::abs(volume(shell.mesh) - volume_by_areas(building)) <
          0.5 * tolerance * surface_area(shell.mesh));
    const double top = WallFaces(building).top();
    for (int n = 1; n < most_courses; ++n) {
        const double z = building.domes.front().course_middle(n) + height_tie;
        if (z > top)
            break;
        const Region region = wall_at(building, z);
        CAPTURE(n, z);
        CHECK(std::abs(slice_area(shell.mesh, z) - region.area) <
              section_bound(building, tolerance, z) * perimeter(region));
    }
    return shell;
}

} // namespace coilwright::testing
