#include "geometry/plan/lay.hpp"

#include "geometry/plan/check_layout.hpp"
#include "geometry/plan/section.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;

const Ring& ring(const Schedule& schedule, int course, std::size_t index = 0) {
    return schedule.courses.at(static_cast<std::size_t>(course) - 1).rings.at(index);
}

} // namespace

TEST_CASE("the store's base ring is as reckoned by hand") {
    const Schedule schedule = lay(store_design());
    const Ring& base = ring(schedule, 1);
    CHECK(base.inside_radius == Approx(54 * inch));
    CHECK(base.centre_radius == Approx(61.5 * inch));
    CHECK(base.outside_radius == Approx(69 * inch));
    REQUIRE(base.runs.size() == 1);
    CHECK(base.runs[0].closed);
    CHECK(base.runs[0].length == Approx(2 * pi * 61.5 * inch));
    CHECK(base.cuts.empty());
    CHECK(base.step_in == 0);
    CHECK(base.bearing_width == Approx(15 * inch));
    CHECK(base.contact_width == Approx(10 * inch)); // a stadium is flat on w - t only
    CHECK(schedule.courses[0].below_floor);
    CHECK_FALSE(schedule.courses[3].below_floor);
    // Pappus-Guldinus: section area times the path of its centroid.
    CHECK(schedule.courses[0].fill_volume ==
          Approx(stadium_area(15 * inch, 5 * inch) * 2 * pi * 61.5 * inch));
    // The chain hangs at the springline, 20 in, and reads to course 1's middle at -12.5 in.
    CHECK(base.chain == Approx(std::hypot(54.0, 32.5) * inch));
}

TEST_CASE("the door cuts the ring at asin(a / r) on each face") {
    const Schedule schedule = lay(store_design());
    const Ring& cut_ring = ring(schedule, 4); // first above the floor, plumb: r 54, a 16
    REQUIRE(cut_ring.cuts.size() == 2);
    const Cut& right = cut_ring.cuts[0]; // clockwise from the datum, which is the door itself
    const Cut& left = cut_ring.cuts[1];
    CHECK(right.side == Side::right);
    CHECK(right.letter == "A");
    CHECK(left.side == Side::left);
    const double degrees = std::asin(16.0 / 54) * 180 / pi;
    CHECK(right.inside_bearing == Approx(150 + degrees).epsilon(1e-12));
    CHECK(left.inside_bearing == Approx(150 - degrees).epsilon(1e-12));
    CHECK(right.centre_bearing == Approx(150 + std::asin(16 / 61.5) * 180 / pi).epsilon(1e-12));
    CHECK(right.outside_bearing == Approx(150 + std::asin(16.0 / 69) * 180 / pi).epsilon(1e-12));
    CHECK(right.inside_arc_from_datum == Approx(54 * inch * std::asin(16.0 / 54)));
    CHECK(left.inside_arc_from_datum == Approx(54 * inch * (2 * pi - std::asin(16.0 / 54))));
    CHECK(left.short_arc == Approx(right.short_arc));
    CHECK(left.short_way == Side::left);
    // The chord from the datum mark to the cut: 2 r sin(half the angle).
    CHECK(right.chord == Approx(2 * 54 * inch * std::sin(std::asin(16.0 / 54) / 2)));
    REQUIRE(cut_ring.runs.size() == 1);
    CHECK(cut_ring.runs[0].length ==
          Approx(61.5 * inch * (2 * pi - 2 * std::asin(16 / 61.5))).epsilon(1e-12));
}

TEST_CASE("the area that a hole takes from a ring equals the integral over the strip") {
    for (std::uint64_t seed = 1; seed <= 50; ++seed) {
        CAPTURE(seed);
        Dice dice(seed);
        const double r0 = dice.between(0.5, 4), r1 = r0 + dice.between(0.1, 0.6);
        const double a = r0 * dice.between(0.05, 0.98);
        // Midpoint rule on the depth of the wall along the strip.
        constexpr int parts = 20000;
        double area = 0;
        for (int i = 0; i < parts; ++i) {
            const double y = -a + (i + 0.5) * 2 * a / parts;
            area += (std::sqrt(r1 * r1 - y * y) - std::sqrt(r0 * r0 - y * y)) * 2 * a / parts;
        }
        CHECK(strip_area_in_ring(r0, r1, a) == Approx(area).epsilon(1e-6));
    }
    CHECK(strip_area_in_ring(2, 2.4, 0.5) == Approx(0.403557).epsilon(1e-6)); // reckoned
}

TEST_CASE("a closed dome is laid up to its cap, and step-ins sum to the radius") {
    const Schedule schedule = lay(store_design());
    double sum = 0;
    for (const Course& course : schedule.courses)
        sum += course.rings[0].step_in;
    CHECK(sum == Approx(54 * inch).epsilon(1e-12));
    CHECK(ring(schedule, schedule.totals.courses).kind == RingKind::cap);
    const Ring& cap = ring(schedule, 28);
    CHECK(cap.kind == RingKind::cap);
    CHECK(cap.inside_radius == 0);
    // Two courses below the apex at 128 in: the arc of 135 in about (-81, 20) stands 6.86 in from
    // the pole at 122.5 in, less than half a tube, so a disc of 21.86 in closes it: 3 bags of 14.57
    // in.
    CHECK(cap.outside_radius == Approx((std::sqrt(135.0 * 135 - 102.5 * 102.5) - 81 + 15) * inch));
    CHECK(cap.runs.at(0).tubes.size() == 3);
    CHECK(cap.bearing_width ==
          Approx(cap.outside_radius - ring(schedule, 27).inside_radius).epsilon(1e-12));
}

TEST_CASE("a skylight's curb stands plumb on the last ring") {
    Design design = store_design();
    design.domes[0].top.kind = TopKind::skylight;
    design.domes[0].top.diameter = 24 * inch;
    const Schedule schedule = lay(design);
    const int courses = schedule.totals.courses;
    CHECK(ring(schedule, courses).curb);
    CHECK(ring(schedule, courses).step_in == 0);
    CHECK(ring(schedule, courses).inside_radius == ring(schedule, courses - 2).inside_radius);
    CHECK_FALSE(ring(schedule, courses - 2).curb);
}

TEST_CASE("form, plates and strike notes stand on their courses") {
    const Schedule schedule = lay(store_design());
    const OpeningPlan& door = schedule.openings.at(0);
    CHECK(door.first_course == 4);
    // The innermost corner of its courses to the outermost, reckoned: see CHECK below.
    double innermost = 1e9, outermost = 0;
    for (int n = door.first_course; n <= door.last_course; ++n) {
        const double r = ring(schedule, n).inside_radius;
        const double a =
            half_width(door.form, schedule.courses[static_cast<std::size_t>(n) - 1].middle);
        innermost = std::min(innermost, std::sqrt(r * r - a * a));
        outermost = std::max(outermost, r + 15 * inch);
    }
    CHECK(door.least_form_depth == Approx(outermost - innermost + 0.05));
    CHECK(outermost / inch == Approx(69));
    CHECK(innermost / inch == Approx(40.9).margin(0.15));
    CHECK(door.clear_width == Approx((32 - 2 * 1.5) * inch));
    int forms = 0, strikes = 0, stays = 0;
    for (const Course& course : schedule.courses) {
        for (const SetNote& note : course.before)
            forms += note.what == "form";
        for (const SetNote& note : course.after) {
            strikes += note.what == "strike rule";
            stays += note.what == "form stays";
            if (note.what == "strike rule")
                CHECK(course.number == door.strike_after_course);
        }
    }
    CHECK(forms == 1);
    CHECK(strikes == 1);
    CHECK(stays == door.strike_after_course - door.last_course);
    // Three courses run unbroken above the head at 80 in.
    CHECK((door.strike_after_course - 3 - 3) * 5 >= 80);
}

TEST_CASE("cuts are lettered on past Z") {
    Design design = store_design();
    design.domes[0].inside_diameter = 9;
    design.openings.clear();
    for (int i = 0; i < 15; ++i)
        design.openings.push_back(
            opening(("w" + std::to_string(i)).c_str(), 24.0 * i, 0.3, 0, 0.6, HeadKind::square));
    design.domes[0].datum.clear();
    REQUIRE(check_layout(design).empty());
    const Ring ring = lay(design).courses[4].rings[0];
    REQUIRE(ring.cuts.size() == 30);
    CHECK(ring.cuts[0].letter == "A");
    CHECK(ring.cuts[25].letter == "Z");
    CHECK(ring.cuts[26].letter == "AA");
    CHECK(ring.cuts[29].letter == "AD");
}

TEST_CASE("every random design is refused with a diagnostic or laid with its invariants") {
    int laid = 0;
    for (std::uint64_t seed = 1; seed <= 3000; ++seed) {
        CAPTURE(seed);
        const Design design = random_design(seed);
        if (!check_layout(design).empty())
            continue;
        ++laid;
        const Schedule schedule = lay(design);
        double volume = 0, tubes_total = 0, cut_total = 0, wire = 0, wall = 0;
        for (const Course& course : schedule.courses) {
            double course_length = 0, course_cut = 0, course_fill = 0;
            for (const Ring& r : course.rings) {
                REQUIRE(r.fill_volume > 0);
                course_fill += r.fill_volume;
                REQUIRE(std::isfinite(r.inside_radius));
                REQUIRE(r.outside_radius > 0);
                REQUIRE(r.step_in >= -1e-12);
                REQUIRE(r.bearing_width >= 0);
                REQUIRE(r.contact_width <= r.bearing_width);
                if (r.kind == RingKind::cap) {
                    // No bag is wider than its tube lies tamped; with one less they would be.
                    const double bags = static_cast<double>(r.runs.at(0).tubes.size());
                    REQUIRE(2 * r.outside_radius <= bags * r.width + 1e-6);
                    REQUIRE((bags == 1 || 2 * r.outside_radius > (bags - 1) * r.width));
                }
                double turned_total = 0;
                for (const Run& run : r.runs) {
                    REQUIRE(run.length > 0);
                    REQUIRE(run.start_bearing >= 0);
                    REQUIRE(run.start_bearing < 360);
                    REQUIRE(run.end_bearing > run.start_bearing);
                    double sum = 0;
                    for (const LaidTube& tube : run.tubes) {
                        REQUIRE(tube.length > 0);
                        REQUIRE(tube.cut_length >= tube.length);
                        if (r.kind == RingKind::ring)
                            REQUIRE(tube.length <= design.course.longest_tube + 1e-9);
                        sum += tube.length;
                        course_cut += tube.cut_length;
                    }
                    REQUIRE(sum == Approx(run.length).epsilon(1e-12));
                    course_length += run.length;
                    if (r.kind == RingKind::ring) {
                        REQUIRE(run.length == Approx((run.end_bearing - run.start_bearing) *
                                                     radians_per_degree * r.centre_radius));
                        REQUIRE(run.tubes.front().start_bearing == run.start_bearing);
                        REQUIRE(run.tubes.back().end_bearing == run.end_bearing);
                    }
                    turned_total += run.end_bearing - run.start_bearing;
                }
                for (const Cut& cut : r.cuts) {
                    // From the datum mark the shorter way round, and straight.
                    const double round = 2 * pi * r.inside_radius, arc = cut.inside_arc_from_datum;
                    REQUIRE(cut.short_arc == Approx(std::min(arc, round - arc)).margin(1e-12));
                    REQUIRE((cut.short_way == Side::right) == (arc <= round / 2));
                    REQUIRE(cut.chord ==
                            Approx(2 * r.inside_radius * std::sin(arc / r.inside_radius / 2))
                                .margin(1e-12));
                }
                // Runs and gaps make up the circle; each cut point lies on the outline of its hole.
                std::size_t gaps = 0;
                for (const Cut& cut : r.cuts) {
                    ++gaps;
                    const Opening& hole = *find_opening(design, cut.by);
                    const double off = clockwise_degrees(hole.bearing, {cut.inside_bearing});
                    const double y = r.inside_radius * std::sin(off * radians_per_degree);
                    REQUIRE(std::abs(y) == Approx(cut.half_width).epsilon(1e-9));
                    REQUIRE((y > 0) == (cut.side == Side::right));
                    turned_total += half_angle_degrees(cut.half_width, r.centre_radius);
                }
                REQUIRE(gaps % 2 == 0);
                REQUIRE(turned_total == Approx(360).epsilon(1e-12));
                REQUIRE(r.runs.size() == std::max<std::size_t>(1, gaps / 2));
            }
            REQUIRE(course.tube_length == Approx(course_length).epsilon(1e-12));
            REQUIRE(course.cut_length == Approx(course_cut).epsilon(1e-12));
            REQUIRE(course.wire_length >= 0);
            REQUIRE(course.fill_volume == Approx(course_fill).epsilon(1e-12)); // no straights here
            REQUIRE(course.fill_volume < course.wall_area * schedule.course_height * 1.05 + 1e-3);
            tubes_total += course.tube_length;
            cut_total += course.cut_length;
            volume += course.fill_volume;
            wire += course.wire_length;
            wall += course.wall_area * schedule.course_height;
        }
        for (const DomeForm& dome : schedule.building.domes) {
            double sum = 0;
            for (const Course& course : schedule.courses)
                for (const Ring& r : course.rings)
                    if (r.dome == dome.id)
                        sum += r.step_in;
            const double left = dome.cap_courses > 0 ? 0 : dome.last_ring_radius;
            const double base = inside_radius(dome, dome.course_middle(1));
            REQUIRE(sum == Approx(base - left).margin(1e-12));
        }
        REQUIRE(schedule.totals.tube_length == Approx(tubes_total).epsilon(1e-12));
        REQUIRE(schedule.totals.cut_length == Approx(cut_total).epsilon(1e-12));
        REQUIRE(schedule.totals.fill_volume == Approx(volume).epsilon(1e-12));
        REQUIRE(schedule.totals.wire_length == Approx(wire).epsilon(1e-12));
        REQUIRE(schedule.totals.wall_volume == Approx(wall).epsilon(1e-12));
        REQUIRE(schedule.courses.back().wire_length == 0);
    }
    INFO("laid " << laid << " of 3000");
    CHECK(laid >= 1200);
}

TEST_CASE("turning, moving and mirroring a design leave its quantities as they are") {
    int laid = 0;
    for (std::uint64_t seed = 1; seed <= 300; ++seed) {
        CAPTURE(seed);
        const Design design = random_design(seed);
        if (!check_layout(design).empty())
            continue;
        ++laid;
        const Totals base = lay(design).totals;
        Design turned_design = design, mirrored = design;
        const double turn = Dice(seed).between(0, 360);
        for (Opening& hole : turned_design.openings)
            hole.bearing.degrees += turn;
        for (Opening& hole : mirrored.openings)
            hole.bearing.degrees = -hole.bearing.degrees;
        for (Dome& dome : turned_design.domes) {
            dome.at += Vec2(3.7, -12.1);
            // The datum must be the same element: name it in both.
            for (const Opening& hole : design.openings)
                if (hole.in == dome.id && dome.datum.empty())
                    dome.datum = hole.id;
        }
        Design named = design;
        for (std::size_t i = 0; i < named.domes.size(); ++i)
            mirrored.domes[i].datum = named.domes[i].datum = turned_design.domes[i].datum;
        const Totals same = lay(named).totals;
        CHECK(same.fill_volume == Approx(base.fill_volume).epsilon(1e-9));
        for (const Design& other : {turned_design, mirrored}) {
            const Totals totals = lay(other).totals;
            CHECK(totals.tube_length == Approx(same.tube_length).epsilon(1e-9));
            CHECK(totals.fill_volume == Approx(same.fill_volume).epsilon(1e-9));
            CHECK(totals.wall_volume == Approx(same.wall_volume).epsilon(1e-9));
            CHECK(totals.wire_length == Approx(same.wire_length).epsilon(1e-9));
        }
        CHECK(lay(turned_design).totals.cut_length == Approx(same.cut_length).epsilon(1e-9));
    }
    CHECK(laid > 100);
}

TEST_CASE("the courses' volume tends to the profile's integral as the courses get thin") {
    // Square-edged walls: the sum of wall_area t is the midpoint rule on the annulus, whose error
    // falls as t squared. Heights are chosen so that every t divides the stem and the last ring
    // ends at the same height; below the crown the curve is smooth.
    const double a = 1.4, h = 2.8, w = 0.3, stem = 0.48, upto = 1.92; // of the profile
    const Profile profile = pointed_profile(a, h);
    const auto area = [&](double y) {
        const double r = half_width(profile, y);
        return pi * ((r + w) * (r + w) - r * r);
    };
    // Exact: pi (2 w integral of x + w^2 upto) by the closed-form area.
    const double exact = pi * (w * area_between(profile, 0, upto) + w * w * upto) + area(0) * stem;
    double previous_error = 0;
    for (const int parts : {4, 8, 16, 32}) {
        Design design = store_design();
        design.openings.clear();
        design.domes[0].datum.clear();
        design.course.height = 0.48 / parts;
        design.course.foundation = 0;
        design.tubes[0].tamped_width = w;
        design.tubes[0].lay_flat = w + 0.45 * design.course.height;
        design.domes[0].inside_diameter = 2 * a;
        design.domes[0].springline = stem;
        design.domes[0].profile.rise = h;
        const Schedule schedule = lay(design);
        double sum = 0;
        for (const Course& course : schedule.courses)
            if (course.top <= stem + upto + 1e-9)
                sum += course.wall_area * design.course.height;
        const double error = std::abs(sum - exact);
        CAPTURE(parts, error);
        CHECK(error < 0.02 * exact);
        if (previous_error > 0)
            CHECK(previous_error / error == Approx(4).epsilon(0.05));
        previous_error = error;
    }
}

TEST_CASE("a form is struck at the age that the design states") {
    Design design = store_design();
    design.course.strike_age_days = 10;
    std::string rule;
    for (const Course& course : lay(design).courses)
        for (const SetNote& note : course.after)
            if (note.what == "strike rule")
                rule = note.text;
    CHECK(rule.find("10 days old") != std::string::npos);
    CHECK(rule.find("7 days") == std::string::npos);
}
