// Compass facts: north 0, east 90, clockwise as seen from above.
#include "geometry/base/bearing.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;

TEST_CASE("a bearing is an angle read the other way round") {
    CHECK(to_angle({90}).radians == Approx(0).margin(1e-15));
    CHECK(to_angle({0}).radians == Approx(pi / 2));
    CHECK(to_angle({150}).radians == Approx(-pi / 3));
    CHECK(to_bearing({0}).degrees == Approx(90));
    CHECK(to_bearing({pi}).degrees == Approx(270));
    CHECK(to_bearing({pi / 2}).degrees == Approx(0).margin(1e-12));
}

TEST_CASE("bearings stay in the circle and count clockwise") {
    CHECK(turned_into_circle(370) == Approx(10));
    CHECK(turned_into_circle(-30) == Approx(330));
    CHECK(turned_into_circle(360) == 0);
    CHECK(turned_into_circle(-1e-13) == 0);
    CHECK(clockwise_degrees({350}, {10}) == Approx(20));
    CHECK(clockwise_degrees({10}, {350}) == Approx(340));
    CHECK(turned({350}, 20).degrees == Approx(10));
}

TEST_CASE("east lies right of north") {
    CHECK(along({90}).x() == Approx(1));
    CHECK(along({90}).y() == Approx(0).margin(1e-15));
    CHECK(right_of({0}).x() == Approx(1));
    CHECK(along({180}).y() == Approx(-1));
}
