#include "geometry/plan/practice.hpp"

#include "geometry/plan/check_layout.hpp"
#include "geometry/plan/lay.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <memory>
#include <regex>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;

/// A copy: the findings it came from may be gone by then.
std::shared_ptr<const Finding> find(const std::vector<Finding>& findings, const std::string& code) {
    const auto found = std::find_if(findings.begin(), findings.end(),
                                    [&](const Finding& finding) { return finding.code == code; });
    return found == findings.end() ? nullptr : std::make_shared<const Finding>(*found);
}

std::vector<Finding> findings_of(const Design& design) {
    const auto findings = practice_findings(design, lay(design));
    for (const Finding& finding : findings) {
        CHECK_FALSE(finding.message.empty());
        CHECK_FALSE(finding.source.empty());
        CHECK_FALSE(finding.remedy.empty());
        CHECK(finding.message.find("safe") == std::string::npos);
    }
    return findings;
}

} // namespace

TEST_CASE("a sill or head between two joints is named with the joints beside it") {
    Design design = store_design();
    CHECK(find(findings_of(design), "sill-misses-joint") == nullptr);
    CHECK(find(findings_of(design), "head-misses-joint") == nullptr);
    design.openings.push_back(
        opening("win", 330, 24 * inch, 42 * inch, 24 * inch, HeadKind::square)); // 42 to 66 in
    const auto findings = findings_of(design);
    const auto sill = find(findings, "sill-misses-joint");
    REQUIRE(sill != nullptr);
    CHECK(sill->verdict == Verdict::advice);
    CHECK(sill->remedy.find("3 ft 4 in") != std::string::npos); // 40 in
    CHECK(sill->remedy.find("3 ft 9 in") != std::string::npos); // 45 in
    CHECK(find(findings, "head-misses-joint") != nullptr);
    // Within 10 mm of the joint at 40 in it is let be, above it and below.
    for (const auto& [off, is_advice] :
         {std::pair{0.0099, false}, {0.0101, true}, {-0.0099, false}, {-0.0101, true}}) {
        CAPTURE(off);
        design.openings.back().sill = 40 * inch + off;
        CHECK((find(findings_of(design), "sill-misses-joint") != nullptr) == is_advice);
    }
}

TEST_CASE("a sill on the joint of a course that came out high hits it") {
    Design design = store_design();
    design.openings[0].sill = 0;
    design.openings.push_back(
        opening("win", 330, 20 * inch, 35 * inch, 30 * inch, HeadKind::square));
    CHECK(find(findings_of(design), "sill-misses-joint") == nullptr);
    design.as_laid_tops[10] = 36 * inch; // course 10, three of them below the floor, ends at 35 in
    const auto missed = find(findings_of(design), "sill-misses-joint");
    REQUIRE(missed);
    CHECK(missed->limit.value() == Approx(36 * inch));
    design.openings.back().sill = 36 * inch;
    CHECK(find(findings_of(design), "sill-misses-joint") == nullptr);
}

TEST_CASE("an inch of tube for each foot of dome: common practice, no source") {
    Design design = store_design();
    CHECK(find(findings_of(design), "tube-narrow-for-diameter") == nullptr);
    design.domes[0].inside_diameter = 16 * 12 * inch;
    design.domes[0].profile.rise = 16 * 12 * inch;
    const auto findings = findings_of(design);
    const auto found = find(findings, "tube-narrow-for-diameter");
    REQUIRE(found != nullptr);
    CHECK(*found->limit == Approx(16 * inch));
    CHECK(*found->value == Approx(15 * inch));
    design.domes[0].inside_diameter = 15 * 12 * inch; // 15 in of tube serve 15 ft, and no inch more
    CHECK(find(findings_of(design), "tube-narrow-for-diameter") == nullptr);
    design.domes[0].inside_diameter = 15 * 12 * inch + 0.001;
    CHECK(find(findings_of(design), "tube-narrow-for-diameter") != nullptr);
}

namespace {

/// The store as a cone whose every step-in is the same, in inches: a drawn profile of two points.
Design cone(double step_in) {
    Design design = store_design();
    design.openings.clear();
    design.domes[0].springline = 20 * inch;
    design.domes[0].profile = {};
    design.domes[0].profile.kind = ProfileKind::drawn;
    design.domes[0].profile.points = {{0, 54 * inch}, {54 * inch * 5 / step_in, 0}};
    return design;
}

bool tells(const Design& design, const char* code) {
    return find(findings_of(design), code) != nullptr;
}

} // namespace

TEST_CASE("step-ins are told from a quarter and a half of the tube on, and where no flat is left") {
    // w 15 in, t 5 in: a quarter is 3.75, a half 7.5; the flats, 10 in of each, part at 10.
    CHECK_FALSE(tells(cone(3.74), "step-in-over-quarter"));
    CHECK(tells(cone(3.76), "step-in-over-quarter"));
    CHECK_FALSE(tells(cone(7.49), "step-in-over-half"));
    CHECK(tells(cone(7.51), "step-in-over-half"));
    // The cap's first disc lies on the last ring by what the cone leaves it: judged under a
    // skylight.
    const auto open = [](double step_in) {
        Design design = cone(step_in);
        design.domes[0].top.kind = TopKind::skylight;
        design.domes[0].top.diameter = 40 * inch;
        return design;
    };
    CHECK_FALSE(tells(open(9.99), "course-without-bearing"));
    CHECK(tells(open(10.01), "course-without-bearing"));
    // A test bag that measured square is flat over all its width.
    Design square = open(14.99);
    square.course.edge = TubeEdge::square;
    CHECK_FALSE(tells(square, "course-without-bearing"));
    square = open(15.01);
    square.course.edge = TubeEdge::square;
    CHECK(tells(square, "course-without-bearing"));
}

TEST_CASE("the store passes a quarter of the tube up to course 24 and exceeds it from 25") {
    // Step-ins from r = sqrt(135^2 - y^2) - 81 in: 3.68 at course 24, 3.9 at 25; limit 3.75.
    // Reckoned.
    const auto findings = findings_of(store_design());
    const auto quarter = find(findings, "step-in-over-quarter");
    REQUIRE(quarter != nullptr);
    CHECK(quarter->message.find("course 25") != std::string::npos);
    CHECK(find(findings, "step-in-over-half") == nullptr);
    Design flat = store_design();
    flat.domes[0].profile.kind = ProfileKind::round;
    flat.domes[0].profile.rise.reset();
    const auto half = find(findings_of(flat), "step-in-over-half");
    REQUIRE(half != nullptr);
}

TEST_CASE("the rise that a step-in remedy names keeps to the limit, and an inch less does not") {
    Design design = store_design();
    design.openings.clear();
    const auto findings = findings_of(design);
    const auto quarter = find(findings, "step-in-over-quarter");
    REQUIRE(quarter != nullptr);
    const auto greatest = [&](double rise) {
        Design other = design;
        other.domes[0].profile.rise = rise;
        const Schedule schedule = lay(other);
        double most = 0;
        for (const Course& course : schedule.courses)
            if (course.rings[0].kind == RingKind::ring)
                most = std::max(most, course.rings[0].step_in);
        return most;
    };
    int inches = 109;
    while (greatest(inches * inch) > 15 * inch / 4)
        ++inches;
    CHECK(inches > 109);
    CHECK(quarter->remedy.find("with a rise of " + length_text(inches * inch, DisplayUnit::feet)) !=
          std::string::npos);
    // Of a crown that no rise within two dozen courses more makes steep enough none is named.
    design.domes[0].profile.kind = ProfileKind::catenary;
    const auto flat = find(findings_of(design), "step-in-over-quarter");
    REQUIRE(flat != nullptr);
    CHECK(greatest((108 + 24 * 5) * inch) > 15 * inch / 4);
    CHECK(flat->remedy.find("with a rise of") == std::string::npos);
}

TEST_CASE("a tamped width off practice is an advice, with a millimetre of patience") {
    Design design = store_design();
    design.openings.clear();
    for (const auto& [width, is_advice] : {std::pair{15.0, false},
                                           {12.0, false},
                                           {11.98, false}, // half a millimetre less
                                           {11.95, true},
                                           {16.0, false},
                                           {16.02, false},
                                           {16.05, true}}) {
        CAPTURE(width);
        design.tubes[0].tamped_width = width * inch;
        CHECK((find(findings_of(design), "tamped-width-off-practice") != nullptr) == is_advice);
    }
}

TEST_CASE("a plumb frame finds a band of 1.95 in in the store's door, reckoned") {
    // The head rises 24 in: from 54 in to sqrt((r + 15)^2 - a^2) at 67.5 in above the
    // floor, 55.952.
    Design design = store_design();
    design.openings[0].head.rise = 24 * inch;
    const auto findings = findings_of(design);
    const auto found = find(findings, "frame-deeper-than-band");
    REQUIRE(found != nullptr);
    CHECK(*found->value / inch == Approx(1.952).margin(0.001));
    CHECK(*found->limit / inch == Approx(4.5));
    CHECK(found->remedy.find("springline") != std::string::npos);
}

TEST_CASE("a square head without a lintel fails, and the one to paste mends it") {
    Design square = store_design();
    square.openings[0].head = {};
    const auto found = find(findings_of(square), "square-head-without-lintel");
    REQUIRE(found);
    CHECK(found->verdict == Verdict::fails);
    CHECK(found->subject == "opening.door");
    CHECK(*found->value == Approx(32 * inch));
    std::smatch match;
    REQUIRE(std::regex_search(
        found->remedy, match,
        std::regex("head = \\{ kind = \"square\", lintel = \\{ kind = \"timber\", bearing = "
                   "\"([^\"]+)\", depth = \"([^\"]+)\" \\} \\} in \\[opening.door\\]")));
    LintelSpec lintel;
    lintel.bearing = read_length(match[1].str(), DisplayUnit::feet).value;
    lintel.depth = read_length(match[2].str(), DisplayUnit::feet).value;
    CHECK(lintel.bearing == Approx(12 * inch)); // common practice, no source
    square.openings[0].head.lintel = lintel;
    CHECK(check_layout(square).empty());
    CHECK_FALSE(tells(square, "square-head-without-lintel"));
    // An arch carries itself.
    CHECK_FALSE(tells(store_design(), "square-head-without-lintel"));
    // A tube bridges a hole that is no wider than itself; over a niche the wall behind it helps.
    for (const auto& [width, verdict] :
         {std::pair{15.0, Verdict::advice}, {15.1, Verdict::fails}}) {
        Design narrow = store_design();
        narrow.openings.push_back(
            opening("vent", 330, width * inch, 40 * inch, 15 * inch, HeadKind::square));
        const auto bare = find(findings_of(narrow), "square-head-without-lintel");
        REQUIRE(bare);
        CHECK(bare->verdict == verdict);
        narrow.openings[1].use = OpeningUse::niche;
        narrow.openings[1].niche_depth = 6 * inch;
        CHECK(find(findings_of(narrow), "square-head-without-lintel")->verdict == Verdict::advice);
    }
    // A small room has no place for the usual bearing.
    Design small = store_design();
    small.domes[0].inside_diameter = 54 * inch;
    small.domes[0].springline = 80 * inch;
    small.openings[0].head = {};
    const auto tight = find(findings_of(small), "square-head-without-lintel");
    REQUIRE(tight);
    CAPTURE(tight->remedy);
    REQUIRE(std::regex_search(tight->remedy, match, std::regex("bearing = \"([^\"]+)\"")));
    small.openings[0].head.lintel = LintelSpec{};
    CHECK_FALSE(check_layout(small).empty());
    small.openings[0].head.lintel->bearing = read_length(match[1].str(), DisplayUnit::feet).value;
    CHECK(check_layout(small).empty());
}

TEST_CASE("a crown too flat to corbel fails") {
    Design flat = store_design();
    flat.openings.clear();
    flat.domes[0].profile.kind = ProfileKind::parabola;
    flat.domes[0].profile.rise = 12 * inch;
    const auto found = find(findings_of(flat), "course-without-bearing");
    REQUIRE(found != nullptr);
    CHECK(found->verdict == Verdict::fails);
}

TEST_CASE("the skylight that the last ring leaves is named beside the one asked for") {
    Design design = store_design();
    design.domes[0].top.kind = TopKind::skylight;
    design.domes[0].top.diameter = 24 * inch;
    const Schedule schedule = lay(design);
    const auto found = find(findings_of(design), "skylight-wider-than-asked");
    REQUIRE(found != nullptr);
    CHECK(*found->value == Approx(2 * schedule.building.domes[0].last_ring_radius));
    CHECK(*found->limit == Approx(24 * inch));
    // Within 10 mm of what was asked for nothing is said.
    const double eye = 2 * schedule.building.domes[0].last_ring_radius;
    design.domes[0].top.diameter = eye - 0.0099;
    CHECK_FALSE(tells(design, "skylight-wider-than-asked"));
    design.domes[0].top.diameter = eye - 0.0101;
    CHECK(tells(design, "skylight-wider-than-asked"));
}

TEST_CASE("a rule of the design counts in place of the trade's own, and is named") {
    Design design = store_design(); // 15 in of wall for 9 ft
    CHECK(find(findings_of(design), "tube-narrow-for-diameter") == nullptr);
    const auto stated = [](double value) {
        Limit limit;
        limit.value = value;
        limit.source = "stated in the design";
        limit.standing = Standing::stated;
        return limit;
    };
    design.limits["tube-width.of_diameter"] = stated(15.0 / 108);
    CHECK(find(findings_of(design), "tube-narrow-for-diameter") == nullptr);
    design.limits["tube-width.of_diameter"] = stated(15.1 / 108);
    const auto narrow = find(findings_of(design), "tube-narrow-for-diameter");
    REQUIRE(narrow);
    CHECK(narrow->limit.value() == Approx(15.1 * inch));
    CHECK(narrow->source == "stated in the design");
    const auto quarter = find(findings_of(design), "step-in-over-quarter");
    REQUIRE(quarter);
    design.limits["step-in.share"] = stated(*quarter->value / (15 * inch));
    CHECK(find(findings_of(design), "step-in-over-quarter") == nullptr);
    design.limits["step-in.share"] = stated(*quarter->value / (15 * inch) - 0.001);
    CHECK(find(findings_of(design), "step-in-over-quarter") != nullptr);
}
