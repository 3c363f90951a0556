// Published values of headroom: a worked dome, and the code's rules as the program carries them.
#include "geometry/design/read_design.hpp"
#include "geometry/plan/headroom.hpp"
#include "geometry/plan/plan_building.hpp"

#include <catch2/catch.hpp>

#include <fstream>
#include <sstream>

using namespace coilwright;

namespace {

constexpr double inch = metres_per_inch, foot = metres_per_foot;

std::string model(const std::string& name) {
    std::ifstream file(COILWRIGHT_SOURCE_DIR "/models/" + name);
    std::ostringstream text;
    text << file.rdbuf();
    REQUIRE(text.str().size() > 100);
    return text.str();
}

// What a design that sets no rule of its own is judged by.
HeadroomRule built_in(const std::string& use) {
    const DesignReading reading = read_design(model("grain-store.toml"));
    REQUIRE(reading.diagnostics.empty());
    REQUIRE(reading.design.rules.count(use) == 1);
    return reading.design.rules.at(use);
}

Approx metres(double value) {
    return Approx(value).epsilon(1e-12);
}

// The code's own millimetres are rounded from its inches.
Approx millimetres_of_code(double value) {
    return Approx(value / 1000).epsilon(0).margin(0.0006);
}

} // namespace

TEST_CASE("a hemisphere of 8 ft on the floor: floor area with 7 ft and with 5 ft over it") {
    // Reckoned: pi (8^2 - 7^2) = 47.124 and pi (8^2 - 5^2) = 122.522 sq ft. No plaster.
    DomeForm form;
    form.profile = round_profile(8 * foot);
    form.course_height = 0.125;
    form.last_ring = 20; // rings up to 2.5 m, above both heights
    form.cap_courses = 1;
    form.last_ring_radius = half_width(form.profile, form.course_middle(20));
    const double square_foot = square_metres_per_square_foot;
    const double at_7_ft = floor_area_at(form, 0, 7 * foot) / square_foot;
    const double at_5_ft = floor_area_at(form, 0, 5 * foot) / square_foot;
    CHECK(at_7_ft == Approx(47.124).epsilon(0).margin(5e-4));
    CHECK(at_5_ft == Approx(122.522).epsilon(0).margin(5e-4));
}

TEST_CASE("habitable rooms: ceiling height, sloped ceilings, least area and dimension") {
    // International Residential Code R305.1 (7 ft, 2134 mm), its exception for sloped ceilings (no
    // part of the required area under 5 ft, 1524 mm; at least half of it at 7 ft), R304.1-2 (70 sq
    // ft; 7 ft in any direction) (read).
    const HeadroomRule rule = built_in("habitable");
    CHECK(rule.clear_height == metres(7 * foot));
    CHECK(rule.clear_height == millimetres_of_code(2134));
    CHECK(rule.low_height.value_or(0) == metres(5 * foot));
    CHECK(rule.low_height.value_or(0) == millimetres_of_code(1524));
    CHECK(rule.share == 0.5);
    CHECK(rule.required_area.value_or(0) == metres(70 * square_metres_per_square_foot));
    CHECK(rule.least_dimension.value_or(0) == metres(7 * foot));
    CHECK_FALSE(rule.clear_square.has_value());
    CHECK(rule.section.find("R305.1") != std::string::npos);
    CHECK(rule.section.find("R304") != std::string::npos);
}

TEST_CASE("bath and shower: ceiling height, and the square at the shower head") {
    // International Residential Code R305.1 exception 2: 6 ft 8 in (2032 mm), in a shower over 30
    // in by 30 in at the shower head (read).
    for (const char* use : {"bath", "shower"}) {
        CAPTURE(use);
        const HeadroomRule rule = built_in(use);
        CHECK(rule.clear_height == metres(80 * inch));
        CHECK(rule.clear_height == millimetres_of_code(2032));
        CHECK_FALSE(rule.required_area.has_value());
    }
    CHECK_FALSE(built_in("bath").clear_square.has_value());
    CHECK(built_in("shower").clear_square.value_or(0) == metres(30 * inch));
}

TEST_CASE("tiny houses: ceiling height") {
    // International Residential Code, appendix Q 2018, AQ 2021 (to 400 sq ft): 6 ft 8 in in
    // habitable space, 6 ft 4 in in bath and kitchen (read).
    const HeadroomRule rule = built_in("tiny-house");
    CHECK(rule.clear_height == metres(80 * inch));
    CHECK(rule.section.find("6 ft 4 in") != std::string::npos);
}

TEST_CASE("each built-in rule names its publication and editions, and a store has none") {
    const DesignReading reading = read_design(model("grain-store.toml"));
    CHECK(reading.design.rules.size() == 4);
    CHECK(reading.design.rules.count("store") == 0);
    for (const auto& [use, rule] : reading.design.rules) {
        CAPTURE(use);
        CHECK(rule.source.find("International Residential Code") != std::string::npos);
        CHECK(rule.source.find("20") != std::string::npos);
        CHECK_FALSE(rule.section.empty());
    }
}

TEST_CASE("the washroom's fitted springline passes the shower rule, a course less does not") {
    // Reckoned by hand: 6 ft pointed dome, rise 6 ft (rho 90 in), 1-1/2 in of plaster; the corner
    // of a 30 in square is 21.213 in from the pole, where the face stands sqrt(88.5^2 - (21.213 +
    // 54)^2) = 46.64 in above the springline. 35 in of stem give 81.64 in, 30 in give 76.64; 80 in
    // is asked.
    DesignReading reading = read_design(model("washroom.toml"));
    REQUIRE(reading.diagnostics.empty());
    BuildingPlan plan = plan_building(reading.design, {});
    REQUIRE(plan.sound());
    REQUIRE(plan.headroom.size() == 1);
    CHECK(plan.schedule.building.domes.front().springline == metres(35 * inch));
    CHECK(clear_height_at(plan.schedule.building.domes.front(), 1.5 * inch,
                          15 * inch * std::sqrt(2.0)) ==
          Approx(81.64 * inch).epsilon(0).margin(0.005 * inch));
    CHECK(plan.headroom.front().verdict.verdict == Verdict::holds);

    Dome& dome = reading.design.domes.front();
    dome.springline = 30 * inch;
    dome.fit_springline = false;
    plan = plan_building(reading.design, {});
    REQUIRE(plan.headroom.size() == 1);
    CHECK(plan.headroom.front().verdict.verdict == Verdict::fails);
    CHECK(plan.headroom.front().verdict.remedy.find("by 1 course") != std::string::npos);
}
