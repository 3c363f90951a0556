// Tops of courses as measured on site: what cannot be is refused, what is odd is told, the rest is
// laid from them.
#include "geometry/plan/check_layout.hpp"
#include "geometry/plan/lay.hpp"
#include "geometry/plan/practice.hpp"
#include "tests/plan/layout_codes.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <optional>
#include <regex>
#include <set>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;

/// The store (courses of 5 in, three below the floor: course n ends at 5 (n - 3) in) with tops
/// measured in inches.
Design store_with(const std::map<int, double>& tops) {
    Design design = store_design();
    int line = 10;
    for (const auto& [course, top] : tops) {
        design.as_laid_tops[course] = top * inch;
        design.as_laid_places[course] = {line++, 5};
    }
    return design;
}

/// Course and top of an example: `9 = "2 ft 6 in"`.
std::pair<int, double> read_example(const std::string& example) {
    std::smatch match;
    REQUIRE(std::regex_match(example, match, std::regex("([0-9]+) = \"([^\"]+)\"")));
    const LengthReading reading = read_length(match[2].str(), DisplayUnit::feet);
    REQUIRE(reading.fault == "");
    return {std::stoi(match[1].str()), reading.value};
}

std::optional<Finding> step_changed(const Design& design) {
    const DomeForm form = make_dome_form(design, design.domes[0]);
    for (const Finding& finding : step_findings(design, form))
        if (finding.code == "step-in-changed")
            return finding;
    return std::nullopt;
}

} // namespace

TEST_CASE("tops as courses come out are taken") {
    CHECK(codes(store_with({{9, 31.25}})).empty());
    CHECK(codes(store_with({{9, 28.5}, {10, 33.75}, {20, 86}})).empty());
    CHECK(codes(store_with({{1, -9.5}})).empty());
    // Course 9 starts at 25 in; anything over it, up to a course off.
    CHECK(codes(store_with({{9, 25.1}})).empty());
    CHECK(codes(store_with({{9, 35}})).empty());
}

TEST_CASE("a top that cannot be is refused with one that works") {
    struct Case {
        std::map<int, double> tops;
        const char* code;
        int course;
    };
    for (const Case& one :
         {Case{{{9, 25}}, "top-below-course", 9}, Case{{{9, -3}}, "top-below-course", 9},
          Case{{{1, -15}}, "top-below-course", 1},
          // Course 10 is reckoned to end at 36.25 in.
          Case{{{9, 31.25}, {11, 34}}, "top-below-course", 11},
          Case{{{9, 35.2}}, "top-off-layout", 9}, Case{{{9, 31.25 * 12}}, "top-off-layout", 9},
          Case{{{9, 31.25}, {10, 42}}, "top-off-layout", 10},
          Case{{{60, 31}}, "top-of-no-course", 60}, Case{{{60, 1000}}, "top-of-no-course", 60}}) {
        const Design design = store_with(one.tops);
        CAPTURE(one.code, one.course);
        REQUIRE(codes(design) == Codes{one.code});
        const Diagnostic found = check_layout(design).front();
        CHECK(found.subject == "as_laid.top." + std::to_string(one.course));
        CHECK(found.place.line == design.as_laid_places.at(one.course).line);
        CAPTURE(found.message, found.allowed, found.example);
        Design mended = design;
        mended.as_laid_tops.erase(one.course);
        const auto [course, top] = read_example(found.example);
        mended.as_laid_tops[course] = top;
        CHECK(codes(mended).empty());
    }
}

TEST_CASE("a top whose unit was forgotten is told so") {
    const auto hint = [](const Design& design) { return check_layout(design).at(0).hint; };
    CHECK(hint(store_with({{9, 31.25 * 12}})) == "did you mean \"31.25 in\"?");
    Design metric = store_with({});
    metric.unit = DisplayUnit::metres;
    metric.as_laid_tops[9] = 79; // 79 cm, where 76.2 were planned
    CHECK(hint(metric) == "did you mean \"79 cm\"?");
    metric.as_laid_tops[9] = 795;
    CHECK(hint(metric) == "did you mean \"795 mm\"?");
    metric.as_laid_tops[9] = 1.2;
    CHECK_THAT(hint(metric), Catch::Contains("later course"));
}

TEST_CASE("several tops at fault are each told, beside other faults") {
    Design design = store_with({{5, 9.5}, {9, 24}, {12, 300}, {60, 1000}});
    CHECK(codes(design) == Codes{"top-below-course", "top-off-layout", "top-of-no-course"});
    for (const Diagnostic& found : check_layout(design)) {
        const auto [course, top] = read_example(found.example);
        design.as_laid_tops.erase(std::stoi(found.subject.substr(12)));
        design.as_laid_tops[course] = top;
    }
    CHECK(codes(design).empty());
    // Neither stops the other faults from being found, nor makes some up.
    design = store_with({{9, 24}, {12, 300}});
    design.openings[0].width = 200 * inch;
    const Codes found = codes(design);
    CHECK(found.size() == 3);
    CHECK(std::count(found.begin(), found.end(), "opening-too-wide") == 1);
    // Those that do not rise were told by the reader.
    CHECK(codes(store_with({{9, 31.25}, {10, 31}})).empty());
}

TEST_CASE("later courses are laid from a measured top") {
    const Schedule schedule = lay(store_with({{9, 31.25}, {14, 55}}));
    for (const Course& course : schedule.courses) {
        const int n = course.number;
        CAPTURE(n);
        const double bottom = n <= 9    ? 5 * (n - 4)
                              : n <= 14 ? 31.25 + 5 * (n - 10)
                                        : 55 + 5 * (n - 15);
        CHECK(course.bottom == Approx(bottom * inch).margin(1e-12));
        const double top = n == 9 ? 31.25 : n == 14 ? 55 : bottom + 5;
        CHECK(course.top == Approx(top * inch).margin(1e-12));
        CHECK(course.top_measured == (n == 9 || n == 14));
        // The setting, from the circle of 135 in about a centre 81 in beyond the pole.
        const double y = std::max(0.0, bottom + 2.5 - 20);
        const Ring& ring = course.rings[0];
        if (ring.kind == RingKind::ring)
            CHECK(ring.inside_radius ==
                  Approx((std::sqrt(135.0 * 135 - y * y) - 81) * inch).epsilon(1e-12));
    }
}

TEST_CASE("a measured top that changes a step-in by more than an inch is told") {
    CHECK_FALSE(step_changed(store_design()));
    CHECK_FALSE(step_changed(store_with({{20, 86}})));
    for (const double top : {88.0, 82.0}) { // 3 in above and below the layout
        CAPTURE(top);
        Design design = store_with({{20, top}});
        const auto found = step_changed(design);
        REQUIRE(found);
        CHECK(found->verdict == Verdict::advice);
        CHECK(found->subject == "dome.store course 21");
        const auto step_in = [](const Design& of) { return lay(of).courses[20].rings[0].step_in; };
        CHECK(*found->value == Approx(std::abs(step_in(design) - step_in(store_design()))));
        CHECK(*found->limit == Approx(inch));
        CAPTURE(found->message, found->remedy);
        // What the remedy names keeps to the inch, and an eighth of an inch more does not.
        std::smatch match;
        REQUIRE(std::regex_search(found->remedy, match,
                                  std::regex("(?:down|up) to ([0-9ftin /-]+) or")));
        const double kept = read_length(match[1].str(), DisplayUnit::feet).value;
        design.as_laid_tops[20] = kept;
        CHECK_FALSE(step_changed(design));
        design.as_laid_tops[20] = kept + (top > 85 ? 1 : -1) * inch / 8;
        CHECK(step_changed(design));
    }
    // A limit of the design's own counts, and is named.
    Design strict = store_with({{20, 86}});
    strict.limits["as-laid.step_change"] = {0.5 * inch, "m", "Rules of the valley",
                                            {},         {},  Standing::stated};
    REQUIRE(step_changed(strict));
    CHECK(step_changed(strict)->source == "Rules of the valley");
    // The last ring's top moves no setting of an arm.
    CHECK_FALSE(step_changed(store_with({{27, 126}})));
}

TEST_CASE("anchor plates lie on the joints that were measured") {
    for (const auto& tops :
         {std::map<int, double>{}, {{6, 17.5}}, {{6, 12.6}, {9, 33}}, {{7, 20.5}, {12, 49}}}) {
        const Design design = store_with(tops);
        const Schedule schedule = lay(design);
        const OpeningForm& door = schedule.openings[0].form;
        std::set<int> plates;
        for (const Course& course : schedule.courses)
            for (const SetNote& note : course.after)
                if (note.what == "anchor plates")
                    plates.insert(course.number);
        REQUIRE(plates.size() >= 3);
        // Each eighth has a plate on the joint nearest to it.
        for (const double part : {0.125, 0.375, 0.625, 0.875}) {
            const double wanted = door.sill + part * (door.springing - door.sill);
            double off = 1, plate_off = 1;
            for (const Course& course : schedule.courses) {
                if (course.top <= door.sill + 1e-6 || course.top >= door.springing - 1e-6)
                    continue;
                off = std::min(off, std::abs(course.top - wanted));
                if (plates.count(course.number) > 0)
                    plate_off = std::min(plate_off, std::abs(course.top - wanted));
            }
            CAPTURE(part);
            CHECK(plate_off == Approx(off).margin(1e-9));
        }
    }
}

TEST_CASE("whether a sleeve stops tubes does not hang on how a course came out") {
    // 2-1/2 in is half of a course of 5 in: it stops them in a course that came out at 5-3/4 in
    // too.
    for (const double diameter : {2.375, 2.5})
        for (const double top : {4.5, 5.75}) {
            CAPTURE(diameter, top);
            Design design = store_design();
            design.as_laid_tops[4] = top * inch; // course 4 stands on the floor
            design.sleeves = {sleeve("pipe", 300, 2 * inch, diameter * inch)};
            const Schedule schedule = lay(design);
            REQUIRE(schedule.sleeves.size() == 1);
            const bool stops = diameter >= 2.5;
            CHECK(schedule.sleeves[0].stops_tubes == stops);
            std::size_t cuts = 0;
            for (const Ring& ring : schedule.courses.at(3).rings)
                for (const Cut& cut : ring.cuts)
                    cuts += cut.by == "pipe";
            CHECK(cuts == (stops ? 2u : 0u));
        }
}

TEST_CASE("a lintel takes up the courses that are there") {
    Design design = store_with({{20, 86}}); // course 20 from 80 to 86 in
    design.openings[0].head = {};
    design.openings[0].head.lintel = LintelSpec{};
    design.openings[0].head.lintel->depth = 6 * inch;
    const Schedule measured = lay(design);
    REQUIRE(measured.lintels.size() == 1);
    CHECK(measured.lintels[0].first_course == 20);
    CHECK(measured.lintels[0].last_course == 20); // 6 in of course and lintel
    CHECK(measured.lintels[0].packing == Approx(0).margin(1e-9));
    design.as_laid_tops.clear();
    CHECK(lay(design).lintels[0].last_course == 21);
}
