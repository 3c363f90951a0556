// Outlines of straight tubes, and lines and arcs cut off at a box.
#include "geometry/drawing/straight_shapes.hpp"
#include "tests/drawing/plans.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

TEST_CASE("Tubes that butt against a ring end on its circle") {
    const BuildingPlan plan = whole_plan("retreat");
    const BuildingForm& building = plan.schedule.building;
    int ends = 0;
    for (const Course& course : plan.schedule.courses)
        for (const Straight& straight : course.straights) {
            const std::vector<StraightShape> shapes = straight_shapes(building, course, straight);
            REQUIRE(shapes.size() == straight.tubes.size());
            const auto on_circle = [&](const std::string& by, Vec2 centre_end, Vec2 a, Vec2 b) {
                const DomeForm* dome = find_dome(building, by);
                if (!dome)
                    return;
                const double radius = (centre_end - dome->at).norm();
                CHECK((a - dome->at).norm() == Approx(radius).epsilon(1e-12));
                CHECK((b - dome->at).norm() == Approx(radius).epsilon(1e-12));
                ++ends;
            };
            const Outline& first = shapes.front().outline;
            const Outline& last = shapes.back().outline;
            on_circle(straight.start_by, straight.start, first.from, first.edges[2].to);
            on_circle(straight.end_by, straight.end, last.edges[0].to, last.edges[1].to);
            // Laid end to end, as long as the run.
            CHECK((shapes.front().start - straight.start).norm() < 1e-9);
            CHECK((shapes.back().end - straight.end).norm() < 1e-6);
        }
    CHECK(ends > 100);
}

TEST_CASE("An arc cut off at a box keeps what lies in it, and no more") {
    // A unit circle and the box |x| <= 0.5: above and below, each from 60 to 120 degrees.
    const auto kept = clipped_arc({0, 0}, 1, 0, 2 * pi, {-0.5, -2}, {0.5, 2});
    REQUIRE(kept.size() == 2);
    CHECK(kept[0].first == Approx(pi / 3));
    CHECK(kept[0].second == Approx(2 * pi / 3));
    CHECK(kept[1].first == Approx(4 * pi / 3));
    CHECK(kept[1].second == Approx(5 * pi / 3));
    CHECK(clipped_arc({0, 0}, 1, 0, pi / 4, {-0.5, -2}, {0.5, 2}).empty());
    CHECK(clipped_arc({0, 0}, 1, 0.2, 5, {-2, -2}, {2, 2}).size() == 1);

    // Random arcs: the kept length against a count of points in the box.
    Dice dice(11);
    for (int i = 0; i < 200; ++i) {
        const Vec2 centre(dice.between(-1, 1), dice.between(-1, 1));
        const double radius = dice.between(0.2, 2), start = dice.between(-7, 7);
        const double end = start + dice.between(0.1, 2 * pi);
        const Vec2 low(dice.between(-1, 0), dice.between(-1, 0)), high(0.7, 0.6);
        double length = 0;
        for (const auto& [from, to] : clipped_arc(centre, radius, start, end, low, high)) {
            CHECK(from >= start - 1e-9);
            CHECK(to <= end + 1e-9);
            length += to - from;
        }
        constexpr int points = 4000;
        int inside = 0;
        for (int k = 0; k < points; ++k) {
            const double angle = start + (end - start) * (k + 0.5) / points;
            const Vec2 point = centre + radius * Vec2(std::cos(angle), std::sin(angle));
            inside += (point.array() >= low.array()).all() && (point.array() <= high.array()).all();
        }
        CAPTURE(i);
        CHECK(std::abs(length - (end - start) * inside / points) < 0.006);
    }
}

TEST_CASE("A segment is cut off at a box") {
    const auto kept = clipped({{-2, 0}, {2, 1}}, {-1, -1}, {1, 1});
    REQUIRE(kept.size() == 1);
    CHECK((kept[0].from - Vec2(-1, 0.25)).norm() < 1e-12);
    CHECK((kept[0].to - Vec2(1, 0.75)).norm() < 1e-12);
    CHECK(clipped({{-2, 2}, {2, 2}}, {-1, -1}, {1, 1}).empty());
    CHECK(clipped({{2, -2}, {2, 2}}, {-1, -1}, {1, 1}).empty());
}
