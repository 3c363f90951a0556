// Rules of the layout against numbers reckoned by hand or in another language from the rules alone,
// in inches: tunnels, piers, caps, wire, when forms are struck.
#include "geometry/plan/buttress_form.hpp"
#include "geometry/plan/lay.hpp"
#include "geometry/plan/practice.hpp"
#include "geometry/plan/set_notes.hpp"
#include "geometry/plan/tubes.hpp"
#include "geometry/plan/tunnel_form.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;
constexpr double inch3 = inch * inch * inch;

const Course& course_of(const Schedule& schedule, int n) {
    return schedule.courses.at(static_cast<std::size_t>(n) - 1);
}

std::vector<const Straight*> straights_of(const Schedule& schedule, int n, const std::string& id) {
    std::vector<const Straight*> found;
    for (const Straight& straight : course_of(schedule, n).straights)
        if (straight.of == id)
            found.push_back(&straight);
    return found;
}

const OpeningPlan& plan_of(const Schedule& schedule, const std::string& id) {
    for (const OpeningPlan& plan : schedule.openings)
        if (plan.form.id == id)
            return plan;
    throw std::runtime_error("no such opening");
}

bool has_code(const std::vector<Finding>& findings, const std::string& code,
              const std::string& subject) {
    for (const Finding& finding : findings)
        if (finding.code == code && finding.subject == subject)
            return true;
    return false;
}

/// The store with a door of that height and head, and a vent that goes up last.
Schedule with_last_vent(double height, HeadKind head,
                        const std::optional<LintelSpec>& lintel = {}) {
    Design design = store_design();
    design.openings = {opening("door", 150, 32 * inch, 0, height * inch, head),
                       opening("vent", 330, 8 * inch, 95 * inch, 10 * inch, HeadKind::square)};
    design.openings[0].use = OpeningUse::door;
    design.openings[0].head.lintel = lintel;
    if (head == HeadKind::round)
        design.openings[0].head.laid = HeadLaid::fan;
    return lay(design);
}

} // namespace

TEST_CASE("a form stays until the third course that runs unbroken over its head") {
    // Courses are 5 in high, the fourth lies on the floor: a head at 80 ends course 19, and 20, 21
    // and 22 run over it. 78-1/2 leaves a slot less than a course high, which course 19 is laid
    // over and no course runs unbroken below 80.
    CHECK(plan_of(with_last_vent(80, HeadKind::square), "door").last_course == 19);
    CHECK(plan_of(with_last_vent(80, HeadKind::square), "door").strike_after_course == 22);
    CHECK(plan_of(with_last_vent(78.5, HeadKind::square), "door").strike_after_course == 22);
    // A lintel's own courses stop at its ends: 5 in are course 20, 10 in course 20 and 21.
    for (const int depth : {5, 10}) {
        LintelSpec lintel;
        lintel.bearing = 12 * inch;
        lintel.depth = depth * inch;
        CAPTURE(depth);
        CHECK(plan_of(with_last_vent(80, HeadKind::square, lintel), "door").strike_after_course ==
              22 + depth / 5);
    }
    // Over a fan from its outer curve: 66 + 15 = 81, so the first whole course over it is 21.
    const Schedule fan = with_last_vent(66, HeadKind::round);
    CHECK(plan_of(fan, "door").strike_after_course == 23);
}

TEST_CASE("the datum and piers of a dome at the far end of a tunnel face the tunnel") {
    // From the west dome's pole the passage runs east, 90 degrees; from the east dome's, west.
    Design design = two_stores(20 * 0.3048, "");
    design.joins.clear();
    for (Opening& one : design.openings)
        one.bearing = {270};
    Tunnel passage = porch();
    passage.id = "passage";
    passage.bearing = {90};
    passage.to = "store2";
    passage.end_wall = false;
    design.tunnels = {passage};
    for (Dome& dome : design.domes)
        dome.datum.clear();
    design.domes[1].datum = "passage";
    Buttress pair = flank();
    pair.on = "store2";
    pair.beside = "passage";
    pair.bearings.clear();
    const DomeForm far = make_dome_form(design, design.domes[1]);
    CHECK(far.datum.degrees == Approx(270));
    CHECK(bearing_from(passage, "store")->degrees == Approx(90));
    CHECK_FALSE(bearing_from(passage, "door"));
    const std::vector<ButtressForm> piers = make_buttress_forms(design, pair, far);
    REQUIRE(piers.size() == 2);
    for (const ButtressForm& pier : piers)
        CHECK(std::abs(std::remainder(pier.bearing.degrees - 270, 360)) < 90);
    // None named: the smallest bearing, arriving tunnels among them.
    design.domes[1].datum.clear();
    design.openings.clear();
    CHECK(make_dome_form(design, design.domes[1]).datum.degrees == Approx(270));
}

TEST_CASE("piers beside an opening or a tunnel clear it by their gap") {
    CHECK(beside_degrees(16, 8, 54, 30) == Approx(40.8794).margin(1e-4));
    // Beside the porch: half its void 18 and its wall 15.
    CHECK(beside_degrees(33, 0, 54, 30) == Approx(51.5972).margin(1e-4));
}

TEST_CASE("a pier is as many tubes as its width asks for, and ends on a joint") {
    const Design design = store_with_porch();
    const DomeForm dome = make_dome_form(design, design.domes[0]);
    const auto made = [&](std::optional<double> width, double height) {
        Buttress pier = flank();
        pier.width.reset();
        if (width)
            pier.width = *width * inch;
        pier.height = height * inch;
        return make_buttress_forms(design, pier, dome).front();
    };
    CHECK(made({}, 40).tubes == 2);
    CHECK(made({}, 40).half_width / inch == Approx(15));
    CHECK(made(20, 40).tubes == 1);
    CHECK(made(40, 40).tubes == 3);
    const std::vector<PierTube> three = pier_tubes(made(40, 40), 4);
    REQUIRE(three.size() == 3);
    for (std::size_t i = 0; i < 3; ++i)
        CHECK(three[i].across / inch ==
              Approx(13.333333 * (static_cast<double>(i) - 1)).margin(1e-4));
    for (const auto& [height, top] :
         {std::pair{37.5, 35.0}, {37.625, 40.0}, {42.0, 40.0}, {43.0, 45.0}})
        CHECK(made({}, height).top / inch == Approx(top));
}

TEST_CASE("wire of straights follows what the course above covers, and rings run through bonds") {
    const Schedule schedule = lay(store_with_porch());
    const auto wire = [&](int n) { return course_of(schedule, n).wire_length / inch; };
    CHECK(wire(1) ==
          Approx(2 * (2 * pi * 61.5 + 24) + 4 * (114 - std::sqrt(69 * 69 - 25.5 * 25.5) + 30) +
                 8 * (99 - std::sqrt(69 * 69 - 7.5 * 7.5) + 30)));
    CHECK(wire(1) == Approx(1623.642).margin(1e-3));
    CHECK(wire(4) == Approx(1535.327).margin(1e-3));
    CHECK(wire(5) == Approx(1520.327).margin(1e-3));
}

TEST_CASE("a wall under a vault's crown has the wire of the one tube that lies on it") {
    // Two strands over what the crown's nearer tube covers, and a tail of a tube's width at both
    // ends.
    const Schedule schedule = lay(store_with_porch());
    const std::vector<const Straight*> walls = straights_of(schedule, 19, "porch");
    const std::vector<const Straight*> crown = straights_of(schedule, 20, "porch");
    REQUIRE(walls.size() == 2);
    REQUIRE(crown.size() == 2);
    for (const Straight* wall : walls) {
        const double from = std::max(wall->start_distance, crown[0]->start_distance);
        CHECK(wall->wire_length / inch == Approx(2 * (114 - from / inch + 30)));
    }
}

TEST_CASE("a crown tube has the wire of the one tube of the next crown that is nearest to it") {
    int fewer = 0;
    for (int width = 40; width <= 70; width += 2) {
        CAPTURE(width);
        Design design = store_with_porch();
        design.tunnels[0].width = width * inch;
        design.tunnels[0].profile.kind = ProfileKind::round;
        design.tunnels[0].profile.rise.reset();
        design.tunnels[0].reach = 130 * inch;
        const Schedule schedule = lay(design);
        const TunnelForm& vault = schedule.building.tunnels.at(0);
        for (int n = vault.side_courses + 1; n < vault.side_courses + vault.crown_courses; ++n) {
            const auto lower = straights_of(schedule, n, "porch");
            const auto upper = straights_of(schedule, n + 1, "porch");
            fewer += lower.size() > upper.size();
            for (const Straight* tube : lower) {
                const double covered = std::min(tube->end_distance, upper[0]->end_distance) -
                                       std::max(tube->start_distance, upper[0]->start_distance);
                CHECK(tube->wire_length == Approx(2 * (covered + 2 * tube->width)).epsilon(0.01));
            }
        }
    }
    CHECK(fewer > 0);
}

TEST_CASE("straight tubes are equal, keep their lap and are cut for their longer edge") {
    CourseRules rules;
    rules.height = 0.127;
    rules.longest_tube = 3;
    rules.joint_lap = 0.45;
    Straight straight;
    straight.length = 10;
    straight.end_distance = 10;
    divide_straight(straight, rules, {}, 1);
    REQUIRE(straight.tubes.size() == 4);
    for (const LaidTube& tube : straight.tubes)
        CHECK(tube.length == Approx(2.5));
    divide_straight(straight, rules, {2.5, 5, 7.5}, 2);
    double at = 0;
    for (std::size_t i = 0; i + 1 < straight.tubes.size(); ++i) {
        at += straight.tubes[i].length;
        for (const double below : {2.5, 5.0, 7.5})
            CHECK(std::abs(at - below) >= 0.45 - 1e-9);
        CHECK_FALSE(straight.tubes[i].lap_short);
    }
    // The piers of the porch's store: from the ring's face at 7.5 in off their axis to 98.0625, the
    // edge at 15 in off it; 8 in at both ends.
    const Schedule schedule = lay(store_with_porch());
    const double outer = 98.0625;
    for (const Straight* pier : straights_of(schedule, 4, "flank-1")) {
        CHECK(pier->length / inch == Approx(44.586).margin(1e-3));
        CHECK(pier->tubes[0].cut_length / inch ==
              Approx(outer - std::sqrt(54.0 * 54 - 15 * 15) + 16).margin(1e-3));
    }
    for (const Straight* pier : straights_of(schedule, 9, "flank-1"))
        CHECK(pier->tubes[0].cut_length / inch == Approx(37.551).margin(1e-3));
}

TEST_CASE("a vault's crown is solid: its tubes, their place and its plan") {
    Design design = store_with_porch();
    const Schedule schedule = lay(design);
    const std::vector<const Straight*> crown = straights_of(schedule, 20, "porch");
    REQUIRE(crown.size() == 2);
    for (const Straight* straight : crown)
        CHECK(straight->length / inch == Approx(60.7265).margin(1e-3));
    CHECK(course_of(schedule, 20).wall_area / (inch * inch) == Approx(5917.63).margin(0.02));
    // Its form until the crown, course 20, and the third ring of the dome that runs over the hole,
    // which ends at 81 in: 20, 21, 22.
    const VaultForm form = plan_vault_form(schedule.building.tunnels[0], schedule.building);
    CHECK(form.set_before_course == 13);
    CHECK(form.strike_after_course == 22);
    // A round vault 36 in wide: its crown is as wide as the arc's chord grows outward, not as the
    // formula would go on.
    design.tunnels[0].profile.kind = ProfileKind::round;
    design.tunnels[0].springline = 45 * inch;
    const TunnelForm round = make_tunnel_form(design, design.tunnels[0]);
    CHECK(round.side_courses == 16);
    CHECK(round.crown_courses == 1);
    CHECK(outer_half_width(round, round.course_middle(17)) / inch == Approx(10.4743).margin(1e-3));
    // 20.95 in across: no one tube of 15 lies so wide.
    CHECK(straights_of(lay(design), 17, "porch").size() == 2);
}

TEST_CASE("a course over a vault that leaves less than its height runs on, in tubes and in plan") {
    // Springline 47-1/2: course 20's void is 2 * 1.284 in wide, under the 5 in of a course.
    Design design = store_with_porch();
    design.tunnels[0].springline = 47.5 * inch;
    const Schedule schedule = lay(design);
    const Course& course = course_of(schedule, 20);
    for (const Cut& cut : course.rings[0].cuts)
        CHECK(cut.by != "porch");
    CHECK(course.wall_area / (inch * inch) == Approx(6187.93).margin(0.05));
}

TEST_CASE("the plan of a leaning course with a tunnel and piers adds up") {
    CHECK(course_of(lay(store_with_porch()), 9).wall_area / (inch * inch) ==
          Approx(7477.76).margin(0.02));
}

TEST_CASE("openings in a tunnel have forms as deep as its walls lean, and a band") {
    Design design = store_with_porch();
    design.tunnels[0].reach = 160 * inch;
    design.tunnels[0].end_wall = true;
    Opening gate = in_porch("gate", TunnelSide::end, 0, 16 * inch, 0, 40 * inch, HeadKind::pointed);
    gate.head.rise = 14 * inch;
    Opening side = in_porch("side", TunnelSide::left, 115 * inch, 16 * inch, 40 * inch, 20 * inch,
                            HeadKind::pointed);
    side.head.rise = 14 * inch;
    design.openings.push_back(gate);
    design.openings.push_back(side);
    const Schedule schedule = lay(design);
    const OpeningPlan& in_end = plan_of(schedule, "gate");
    CHECK(in_end.least_form_depth == Approx(15 * inch + 0.05));
    CHECK(in_end.frame_band_start / inch == Approx(145));
    CHECK(in_end.frame_band_end / inch == Approx(160));
    const OpeningPlan& in_side = plan_of(schedule, "side");
    CHECK(in_side.least_form_depth == Approx(16.771 * inch + 0.05).margin(2e-5));
    CHECK(in_side.frame_band_start / inch == Approx(18).margin(1e-3));
    CHECK(in_side.frame_band_end / inch == Approx(31.229).margin(1e-3));
}

TEST_CASE("clear sizes are what plaster and frame leave, on both sides but a door's foot") {
    Design design = store_design();
    design.finish.inside_plaster = 1.5 * inch;
    Opening door = opening("door", 150, 32 * inch, 0, 80 * inch, HeadKind::square);
    door.frame = 1 * inch;
    for (const OpeningUse use : {OpeningUse::door, OpeningUse::window}) {
        door.use = use;
        design.openings = {door};
        const OpeningPlan plan = plan_of(lay(design), "door");
        CHECK(plan.clear_width / inch == Approx(27));
        CHECK(plan.clear_height / inch == Approx(use == OpeningUse::door ? 77.5 : 75));
    }
}

TEST_CASE("two rings of two tubes hold their stadiums and their wire") {
    Design design = store_design();
    design.openings.clear();
    TubeType wide = design.tubes[0];
    wide.id = "wide";
    wide.tamped_width = 20 * inch;
    design.tubes.push_back(wide);
    design.domes[0].lower_tube = "wide";
    design.domes[0].lower_height = 30 * inch;
    design.domes[0].second_wythe = 60 * inch;
    const Schedule schedule = lay(design);
    const Course& course = course_of(schedule, 1);
    REQUIRE(course.rings.size() == 2);
    const auto stadium = [](double w, double t) { return (w - t) * t + pi * t * t / 4; };
    CHECK(course.fill_volume / inch3 ==
          Approx(stadium(20, 5) * 2 * pi * 64 + stadium(15, 5) * 2 * pi * 81.5));
    CHECK(course.wire_length / inch == Approx(2 * (2 * pi * 64 + 24) + 2 * (2 * pi * 81.5 + 24)));
}

TEST_CASE("bags of a cap are cut for their longest edge") {
    // Three bags side by side on a disc of radius R: the middle one is cut for the whole diameter,
    // the others for the chord at their edge nearer to the pole, R/3 off it.
    const Schedule schedule = lay(store_design());
    int bags = 0;
    for (const Course& course : schedule.courses)
        for (const Ring& ring : course.rings) {
            if (ring.kind != RingKind::cap)
                continue;
            const double radius = ring.outside_radius;
            const auto count = static_cast<double>(ring.runs[0].tubes.size());
            for (std::size_t i = 0; i < ring.runs[0].tubes.size(); ++i) {
                const double middle = (2 * static_cast<double>(i) + 1 - count) * radius / count;
                const double low = middle - radius / count, high = middle + radius / count;
                const double near =
                    low < 0 && high > 0 ? 0 : std::min(std::abs(low), std::abs(high));
                CHECK(ring.runs[0].tubes[i].cut_length ==
                      Approx(2 * std::sqrt(radius * radius - near * near) + 16 * inch));
                ++bags;
            }
        }
    CHECK(bags > 1);
}

TEST_CASE("joints that lose their lap are told, in rings and in straight walls") {
    Design design = store_with_porch();
    CHECK_FALSE(
        has_code(practice_findings(design, lay(design)), "joint-lap-short", "tunnel.porch"));
    design.course.longest_tube = 40 * inch;
    design.course.joint_lap = 24 * inch;
    const std::vector<Finding> findings = practice_findings(design, lay(design));
    CHECK(has_code(findings, "joint-lap-short", "dome.store"));
    CHECK(has_code(findings, "joint-lap-short", "tunnel.porch"));
}

TEST_CASE("a hole too wide for a cap's bags fails") {
    Design design = store_design();
    CHECK_FALSE(has_code(practice_findings(design, lay(design)), "cap-hole", "dome.store"));
    design.course.least_inside_radius = 16 * inch; // rings end at 17.33 in: 34.66 over 30
    const std::vector<Finding> findings = practice_findings(design, lay(design));
    CHECK(has_code(findings, "cap-hole", "dome.store"));
    for (const auto& [least, last] : {std::pair{16.0, 26}, {12.0, 27}, {5.0, 28}}) {
        design.course.least_inside_radius = least * inch;
        CHECK(make_dome_form(design, design.domes[0]).last_ring == last);
    }
}

TEST_CASE("a lintel in the leaning wall is told of, not in the plumb one nor in a tunnel") {
    const auto told = [](double top) {
        Design design = store_design();
        LintelSpec lintel;
        lintel.bearing = 12 * inch;
        Opening low = opening("hatch", 150, 16 * inch, 0, top * inch, HeadKind::square);
        low.head.lintel = lintel;
        design.openings = {low};
        return has_code(practice_findings(design, lay(design)), "lintel-above-springline",
                        "opening.hatch");
    };
    CHECK_FALSE(told(20));
    CHECK(told(20.1));
}
