#include "geometry/plan/section.hpp"

#include "geometry/base/bearing.hpp"
#include "tests/support/seeded.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;

TEST_CASE("a tamped tube keeps the length of its fabric") {
    Seeded seeded(3);
    for (int trial = 0; trial < 100; ++trial) {
        const double lay_flat = seeded.between(0.25, 0.6);
        const double t = lay_flat * seeded.between(0.2, 0.4);
        const double w = stadium_width(lay_flat, t);
        CAPTURE(trial, lay_flat, t);
        // Two flats and two half circles, against the fabric of both sides of the empty tube.
        CHECK(2 * (w - t) + pi * t == Approx(2 * lay_flat).epsilon(1e-14));
        CHECK(w < lay_flat);
    }
}

TEST_CASE("section area: a rectangle and two half discs") {
    // As tall as wide it is a full disc.
    CHECK(stadium_area(0.2, 0.2) == Approx(pi * 0.01).epsilon(1e-15));
    CHECK(stadium_area(0.5, 0.1) == Approx(0.4 * 0.1 + pi * 0.0025).epsilon(1e-15));
}

TEST_CASE("a width measured on a test bag wins over the reckoned one") {
    TubeType tube;
    tube.lay_flat = 0.4318;
    CHECK(tamped_width(tube, 0.127) == stadium_width(0.4318, 0.127));
    tube.tamped_width = 0.381;
    CHECK(tamped_width(tube, 0.127) == 0.381);
}
