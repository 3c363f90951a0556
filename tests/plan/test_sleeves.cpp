#include "geometry/plan/lay.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <map>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;

/// Half-widths of the cuts by an element in course n, in inches; none where it is not cut.
std::vector<double> cut_at(const Schedule& schedule, int n, const std::string& by) {
    std::vector<double> widths;
    for (const Ring& ring : schedule.courses.at(static_cast<std::size_t>(n) - 1).rings)
        for (const Cut& cut : ring.cuts)
            if (cut.by == by)
                widths.push_back(cut.half_width / inch);
    return widths;
}

} // namespace

TEST_CASE(
    "tubes stop either side of a sleeve from half a course on; a smaller one lies on a joint") {
    Design design = store_design();
    design.sleeves = {sleeve("drain", 300, -8 * inch, 4 * inch),
                      sleeve("wires", 20, 17 * inch, 2 * inch),
                      sleeve("duct", 250, 12 * inch, 2.5 * inch)};
    const Schedule schedule = lay(design);
    // -8 in lies in course 2, from -10 to -5 in: below the floor, where nothing else cuts.
    CHECK(cut_at(schedule, 2, "drain") == std::vector<double>{2, 2});
    CHECK(cut_at(schedule, 1, "drain").empty());
    CHECK(cut_at(schedule, 3, "drain").empty());
    CHECK(cut_at(schedule, 6, "duct") == std::vector<double>{1.25, 1.25}); // 10 to 15 in
    for (int n = 1; n <= 12; ++n)
        CHECK(cut_at(schedule, n, "wires").empty());
    // The runs end there, on r 61.5 in along the centreline.
    const Ring& ring = schedule.courses[1].rings[0];
    REQUIRE(ring.runs.size() == 1);
    CHECK(ring.runs[0].start_by == "drain");
    CHECK(ring.runs[0].end_by == "drain");
    CHECK(ring.runs[0].length / inch == Approx(2 * pi * 61.5 - 2 * 61.5 * std::asin(2 / 61.5)));
    // The wall's area is that of the wall: a pipe fills its gap.
    Design bare = store_design();
    CHECK(schedule.courses[1].wall_area == Approx(lay(bare).courses[1].wall_area));
}

TEST_CASE("the note, the mark and the course of a sleeve tell one place, from the datum") {
    Design design = store_design();
    design.sleeves = {sleeve("drain", 300, -8 * inch, 4 * inch),
                      sleeve("wires", 20, 17 * inch, 2 * inch)};
    const Schedule schedule = lay(design);
    const auto note_of = [&](const std::string& id) {
        std::vector<std::pair<int, std::string>> found;
        for (const Course& course : schedule.courses)
            for (const SetNote& note : course.before)
                if (note.element == id)
                    found.emplace_back(course.number, note.text);
        REQUIRE(found.size() == 1);
        return found[0];
    };
    // The store's datum is its door, on 150: 300 lies 150 to the right on r 54 in, which is
    // 54 x 2.6180 = 141.37 in; 20 lies 130 to the left, 54 x 2.2689 = 122.5 in.
    const auto [drain_course, drain] = note_of("drain");
    CHECK(drain_course == 2);
    CHECK(drain.find("turn right 11 ft 9-3/8 in along the inside face") != std::string::npos);
    CHECK(drain.find("bearing 300.0\u00b0 from north") != std::string::npos);
    CHECK(drain.find("Its centre is 8 in below the floor") != std::string::npos);
    // 17 in is nearest to the joint at 15 in, on which course 7 is laid.
    const auto [wires_course, wires] = note_of("wires");
    CHECK(wires_course == 7);
    CHECK(wires.find("turn left 10 ft 2-1/2 in") != std::string::npos);
    CHECK(wires.find("the joint under this course, 1 ft 3 in above the floor") !=
          std::string::npos);
    CHECK(wires.find("drawn at 1 ft 5 in above the floor") != std::string::npos);
    for (const SleevePlan& sleeve : schedule.sleeves) {
        const bool joint = sleeve.form.id == "wires";
        CHECK(sleeve.set_before_course == (joint ? 7 : 2));
        CHECK(sleeve.mark() / inch == Approx(joint ? 15 : -8));
    }
}

TEST_CASE("a sleeve higher than a course cuts every course that it reaches over") {
    Design design = store_design();
    design.sleeves = {sleeve("flue", 300, 7.5 * inch, 14 * inch)}; // from 0.5 to 14.5 in
    const Schedule schedule = lay(design);
    // Middles at 2.5, 7.5 and 12.5 in: chords at 5, 0 and 5 in off the centre of a radius of 7 in.
    const double chord = std::sqrt(49.0 - 25);
    REQUIRE(cut_at(schedule, 4, "flue").size() == 2);
    CHECK(cut_at(schedule, 4, "flue")[0] == Approx(chord));
    CHECK(cut_at(schedule, 5, "flue")[0] == Approx(7));
    CHECK(cut_at(schedule, 6, "flue")[0] == Approx(chord));
    CHECK(cut_at(schedule, 7, "flue").empty());
    CHECK(cut_at(schedule, 3, "flue").empty());
}

TEST_CASE("a sleeve in a tunnel's side parts that side's tubes") {
    Design design = store_with_porch();
    design.tunnels[0].reach = 160 * inch;
    Sleeve pipe = sleeve("pipe", 240, 12 * inch, 4 * inch);
    pipe.in = "porch";
    pipe.side = TunnelSide::left;
    pipe.along = 115 * inch;
    design.sleeves = {pipe};
    const Schedule schedule = lay(design);
    std::vector<const Straight*> left, right;
    for (const Straight& straight : schedule.courses[5].straights) {
        if (straight.part == StraightPart::left)
            left.push_back(&straight);
        if (straight.part == StraightPart::right)
            right.push_back(&straight);
    }
    REQUIRE(left.size() == 2);
    CHECK(left[0]->end_by == "pipe");
    CHECK(left[0]->end_distance == Approx(113 * inch));
    CHECK(left[1]->start_by == "pipe");
    CHECK(left[1]->start_distance == Approx(117 * inch));
    CHECK(right.size() == 1);
    for (const Straight& straight : schedule.courses[6].straights)
        CHECK(straight.start_by != "pipe");
}

TEST_CASE("each sleeve is called out before the course that it is set with") {
    Design design = store_design();
    design.sleeves = {sleeve("drain", 300, -8 * inch, 4 * inch), // course 2
                      sleeve("low", 20, 16 * inch, 2 * inch),    // 15 in is nearest: under course 7
                      sleeve("high", 250, 18.5 * inch, 2 * inch)}; // 20 in: under course 8
    const Schedule schedule = lay(design);
    std::map<std::string, int> set;
    for (const Course& course : schedule.courses)
        for (const SetNote& note : course.before)
            if (note.what == "sleeve") {
                CHECK(set.emplace(note.element, course.number).second);
                CHECK(note.text.find("1:50") != std::string::npos);
            }
    CHECK(set == std::map<std::string, int>{{"drain", 2}, {"low", 7}, {"high", 8}});
    CHECK(schedule.sleeves[0].stops_tubes);
    CHECK_FALSE(schedule.sleeves[1].stops_tubes);
    CHECK(schedule.sleeves[1].joint == Approx(15 * inch));
    CHECK(schedule.sleeves[2].joint == Approx(20 * inch));
}
