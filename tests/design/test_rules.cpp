// The limits of the checks against what their sources say (standing beside each in
// geometry/design/rules).
#include "tests/design/whole_design.hpp"

#include <catch2/catch.hpp>

#include <fstream>
#include <iterator>
#include <regex>
#include <set>

using namespace coilwright;

namespace {

constexpr double inch = metres_per_inch, square_foot = metres_per_foot * metres_per_foot;

Limits limits_with(const std::string& text) {
    const DesignReading reading = read_design(whole_design + text);
    REQUIRE(codes_of(reading) == "");
    return reading.design.limits;
}

} // namespace

TEST_CASE("the built-in limits are those of their sources") {
    const Limits limits = limits_with("");
    const auto value = [&](const char* name) {
        CAPTURE(name);
        REQUIRE(find_limit(limits, name));
        return find_limit(limits, name)->value;
    };
    // International Residential Code, 2018 and 2021: R310.2, R311.2, R105.2, R403.1.4 as read;
    // R303.1 and R311.3.1 from memory. Millimetres and square metres are the code's own, rounded by
    // it.
    CHECK(value("escape.net_area") == Approx(0.530).margin(0.001));
    CHECK(value("escape.net_area_at_grade") == Approx(0.465).margin(0.001));
    CHECK(value("escape.clear_height") == Approx(0.610).margin(0.001));
    CHECK(value("escape.clear_width") == Approx(0.508).margin(0.001));
    CHECK(value("escape.sill") == Approx(1.118).margin(0.001));
    CHECK(value("egress-door.clear_width") == Approx(0.813).margin(0.001));
    CHECK(value("egress-door.clear_height") == Approx(1.981).margin(0.001));
    CHECK(value("permit.area") == Approx(18.58).margin(0.005));
    CHECK(value("permit.lower_area") == Approx(120 * square_foot));
    CHECK(value("footing.depth") == Approx(0.305).margin(0.001));
    CHECK(value("light.share") == 0.08);
    CHECK(value("ventilation.share") == 0.04);
    CHECK(value("threshold.step") == Approx(0.196).margin(0.001));
    // Common practice, no source.
    CHECK(value("foundation.least_courses") == 2);
    CHECK(value("foundation.most_courses") == 3);
    CHECK(value("doors.apart") == 1.25);
    CHECK(value("doors.between") == 90);
    CHECK(value("buttress.above_springline") == Approx(18 * inch));
    // Hunter & Kiffmeyer 2004, ch. 11; Lopez-Gomez et al. 2018.
    CHECK(value("rise.rise_to_diameter") == 1);
    CHECK(value("daily-height.built") == 0.23);
    // IS 13827:1993, IAEE 2013, from memory.
    CHECK(value("seismic-openings.width") == 1.2);
    CHECK(value("seismic-openings.pier") == 1.2);
    CHECK(value("seismic-openings.share") == Approx(1.0 / 3).margin(1e-6));
    CHECK(value("seismic-openings.lintel_bearing") == 0.5);
}

TEST_CASE("every limit names its source, and says if it is from memory") {
    const Limits limits = limits_with("");
    CHECK(limits.size() > 30);
    for (const auto& [name, limit] : limits) {
        CAPTURE(name);
        CHECK(limit.source.size() > 10);
        CHECK(word(limit.standing) != "stated");
        CHECK(source_text(limit).find(limit.source) == 0);
    }
    CHECK(source_text(limits.at("egress-door.clear_width")) ==
          "International Residential Code, 2018 and 2021, R311.2");
    CHECK_THAT(source_text(limits.at("light.share")), Catch::Contains("R303.1 (from memory)"));
}

TEST_CASE("a design overrides one value, and no longer under the name of the code") {
    const Limits limits = limits_with("[rules.egress-door]\nclear_width = \"30 in\"\n");
    CHECK(limits.at("egress-door.clear_width").value == Approx(30 * inch));
    CHECK(source_text(limits.at("egress-door.clear_width")) ==
          "stated in the design, [rules.egress-door]");
    CHECK(word(limits.at("egress-door.clear_width").standing) == "stated");
    CHECK_THAT(source_text(limits.at("egress-door.clear_height")),
               Catch::Contains("R311.2")); // kept
}

TEST_CASE("a design states its own source") {
    const Limits limits = limits_with(R"([rules.light]
source = "Rules of the valley"
edition = "2024"
section = "7"
standing = "read"
share = 0.1
)");
    CHECK(limits.at("light.share").value == 0.1);
    CHECK(source_text(limits.at("light.share")) == "Rules of the valley, 2024, 7");
}

TEST_CASE("what is no rule, no key or no value is refused, with a word that may be meant") {
    const DesignReading rule = read_design(whole_design + "[rules.egres-door]\nclear_width = 2\n");
    REQUIRE(codes_of(rule) == "unknown-key");
    CHECK_THAT(rule.diagnostics[0].hint, Catch::Contains("egress-door"));
    const DesignReading key = read_design(whole_design + "[rules.egress-door]\nclear_widht = 2\n");
    REQUIRE(codes_of(key) == "unknown-key");
    CHECK_THAT(key.diagnostics[0].hint, Catch::Contains("clear_width"));
    CHECK(codes_of(read_design(whole_design + "[rules.light]\nshare = 2\n")) == "out-of-range");
    CHECK(codes_of(read_design(whole_design + "[rules.light]\nshare = \"some\"\n")) ==
          "wrong-type");
    CHECK(codes_of(read_design(whole_design + "[rules.escape]\nsill = \"44 inn\"\n")) ==
          "unreadable-measure");
    CHECK(codes_of(read_design(whole_design + "[rules.escape]\nstanding = \"true\"\n")) ==
          "unknown-word");
}

TEST_CASE("the reference lists every limit with its built-in value, and no other") {
    std::ifstream file(std::string(COILWRIGHT_SOURCE_DIR) + "/docs/reference/design-file.md");
    const std::string page{std::istreambuf_iterator<char>(file), {}};
    const std::regex row(R"(\n\| `([a-z-]+)\.([a-z_]+)` \| ([^|]+) \|)");
    const Limits built_in = limits_with("");
    std::set<std::string> told;
    for (std::sregex_iterator i(page.begin(), page.end(), row), end; i != end; ++i) {
        const std::string rule = (*i)[1], key = (*i)[2], shown = (*i)[3];
        const std::string name = rule + "." + key;
        CAPTURE(name, shown);
        CHECK(told.insert(name).second);
        // Typed into a design as the page shows it, it is the built-in value.
        const bool is_number = shown.find_first_not_of("0123456789.") == std::string::npos;
        const std::string typed = is_number ? shown : "\"" + shown + "\"";
        const Limits typed_in = limits_with("[rules." + rule + "]\n" + key + " = " + typed + "\n");
        CHECK(word(typed_in.at(name).standing) == "stated");
        REQUIRE(built_in.count(name) == 1);
        CHECK(typed_in.at(name).value == Approx(built_in.at(name).value));
    }
    CHECK(told.size() == built_in.size());
}
