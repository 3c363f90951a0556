// A design read with some values replaced is the design with these values written into it.
#include "geometry/design/read_changed_design.hpp"

#include "tests/support/files.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;

namespace {

DesignReading changed(const std::vector<KeyChange>& changes) {
    return read_changed_design(testing::whole_building_text("grain-store"), changes);
}

} // namespace

TEST_CASE("without a change the design is the one that is read") {
    const Design plain = read_design(testing::whole_building_text("grain-store")).design;
    const DesignReading reading = changed({});
    CHECK(reading.diagnostics.empty());
    CHECK(reading.design.name == plain.name);
    CHECK(reading.design.domes[0].inside_diameter == plain.domes[0].inside_diameter);
    CHECK(reading.design.openings.size() == plain.openings.size());
}

TEST_CASE("lengths, bare numbers and words are put in their places") {
    const DesignReading reading = changed({{"dome.store.inside_diameter", "8 ft"},
                                           {"dome.store.springline", "2"}, // ft, the file's unit
                                           {"dome.store.profile.kind", "catenary"},
                                           {"opening.door.bearing", "12.5"},
                                           {"finish.floor_build_up", "4 in"}});
    for (const Diagnostic& fault : reading.diagnostics)
        UNSCOPED_INFO(fault.subject << ": " << fault.message);
    REQUIRE(reading.diagnostics.empty());
    const Dome& dome = reading.design.domes[0];
    CHECK(dome.inside_diameter == Approx(8 * 0.3048));
    CHECK(dome.springline == Approx(2 * 0.3048));
    CHECK(dome.profile.kind == ProfileKind::catenary);
    CHECK(reading.design.openings[0].bearing.degrees == Approx(12.5));
    CHECK(reading.design.finish.floor_build_up == Approx(4 * 0.0254));
}

TEST_CASE("a key is taken out, one that is not there too; missing tables are made") {
    const DesignReading reading = changed({{"tube.main.tamped_width", "", true},
                                           {"tube.main.nothing", "", true},
                                           {"nothing.at.all", "", true},
                                           {"wire.strands", "1"}});
    CHECK(reading.diagnostics.empty());
    CHECK_FALSE(reading.design.tubes[0].tamped_width);
    CHECK(reading.design.wire.strands == 1);
}

TEST_CASE("what is wrong with a new value is told with its path") {
    const auto fault = [](const KeyChange& change) {
        const DesignReading reading = changed({change});
        REQUIRE(reading.diagnostics.size() == 1);
        return reading.diagnostics[0];
    };
    CHECK(fault({"dome.store.inside_diameter", "8 stone"}).subject == "dome.store.inside_diameter");
    CHECK(fault({"dome.store.diamter", "8 ft"}).code == "unknown-key");
    CHECK(fault({"course.height.more", "8 ft"}).code == "wrong-type");
    CHECK(fault({"dome.store.profile.kind", "onion"}).message.find("onion") != std::string::npos);
    CHECK(read_changed_design("not toml at all", {{"a.b", "1"}}).diagnostics[0].code == "not-toml");
}
