// A dome's courses as the statics sees them, and the wedges made of them.
#include "geometry/base/quantity.hpp"
#include "geometry/plan/lay.hpp"
#include "geometry/plan/section.hpp"
#include "geometry/statics/dome_slice.hpp"
#include "geometry/statics/materials.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;

std::vector<WallCourse> courses_of(const Design& design, const DomeLoads& loads = {}) {
    const BuildingForm building = make_building_form(design);
    return dome_courses(design, building, building.domes.front(), loads);
}

Design closed_store() {
    Design design = store_design();
    design.openings.clear();
    design.domes.front().datum.clear();
    return design;
}

/// All lengths of the store by k.
Design scaled_store(double k) {
    Design design = store_design();
    for (double* length :
         {&design.course.height, &design.tubes[0].lay_flat, &*design.tubes[0].tamped_width,
          &design.domes[0].inside_diameter, &design.domes[0].springline,
          &*design.domes[0].profile.rise, &design.openings[0].width, &design.openings[0].height,
          &*design.openings[0].head.rise, &design.ground.level})
        *length *= k;
    return design;
}

} // namespace

TEST_CASE("fill of a course: density times the volume that the schedule counts") {
    Design design = closed_store();
    const Schedule schedule = lay(design);
    const std::vector<WallCourse> courses = courses_of(design);
    REQUIRE(courses.size() == schedule.courses.size());
    for (std::size_t i = 0; i < courses.size(); ++i) {
        if (courses[i].cap)
            continue;
        CAPTURE(i);
        CHECK(courses[i].weight * 2 * pi ==
              Approx(1762 * standard_gravity * schedule.courses[i].fill_volume).epsilon(1e-9));
    }
}

TEST_CASE("centre of a course's mass: by strips across the stadium") {
    const std::vector<WallCourse> courses = courses_of(closed_store());
    const double t = 5 * inch, w = 15 * inch, inside = 54 * inch;
    double area = 0, first = 0, second = 0;
    const int strips = 200000;
    for (int i = 0; i < strips; ++i) {
        const double x = (i + 0.5) * w / strips; // from the inner face
        const double into_round = std::max({0.0, t / 2 - x, x - (w - t / 2)});
        const double high = 2 * std::sqrt(t * t / 4 - into_round * into_round);
        area += high;
        first += high * (inside + x);
        second += high * (inside + x) * (inside + x);
    }
    CHECK(area * w / strips == Approx(stadium_area(w, t)).epsilon(1e-6));
    CHECK(courses[0].mass_radius == Approx(second / first).epsilon(1e-8));
    // A tube as good as square comes to the sector of a ring.
    CHECK(courses[0].mass_radius < sector_mass_radius(54 * inch, 69 * inch));
    CHECK(courses[0].mass_radius > 61.5 * inch);
    CHECK(sector_mass_radius(2.0, 2.4) == Approx(2.206061).epsilon(0).margin(1e-6));
    CHECK(sector_mass_radius(0, 3) == Approx(2)); // a sector of a disc
}

TEST_CASE("joints carry between the flats, as the schedule says") {
    Design design = closed_store();
    for (const TubeEdge edge : {TubeEdge::round, TubeEdge::square}) {
        design.course.edge = edge;
        const Schedule schedule = lay(design);
        const std::vector<WallCourse> courses = courses_of(design);
        for (std::size_t i = 0; i < courses.size(); ++i) {
            CAPTURE(i);
            CHECK(courses[i].contact_width() ==
                  Approx(schedule.courses[i].rings[0].contact_width).epsilon(1e-12));
        }
    }
    design.course.edge = TubeEdge::round;
    const std::vector<WallCourse> courses = courses_of(design);
    // Course 1 stands on the ground with its flat, from 54 + 2.5 to 69 - 2.5 in.
    CHECK(courses[0].contact_inner == Approx(56.5 * inch));
    CHECK(courses[0].contact_outer == Approx(66.5 * inch));
    CHECK_FALSE(first_without_contact(courses));
    // A flat crown steps in by more than a tube is wide.
    design.domes[0].profile.kind = ProfileKind::parabola;
    design.domes[0].profile.rise = 30 * inch;
    CHECK(first_without_contact(courses_of(design)));
}

TEST_CASE("plaster and snow weigh what their volume and plan say") {
    Design design = closed_store();
    const std::vector<WallCourse> bare = courses_of(design);
    design.finish.inside_plaster = 1.5 * inch;
    design.finish.outside_plaster = 2 * inch;
    design.ground.level = -1; // all of the wall stands out of the ground
    const std::vector<WallCourse> plastered = courses_of(design);
    // Of a plumb course: thickness and grooves on each face, 1700 kg/m3; the inside from the floor
    // up.
    const double t = 5 * inch, groove = (1 - pi / 4) * t * t / 2;
    const double outside = (2 * inch * t + groove) * 69 * inch,
                 inside = (1.5 * inch * t + groove) * 54 * inch;
    CHECK(plastered[0].weight - bare[0].weight ==
          Approx(1700 * standard_gravity * outside).epsilon(1e-9));
    CHECK(plastered[4].weight - bare[4].weight ==
          Approx(1700 * standard_gravity * (outside + inside)).epsilon(1e-9));
    CHECK(courses_of(design, {false, false})[4].weight == Approx(bare[4].weight));
    // The whole of it: surface of the dome times thickness, and what fills the steps.
    double sum = 0;
    for (std::size_t i = 0; i < bare.size(); ++i)
        sum += plastered[i].weight - bare[i].weight;
    const DomeForm form = make_dome_form(design, design.domes[0]);
    const double skin = surface_between(form.profile, 0, form.profile.rise) / (2 * pi);
    CHECK(sum > 1700 * standard_gravity * skin * 3.5 * inch);
    CHECK(sum < 3 * 1700 * standard_gravity * skin * 3.5 * inch);

    design.site.snow = 957.6;
    const std::vector<WallCourse> snowed = courses_of(design, {true, true});
    double snow = 0;
    for (const WallCourse& course : snowed)
        snow += course.snow_weight;
    // All of the plan within the base ring, a radian of it.
    CHECK(snow == Approx(957.6 * 69 * 69 * inch * inch / 2).epsilon(1e-9));
    CHECK(snowed[10].weight == Approx(plastered[10].weight + snowed[10].snow_weight));
    CHECK(snowed[10].mass_radius > plastered[10].mass_radius);
}

TEST_CASE("glazing stands on the top ring of a skylight") {
    Design design = closed_store();
    design.domes[0].top.kind = TopKind::skylight;
    design.domes[0].top.diameter = 40 * inch;
    const std::vector<WallCourse> bare = courses_of(design);
    design.domes[0].top.glazing_load = 700;
    const std::vector<WallCourse> glazed = courses_of(design);
    const double r = (bare.back().inside + bare.back().outside) / 2;
    CHECK(glazed.back().weight - bare.back().weight == Approx(700 * r)); // a radian of the ring
    CHECK(glazed.back().mass_radius < bare.back().mass_radius);          // on the ring's middle
    CHECK(glazed.back().mass_radius > r);
    CHECK(glazed[bare.size() - 2].weight == bare[bare.size() - 2].weight);
}

TEST_CASE("fills, strengths and wire of the design count; defaults say so") {
    Design design = closed_store();
    CHECK_FALSE(fill_density(design, 1).stated);
    CHECK(fill_density(design, 1).value == 1762);
    CHECK(fill_strength(design, 1).value == 0.297e6);
    Fill base;
    base.id = "base";
    base.courses = {{1, 3}};
    base.density = 2000;
    Fill main;
    main.id = "main";
    main.dry_density = 1600;
    main.strength = 1e6;
    design.fills = {base, main};
    CHECK(fill_density(design, 3).value == 2000);
    CHECK(fill_density(design, 4).value == 1600);
    CHECK(fill_density(design, 4).stated);
    CHECK_FALSE(fill_strength(design, 3).stated);
    CHECK(courses_of(design)[3].strength == 1e6);
    CHECK(courses_of(design)[2].weight / courses_of(design)[3].weight == Approx(2000.0 / 1600));

    CHECK(wire_tension(design, design.tubes[0]) == 0);
    design.wire.hoop_tension = true;
    CHECK(wire_tension(design, design.tubes[0]) == Approx(4225.8)); // 2 strands, laps carry half
    design.tubes[0].lay_flat = 11 * inch;
    CHECK(wire_tension(design, design.tubes[0]) == Approx(4225.8 / 2));
    design.wire.strands = 4;
    CHECK(wire_tension(design, design.tubes[0]) == Approx(2 * 4225.8));
}

TEST_CASE("openings break the rings of their courses and take their share of the strip beside") {
    const std::vector<WallCourse> courses = courses_of(store_design());
    // The door: 0 to 80 in, courses 4 to 19; 32 in wide, so asin(16 / 61.5) to either side.
    CHECK(courses[2].gaps.empty());
    REQUIRE(courses[3].gaps.size() == 1);
    CHECK(courses[3].gaps[0].by == "door");
    CHECK(courses[3].open_share == Approx(2 * std::asin(16 / 61.5) / (2 * pi)).epsilon(1e-9));
    CHECK(courses[19].gaps.empty());
    CHECK(gap_ids(courses) == std::vector<std::string>{"door"});
    const std::vector<double> kept = kept_beside(courses, "door");
    CHECK(kept[2] == 1);
    // Its widest angle is at the springing of its head, and as much wall as opening stands beside
    // it.
    CHECK(*std::min_element(kept.begin(), kept.end()) == Approx(0.5));
    CHECK(kept[3] > 0.5);
    CHECK(kept[3] < 0.6);

    DomeSlice what;
    const Slice whole = dome_slice(courses, what);
    CHECK(whole.blocks.size() == courses.size() - 2); // three discs of the cap are one block
    const auto block = [&](const Slice& slice, int course) {
        return slice.blocks[static_cast<std::size_t>(joint_under(courses, what, course) - 1)];
    };
    CHECK(block(whole, 3).hoop_limit == unlimited);
    CHECK(block(whole, 4).hoop_limit == 0);
    CHECK(block(whole, 4).weight == Approx(courses[3].weight));
    what.beside = "door";
    CHECK(block(dome_slice(courses, what), 4).weight == Approx(courses[3].weight * kept[3]));
    what.ignore_gaps = true;
    CHECK(block(dome_slice(courses, what), 4).hoop_limit == unlimited);
    // The cap: all its weight, on the joint under its lowest disc.
    const Slice top = dome_slice(courses, {});
    double cap = 0;
    for (const WallCourse& course : courses)
        cap += course.cap ? course.weight : 0;
    CHECK(top.blocks[0].weight == Approx(cap));
    CHECK(top.joints[1].inner.x() == Approx(courses[27].contact_inner));
    CHECK(joint_under(courses, {}, 30) == 1);
    CHECK(joint_under(courses, {}, 28) == 1);
    CHECK(joint_under(courses, {}, 27) == 2);
    CHECK(joint_under(courses, {}, 1) == 28);
}

TEST_CASE("a second window near by leaves the strip beside the first less wall") {
    Design design = store_design();
    const double alone = kept_beside(courses_of(design), "door")[3];
    design.openings.push_back(
        opening("near", 190, 20 * inch, 30 * inch, 30 * inch, HeadKind::round));
    std::sort(design.openings.begin(), design.openings.end(),
              [](const Opening& a, const Opening& b) { return a.id < b.id; });
    const std::vector<WallCourse> courses = courses_of(design);
    CHECK(kept_beside(courses, "door")[3] < alone);
    // Half the way to the window, from jamb to jamb where they are nearest, stands beside the door.
    double half = 0, way = 360;
    for (const WallCourse& course : courses) {
        const double r = (course.inside + course.outside) / 2;
        double door = 0, near = 0;
        for (const RingGap& gap : course.gaps)
            (gap.by == "door" ? door : near) = std::asin(gap.half_width / r) * 180 / pi;
        half = std::max(half, door);
        if (door > 0 && near > 0)
            way = std::min(way, 40 - door - near); // bearings 150 and 190
    }
    REQUIRE(way / 2 < half);
    const double at_floor = std::asin(16 / 61.5) * 180 / pi;
    CHECK(kept_beside(courses, "door")[3] == Approx(1 - at_floor / (half + way / 2)).epsilon(1e-9));
    CHECK(gap_ids(courses) == std::vector<std::string>{"door", "near"});
}

TEST_CASE("openings, ties, friction: nothing that weakens helps, nothing that helps weakens") {
    Design design = store_design();
    const std::vector<WallCourse> courses = courses_of(design);
    DomeSlice closed, broken, beside;
    closed.ignore_gaps = true;
    beside.beside = "door";
    const double closed_share = centred_thrust(dome_slice(courses, closed)).share;
    const double broken_share = centred_thrust(dome_slice(courses, broken)).share;
    const double beside_share = centred_thrust(dome_slice(courses, beside)).share;
    CHECK(closed_share < 1);
    CHECK(broken_share >= closed_share - 1e-9);
    CHECK(beside_share >= broken_share - 1e-9);

    design.wire.hoop_tension = true;
    const std::vector<WallCourse> tied = courses_of(design);
    for (const DomeSlice& what : {closed, broken, beside}) {
        const CentredThrust with = centred_thrust(dome_slice(tied, what));
        CHECK(with.share <= centred_thrust(dome_slice(courses, what)).share + 1e-9);
        DomeSlice without = what;
        without.ties = false;
        CHECK(centred_thrust(dome_slice(tied, without)).share ==
              Approx(centred_thrust(dome_slice(courses, what)).share));
    }
    // Wire takes thrust off the ground.
    const int base = joint_under(courses, closed, 1);
    closed.friction = closed.ground_friction = 0.6;
    CHECK(least_thrust(dome_slice(tied, closed), base).joints.back().thrust() <
          0.9 * least_thrust(dome_slice(courses, closed), base).joints.back().thrust());
    double before = 0;
    for (const double friction : {0.0, 0.2, 0.4, 0.6, 1.5, unlimited}) {
        closed.friction = friction;
        const ThrustLine line = greatest_thrust(dome_slice(courses, closed), base - 3);
        if (friction == 0)
            CHECK_FALSE(line.stands);
        if (!line.stands)
            continue;
        const double now = line.joints[static_cast<std::size_t>(base - 3)].thrust();
        CHECK(now >= before - 1e-3);
        before = now;
    }
    CHECK(before > 0);
}

TEST_CASE("a store twice the size stands as this one does and pushes eight times as hard") {
    const std::vector<WallCourse> one = courses_of(store_design()),
                                  two = courses_of(scaled_store(2));
    REQUIRE(one.size() == two.size());
    DomeSlice what;
    what.beside = "door";
    what.friction = 0.6;
    CHECK(centred_thrust(dome_slice(two, what)).share ==
          Approx(centred_thrust(dome_slice(one, what)).share).epsilon(1e-6));
    const int base = joint_under(one, what, 1);
    CHECK(
        least_thrust(dome_slice(two, what), base).joints.back().thrust() ==
        Approx(8 * least_thrust(dome_slice(one, what), base).joints.back().thrust()).epsilon(1e-6));
}

TEST_CASE("domes at random: every state keeps to its contacts, whole rings beat broken ones") {
    int stood = 0;
    for (std::uint64_t seed = 1; seed <= 80; ++seed) {
        CAPTURE(seed);
        const Design design = random_design(seed);
        const std::vector<WallCourse> courses = courses_of(design);
        if (courses.empty() || first_without_contact(courses))
            continue;
        DomeSlice what;
        const CentredThrust broken = centred_thrust(dome_slice(courses, what));
        what.ignore_gaps = true;
        const CentredThrust whole = centred_thrust(dome_slice(courses, what));
        REQUIRE(whole.line.stands);
        CHECK(whole.share <= broken.share + 1e-7);
        double above = 0, weight = 0;
        for (const WallCourse& course : courses)
            weight += course.weight;
        for (std::size_t j = 1; j < whole.line.joints.size(); ++j) {
            above += dome_slice(courses, what).blocks[j - 1].weight;
            CHECK(whole.line.joints[j].normal == Approx(above).epsilon(1e-7));
            CHECK(std::abs(whole.line.joints[j].reach) <= whole.share * (1 + 1e-6) + 1e-9);
        }
        CHECK(above == Approx(weight));
        ++stood;
    }
    CHECK(stood > 15);
}

TEST_CASE("a bank against the wall: earth at rest, and what the design must say of it") {
    Design design = closed_store();
    CHECK_FALSE(bank_against_wall(design));
    design.ground.level = 0.5; // the wall is plumb up to 0.508 m
    CHECK(bank_against_wall(design));
    CHECK_FALSE(bank_known(design));
    CHECK(courses_of(design)[4].earth_push == 0);
    design.ground.unit_weight = 18e3;
    design.ground.friction_angle = 30;
    REQUIRE(bank_known(design));
    // Jaky: K0 = 1 - sin 30 = 1/2; 9 kPa at a depth of 1 m.
    CHECK(bank_pressure(design, 1) == Approx(9e3));
    const std::vector<WallCourse> courses = courses_of(design);
    // Above the floor a triangle of 0.5 m: K0 g h2/2 on 69 in, a third of the way up.
    double push = 0, moment = 0, below = 0;
    for (const WallCourse& course : courses) {
        if (course.bottom < -1e-9) {
            below += course.earth_push;
            continue;
        }
        push += course.earth_push;
        moment += course.earth_push * course.earth_height;
    }
    CHECK(push == Approx(9e3 * 0.25 / 2 * 69 * inch).epsilon(1e-9));
    CHECK(moment / push == Approx(0.5 / 3).epsilon(1e-9));
    // Below it the same pressure all the way: 15 in.
    CHECK(below == Approx(9e3 * 0.5 * 15 * inch * 69 * inch).epsilon(1e-9));
    CHECK(courses_of(design, {true, false, false})[4].earth_push == 0);
    // It pushes in, so the ground has less to hold. Rings take it well.
    const Slice banked = dome_slice(courses);
    const auto ground = static_cast<int>(banked.blocks.size());
    REQUIRE(least_thrust(banked, ground).stands);
    CHECK(least_thrust(banked, ground).joints.back().thrust() <
          least_thrust(dome_slice(courses_of(closed_store())), ground).joints.back().thrust());
}
