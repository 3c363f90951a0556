// Openings in IFC: their holes, doors, windows and identities.
#include "geometry/design/read_design.hpp"
#include "tests/exporters/read_ifc.hpp"
#include "tests/exporters/scratch.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <set>

namespace coilwright {

using nlohmann::json;

TEST_CASE("IFC: every opening is filled by a door or a window of its size, and lies in its hole") {
    REQUIRE(plain_domes().size() >= 8);
    for (const ReadBuilding* one : plain_domes()) {
        const ReadBuilding& building = *one;
        CAPTURE(building.name);
        const auto& openings = building.plan.schedule.openings;
        CHECK(building.of_type("IfcOpeningElement").size() == openings.size());
        CHECK(building.of_type("IfcRelVoidsElement").size() == openings.size());
        std::map<int, int> filled;
        for (const json& relation : building.of_type("IfcRelFillsElement"))
            filled[relation.at("RelatedBuildingElement").at("ref")] =
                relation.at("RelatingOpeningElement").at("ref");
        CHECK(filled.size() == openings.size());
        for (const OpeningPlan& opening : openings) {
            CAPTURE(opening.form.id);
            const bool is_door = opening.form.use == OpeningUse::door;
            const json* filling = nullptr;
            for (const auto& [id, line] : building.lines.items())
                if (line.at("type") == (is_door ? "IfcDoor" : "IfcWindow") &&
                    line.at("Description") == word(opening.form.use) + " " + opening.form.id)
                    filling = &line;
            REQUIRE(filling);
            CHECK(filling->at("OverallWidth").get<double>() ==
                  Approx(2 * opening.form.half_width).margin(1e-6));
            CHECK(filling->at("OverallHeight").get<double>() ==
                  Approx(opening.form.top - opening.form.sill).margin(1e-6));
            const json& hole = building.lines.at(std::to_string(filled.at(filling->at("id"))));
            const json& edges = building.holes.at(std::to_string(hole.at("id").get<int>()));
            CHECK(edges.at("identifier") == "Reference"); // its hole is in the courses already
            CHECK(building.body(hole) == nullptr);
            REQUIRE(edges.at("edges").size() == 2);
            const json& frame = *building.body(*filling);
            CHECK(frame.at("volume").get<double>() > 0);
            // The frame's body is that of the models.
            double volume_of_frame = 0;
            for (const SolidPart& part : building.model.parts)
                if (part.title == "Frame of " + opening.form.id)
                    volume_of_frame += part.volume;
            CHECK(frame.at("volume").get<double>() == Approx(volume_of_frame).epsilon(1e-4));
            CHECK(frame.at("high")[2].get<double>() < opening.form.top + 1e-4);
            CHECK(frame.at("low")[2].get<double>() > opening.form.sill - 1e-4);
            // Both edges lie square to the bearing, as far apart as the hole is deep.
            const Vec2 pole = building.plan.schedule.building.domes.front().at;
            const Vec2 out = along(opening.form.bearing);
            double distance[2] = {}, low = 1e9, high = -1e9, across = 0;
            for (std::size_t k = 0; k < 2; ++k)
                for (const json& at : edges.at("edges")[k]) {
                    const Vec2 off = Vec2(at[0].get<double>(), at[1].get<double>()) - pole;
                    distance[k] = off.dot(out);
                    CHECK(off.dot(out) ==
                          Approx(edges.at("edges")[k][0][0].get<double>() * out.x() +
                                 edges.at("edges")[k][0][1].get<double>() * out.y() - pole.dot(out))
                              .margin(2e-6));
                    across = std::max(across, std::abs(off.x() * out.y() - off.y() * out.x()));
                    low = std::min(low, at[2].get<double>());
                    high = std::max(high, at[2].get<double>());
                }
            CHECK(distance[1] - distance[0] ==
                  Approx(building.quantity(hole, "Depth")).margin(1e-5));
            CHECK(across == Approx(opening.form.half_width).margin(1e-5));
            CHECK(low == Approx(opening.form.sill).margin(1e-5));
            CHECK(high == Approx(opening.form.top).margin(1e-5));
        }
    }
}

// The outline of a pointed head by its own formula: two arcs of radius (a^2 + h^2) / (2 a).
TEST_CASE("IFC: the hole of the store's door has the area of its outline") {
    const ReadBuilding& store =
        *std::find_if(demo_buildings().begin(), demo_buildings().end(),
                      [](const ReadBuilding& one) { return one.name == "grain-store.toml, IFC4"; });
    const OpeningForm& door = store.plan.schedule.openings.front().form;
    REQUIRE(door.head_kind == HeadKind::pointed);
    const double a = door.half_width, h = door.top - door.springing;
    const double rho = (a * a + h * h) / (2 * a), angle = std::asin(h / rho);
    const double head = 2 * (rho * rho * angle / 2 - (rho - a) * h / 2);
    const double area = 2 * a * (door.springing - door.sill) + head;
    int found = 0;
    for (const json& hole : store.of_type("IfcOpeningElement"))
        if (hole.at("Description") == "Hole for " + door.id) {
            ++found;
            CHECK(store.quantity(hole, "Area") == Approx(area).epsilon(2e-3));
        }
    CHECK(found == 1);
}

TEST_CASE("IFC: a change to one window leaves every other GlobalId as it was") {
    const auto guids = [](const std::string& text) {
        std::map<std::string, std::string> found; // by identity, the line's values
        for (std::size_t at = 0; (at = text.find("('", at)) != std::string::npos; ++at) {
            const std::string guid = text.substr(at + 2, 22);
            if (text.compare(at + 24, 2, "',") == 0)
                found[guid] = guid;
        }
        return found;
    };
    const auto text_of = [](const std::string& toml) {
        DesignReading reading = read_design(toml);
        BuildingPlan plan =
            plan_building(std::move(reading.design), std::move(reading.diagnostics));
        REQUIRE(plan.sound());
        return ifc_text(plan, courses_model(plan.schedule, 0.01).model, IfcSchema::ifc4);
    };
    std::string toml = bytes_of(COILWRIGHT_SOURCE_DIR "/models/grain-store.toml");
    const auto before = guids(text_of(toml));
    CHECK(before.size() > 100);
    // Wider, and renamed with another that comes first in the file's order.
    const std::size_t window = toml.find("[opening.west]");
    REQUIRE(window != std::string::npos);
    const std::size_t width = toml.find("width = \"", window);
    std::string wider = toml;
    wider.replace(width, toml.find('\n', width) - width, "width = \"18 in\"");
    REQUIRE(wider != toml);
    CHECK(guids(text_of(wider)) == before);
    std::string renamed = toml;
    renamed.replace(window, 14, "[opening.alpha]");
    const auto after = guids(text_of(renamed));
    CHECK(after.size() == before.size());
    std::size_t kept = 0;
    for (const auto& [guid, same] : before)
        kept += after.count(guid);
    // What goes with the name: hole, window, their sets and relations.
    CHECK(before.size() - kept > 4);
    CHECK(before.size() - kept < 16);
}

} // namespace coilwright
