// R403.1.4: 12 in below the ground, and below frost. Courses and damp: common practice, no source.
#include "geometry/checks/trade_findings.hpp"
#include "tests/checks/laid.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

Finding ground(const std::string& design, const std::string& code) {
    return the(ground_practice_findings(laid(design)), code);
}
std::string founded(int courses) {
    return with(room_design, "foundation = 4", "foundation = " + std::to_string(courses));
}
std::string on_ground(const std::string& level) { // on four courses of 5 in
    return with(room_design, "level = \"-6 in\"", "level = \"" + level + "\"");
}

} // namespace

TEST_CASE("two courses below the floor, and not one") {
    CHECK(ground(founded(3), "foundation-courses").verdict == Verdict::holds);
    CHECK(ground(founded(2), "foundation-courses").verdict == Verdict::holds);
    const Finding one = ground(founded(1), "foundation-courses");
    CHECK(one.verdict == Verdict::advice);
    CHECK(ground(founded(std::stoi(taken(one, "foundation = ([0-9]+)"))), "foundation-courses")
              .verdict == Verdict::holds);
}

TEST_CASE("the wall starts 12 in below the ground") {
    CHECK(ground(on_ground("-8 in"), "footing-depth").verdict == Verdict::holds);
    CHECK(ground(on_ground("-7.9 in"), "footing-depth").verdict == Verdict::holds);
    const Finding shallow = ground(on_ground("-8.1 in"), "footing-depth");
    CHECK(shallow.verdict == Verdict::fails);
    CHECK(shallow.value.value() == Approx(11.9 * inch));
    CHECK_THAT(shallow.source, Catch::Contains("R403.1.4"));
    const std::string deeper = with(on_ground("-8.1 in"), "foundation = 4",
                                    "foundation = " + taken(shallow, "foundation = ([0-9]+)"));
    CHECK(ground(deeper, "footing-depth").verdict == Verdict::holds);
    CHECK(ground(on_ground(taken(shallow, "level = (.*)\\.")), "footing-depth").verdict ==
          Verdict::holds);
    // Where no ground is stated it is an advice: the program took its own.
    const std::string unstated = with(founded(3), "[ground]\nlevel = \"-6 in\"\n", "");
    CHECK(ground(unstated, "footing-depth").verdict == Verdict::advice);
}

TEST_CASE("the trench reaches below frost, gravel included") {
    CHECK(ground(room_design, "frost-depth").verdict == Verdict::not_judged);
    const auto frozen = [](const std::string& frost, const std::string& gravel) {
        return room_design + "frost_depth = \"" + frost + "\"\n[trench]\ngravel_depth = \"" +
               gravel + "\"\n";
    };
    CHECK(ground(frozen("20 in", "6 in"), "frost-depth").verdict == Verdict::holds); // 14 + 6
    CHECK(ground(frozen("19.9 in", "6 in"), "frost-depth").verdict == Verdict::holds);
    const Finding cold = ground(frozen("20.1 in", "6 in"), "frost-depth");
    CHECK(cold.verdict == Verdict::fails);
    CHECK(ground(frozen("20.1 in", taken(cold, "gravel_depth = (.*)\\.")), "frost-depth").verdict ==
          Verdict::holds);
}

TEST_CASE("courses near the ground are gravel or stabilised") {
    // Courses with their tops up to ground + 6 in, that is up to the floor: the four below it.
    CHECK(ground(room_design, "base-courses").verdict == Verdict::not_judged);
    const std::string earth = room_design + "[fill.main]\n";
    const Finding damp = ground(earth, "base-courses");
    CHECK(damp.verdict == Verdict::advice);
    CHECK(damp.value.value() == 0);
    CHECK(damp.limit.value() == 4);
    const std::string courses = taken(damp, "courses = (\\[1, [0-9]+\\])");
    CHECK(courses == "[1, 4]");
    const auto gravel = [&](const std::string& which) {
        return earth + "[fill.base]\nkind = \"gravel\"\ncourses = " + which + "\n";
    };
    CHECK(ground(gravel(courses), "base-courses").verdict == Verdict::holds);
    CHECK(ground(gravel("[1, 3]"), "base-courses").verdict == Verdict::advice);
    CHECK(ground(gravel("[1, 5]"), "base-courses").verdict == Verdict::holds);
    CHECK(ground(room_design + "[fill.main]\nstabiliser = \"lime\"\nratio = 0.08\n", "base-courses")
              .verdict == Verdict::holds);
    // A hundredth of an inch less ground, and the fourth course ends above it.
    CHECK(ground(with(earth, "level = \"-6 in\"", "level = \"-6.01 in\""), "base-courses")
              .limit.value() == 3);
}
