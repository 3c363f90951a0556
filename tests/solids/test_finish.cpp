// Plaster, floor and ground about a shell: distances, areas and what stays open.
#include "geometry/exact/exact_region.hpp"
#include "geometry/plan/headroom.hpp"
#include "geometry/plan/lay.hpp"
#include "geometry/plan/room.hpp"
#include "geometry/solids/mesh_check.hpp"
#include "geometry/solids/mesh_clip.hpp"
#include "geometry/solids/plaster.hpp"
#include "geometry/solids/site_surfaces.hpp"
#include "geometry/solids/solid_model.hpp"
#include "tests/solids/sample_domes.hpp"
#include "tests/solids/wall_truth.hpp"

#include <catch2/catch.hpp>

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

using namespace coilwright;

namespace {

constexpr double tolerance = 0.002;

const SolidPart* find_part(const SolidModel& model, const std::string& slug) {
    const auto found = std::find_if(model.parts.begin(), model.parts.end(),
                                    [&](const SolidPart& part) { return part.slug == slug; });
    return found == model.parts.end() ? nullptr : &*found;
}

/// Whether a ray from a point along a unit vector meets the mesh within a distance (Moeller and
/// Trumbore 1997).
bool meets(const Mesh& mesh, const Vec3& from, const Vec3& way, double reach) {
    for (const auto& [a, b, c] : mesh.triangles) {
        const Vec3 u = mesh.vertices[b] - mesh.vertices[a], v = mesh.vertices[c] - mesh.vertices[a];
        const Vec3 p = way.cross(v);
        const double det = u.dot(p);
        if (std::abs(det) < 1e-14)
            continue;
        const Vec3 t = from - mesh.vertices[a];
        const double x = t.dot(p) / det, y = way.dot(t.cross(u)) / det, s = v.dot(t.cross(u)) / det;
        if (x >= 0 && y >= 0 && x + y <= 1 && s > 0 && s < reach)
            return true;
    }
    return false;
}

PlasterFaces faces_of(const BuildingForm& building, const PlasterCoats& coats) {
    const BuildingShell shell = mesh_building_shell(building, tolerance);
    REQUIRE(!shell.fault);
    return plaster_faces(shell, building, coats);
}

} // namespace

TEST_CASE("plaster lies its thickness from the true faces of a dome") {
    for (const auto& [kind, rise] : {std::pair{ProfileKind::pointed, 2.7432},
                                     {ProfileKind::round, 1.3716},
                                     {ProfileKind::catenary, 2.2}}) {
        SampleDome sample;
        sample.profile = kind;
        sample.rise = rise;
        const BuildingForm building = building_of(sample);
        const WallTruth truth(building.domes.front(), {});
        const PlasterCoats coats{0.0381, 0.0508, -0.1524};
        const PlasterFaces faces = faces_of(building, coats);
        CAPTURE(word(kind));
        CHECK(faces.reveals.triangles.empty());
        REQUIRE(faces.inside.triangles.size() > 500);
        REQUIRE(faces.outside.triangles.size() > 500);
        for (const auto& [mesh, thickness] :
             {std::pair{&faces.inside, coats.inside}, {&faces.outside, coats.outside}}) {
            // In hollow edges each coat runs on behind the other's face: under the cap, and on its
            // stepped outside.
            const DomeForm& dome = building.domes.front();
            double least = 1, most = 0;
            std::size_t judged = 0;
            for (const Vec3& at : mesh->vertices) {
                const double hollow =
                    thickness == coats.inside ? dome.ceiling() : dome.course_middle(dome.last_ring);
                if (at.z() > hollow - 1.5 * thickness &&
                    (mesh == &faces.outside || at.z() < hollow + thickness))
                    continue;
                ++judged;
                const double away = truth.off_dome(at, 0.3);
                least = std::min(least, away);
                most = std::max(most, away);
            }
            CHECK(2 * judged > mesh->vertices.size());
            CHECK(least > thickness - tolerance);
            // Along an edge that stands out both coats' faces meet, farther from either's corner.
            CHECK(most < thickness * std::sqrt(2.0) + tolerance);
        }
        CHECK(bounds(faces.inside).low.z() == Approx(0).margin(1e-12));
        CHECK(bounds(faces.outside).low.z() == Approx(coats.ground));
        CHECK(bounds(faces.outside).high.z() ==
              Approx(building.domes.front().top() + coats.outside).margin(tolerance));
    }
}

TEST_CASE("inside plaster is the clear room's own face, in place and in area") {
    SampleDome sample;
    sample.skylight = 0.9;
    const BuildingForm building = building_of(sample);
    const DomeForm& dome = building.domes.front();
    const double p = 0.0381;
    const PlasterFaces faces = faces_of(building, {p, 0, -0.1524});
    CHECK(faces.outside.triangles.empty());
    // The closed form of the offset profile (plan/headroom.hpp) knows nothing of the mesh.
    const double last = dome.course_middle(dome.last_ring);
    for (const Vec3& at : faces.inside.vertices)
        if (at.z() > 1e-9 && at.z() < last - 0.1) // those on the floor lie on chords
            CHECK(at.head<2>().norm() == Approx(clear_radius_at(dome, p, at.z())).margin(2e-4));
    // Pappus: chords of the clear room's section, up to a height below the last ring.
    const double top = last - 0.2;
    double wanted = 0;
    constexpr int steps = 2000;
    for (int k = 0; k < steps; ++k) {
        const double z0 = top * k / steps, z1 = top * (k + 1) / steps;
        const double r0 = clear_radius_at(dome, p, z0), r1 = clear_radius_at(dome, p, z1);
        wanted += pi * (r0 + r1) * std::hypot(r1 - r0, z1 - z0);
    }
    const double area = surface_area(faces.inside) - surface_area(clipped_below(faces.inside, top));
    CHECK(area == Approx(wanted).epsilon(2e-3));
}

TEST_CASE("plaster turns into the reveals and leaves the openings open") {
    SampleDome sample;
    sample.openings = one_of_each_head();
    const BuildingForm building = building_of(sample);
    const PlasterCoats coats{0.0381, 0.0508, -0.1524};
    const PlasterFaces faces = faces_of(building, coats);
    REQUIRE(!faces.reveals.triangles.empty());
    const WallTruth truth(building.domes.front(), building.openings);
    for (std::size_t k = 0; k < building.openings.size(); ++k) {
        const OpeningForm& opening = building.openings[k];
        CAPTURE(opening.id);
        const Vec3 way(opening.axis.x(), opening.axis.y(), 0);
        const Vec3 left(-opening.axis.y(), opening.axis.x(), 0);
        const double z = opening.head_kind == HeadKind::circle
                             ? opening.springing
                             : (opening.sill + opening.springing) / 2 + 0.01;
        const double half = half_width(opening, z);
        for (const Mesh* mesh : {&faces.inside, &faces.outside, &faces.reveals}) {
            // Through the middle, and a hair inside the plastered jambs.
            for (const double side : {-1.0, 0.0, 1.0})
                CHECK(!meets(*mesh, Vec3(0, 0, z) + side * (half - coats.inside - 0.003) * left,
                             way, 10));
        }
        // A hair within the plaster one meets it.
        bool met = false;
        for (const Mesh* mesh : {&faces.inside, &faces.outside, &faces.reveals})
            met =
                met || meets(*mesh, Vec3(0, 0, z) + (half - coats.inside + 0.004) * left, way, 10);
        CHECK(met);
    }
    // From a jamb to the other at mid-height: the clear width between two reveals.
    const OpeningForm& door = building.openings.front();
    const Vec3 left(-door.axis.y(), door.axis.x(), 0);
    const Vec3 in_wall(1.55 * door.axis.x(), 1.55 * door.axis.y(), 0.4);
    CHECK(meets(faces.reveals, in_wall, left, door.half_width - coats.inside + 0.001));
    CHECK(!meets(faces.reveals, in_wall, left, door.half_width - coats.inside - 0.001));
    // No threshold on the floor.
    CHECK(!meets(faces.reveals, {in_wall.x(), in_wall.y(), 0.2}, {0, 0, -1}, 0.4));
    // A coat without thickness has no face; the other ends at the bare edge.
    const PlasterFaces bare = faces_of(building, {0, 0.05, 0});
    CHECK(bare.inside.triangles.empty());
    CHECK(bare.reveals.triangles.empty());
    CHECK(bounds(bare.outside).low.z() == Approx(0).margin(1e-12));
}

TEST_CASE("floor and ground are the exact regions") {
    SampleDome sample;
    sample.openings = {sample_opening("door", HeadKind::square, 0, 0.8, 0, 1.8)};
    Design design = design_of(sample);
    design.finish.inside_plaster = 0.03;
    design.finish.outside_plaster = 0.05;
    design.ground.level = -0.2;
    const Schedule schedule = lay(design);
    const SolidResult result = finished_shell_model(schedule, design);
    REQUIRE(result.faults.empty());
    const DomeForm& dome = schedule.building.domes.front();
    const double inner = inside_radius(dome, 0), outer = outside_radius(dome, -0.2);
    const double far = outer + ground_margin;
    const SolidPart* floor = find_part(result.model, "FLOOR");
    const SolidPart* ground = find_part(result.model, "GROUND");
    REQUIRE((floor && ground));
    // Chords lie within 2 mm of their arcs.
    CHECK(surface_area(floor->mesh) == Approx(pi * inner * inner).margin(2 * pi * inner * 0.002));
    CHECK(floor->volume == 0);
    CHECK(surface_area(ground->mesh) ==
          Approx(pi * (far * far - outer * outer)).margin(2 * pi * (far + outer) * 0.002));
    CHECK(bounds(floor->mesh).low.z() == 0);
    CHECK(bounds(ground->mesh).high.z() == -0.2);
    CHECK(!meets(ground->mesh, {dome.at.x(), dome.at.y(), 5}, {0, 0, -1}, 10));
    CHECK(meets(floor->mesh, {dome.at.x(), dome.at.y(), 5}, {0, 0, -1}, 10));
    for (const SolidPart* part : {floor, ground})
        for (const auto& [a, b, c] : part->mesh.triangles) {
            const Vec3 normal = (part->mesh.vertices[b] - part->mesh.vertices[a])
                                    .cross(part->mesh.vertices[c] - part->mesh.vertices[a]);
            REQUIRE(normal.z() > 0);
        }

    design.finish.floor_build_up = 0.1;
    const SolidResult with_slab = finished_shell_model(schedule, design);
    const SolidPart* slab = find_part(with_slab.model, "FLOOR");
    REQUIRE(slab);
    CHECK(check_mesh(slab->mesh, true).solid());
    CHECK(slab->volume == Approx(surface_area(floor->mesh) * 0.1));
    CHECK(bounds(slab->mesh).low.z() == Approx(-0.1));
    CHECK(bounds(slab->mesh).high.z() == 0);
}

TEST_CASE("a finished shell holds the bare one, and what printers leave out beside it") {
    SampleDome sample;
    sample.openings = one_of_each_head();
    Design design = design_of(sample);
    design.finish.inside_plaster = 0.03;
    design.finish.outside_plaster = 0.05;
    const Schedule schedule = lay(design);
    const SolidModel bare = shell_model(schedule).model;
    const SolidModel finished = finished_shell_model(schedule, design).model;
    std::size_t printed = 0;
    for (const SolidPart& part : finished.parts) {
        CAPTURE(part.slug);
        if (part.printed) {
            REQUIRE(printed < bare.parts.size());
            CHECK(part.slug == bare.parts[printed].slug);
            CHECK(part.mesh.vertices == bare.parts[printed].mesh.vertices);
            CHECK(part.mesh.triangles == bare.parts[printed].mesh.triangles);
            ++printed;
        } else {
            CHECK((part.group == "FINISH" || part.group == "FRAMES"));
        }
        if (part.volume > 0)
            CHECK(check_mesh(part.mesh, true).solid());
    }
    CHECK(printed == bare.parts.size());
    for (const char* const name : {"VAULT_PLASTER_IN", "VAULT_PLASTER_OUT", "VAULT_REVEALS",
                                   "FLOOR", "GROUND", "DOOR_FRAME"})
        CHECK(find_part(finished, name));
    // Plaster of no thickness is no part; floor and ground are always there.
    design.finish = {};
    const SolidModel unplastered = finished_shell_model(schedule, design).model;
    CHECK(!find_part(unplastered, "VAULT_PLASTER_IN"));
    CHECK(!find_part(unplastered, "VAULT_REVEALS"));
    CHECK(find_part(unplastered, "FLOOR"));
}
