// Published values of shells and of corbelled cones.
#include "geometry/base/bearing.hpp"
#include "geometry/statics/corbel.hpp"
#include "geometry/statics/membrane.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace coilwright;

TEST_CASE("ribbed sports dome of 1957: membrane forces under its own weight") {
    // R 159 ft, q 120 psf: a verification example given with an open finite-element code (read);
    // the formulas are those of Timoshenko and Woinowsky-Krieger 1959, ch. 14 (from memory). lb/ft.
    struct Row {
        double degrees, meridional, hoop;
    };
    for (const Row& row : {Row{16, 9728.43, 8612.44}, Row{27, 10089.86, 6910.54}}) {
        CAPTURE(row.degrees);
        const double phi = row.degrees * radians_per_degree;
        const MembraneForces formula = spherical_membrane(120, 159, phi);
        CHECK(formula.meridional == Approx(row.meridional).epsilon(0).margin(0.01));
        CHECK(formula.hoop == Approx(row.hoop).epsilon(0).margin(0.01));
        // And by the way that any profile goes.
        const MembraneForces forces =
            membrane_forces({round_profile(159), 0, 159, 120, 0}, 159 * std::cos(phi));
        CHECK(forces.meridional == Approx(row.meridional).epsilon(0).margin(0.01));
        CHECK(forces.hoop == Approx(row.hoop).epsilon(0).margin(0.01));
    }
}

TEST_CASE("hemisphere: hoop force changes sign 51.8273 degrees from the crown") {
    // cos phi = (sqrt 5 - 1) / 2; Heyman, Equilibrium of Shell Structures, 1977 (reckoned).
    const double height = hoop_turns_at({round_profile(1), 0, 1, 1, 0}).value();
    CHECK(std::acos(height) / radians_per_degree == Approx(51.8273).epsilon(0).margin(1e-4));
}

TEST_CASE("cone, apex up, half-angle 30 degrees, slant 5 m, 7.2 kN/m2") {
    // N = qs/(2 cos a), hoop = qs sin2 a / cos a: Fluegge, Stresses in Shells, 1960 (from memory).
    const MembraneForces forces = conical_membrane(7.2, 5, 30 * radians_per_degree);
    CHECK(forces.meridional == Approx(20.7846).epsilon(0).margin(1e-4));
    CHECK(forces.hoop == Approx(10.3923).epsilon(0).margin(1e-4));
    const Profile line = drawn_profile({{0, 3}, {3 * std::sqrt(3.0), 0}});
    const MembraneForces by_profile = membrane_forces(
        {line, 0, line.rise, 7.2, 0}, line.rise - 5 * std::cos(30 * radians_per_degree));
    CHECK(by_profile.meridional == Approx(20.7846).epsilon(0).margin(1e-4));
    CHECK(by_profile.hoop == Approx(10.3923).epsilon(0).margin(1e-4));
}

TEST_CASE("lantern on a zone of a sphere") {
    // 2 kN/m on a ring of 5 m, base ring 10 m at 60 degrees: 1.1547 at the base, 4.6188 kN/m at the
    // top. Textbook problem 11.3, Budapest University of Technology (read).
    const double radius = 10 / std::sin(60 * radians_per_degree);
    const Profile cap = segmental_profile(10, radius - radius * std::cos(60 * radians_per_degree));
    MembraneShell shell{cap, 0, height_at(cap, 5), 0, 2};
    CHECK(membrane_forces(shell, 0).meridional == Approx(1.1547).epsilon(0).margin(1e-3));
    CHECK(membrane_forces(shell, shell.top * (1 - 1e-12)).meridional ==
          Approx(4.6188).epsilon(0).margin(1e-3));
}

TEST_CASE("straight corbelled cone that closes: free-standing only if w >= R / sqrt 2") {
    // True sector centroids, tipping edge at the inside face of the course below, in the limit of
    // thin courses (reckoned: sum of W (r_G - R) = 0; weights put at r + w/2 would give 0.8165).
    const auto stands = [](double width) {
        const int courses = 4000;
        std::vector<CorbelCourse> cone;
        for (int i = 0; i < courses; ++i) {
            const double inner = 1 - (i + 0.5) / courses, outer = inner + width;
            const double edge = i == 0 ? 1 : 1 - (i - 0.5) / courses;
            cone.push_back(
                {(outer * outer - inner * inner) / 2, sector_mass_radius(inner, outer), edge});
        }
        const std::vector<double> levers = corbel_levers(cone);
        return *std::min_element(levers.begin(), levers.end()) >= -1e-12;
    };
    double low = 0.1, high = 2;
    while (high - low > 1e-6) {
        const double middle = (low + high) / 2;
        (stands(middle) ? high : low) = middle;
    }
    CHECK(high == Approx(1 / std::sqrt(2.0)).epsilon(0).margin(1e-3));
}
