#include "geometry/plan/rings.hpp"

#include "geometry/plan/lay.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;

/// The store with a tube of 20 in up to 20 in, and a second ring of its own tube outside up to
/// `top`.
Design with_wythes(double top) {
    Design design = store_design();
    design.openings.clear();
    design.domes[0].datum.clear();
    TubeType wide;
    wide.id = "wide";
    wide.lay_flat = 22 * inch;
    wide.tamped_width = 20 * inch;
    design.tubes.push_back(wide);
    design.domes[0].lower_tube = "wide";
    design.domes[0].lower_height = 20 * inch;
    design.domes[0].second_wythe = top * inch;
    return design;
}

/// Inside of the store's arc, inches, at the middle of a course: 135 in about (-81, 20).
double inside(int course) {
    const double y = (course - 3.5) * 5 - 20;
    return y <= 0 ? 54 : std::sqrt(135.0 * 135 - y * y) - 81;
}

} // namespace

TEST_CASE("a second wythe lies on the second wythe of the course below") {
    const Schedule schedule = lay(with_wythes(60));
    // Courses 1 to 7 are of the wide tube, 8 to 15 of the other; all have two rings.
    for (int n = 1; n <= 15; ++n) {
        CAPTURE(n);
        const auto& rings = schedule.courses.at(static_cast<std::size_t>(n) - 1).rings;
        REQUIRE(rings.size() == 2);
        const Ring& outer = rings[1];
        const double from = inside(n) + (n <= 7 ? 20 : 15), to = from + 15;
        CHECK(outer.wythe == 2);
        CHECK(outer.tube == "main");
        CHECK(outer.inside_radius == Approx(from * inch));
        CHECK(outer.outside_radius == Approx(to * inch));
        if (n == 1) {
            CHECK(outer.step_in == 0);
            CHECK(outer.bearing_width == Approx(15 * inch));
            CHECK(outer.contact_width == Approx(10 * inch));
            continue;
        }
        const double below = inside(n - 1) + (n <= 8 ? 20 : 15);
        CHECK(outer.step_in == Approx((below - from) * inch).margin(1e-12));
        CHECK(outer.bearing_width == Approx((15 - (below - from)) * inch));
        CHECK(outer.contact_width == Approx((10 - (below - from)) * inch));
    }
    // Where the wide tube ends the outer ring comes in by its 5 in and the curve's 0.02 in.
    CHECK(schedule.courses[7].rings[1].step_in / inch == Approx(5.0232).margin(1e-4));
    CHECK(schedule.courses[15].rings.size() == 1);
}

TEST_CASE("bags measured square bear on their whole overlap in both wythes") {
    Design design = with_wythes(60);
    design.course.edge = TubeEdge::square;
    for (const Course& course : lay(design).courses)
        for (const Ring& ring : course.rings)
            CHECK(ring.contact_width == Approx(ring.bearing_width).margin(1e-12));
}
