// Tubes and discs as bodies: volumes by Pappus, ends square to the opening, tolerance kept.
#include "geometry/base/bearing.hpp"
#include "geometry/plan/section.hpp"
#include "geometry/solids/mesh_check.hpp"
#include "geometry/solids/tube_body.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace coilwright;

namespace {

RingGap strip(double half_width) {
    return {"door", 0, half_width, 0, 0};
}

TubeBody quarter() {
    return {2, 0.364381, 0.3, 0.15, 0.2, 0.2 + pi / 2, {}, {}, false};
}

/// Volume of a body cut at openings by quadrature over the radius: the section's height there
/// times the arc between the cuts.
double cut_volume(const TubeBody& body) {
    const double r = body.height / 2, centre = body.inside_radius + body.width / 2;
    const auto shift = [&](const std::optional<RingGap>& gap, double radius) {
        return gap ? std::asin(gap->half_width / radius) - std::asin(gap->half_width / centre) : 0;
    };
    double volume = 0;
    constexpr int count = 20000;
    for (int i = 0; i < count; ++i) {
        const double across = body.width * (i + 0.5) / count, radius = body.inside_radius + across;
        const double into_edge = std::max({0.0, r - across, across - (body.width - r)});
        const double height = 2 * std::sqrt(r * r - into_edge * into_edge);
        const double angle =
            body.end - shift(body.end_gap, radius) - (body.start + shift(body.start_gap, radius));
        volume += height * radius * angle * body.width / count;
    }
    return volume;
}

double off_body(const TubeBody& body, const Vec3& at) {
    const double r = body.height / 2, radius = at.head<2>().norm();
    const double flat =
        std::clamp(radius, body.inside_radius + r, body.inside_radius + body.width - r);
    return std::abs(std::hypot(radius - flat, at.z() - body.bottom - r) - r);
}

} // namespace

TEST_CASE("a stretch of tube has the volume of Pappus and is a sound solid") {
    const TubeBody body = quarter();
    // Area of the stadium times the way of its centroid.
    const double exact = stadium_area(body.width, body.height) * (2 + body.width / 2) * pi / 2;
    for (const double tolerance : {0.01, 0.002, 0.0005}) {
        const Mesh mesh = mesh_tube(body, tolerance);
        const MeshCheck check = check_mesh(mesh, true);
        CHECK(check.solid());
        CHECK(check.components == 1);
        CHECK(check.least_angle_degrees > (tolerance < 0.002 ? 4 : 5)); // in the end faces
        CHECK(volume(mesh) < exact);
        CHECK(volume(mesh) > exact - tolerance * surface_area(mesh));
        double worst = 0;
        for (const auto& [a, b, c] : mesh.triangles) {
            const Vec3 &p = mesh.vertices[a], &q = mesh.vertices[b], &s = mesh.vertices[c];
            CHECK(off_body(body, p) < 1e-12);
            const auto on_end = [&](const Vec3& v) {
                const double angle = std::atan2(v.y(), v.x());
                return std::min(std::abs(angle - body.start), std::abs(angle - body.end)) < 1e-9;
            };
            if (on_end(p) && on_end(q) && on_end(s))
                continue;
            for (int i = 0; i <= 4; ++i)
                for (int j = 0; i + j <= 4; ++j)
                    worst = std::max(worst, off_body(body, (i * p + j * q + (4 - i - j) * s) / 4));
        }
        CHECK(worst <= tolerance);
        CHECK(worst > 0.4 * tolerance);
    }
}

TEST_CASE("the published ring: stadium tube 0.364381 by 0.15 on a centreline of 2.2") {
    // Pappus: 0.049830 m2 times 2 pi 2.2 = 0.688780 m3 (reckoned).
    TubeBody ring{2.2 - 0.364381 / 2, 0.364381, 0, 0.15, 0, 2 * pi, {}, {}, true};
    double before = 0;
    for (const double tolerance : {0.008, 0.002, 0.0005}) {
        const Mesh mesh = mesh_tube(ring, tolerance);
        const MeshCheck check = check_mesh(mesh, true);
        CHECK(check.solid());
        // A ring has as many edges as vertices and faces together: genus 1.
        CHECK(mesh.vertices.size() - mesh.triangles.size() / 2 == 0);
        const double off = 0.688780 - volume(mesh);
        CHECK(off > 0);
        CHECK(off < tolerance * surface_area(mesh));
        if (before > 0)
            CHECK(before / off == Approx(4).epsilon(0.35));
        before = off;
    }
}

TEST_CASE("ends at openings stand square to the opening's axis") {
    TubeBody body = quarter();
    body.start_gap = strip(0.4);
    body.end_gap = strip(0.25);
    const double centre = body.inside_radius + body.width / 2;
    const double start_axis = body.start - std::asin(0.4 / centre);
    const double end_axis = body.end + std::asin(0.25 / centre);
    const Mesh mesh = mesh_tube(body, 0.002);
    CHECK(check_mesh(mesh, true).solid());
    CHECK(volume(mesh) == Approx(cut_volume(body)).epsilon(0.01));
    CHECK(volume(mesh) < cut_volume(body));
    double nearest_start = 9, nearest_end = 9;
    int on_start = 0, on_end = 0;
    for (const Vec3& v : mesh.vertices) {
        const double beside_start = -std::sin(start_axis) * v.x() + std::cos(start_axis) * v.y();
        const double beside_end = std::sin(end_axis) * v.x() - std::cos(end_axis) * v.y();
        nearest_start = std::min(nearest_start, beside_start);
        nearest_end = std::min(nearest_end, beside_end);
        on_start += std::abs(beside_start - 0.4) < 1e-12;
        on_end += std::abs(beside_end - 0.25) < 1e-12;
    }
    CHECK(nearest_start == Approx(0.4).epsilon(1e-12));
    CHECK(nearest_end == Approx(0.25).epsilon(1e-12));
    CHECK(on_start == on_end);
    CHECK(on_start > 10);
}

TEST_CASE("an end at another dome's wall follows its face") {
    // The wall is round another pole, 3 m off, of radius 1.4; the tube of centreline 2.19 stops at
    // it.
    TubeBody body = quarter();
    const RingGap gap{"bath", 0, 0, 3, 1.4};
    const double centre = body.inside_radius + body.width / 2;
    // Law of cosines: where the centreline's circle meets the other one.
    const double half = std::acos((centre * centre + 9 - 1.4 * 1.4) / (2 * centre * 3));
    body.start_gap = gap;
    const double axis = body.start - half;
    const Vec2 pole(3 * std::cos(axis), 3 * std::sin(axis));
    const Mesh mesh = mesh_tube(body, 0.002);
    CHECK(check_mesh(mesh, true).solid());
    double nearest = 9;
    int on_face = 0;
    for (const Vec3& v : mesh.vertices) {
        const double off = (v.head<2>() - pole).norm() - 1.4;
        nearest = std::min(nearest, off);
        on_face += std::abs(off) < 1e-9;
    }
    CHECK(nearest == Approx(0).margin(1e-9));
    CHECK(on_face > 10);
}

TEST_CASE("a straight tube is a stadium times its length") {
    StraightBody body{2, 0.4, 0.3, 0.15, {}, {}};
    const double exact = stadium_area(body.width, body.height) * body.length;
    CHECK(exact == Approx(0.1103).epsilon(1e-3));
    for (const double tolerance : {0.008, 0.002, 0.0005}) {
        const Mesh mesh = mesh_straight(body, tolerance);
        const MeshCheck check = check_mesh(mesh, true);
        CHECK(check.solid());
        CHECK(check.least_angle_degrees > (tolerance < 0.002 ? 4 : 5));
        CHECK(volume(mesh) < exact);
        CHECK(volume(mesh) > exact - tolerance * surface_area(mesh));
        const Bounds box = bounds(mesh);
        CHECK((box.low - Vec3(0, -0.2, 0.3)).norm() < 1e-12);
        CHECK((box.high - Vec3(2, 0.2, 0.45)).norm() < 1e-12);
    }
}

TEST_CASE("a straight tube between two round walls fills the way between their faces") {
    // Walls of radius 1.5 and 1.2, poles on the centreline's line and 0.3 beside it.
    StraightBody body;
    body.width = 0.4;
    body.height = 0.15;
    body.length = 1.1;
    body.start_wall = Disc{{-std::sqrt(1.5 * 1.5 - 0.09), 0.3}, 1.5};
    body.end_wall = Disc{{1.1 + 1.2, 0}, 1.2};
    const Mesh mesh = mesh_straight(body, 0.001);
    CHECK(check_mesh(mesh, true).solid());
    double nearest_start = 9, nearest_end = 9;
    for (const Vec3& v : mesh.vertices) {
        nearest_start = std::min(nearest_start, (v.head<2>() - body.start_wall->centre).norm());
        nearest_end = std::min(nearest_end, (v.head<2>() - body.end_wall->centre).norm());
    }
    CHECK(nearest_start == Approx(1.5).epsilon(1e-12));
    CHECK(nearest_end == Approx(1.2).epsilon(1e-12));
    // By quadrature across the tube: the section's height times the way between the walls.
    double sum = 0;
    constexpr int count = 20000;
    for (int i = 0; i < count; ++i) {
        const double y = -0.2 + 0.4 * (i + 0.5) / count, r = 0.075;
        const double into_edge = std::max(0.0, std::abs(y) - (0.2 - r));
        const double from = body.start_wall->centre.x() + std::sqrt(2.25 - (y - 0.3) * (y - 0.3));
        const double to = body.end_wall->centre.x() - std::sqrt(1.44 - y * y);
        sum += 2 * std::sqrt(r * r - into_edge * into_edge) * (to - from) * 0.4 / count;
    }
    CHECK(std::abs(volume(mesh) - sum) < 0.001 * surface_area(mesh));
}

TEST_CASE("a wedge between two gaps ends in a blunt edge where its ends would cross") {
    // Strips of half-width 0.5 and 0.4 whose axes lie 47 degrees apart: on the inside face they
    // meet.
    TubeBody body;
    body.inside_radius = 1.1;
    body.width = 0.381;
    body.height = 0.127;
    const double centre = body.inside_radius + body.width / 2;
    body.start_gap = strip(0.5);
    body.end_gap = strip(0.4);
    body.start = std::asin(0.5 / centre);
    body.end = 47 * radians_per_degree - std::asin(0.4 / centre);
    REQUIRE(body.end > body.start);
    REQUIRE(std::asin(0.5 / 1.1) + std::asin(0.4 / 1.1) > 47 * radians_per_degree);
    const Mesh mesh = mesh_tube(body, 0.002);
    CHECK(check_mesh(mesh, true).solid());
    // cut_volume counts what lies beyond the crossing as negative: by quadrature of what is there.
    double sum = 0;
    constexpr int count = 20000;
    for (int i = 0; i < count; ++i) {
        const double across = body.width * (i + 0.5) / count, r = body.inside_radius + across;
        const double into = std::max({0.0, 0.0635 - across, across - (body.width - 0.0635)});
        const double angle = 47 * radians_per_degree - std::asin(0.5 / r) - std::asin(0.4 / r);
        if (angle > 0)
            sum += 2 * std::sqrt(0.0635 * 0.0635 - into * into) * r * angle * body.width / count;
    }
    CHECK(std::abs(volume(mesh) - sum) < 0.002 * surface_area(mesh));
}

TEST_CASE("a cut that runs along the tube keeps the tolerance") {
    TubeBody body{1.37, 0.381, 0, 0.127, 0, pi, strip(1.34), strip(1.34), false};
    for (const double tolerance : {0.005, 0.002}) {
        const Mesh mesh = mesh_tube(body, tolerance);
        CHECK(check_mesh(mesh, true).solid());
        CHECK(std::abs(volume(mesh) - cut_volume(body)) < tolerance * surface_area(mesh));
    }
}

TEST_CASE("a short tube and the tightest ring are sound") {
    TubeBody stub = quarter();
    stub.end = stub.start + 0.02;
    CHECK(check_mesh(mesh_tube(stub, 0.002), true).solid());
    TubeBody tight{0.19, 0.381, 3, 0.127, 0, 2 * pi, {}, {}, true};
    for (const double tolerance : {0.05, 0.002}) {
        const Mesh mesh = mesh_tube(tight, tolerance);
        CHECK(check_mesh(mesh, true).solid());
        CHECK(volume(mesh) < stadium_area(0.381, 0.127) * 2 * pi * (0.19 + 0.381 / 2));
    }
}

TEST_CASE("the disc of a cap course has the volume of its closed form") {
    // Two flats and half a torus: pi (R - r)^2 t, and Pappus on half a disc, centroid 4 r / 3 pi.
    CHECK(disc_volume(0.5, 0.1) ==
          Approx(pi * 0.45 * 0.45 * 0.1 +
                 2 * pi * (0.45 + 4 * 0.05 / (3 * pi)) * pi * 0.05 * 0.05 / 2));
    double before = 0;
    for (const double tolerance : {0.008, 0.002, 0.0005}) {
        const Mesh mesh = mesh_disc(0.5, 2.8, 0.1, tolerance);
        const MeshCheck check = check_mesh(mesh, true);
        CHECK(check.solid());
        CHECK(check.least_angle_degrees > 5);
        const double off = disc_volume(0.5, 0.1) - volume(mesh);
        CHECK(off > 0);
        CHECK(off < tolerance * surface_area(mesh));
        if (before > 0)
            CHECK(before / off == Approx(4).epsilon(0.35));
        before = off;
    }
}
