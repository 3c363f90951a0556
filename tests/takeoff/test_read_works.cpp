// The works file: what it reads, and how it tells faults.
#include "geometry/design/read_works.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;

namespace {

const char* const head = "works = 1\nunit = \"ft\"\n";

std::string codes(const WorksReading& reading) {
    std::string list;
    for (const Diagnostic& fault : reading.diagnostics)
        list += (list.empty() ? "" : " ") + fault.code;
    return list;
}

} // namespace

TEST_CASE("a works file is read") {
    const WorksReading reading = read_works(std::string(head) + R"(
currency = "shells"
[packs]
cement_bag = "50 kg"
bucket = "20 l"
barrow = "3 cu ft"
[mix.mud]
parts = { soil = 3, sand = 2, straw = 1 }
[coat.base]
side = "inside"
thickness = "1 in"
mix = "mud"
[price.cement]
per = "pack"
low = 10
likely = 12.5
high = 20
date = "2027-03-01"
[crew]
size = 6
start = "2028-02-29"
rest = ["sunday", "saturday"]
)");
    CHECK(codes(reading).empty());
    const Works& works = reading.works;
    CHECK(works.packs.cement_bag == Approx(50));
    CHECK(works.packs.bucket == Approx(0.02));
    CHECK(works.packs.barrow == Approx(3 * 0.028316846592));
    CHECK(find_mix(works, "mud") != nullptr);
    CHECK(find_mix(works, "lime") != nullptr); // built in
    REQUIRE(works.prices.size() == 1);
    CHECK(works.prices[0].high == 20);
    CHECK(works.crew.rest_days == std::vector<int>{5, 6});
    CHECK((works.crew.start == Date{2028, 2, 29}));
    CHECK(default_works().prices.empty()); // no price is built in
}

TEST_CASE("faults of a works file are told with their place") {
    const auto fault = [](const std::string& text) { return codes(read_works(head + text)); };
    CHECK(fault("[coat.a]\nside = \"inside\"\nthickness = \"1 in\"\nmix = \"lyme\"\n") ==
          "unknown-word");
    CHECK(fault("currency = \"x\"\n[price.cemnt]\nper = \"pack\"\nlikely = 1\n") == "unknown-word");
    CHECK(fault("[price.cement]\nper = \"pack\"\nlikely = 1\n") == "missing-key"); // currency
    CHECK(fault("currency = \"x\"\n[price.cement]\nper = \"pack\"\nlow = 3\nlikely = 1\n") ==
          "out-of-range");
    CHECK(fault("[soil]\nswel = 0.2\n") == "unknown-key");
    CHECK(fault("[mix.a]\nparts = { cement = 1 }\n") == "wrong-type");
    CHECK(fault("[crew]\nstart = \"2027-02-29\"\n") == "wrong-type");
    CHECK(fault("[crew]\nrest = [\"sonday\"]\n") == "wrong-type");
    CHECK(fault("[packs]\nbucket = \"5 mm\"\n") == "unreadable-measure");
    CHECK(fault("[packs]\nbucket = \"5000 l\"\n") == "out-of-range");
    CHECK(codes(read_works("unit = \"ft\"\n")) == "missing-key");
    CHECK(codes(read_works("= 1")) == "not-toml");
    const WorksReading reading = read_works(std::string(head) + "\n[waste]\ntube = 2\n");
    REQUIRE(reading.diagnostics.size() == 1);
    CHECK(reading.diagnostics[0].place.line == 5);
}

TEST_CASE("two coats of a side in one place, and a price of nothing") {
    const std::string coat = "side = \"inside\"\nthickness = \"1 in\"\nmix = \"lime\"\n";
    const WorksReading coats =
        read_works(head + ("[coat.a]\n" + coat) + "[coat.b]\n" + coat + "[coat.c]\norder = 2\n" +
                   coat + "[coat.d]\nside = \"outside\"\nthickness = \"1 in\"\nmix = \"lime\"\n");
    CHECK(codes(coats) == "taken-number");
    REQUIRE(coats.diagnostics.size() == 1);
    CHECK(coats.diagnostics[0].subject == "coat.b.order");
    CHECK(coats.diagnostics[0].place.line == 7);
    CHECK(coats.diagnostics[0].example == "order = 3"); // 2 is taken too
    const WorksReading prices = read_works(
        std::string(head) + "currency = \"shells\"\n[price.strow]\nper = \"m3\"\nlikely = 5\n");
    REQUIRE(prices.diagnostics.size() == 1);
    CHECK(prices.diagnostics[0].code == "unknown-word");
    CHECK(prices.diagnostics[0].example == "[price.straw]");
    CHECK(prices.diagnostics[0].allowed.find("tube-NAME") != std::string::npos);
}

TEST_CASE("days of the calendar") {
    CHECK(read_date("2027-04-05").has_value());
    CHECK_FALSE(read_date("2100-02-29").has_value());
    CHECK(read_date("2000-02-29").has_value());
    for (const char* bad :
         {"", "2027-4-05", "2027-13-01", "2027-00-10", "1850-01-01", "2027/04/05"})
        CHECK_FALSE(read_date(bad).has_value());
}

TEST_CASE("a material has no code of another thing to buy") {
    for (const std::string id : {"glass", "wire", "water", "labour", "tube-main"}) {
        CAPTURE(id);
        const WorksReading reading =
            read_works(std::string(head) + "[material." + id + "]\ndensity = \"1200 kg/m3\"\n");
        REQUIRE(codes(reading) == "reserved-id");
        const std::string other = reading.diagnostics.front().example;
        CHECK(codes(read_works(std::string(head) + other + "\ndensity = \"1200 kg/m3\"\n")) == "");
    }
    CHECK(codes(read_works(std::string(head) + "[material.soil]\ndensity = \"1300 kg/m3\"\n")) ==
          "");
}
