// Two strands in every joint: common practice. 0.23 m a day: Lopez-Gomez, Gonzalez-Garcia &
// Llaurado-Perez 2018.
#include "geometry/checks/trade_findings.hpp"
#include "tests/checks/laid.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

Finding work(const std::string& design, const std::string& code) {
    return the(work_practice_findings(laid(design)), code);
}

} // namespace

TEST_CASE("every joint has two strands of wire, on narrow tubes one") {
    const auto strands = [](int count) {
        return room_design + "[wire]\nstrands = " + std::to_string(count) + "\n";
    };
    CHECK(work(room_design, "wire-strands").verdict == Verdict::holds);
    CHECK(work(strands(2), "wire-strands").verdict == Verdict::holds);
    CHECK(work(strands(3), "wire-strands").verdict == Verdict::holds);
    const Finding one = work(strands(1), "wire-strands");
    CHECK(one.verdict == Verdict::advice);
    CHECK(work(strands(std::stoi(taken(one, "strands = ([0-9]+)"))), "wire-strands").verdict ==
          Verdict::holds);
    const auto narrow = [&](const std::string& flat) {
        return work(with(with(strands(1), "lay_flat = \"20 in\"", "lay_flat = \"" + flat + "\""),
                         "height = \"5 in\"", "height = \"4 in\""),
                    "wire-strands")
            .verdict;
    };
    CHECK(narrow("11.9 in") == Verdict::holds);
    CHECK(narrow("12 in") == Verdict::advice);
}

TEST_CASE("a joint that got no wire is told") {
    BuildingPlan plan = laid(room_design);
    plan.schedule.courses[6].rings.front().wire_length = 0;
    const Finding bare = the(work_practice_findings(plan), "wire-strands");
    CHECK(bare.verdict == Verdict::fails);
    CHECK(bare.value == bare.limit); // two strands: more of them would mend nothing
    CHECK(bare.remedy.find("Set strands") == std::string::npos);
    CHECK(bare.remedy.find("2 strands") != std::string::npos);
}

TEST_CASE("the wall rises no faster than its fill ages") {
    const auto aged = [](const std::string& days) {
        return room_design + "[fill.main]\nage_per_lift = " + days + "\n";
    };
    // A lift of 30 in (a judgement) is built in 30 in / 0.23 m = 3.313 days.
    CHECK(work(aged("3.31"), "daily-height").verdict == Verdict::holds);
    const Finding fast = work(aged("3.32"), "daily-height");
    CHECK(fast.verdict == Verdict::advice);
    CHECK(fast.value.value() == 0.23);
    CHECK(work(aged(taken(fast, "needs (.*) days")), "daily-height").verdict == Verdict::holds);
    CHECK_FALSE(has(work_practice_findings(laid(room_design)), "daily-height"));
    // A fill without an age is told, not passed over.
    const Finding ageless =
        work(room_design + "[fill.main]\nstrength = \"1 MPa\"\n", "daily-height");
    CHECK(ageless.verdict == Verdict::not_judged);
    CHECK(ageless.remedy.find("age_per_lift") != std::string::npos);
}
