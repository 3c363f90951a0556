// Published limits of masonry arches, from the solver that the domes use.
#include "geometry/base/bearing.hpp"
#include "geometry/statics/voussoirs.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;

namespace {

CircularArch semicircle(double thickness, int voussoirs) {
    CircularArch arch;
    arch.radius = 1;
    arch.thickness = thickness;
    arch.from = -pi / 2;
    arch.to = pi / 2;
    arch.voussoirs = voussoirs;
    arch.unit_weight = 1;
    return arch;
}

/// Smallest thickness that stands, by bisection.
double smallest_thickness(int voussoirs) {
    double low = 0.05, high = 0.2;
    while (high - low > 1e-6) {
        const double middle = (low + high) / 2;
        (least_thrust(circular_arch(semicircle(middle, voussoirs)), 0).stands ? high : low) =
            middle;
    }
    return high;
}

} // namespace

TEST_CASE("semicircular arch: smallest thickness and the one thrust that is left") {
    // t/R 0.1075 with radial joints, no tension, no sliding; thrust 0.6209 gamma R t per unit
    // depth: Milankovitch 1907; Cocchetti, Colasante and Rizzi 2011; Makris and Alexakis 2013
    // (read; the thrust reckoned). R to the middle line.
    const int voussoirs = 240;
    const double thickness = smallest_thickness(voussoirs);
    CHECK(thickness == Approx(0.1075).epsilon(0).margin(2e-4));
    const Slice slice = circular_arch(semicircle(thickness, voussoirs));
    const auto crown = static_cast<int>(voussoirs / 2);
    const double low = least_thrust(slice, crown).joints[crown].thrust() / thickness;
    const double high = greatest_thrust(slice, crown).joints[crown].thrust() / thickness;
    CHECK(low == Approx(0.6209).epsilon(0).margin(5e-4));
    CHECK(high == Approx(0.6209).epsilon(0).margin(5e-4));
    CHECK(centred_thrust(slice).share == Approx(1).epsilon(0).margin(1e-4));
}

TEST_CASE(
    "semicircular arch: the limit is met from below, with the square of the joints' spacing") {
    // Hinges form at joints only: the nearest to the true hinge at 54.5 degrees is at most half a
    // voussoir, 90/n degrees, away. 0.65 / n2 is reckoned from the curvature of t over the hinge's
    // place; 0.10748 is the limit for many joints (reckoned with 2000 in another program).
    for (const int voussoirs : {6, 10, 14, 26, 50, 98, 180}) {
        CAPTURE(voussoirs);
        const double short_of = 0.10748 - smallest_thickness(voussoirs);
        CHECK(short_of > -3e-6);
        CHECK(short_of < 0.65 / (voussoirs * voussoirs) + 3e-6);
    }
    CHECK(0.10748 - smallest_thickness(6) > 1e-3); // and it does make a difference
}

TEST_CASE("sideways capacity of an arch of 157.5 degrees") {
    // t/R 0.15, seven equal voussoirs: 0.370 g (Oppenheim 1992; De Lorenzis, DeJong and Ochsendorf
    // 2007; from memory and reckoned).
    CircularArch arch = semicircle(0.15, 7);
    arch.from = -157.5 / 2 * radians_per_degree;
    arch.to = -arch.from;
    const ThrustLine sways = greatest_sway(circular_arch(arch));
    REQUIRE(sways.stands);
    CHECK(sways.load_factor == Approx(0.370).epsilon(0).margin(0.002));
}

TEST_CASE("pointed arches push less than round ones of the same span and thickness") {
    // Romano and Ochsendorf, The Mechanics of Gothic Masonry Arches, 2010 (read).
    double before = unlimited;
    for (const double rho : {1.0, 1.25, 1.5, 2.0, 2.5}) {
        CAPTURE(rho);
        PointedArch arch;
        arch.half_span = 1;
        arch.arc_radius = rho;
        arch.thickness = 0.25;
        arch.voussoirs = 60;
        arch.unit_weight = 1;
        const ThrustLine least = least_thrust(half_pointed_arch(arch), 60);
        REQUIRE(least.stands);
        CHECK(least.joints.back().thrust() < before);
        before = least.joints.back().thrust();
    }
}
