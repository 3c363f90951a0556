// Values: International Residential Code, R305.1 with exceptions 1 and 2, R304.1, R304.2; appendix
// Q (2018) and AQ (2021) for tiny houses. 7 ft is 2134 mm, 6 ft 8 in 2032 mm, 5 ft 1524 mm in the
// code.
#include "tests/design/whole_design.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;

TEST_CASE("the built-in headroom rules are those of the code") {
    const auto rules =
        read_design(replaced(whole_design, "[rules.shower]\nclear_height = \"6 ft 6 in\"\n", ""))
            .design.rules;
    REQUIRE(rules.size() == 4);
    const HeadroomRule& habitable = rules.at("habitable");
    CHECK(habitable.use == "habitable");
    CHECK(habitable.clear_height == Approx(2.134).margin(0.0005));
    CHECK(habitable.low_height.value() == Approx(1.524));
    CHECK(habitable.required_area.value() == Approx(70 * 0.09290304));
    CHECK(habitable.share == 0.5);
    CHECK(habitable.least_dimension.value() == Approx(2.1336));
    CHECK_THAT(habitable.section, Catch::Contains("R305.1") && Catch::Contains("R304.2"));
    CHECK_THAT(habitable.source, Catch::Contains("International Residential Code"));
    CHECK(rules.at("bath").clear_height == Approx(2.032));
    CHECK_FALSE(rules.at("bath").clear_square.has_value());
    CHECK(rules.at("shower").clear_height == Approx(2.032));
    CHECK(rules.at("shower").clear_square.value() == Approx(0.762));
    CHECK(rules.at("tiny-house").clear_height == Approx(2.032));
    CHECK(rules.count("store") == 0);
}

TEST_CASE("a design overrides single values, and no longer under the name of the code") {
    const auto rules = read_design(whole_design).design.rules;
    const HeadroomRule& shower = rules.at("shower");
    CHECK(shower.clear_height == Approx(78 * 0.0254));
    CHECK(shower.clear_square.value() == Approx(0.762)); // kept
    CHECK(shower.source == "stated in the design");
    CHECK(shower.section == "[rules.shower]");
    CHECK_THAT(rules.at("bath").source, Catch::Contains("International Residential Code"));
}

TEST_CASE("a design can state its own source and give a store a rule") {
    const DesignReading reading = read_design(whole_design + R"(
[rules.store]
source = "County rules for sheds, 2024"
section = "4"
clear_height = "6 ft"
required_area = "20 sq ft"
share = 1
)");
    REQUIRE(codes_of(reading) == "");
    const HeadroomRule& store = reading.design.rules.at("store");
    CHECK(store.source == "County rules for sheds, 2024");
    CHECK(store.section == "4");
    CHECK(store.share == 1);
    CHECK(codes_of(read_design(whole_design + "[rules.store]\nshare = 1\n")) == "missing-key");
}
