// Areas of faces: against closed forms (Pappus), and against the solids' meshes.
#include "geometry/design/design.hpp"
#include "geometry/plan/check_layout.hpp"
#include "geometry/plan/lay.hpp"
#include "geometry/plan/section.hpp"
#include "geometry/solids/solid_model.hpp"
#include "geometry/takeoff/surfaces.hpp"
#include "tests/support/designs.hpp"

#include <Eigen/Geometry>
#include <catch2/catch.hpp>

#include <cmath>
#include <functional>
#include <map>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

double area_of(const std::vector<FaceArea>& faces, const std::string& element, FaceKind face) {
    double sum = 0;
    for (const FaceArea& one : faces)
        if (one.element == element && one.face == face)
            sum += one.area;
    return sum;
}

Design plain_store() {
    Design design = store_design();
    design.openings.clear();
    design.domes.front().datum.clear();
    return design;
}

using Triangle = std::array<Eigen::Vector3d, 3>;

/// Area of the part of a triangle above a height.
double area_above(const Triangle& triangle, double z) {
    std::vector<Eigen::Vector3d> kept;
    for (std::size_t i = 0; i < 3; ++i) {
        const Eigen::Vector3d &a = triangle[i], &b = triangle[(i + 1) % 3];
        if (a.z() >= z)
            kept.push_back(a);
        if ((a.z() >= z) != (b.z() >= z))
            kept.push_back(a + (b - a) * ((z - a.z()) / (b.z() - a.z())));
    }
    Eigen::Vector3d sum = Eigen::Vector3d::Zero();
    for (std::size_t i = 1; i + 1 < kept.size(); ++i)
        sum += (kept[i] - kept[0]).cross(kept[i + 1] - kept[0]);
    return sum.norm() / 2;
}

/// Sum over the triangles of the shell whose middle is told to belong.
double
mesh_area(const SolidModel& model, double above,
          const std::function<bool(const Eigen::Vector3d&, const Eigen::Vector3d&)>& belongs) {
    double sum = 0;
    for (const SolidPart& part : model.parts)
        for (const auto& corners : part.mesh.triangles) {
            Triangle triangle;
            for (std::size_t i = 0; i < 3; ++i)
                triangle[i] = part.mesh.vertices[static_cast<std::size_t>(corners[i])];
            const Eigen::Vector3d middle = (triangle[0] + triangle[1] + triangle[2]) / 3;
            const Eigen::Vector3d normal =
                (triangle[1] - triangle[0]).cross(triangle[2] - triangle[0]).normalized();
            if (belongs(middle, normal))
                sum += area_above(triangle, above);
        }
    return sum;
}

double all_faces(const Schedule& schedule) {
    double sum = 0;
    for (const FaceArea& face : face_areas(schedule.building, 0))
        sum += face.area;
    return sum;
}

/// All of the shell but what stands in the ground and thresholds: what its plaster covers.
double plastered(const SolidModel& model) {
    return mesh_area(model, 0, [](const Eigen::Vector3d& p, const Eigen::Vector3d& n) {
        return std::abs(n.z()) < 0.9999 || p.z() > 0.01;
    });
}

} // namespace

TEST_CASE("a dome's inside is its surface of revolution") {
    // Pappus: the profile's own surface (tests/plan holds it to Pappus) and the stem's cylinder;
    // over the last ring the room ends in the flat underside of the cap.
    const Design design = plain_store();
    REQUIRE(check_layout(design).empty());
    const Schedule schedule = lay(design);
    const DomeForm& dome = schedule.building.domes.front();
    const auto faces = face_areas(schedule.building, -0.1524);
    const double r = dome.profile.half_span;
    const double held = height_at(dome.profile, dome.last_ring_radius / 2);
    const double end = std::min(held, dome.ceiling() - dome.springline);
    const double least = half_width(dome.profile, end);
    const double exact = 2 * pi * r * dome.springline + surface_between(dome.profile, 0, end) +
                         2 * pi * least * (dome.ceiling() - dome.springline - end) +
                         pi * least * least;
    CHECK(area_of(faces, "store", FaceKind::inside) == Approx(exact).epsilon(1e-6));
}

TEST_CASE("a dome's outside is the profile's surface moved out by the wall") {
    // Pappus: a meridian of length s whose points lie w farther out sweeps 2 pi w s more. The
    // skylight's dome ends in a plumb curb.
    Design design = plain_store();
    design.domes.front().top.kind = TopKind::skylight;
    design.domes.front().top.diameter = 0.9;
    REQUIRE(check_layout(design).empty());
    const Schedule schedule = lay(design);
    const DomeForm& dome = schedule.building.domes.front();
    const double ground = -0.1524, w = dome.width;
    const double end = dome.course_middle(dome.last_ring) - dome.springline;
    const double curb = dome.top() - dome.course_middle(dome.last_ring);
    const double exact = 2 * pi * (dome.profile.half_span + w) * (dome.springline - ground) +
                         surface_between(dome.profile, 0, end) +
                         2 * pi * w * length_between(dome.profile, 0, end) +
                         2 * pi * (dome.last_ring_radius + w) * curb +
                         pi * (std::pow(dome.last_ring_radius + w, 2) -
                               std::pow(dome.last_ring_radius, 2)); // the curb's top
    const auto faces = face_areas(schedule.building, ground);
    CHECK(area_of(faces, "store", FaceKind::outside) == Approx(exact).epsilon(1e-6));
}

TEST_CASE("a door's hole in a plumb stem") {
    // Below the springline the wall is a cylinder: a strip of half-width a takes 2 r asin(a / r) of
    // each metre of height, its two jambs are sqrt(R^2 - a^2) - sqrt(r^2 - a^2) deep.
    Design design = plain_store();
    design.domes.front().springline = 1.27;
    design.openings.push_back(opening("hatch", 0, 0.6, 0, 0.762, HeadKind::square));
    REQUIRE(check_layout(design).empty());
    const Schedule with = lay(design);
    design.openings.clear();
    const Schedule without = lay(design);
    const auto faces = face_areas(with.building, 0), plain = face_areas(without.building, 0);
    const DomeForm& dome = with.building.domes.front();
    const double r = dome.profile.half_span, R = r + dome.width, a = 0.3, h = 0.762;
    const auto difference = [&](FaceKind face) {
        return area_of(plain, "store", face) - area_of(faces, "store", face);
    };
    CHECK(difference(FaceKind::inside) == Approx(2 * r * std::asin(a / r) * h).epsilon(1e-7));
    CHECK(difference(FaceKind::outside) == Approx(2 * R * std::asin(a / R) * h).epsilon(1e-7));
    const double depth = std::sqrt(R * R - a * a) - std::sqrt(r * r - a * a);
    CHECK(area_of(faces, "hatch", FaceKind::reveal) ==
          Approx(2 * depth * h + strip_area_in_ring(r, R, a)).epsilon(1e-7));
}

TEST_CASE("faces of a store with its openings are those of its mesh") {
    Design design = store_design();
    design.openings.push_back(opening("eye", 40, 0.6, 0.889, 0.6, HeadKind::circle));
    design.openings.push_back(opening("flat", 270, 0.5, 0.889, 0.635, HeadKind::square));
    REQUIRE(check_layout(design).empty());
    const Schedule schedule = lay(design);
    const SolidResult shell = shell_model(schedule, 0.001);
    REQUIRE(shell.faults.empty());
    const DomeForm& dome = schedule.building.domes.front();
    const double ground = -0.1524;
    const auto faces = face_areas(schedule.building, ground);
    const auto lies_on = [&](const Eigen::Vector3d& p, bool inside) {
        const double z = std::min(std::max(p.z(), dome.bottom() + 1e-6), dome.top() - 1e-6);
        const double r = inside ? inside_radius(dome, z) : outside_radius(dome, z);
        return std::abs(std::hypot(p.x(), p.y()) - r) < 0.004;
    };
    const auto flat_at = [](const Eigen::Vector3d& p, const Eigen::Vector3d& n, double z) {
        return std::abs(n.z()) > 0.999 && std::abs(p.z() - z) < 1e-6;
    };
    const double inside =
        mesh_area(shell.model, 0, [&](const Eigen::Vector3d& p, const Eigen::Vector3d& n) {
            return flat_at(p, n, dome.ceiling()) || (lies_on(p, true) && std::abs(n.z()) < 0.999);
        });
    const double outside =
        mesh_area(shell.model, ground, [&](const Eigen::Vector3d& p, const Eigen::Vector3d& n) {
            return flat_at(p, n, dome.top()) || (lies_on(p, false) && std::abs(n.z()) < 0.999);
        });
    CHECK(area_of(faces, "store", FaceKind::inside) == Approx(inside).epsilon(0.003));
    CHECK(area_of(faces, "store", FaceKind::outside) == Approx(outside).epsilon(0.003));
    // All that is neither, nor the bottom, is reveal; a door's threshold is floor.
    double reveals = 0;
    for (const FaceArea& face : faces)
        reveals += face.face == FaceKind::reveal ? face.area : 0;
    const double rest =
        mesh_area(shell.model, 0.001, [&](const Eigen::Vector3d& p, const Eigen::Vector3d& n) {
            const bool flat = std::abs(n.z()) > 0.999;
            return !flat_at(p, n, dome.ceiling()) && !flat_at(p, n, dome.top()) &&
                   (flat || (!lies_on(p, true) && !lies_on(p, false)));
        });
    CHECK(reveals == Approx(rest).epsilon(0.02));
}

TEST_CASE("all faces of a store with a tunnel and piers are those of its mesh") {
    const Design design = store_with_porch();
    REQUIRE(check_layout(design).empty());
    const Schedule schedule = lay(design);
    const SolidResult shell = shell_model(schedule, 0.001);
    REQUIRE(shell.faults.empty());
    CHECK(all_faces(schedule) == Approx(plastered(shell.model)).epsilon(0.005));
    // A pier of 30 in: its top, 15 in before the wall and more where that curves away and leans.
    const DomeForm& dome = schedule.building.domes.front();
    const ButtressForm& pier = schedule.building.buttresses.front();
    double top = 0;
    for (int i = 0; i < 1000; ++i) {
        const double y = pier.half_width * (2 * i + 1 - 1000) / 1000,
                     r = outside_radius(dome, pier.top);
        top += (outer_face(pier, pier.top) - std::sqrt(r * r - y * y)) * 2 * pier.half_width / 1000;
    }
    const double level =
        mesh_area(shell.model, 0, [&](const Eigen::Vector3d& p, const Eigen::Vector3d& n) {
            return n.z() > 0.9999 && std::abs(p.z() - pier.top) < 1e-6;
        });
    // Of both piers; chords of the ring's circle lie up to the model's 1 mm within it.
    CHECK(level == Approx(2 * top).margin(4 * pier.half_width * 0.001));
}

TEST_CASE("ledges of a second wythe and of wider lower courses are faces") {
    for (const bool second : {true, false}) {
        Design design = store_design();
        Dome& dome = design.domes.front();
        if (second) {
            dome.second_wythe = 20 * 0.0254;
        } else {
            TubeType wide = design.tubes.front();
            wide.id = "wide";
            wide.lay_flat = 0.5588;
            wide.tamped_width = 0.508;
            design.tubes.push_back(wide);
            dome.lower_tube = "wide";
            dome.lower_height = 20 * 0.0254;
        }
        REQUIRE(check_layout(design).empty());
        const Schedule schedule = lay(design);
        const SolidResult shell = shell_model(schedule, 0.001);
        REQUIRE(shell.faults.empty());
        CHECK(all_faces(schedule) == Approx(plastered(shell.model)).epsilon(0.005));
        // Without openings the ledge is a ring.
        const double ledge = second ? 0.381 : 0.508 - 0.381;
        const double inner = 54 * 0.0254 + 0.381, outer = inner + ledge;
        design.openings.clear();
        dome.datum.clear();
        Design plain = design;
        plain.domes.front().second_wythe = 0;
        plain.domes.front().lower_tube.clear();
        plain.domes.front().lower_height = 0;
        const double stem = 2 * pi * ledge * 20 * 0.0254; // its outside is longer by the ledge
        CHECK(all_faces(lay(design)) - all_faces(lay(plain)) ==
              Approx(stem + pi * (outer * outer - inner * inner)).epsilon(1e-6));
    }
}

TEST_CASE("the hole less its frame") {
    const OpeningForm square = make_opening_form(opening("w", 0, 1, 0, 1, HeadKind::square));
    CHECK(inset_area(square, 0.1, true) == Approx(0.64));
    CHECK(inset_area(square, 0.1, false) == Approx(0.72));
    CHECK(hole_edge(square) == Approx(3));
    // A circle of radius 0.5 less 0.1 all round is one of 0.4.
    const OpeningForm circle = make_opening_form(opening("c", 0, 1, 0, 1, HeadKind::circle));
    CHECK(inset_area(circle, 0.1, true) == Approx(pi * 0.16).epsilon(1e-6));
    CHECK(hole_edge(circle) == Approx(pi));
    // A half circle on plumb jambs.
    const OpeningForm round = make_opening_form(opening("r", 0, 1, 0, 1.5, HeadKind::round));
    CHECK(inset_area(round, 0.1, true) == Approx(pi * 0.08 + 0.8 * 0.9).epsilon(1e-6));
    CHECK(inset_area(round, 0, true) == Approx(pi * 0.125 + 1).epsilon(1e-6));
    CHECK(hole_edge(round) == Approx(2 + pi / 2));
}
