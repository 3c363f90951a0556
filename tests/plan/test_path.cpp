#include "geometry/plan/path.hpp"

#include "tests/support/random_plans.hpp"
#include "tests/support/region_checks.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

double degrees(double radians) {
    return radians * 180 / pi;
}

CirclePath circle(double radius, double datum = 0) {
    return {{0, 0}, radius, {datum}};
}

bool taken_at(const std::vector<Shape>& shapes, const Vec2& point) {
    PlanExpression plan;
    plan.shapes = shapes;
    for (int i = 0; i < static_cast<int>(shapes.size()); ++i)
        plan.terms.push_back({"taken", i, {}});
    return contains(plan, point);
}

/// Whether a place lies in one of the intervals, those over the datum too.
bool kept_at(const std::vector<Interval>& kept, double place, double whole) {
    for (const Interval& piece : kept)
        for (const double turn : {place, place + whole})
            if (turn > piece.start.at && turn < piece.end.at)
                return true;
    return false;
}

} // namespace

TEST_CASE("an opening cuts a ring's circle at asin(a / r) to both sides", "[path]") {
    const Box door{{0, 0}, {0, 1}, 0, 100, -1, 1};
    for (const double datum : {0.0, 20.0, 90.0, 200.0, 330.0}) {
        const auto kept = kept_intervals(circle(2, datum), {door});
        REQUIRE(kept.size() == 1);
        const double start = std::fmod(30 - datum + 360, 360);
        CHECK(kept[0].start.at == Approx(start).margin(1e-12));
        CHECK(kept[0].end.at == Approx(start + 300));
        CHECK(kept[0].start.shape == 0);
        CHECK(kept[0].end.shape == 0);
        CHECK(length_of(Path(circle(2, datum)), kept[0]) == Approx(2 * pi * 2 * 300 / 360));
    }
}

TEST_CASE("a circle is cut where another dome's circle crosses it", "[path]") {
    // Law of cosines: cos = (r^2 + d^2 - s^2) / (2 r d). East of the centre is bearing 90.
    const double r = 2, s = 1.5, d = 3;
    const double half = degrees(std::acos((r * r + d * d - s * s) / (2 * r * d)));
    const auto kept = kept_intervals(circle(r), {Disc{{d, 0}, s}});
    REQUIRE(kept.size() == 1);
    CHECK(kept[0].start.at == Approx(90 + half));
    CHECK(kept[0].end.at == Approx(450 - half));
}

TEST_CASE("a straight tube is cut by sides and circles, each end by what is nearest", "[path]") {
    const LinePath line{{-5, 1}, {5, 1}};
    const std::vector<Shape> shapes = {Disc{{0, 0}, 2}, Box{{0, 0}, {1, 0}, 1, 3, -2, 2},
                                       Box{{-5, 0}, {1, 0}, -1, 0.5, 0, 2}};
    const auto kept = kept_intervals(line, shapes);
    REQUIRE(kept.size() == 2);
    CHECK(kept[0].start.at == Approx(0.5));
    CHECK(kept[0].start.shape == 2);
    CHECK(kept[0].end.at == Approx(5 - std::sqrt(3)));
    CHECK(kept[0].end.shape == 0);
    CHECK(kept[1].start.at == Approx(8));
    CHECK(kept[1].start.shape == 1);
    CHECK(kept[1].end.at == Approx(10));
    CHECK(kept[1].end.shape == -1);
}

TEST_CASE("a path that nothing cuts is whole, one that is covered is gone", "[path]") {
    const auto whole = kept_intervals(circle(2), {Disc{{9, 0}, 1}});
    REQUIRE(whole.size() == 1);
    CHECK(whole[0].start.at == 0);
    CHECK(whole[0].end.at == 360);
    CHECK(whole[0].start.shape == -1);
    CHECK(whole[0].end.shape == -1);
    CHECK(kept_intervals(circle(2), {}).size() == 1);
    CHECK(kept_intervals(circle(2), {Disc{{0, 0}, 1}}).size() == 1);
    CHECK(kept_intervals(circle(2), {Disc{{0, 0}, 3}}).empty());
    CHECK(kept_intervals(circle(2), {Box{{0, 0}, {1, 0}, -3, 3, -3, 3}}).empty());
    CHECK(kept_intervals(LinePath{{0, 0}, {1, 0}}, {Disc{{0, 0}, 3}}).empty());
    CHECK(kept_intervals(circle(0), {}).empty());
    CHECK(kept_intervals(LinePath{{1, 1}, {1, 1}}, {}).empty());
}

TEST_CASE("what the path runs along, or only touches, does not cut it", "[path]") {
    CHECK(kept_intervals(circle(2), {Disc{{0, 0}, 2}})[0].start.shape == -1);
    CHECK(kept_intervals(circle(2), {Disc{{3, 0}, 1}})[0].start.shape == -1);
    CHECK(kept_intervals(circle(2), {Box{{2, 0}, {1, 0}, 0, 1, -1, 1}})[0].start.shape == -1);
    const LinePath line{{0, 0}, {4, 0}};
    CHECK(kept_intervals(line, {Box{{0, 0}, {1, 0}, 1, 3, 0, 1}}).size() == 1);
    CHECK(kept_intervals(line, {Disc{{2, 1}, 1}}).size() == 1);
    CHECK(kept_intervals(line, {Box{{0, 0}, {1, 0}, 1, 3, -1e-12, 1}}).size() == 1);
    CHECK(kept_intervals(line, {Box{{0, 0}, {1, 0}, 1, 3, -1e-6, 1}}).size() == 2);
}

TEST_CASE("cuts that meet are one, and slivers between cuts go", "[path]") {
    const LinePath line{{0, 0}, {9, 0}};
    const auto box = [](double from, double to) { return Box{{0, 0}, {1, 0}, from, to, -1, 1}; };
    CHECK(kept_intervals(line, {box(1, 2), box(2, 3)}).size() == 2);
    CHECK(kept_intervals(line, {box(1, 2), box(2 + 5e-7, 3)}).size() == 2);
    CHECK(kept_intervals(line, {box(1, 2), box(2 + 2e-6, 3)}).size() == 3);
    // Cut in one place by two: the first of the list is named.
    const auto tie = kept_intervals(line, {box(1, 2), box(1 - 1e-10, 2 + 1e-10)});
    REQUIRE(tie.size() == 2);
    CHECK(tie[0].end.shape == 0);
    CHECK(tie[1].start.shape == 0);
}

TEST_CASE("a cut that starts or ends at the datum still names its shape", "[path]") {
    // From bearing 0 to 90 exactly, and from 270 to 360.
    const Box quarter{{0, 0}, {1, 0}, 0, 9, 0, 9}, before{{0, 0}, {1, 0}, -9, 0, 0, 9};
    const auto after_datum = kept_intervals(circle(2), {quarter});
    REQUIRE(after_datum.size() == 1);
    CHECK(after_datum[0].start.at == Approx(90));
    CHECK(after_datum[0].end.at == Approx(360));
    CHECK(after_datum[0].end.shape == 0);
    const auto before_datum = kept_intervals(circle(2), {before});
    REQUIRE(before_datum.size() == 1);
    CHECK(before_datum[0].start.at == Approx(0).margin(1e-9));
    CHECK(before_datum[0].start.shape == 0);
    CHECK(before_datum[0].end.at == Approx(270));
    const auto both = kept_intervals(circle(2), {quarter, before});
    REQUIRE(both.size() == 1);
    CHECK(both[0].start.at == Approx(90));
    CHECK(both[0].end.at == Approx(270));
}

TEST_CASE("kept intervals are what points along the path say", "[path]") {
    for (std::uint64_t seed = 1; seed <= 500; ++seed) {
        CAPTURE(seed);
        Seeded dice(seed);
        const std::vector<Shape> shapes =
            (dice.coin() ? scattered_plan(dice) : building_plan(dice)).shapes;
        Path path = CirclePath{{dice.between(-2, 2), dice.between(-2, 2)},
                               dice.between(0.3, 4),
                               {dice.between(0, 360)}};
        double whole = 360;
        if (dice.coin()) {
            path = LinePath{{dice.between(-5, 5), dice.between(-5, 5)},
                            {dice.between(-5, 5), dice.between(-5, 5)}};
            whole = length_of(path);
        }
        // Few of the shapes, or nothing is left.
        const std::vector<Shape> taken(
            shapes.begin(), shapes.begin() + std::min<std::ptrdiff_t>(
                                                 4, static_cast<std::ptrdiff_t>(shapes.size())));
        const auto kept = kept_intervals(path, taken);
        double last = -1;
        for (const Interval& piece : kept) {
            CHECK(piece.start.at >= std::max(last, 0.0));
            CHECK(piece.start.at < whole);
            CHECK(piece.end.at > piece.start.at);
            CHECK(piece.end.at <= piece.start.at + whole);
            last = piece.end.at;
            for (const PathEnd& end : {piece.start, piece.end})
                if (end.shape >= 0)
                    CHECK(distance_from_boundary(taken[static_cast<std::size_t>(end.shape)],
                                                 point_at(path, end.at)) < 1e-9);
                else
                    CHECK((end.at == 0 || end.at == whole));
        }
        for (int i = 0; i < 400; ++i) {
            const double place = dice.between(0, whole);
            const Vec2 point = point_at(path, place);
            const bool near = std::any_of(taken.begin(), taken.end(), [&](const Shape& shape) {
                return distance_from_boundary(shape, point) < 1e-6;
            });
            if (!near)
                CHECK(kept_at(kept, place, whole) == !taken_at(taken, point));
        }
    }
}
