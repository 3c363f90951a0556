// Piers that take thrust: masses by strips, factors by hand.
#include "geometry/statics/buttress_stability.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;

struct Case {
    Design design;
    DomeForm dome;
    ButtressForm pier;
};

Case store_pier(double projection, double projection_top) {
    Case result;
    result.design = store_design();
    Buttress flank;
    flank.id = "flank";
    flank.on = "store";
    flank.bearings = {60};
    flank.width = 30 * inch;
    flank.height = 40 * inch;
    flank.projection = projection * inch;
    flank.projection_top = projection_top * inch;
    result.design.buttresses.push_back(flank);
    result.dome = make_dome_form(result.design, result.design.domes[0]);
    result.pier = make_buttress_forms(result.design, flank, result.dome).front();
    return result;
}

} // namespace

TEST_CASE("a pier's weight and centre by strips across it") {
    const Case pier = store_pier(30, 15);
    const PierMass mass = pier_mass(pier.design, pier.dome, pier.pier);
    double volume = 0, moment = 0;
    const double b = 15 * inch, t = 5 * inch;
    for (int n = 1; n <= pier.pier.last_course; ++n) {
        const double z = pier.dome.course_middle(n);
        const double r = outside_radius(pier.dome, z), out = outer_face(pier.pier, z);
        const int strips = 20000;
        for (int i = 0; i < strips; ++i) {
            const double y = -b + (i + 0.5) * 2 * b / strips, from = std::sqrt(r * r - y * y);
            volume += (out - from) * t * 2 * b / strips;
            moment += (out * out - from * from) / 2 * t * 2 * b / strips;
        }
    }
    const double filled = (10 * 5 + pi * 25 / 4) / 75; // of the tubes' rectangle
    CHECK(mass.weight == Approx(1762 * 9.80665 * filled * volume).epsilon(1e-6));
    CHECK(mass.centre == Approx(moment / volume).epsilon(1e-6));
}

TEST_CASE("sliding and overturning of a pier by hand") {
    const Case pier = store_pier(30, 30); // plumb: outer plane 69 + 30 in from the pole
    DomePush push;
    CHECK(pier_stability(pier.design, pier.dome, pier.pier, push).overturning == unlimited);
    CHECK(pier_stability(pier.design, pier.dome, pier.pier, push).sliding == unlimited);
    push = {8000, 0.5, 30000, 1.6};
    const PierStability result = pier_stability(pier.design, pier.dome, pier.pier, push);
    CHECK(result.toe == Approx((99 - 2.5) * inch)); // of the flat
    const double weight = result.mass.weight;
    CHECK(result.sliding == Approx(0.4 * (weight + 30000) / 8000));
    const double stands = weight * (result.toe - result.mass.centre) + 30000 * (result.toe - 1.6);
    CHECK(result.overturning == Approx(stands / (8000 * (0.5 + 15 * inch))));
    // The trench's bottom, not the floor, is what it turns about.
    CHECK(result.mass.centre > 69 * inch);
    CHECK(result.mass.centre < 99 * inch);
}

TEST_CASE("more of a pier is more of both factors") {
    const DomePush push{8000, 0.5, 10000, 1.6};
    double sliding = 0, overturning = 0;
    for (const double projection : {10.0, 20.0, 30.0, 45.0}) {
        CAPTURE(projection);
        const Case pier = store_pier(projection, projection / 2);
        const PierStability now = pier_stability(pier.design, pier.dome, pier.pier, push);
        CHECK(now.sliding > sliding);
        CHECK(now.overturning > overturning);
        sliding = now.sliding;
        overturning = now.overturning;
    }
}
