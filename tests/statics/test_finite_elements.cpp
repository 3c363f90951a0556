// Membrane forces against a finite-element run of the same shell by CalculiX: axisymmetric solid
// elements, which know nothing of membranes.
#include "geometry/statics/membrane.hpp"
#include "tests/exporters/scratch.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <map>
#include <sstream>

using namespace coilwright;

namespace {

constexpr double thickness = 0.02, density = 1762, gravity = 9.80665;

struct FiniteShell {
    Profile profile; // of its middle surface
    double top = 0;  // where it ends, open, above the springline
    int elements = 0;
    double height(double node) const { return top * node / (2 * elements); } // node: 0..2 elements

    Vec2 outward(double y) const {
        const double lean = slope(profile, std::max(y, 1e-9));
        return Vec2(1, -lean).normalized();
    }
};

/// One row of quadratic elements with reduced integration through the thickness, on a base that
/// holds it up but lets it widen, under its own weight.
std::string input_of(const FiniteShell& shell) {
    std::ostringstream text;
    text.precision(12);
    text << "*NODE, NSET=ALL\n";
    const int levels = 2 * shell.elements + 1;
    for (int i = 0; i < levels; ++i)
        for (int j = 0; j < 3; ++j) {
            const double y = shell.height(i);
            const Vec2 point =
                Vec2(half_width(shell.profile, y), y) + (j - 1) * thickness / 2 * shell.outward(y);
            text << 3 * i + j + 1 << ", " << point.x() << ", " << point.y() << ", 0\n";
        }
    text << "*ELEMENT, TYPE=CAX8R, ELSET=SHELL\n";
    for (int e = 0; e < shell.elements; ++e) {
        const auto node = [&](int j, int i) { return 3 * (2 * e + i) + j + 1; };
        text << e + 1;
        const int corners[8][2] = {{0, 0}, {2, 0}, {2, 2}, {0, 2}, {1, 0}, {2, 1}, {1, 2}, {0, 1}};
        for (const auto& [j, i] : corners)
            text << ", " << node(j, i);
        text << "\n";
    }
    text << "*MATERIAL, NAME=EARTH\n*ELASTIC\n1e9, 0.2\n*DENSITY\n"
         << density << "\n"
         << "*SOLID SECTION, ELSET=SHELL, MATERIAL=EARTH\n"
         << "*BOUNDARY\n1, 2\n2, 2\n3, 2\n"
         << "*STEP\n*STATIC\n*DLOAD\nSHELL, GRAV, " << gravity << ", 0., -1., 0.\n"
         << "*EL PRINT, ELSET=SHELL\nS\n*END STEP\n";
    return text.str();
}

/// Mean stresses of each element: radial, upright, around, and the shear of the first two.
std::map<int, std::array<double, 4>> stresses_of(const FiniteShell& shell) {
    const ScratchDirectory scratch;
    put_bytes(scratch.path() / "shell.inp", input_of(shell));
    output_of({"env", "-C", scratch.path().string(), "OMP_NUM_THREADS=1", "ccx", "-i", "shell"});
    std::istringstream lines(bytes_of(scratch.path() / "shell.dat"));
    std::map<int, std::array<double, 4>> sums;
    std::map<int, int> counts;
    for (std::string line; std::getline(lines, line);) {
        std::istringstream words(line);
        int element = 0, point = 0;
        double xx = 0, yy = 0, zz = 0, xy = 0;
        if (!(words >> element >> point >> xx >> yy >> zz >> xy))
            continue;
        const double parts[] = {xx, yy, zz, xy};
        for (std::size_t k = 0; k < 4; ++k)
            sums[element][k] += parts[k];
        ++counts[element];
    }
    for (auto& [element, sum] : sums)
        for (double& part : sum)
            part /= counts[element];
    return sums;
}

/// Compares the middle of the shell, three times the length in which an edge's bending fades
/// (sqrt(r t), any text on shells) from either end.
void compare(const FiniteShell& shell) {
    const MembraneShell membrane{shell.profile, 0, shell.top, density * gravity * thickness, 0};
    const std::map<int, std::array<double, 4>> stresses = stresses_of(shell);
    REQUIRE(static_cast<int>(stresses.size()) == shell.elements);
    const double scale = density * gravity * thickness * shell.profile.half_span;
    const double fades = 3 * std::sqrt(2 * shell.profile.half_span * thickness);
    int compared = 0;
    for (const auto& [element, stress] : stresses) {
        const double y = shell.height(2 * element - 1);
        if (y < fades || length_between(shell.profile, y, shell.top) < fades)
            continue;
        CAPTURE(y);
        const Vec2 out = shell.outward(y), up(-out.y(), out.x());
        const double along = up.x() * up.x() * stress[0] + up.y() * up.y() * stress[1] +
                             2 * up.x() * up.y() * stress[3];
        const MembraneForces forces = membrane_forces(membrane, y);
        CHECK(-along * thickness == Approx(forces.meridional).epsilon(0).margin(0.01 * scale));
        CHECK(-stress[2] * thickness == Approx(forces.hoop).epsilon(0).margin(0.01 * scale));
        ++compared;
    }
    CHECK(compared > shell.elements / 4);
}

} // namespace

TEST_CASE("finite elements: a pointed dome away from its edges") {
    const Profile profile = pointed_profile(1.4, 2.8);
    compare({profile, 0.85 * profile.rise, 120});
}

TEST_CASE("finite elements: a hemisphere down to where its rings are pulled") {
    compare({round_profile(2), 1.9, 120});
}

TEST_CASE("finite elements: a catenary") {
    // The base's reaction is plumb but a catenary arrives aslant: its edge effect is greater, and
    // fades all the same.
    const Profile profile = catenary_profile(1.5, 2.6);
    compare({profile, 0.9 * profile.rise, 160});
}
