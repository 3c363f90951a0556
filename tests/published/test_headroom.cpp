// Published values of headroom: a worked dome, and the code's rules as the program carries them.
#include "geometry/plan/headroom.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;

TEST_CASE("a hemisphere of 8 ft on the floor: floor area with 7 ft and with 5 ft over it") {
    // Reckoned: pi (8^2 - 7^2) = 47.124 and pi (8^2 - 5^2) = 122.522 sq ft. No plaster.
    DomeForm form;
    form.profile = round_profile(8 * metres_per_foot);
    form.course_height = 0.125;
    form.last_ring = 20; // rings up to 2.5 m, above both heights
    form.cap_courses = 1;
    form.last_ring_radius = half_width(form.profile, form.course_middle(20));
    const double square_foot = square_metres_per_square_foot;
    const double at_7_ft = floor_area_at(form, 0, 7 * metres_per_foot) / square_foot;
    const double at_5_ft = floor_area_at(form, 0, 5 * metres_per_foot) / square_foot;
    CHECK(at_7_ft == Approx(47.124).epsilon(0).margin(5e-4));
    CHECK(at_5_ft == Approx(122.522).epsilon(0).margin(5e-4));
}
