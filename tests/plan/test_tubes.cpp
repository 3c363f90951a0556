#include "geometry/plan/tubes.hpp"

#include "geometry/plan/check_layout.hpp"
#include "geometry/plan/lay.hpp"
#include "geometry/plan/ring_gaps.hpp"
#include "geometry/plan/tunnel_form.hpp"
#include "tests/support/demos.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

CourseRules rules(double longest, double lap) {
    CourseRules result;
    result.height = 0.127;
    result.longest_tube = longest;
    result.joint_lap = lap;
    return result;
}

Ring ring_of(double centre_radius, double width) {
    Ring ring;
    ring.inside_radius = centre_radius - width / 2;
    ring.centre_radius = centre_radius;
    ring.outside_radius = centre_radius + width / 2;
    return ring;
}

Run run_of(double start, double degrees, double radius) {
    Run run;
    run.start_bearing = start;
    run.end_bearing = start + degrees;
    run.length = degrees * radians_per_degree * radius;
    run.closed = degrees == 360;
    return run;
}

} // namespace

TEST_CASE("a short run is one tube whose cut covers its outer thread") {
    const Ring ring = ring_of(1.5, 0.4);
    Run run = run_of(10, 90, 1.5);
    divide_run(run, ring, rules(9, 0.45), {}, {0}, 1);
    REQUIRE(run.tubes.size() == 1);
    CHECK(run.tubes[0].length == Approx(1.5 * pi / 2));
    // The outermost thread runs at 1.7 m: fabric does not stretch.
    CHECK(run.tubes[0].cut_length == Approx(1.7 * pi / 2 + 2 * 0.2032));
    CourseRules centre = rules(9, 0.45);
    centre.curve = CutCurve::centre;
    divide_run(run, ring, centre, {}, {0}, 1);
    CHECK(run.tubes[0].cut_length == Approx(1.5 * pi / 2 + 2 * 0.2032));
}

TEST_CASE("a tube's outer thread goes on to the outside of a plumb jamb") {
    // By hand: jambs 0.4 m off the axis; the ray through the end of the centreline meets the
    // outside face where the angle is asin(0.4 / 1.4), the jamb where it is asin(0.4 / 1.6).
    const Ring ring = ring_of(1.4, 0.4);
    const double beyond = 1.6 * (std::asin(0.4 / 1.4) - std::asin(0.4 / 1.6));
    CHECK(beyond == Approx(0.0593).margin(5e-5));
    Run run = run_of(20, 180, 1.4);
    divide_run(run, ring, rules(9, 0.45), {}, {0}, 1, {beyond, beyond});
    REQUIRE(run.tubes.size() == 1);
    CHECK(run.tubes[0].outer_length == Approx(1.6 * pi + 2 * beyond));
    CHECK(run.tubes[0].cut_length == Approx(1.6 * pi + 2 * beyond + 2 * 0.2032));
    // Of several tubes the first and the last have the ends.
    divide_run(run, ring, rules(2, 0.45), {}, {0}, 1, {beyond, 2 * beyond});
    REQUIRE(run.tubes.size() >= 3);
    const double ratio = 1.6 / 1.4;
    CHECK(run.tubes.front().outer_length == Approx(run.tubes.front().length * ratio + beyond));
    CHECK(run.tubes[1].outer_length == Approx(run.tubes[1].length * ratio));
    CHECK(run.tubes.back().outer_length == Approx(run.tubes.back().length * ratio + 2 * beyond));
}

TEST_CASE("in a laid dome every tube is cut for the longest of its edges") {
    // Against the plan: the outside face between the cuts, as bearings of the schedule give it.
    const Schedule schedule = demo_plan("grain-store.toml").schedule;
    int ends = 0;
    for (const Course& course : schedule.courses)
        for (const Ring& ring : course.rings) {
            if (ring.kind == RingKind::cap)
                continue;
            for (const Run& run : ring.runs) {
                if (run.closed)
                    continue;
                double outer = 0;
                for (const LaidTube& tube : run.tubes)
                    outer += tube.outer_length;
                const auto outside = [&](double centre) {
                    for (const Cut& cut : ring.cuts)
                        if (std::abs(std::remainder(cut.centre_bearing - centre, 360)) < 1e-9)
                            return cut.outside_bearing;
                    return std::nan("");
                };
                const double turn =
                    clockwise_degrees({outside(run.start_bearing)}, {outside(run.end_bearing)});
                CHECK(outer == Approx(turn * radians_per_degree * ring.outside_radius));
                ++ends;
            }
        }
    CHECK(ends > 20);
}

TEST_CASE("a tunnel's tube is cut for its edge, which reaches farther round the dome") {
    // By hand: the straight butts against a circle of radius f; its edges lie y and y + w from the
    // axis, its centreline y + w / 2.
    const Schedule schedule = demo_plan("retreat.toml").schedule;
    const BuildingForm& building = schedule.building;
    const TunnelForm& tunnel = *find_tunnel(building, "entry");
    const DomeForm& dome = *find_dome(building, tunnel.from);
    int odd = 0;
    for (const Course& course : schedule.courses)
        for (const Straight& straight : course.straights) {
            if (straight.of != tunnel.id || straight.part != StraightPart::left ||
                straight.start_by != tunnel.from || tunnel_runs_in(tunnel, dome, course.number))
                continue;
            const double z = dome.course_middle(course.number);
            const double y = inner_half_width(tunnel, z), w = tunnel.width;
            const double f = outside_radius(dome, z);
            const double beyond =
                std::sqrt(f * f - (y + w / 2) * (y + w / 2)) - std::sqrt(f * f - (y + w) * (y + w));
            const LaidTube& tube = straight.tubes.front();
            CHECK(tube.outer_length - tube.length == Approx(beyond));
            ++odd;
        }
    CHECK(odd > 3);
}

TEST_CASE("a full ring takes its first joint away from the datum, the next course elsewhere") {
    const Ring ring = ring_of(1.5, 0.4);
    Run first = run_of(0, 360, 1.5), second = run_of(0, 360, 1.5);
    divide_run(first, ring, rules(20, 0.45), {}, {150}, 1);
    REQUIRE(first.tubes.size() == 1);
    CHECK(std::abs(clockwise_degrees({150}, {first.start_bearing}) - 180) < 20);
    CHECK(first.end_bearing == first.start_bearing + 360);
    divide_run(second, ring, rules(20, 0.45), {first.start_bearing}, {150}, 2);
    const double apart =
        std::abs(second.start_bearing - first.start_bearing) * radians_per_degree * 1.5;
    CHECK(apart >= 0.45 - 1e-9);
}

TEST_CASE("joints keep their lap wherever equal tubes or one tube more can") {
    // Against a plain search over all shifts: where it finds a lap, so must divide_run.
    int with_joints = 0;
    for (std::uint64_t seed = 1; seed <= 400; ++seed) {
        CAPTURE(seed);
        Dice dice(seed);
        const bool many = dice.chance(0.3);
        const double radius = dice.between(0.6, 4);
        const double longest = many ? dice.between(0.5, 1) : dice.between(1.5, 8);
        const double lap = dice.between(0.2, 0.6);
        const bool closed = dice.chance(0.4);
        const Ring ring = ring_of(radius, 0.38);
        Run run =
            run_of(closed ? 0 : dice.between(0, 359), closed ? 360 : dice.between(40, 350), radius);
        std::vector<double> below;
        const int joints = dice.whole(0, many ? 12 : 4);
        for (int i = 0; i < joints; ++i)
            below.push_back(dice.between(0, 360));
        divide_run(run, ring, rules(longest, lap), below, {dice.between(0, 360)},
                   dice.whole(1, 30));
        const double start = run.start_bearing;
        const auto nearest = [&](double degrees) { // metres to a joint below or to a cut
            double metres = 1e9;
            for (const double joint : below) {
                const double turn = clockwise_degrees({joint}, {degrees});
                metres = std::min(metres, std::min(turn, 360 - turn) * radians_per_degree * radius);
            }
            if (!closed)
                metres = std::min({metres, (degrees - start) * radians_per_degree * radius,
                                   (run.end_bearing - degrees) * radians_per_degree * radius});
            return metres;
        };
        const std::size_t count = run.tubes.size();
        for (std::size_t i = 0; i < count; ++i) {
            CHECK(run.tubes[i].length <= longest + 1e-9);
            const bool joint = closed || i + 1 < count;
            if (joint) {
                ++with_joints;
                CHECK(run.tubes[i].lap_short == (nearest(run.tubes[i].end_bearing) < lap - 1e-8));
            }
        }
        const bool is_short = std::any_of(run.tubes.begin(), run.tubes.end(),
                                          [](const LaidTube& tube) { return tube.lap_short; });
        if (!is_short)
            continue;
        const int least = static_cast<int>(std::ceil(run.length / longest - 1e-9));
        for (int pieces = std::max(1, least); pieces <= least + 1; ++pieces)
            for (int step = -500; step <= 500; ++step) {
                const double piece = run.length / pieces;
                const double shift =
                    step / 500.0 * (closed ? piece / 2 : std::min(longest - piece, piece));
                if (!closed && longest < piece)
                    continue;
                double worst = 1e9;
                for (int i = closed ? 0 : 1; i < pieces; ++i)
                    worst = std::min(worst, nearest(start + (i * piece + shift) /
                                                                (radius * radians_per_degree)));
                if (pieces > 1 || closed)
                    CHECK(worst < lap + 1e-9);
            }
    }
    CHECK(with_joints > 300);
}

TEST_CASE("the largest dome of the shortest tubes that a design may ask for is divided") {
    // A search over every joint of a ring against every joint below would take minutes here.
    Design design = store_design();
    design.openings.clear();
    design.domes[0].datum.clear();
    design.domes[0].inside_diameter = 30;
    design.domes[0].profile.rise = 30;
    design.course.longest_tube = 0.5;
    design.course.joint_lap = 0.2;
    design.course.height = 0.1;
    design.openings.push_back(opening("door", 150, 0.9, 0, 2.1, HeadKind::square));
    REQUIRE(check_layout(design).empty());
    const Schedule schedule = lay(design);
    CHECK(schedule.totals.courses > 300);
    std::size_t tubes = 0;
    for (const Course& course : schedule.courses)
        for (const Ring& ring : course.rings)
            for (const Run& run : ring.runs) {
                tubes += run.tubes.size();
                double sum = 0;
                for (const LaidTube& tube : run.tubes) {
                    REQUIRE((ring.kind == RingKind::cap || tube.length <= 0.5 + 1e-9));
                    sum += tube.length;
                }
                REQUIRE(sum == Approx(run.length).epsilon(1e-12));
            }
    CHECK(tubes > 30000);
}

namespace {

/// Bearings at which an opening's jambs stand in a ring of that radius.
std::vector<double> jambs_at(const Ring& ring, const BuildingForm& building, double radius) {
    std::vector<double> bearings;
    for (const Cut& cut : ring.cuts)
        for (const OpeningForm& opening : building.openings)
            if (opening.id == cut.by)
                bearings.push_back(opening.bearing.degrees +
                                   (cut.side == Side::left ? -1 : 1) *
                                       std::asin(cut.half_width / radius) / radians_per_degree);
    return bearings;
}

} // namespace

TEST_CASE(
    "no joint stands under a jamb or over one, or its tube says that it could not be helped") {
    // A perpend is kept away from the jamb that stands on it: common practice of masons, no source.
    for (const std::string& name :
         {std::string("grain-store"), std::string("cabin-metric"), std::string("workshop"),
          std::string("square-door"), std::string("washroom"), std::string("retreat")}) {
        CAPTURE(name);
        const BuildingPlan plan = demo_plan(name + ".toml");
        const double lap = plan.design.course.joint_lap;
        int joints = 0, flagged = 0;
        const std::vector<Course>& courses = plan.schedule.courses;
        for (std::size_t n = 0; n < courses.size(); ++n)
            for (const Ring& ring : courses[n].rings) {
                std::vector<double> jambs;
                for (const std::size_t other : {n - 1, n + 1})
                    if (other < courses.size())
                        for (const Ring& near : courses[other].rings)
                            if (near.dome == ring.dome && near.wythe == ring.wythe)
                                for (const double at :
                                     jambs_at(near, plan.schedule.building,
                                              other > n ? ring.centre_radius : near.centre_radius))
                                    jambs.push_back(at);
                for (const Run& run : ring.runs)
                    for (const LaidTube& tube : run.tubes) {
                        if (ring.kind == RingKind::cap ||
                            (!run.closed && &tube == &run.tubes.back()))
                            continue;
                        ++joints;
                        flagged += tube.lap_short;
                        CAPTURE(courses[n].number, tube.id);
                        for (const double at : jambs) {
                            const double turn = clockwise_degrees({tube.end_bearing}, {at});
                            const double apart = std::min(turn, 360 - turn) * radians_per_degree *
                                                 ring.centre_radius;
                            CHECK((tube.lap_short || apart > lap - 1e-6));
                        }
                    }
            }
        CHECK(joints > 3);
        CHECK(flagged * 5 <= joints);
    }
}
