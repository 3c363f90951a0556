// Openings in IFC: their holes, doors, windows and identities.
#include "geometry/design/read_design.hpp"
#include "tests/exporters/read_ifc.hpp"
#include "tests/exporters/scratch.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <regex>
#include <set>

namespace coilwright {

using nlohmann::json;

TEST_CASE("IFC: every opening is filled by a door or a window of its size, and lies in its hole") {
    REQUIRE(plain_domes().size() >= 8);
    for (const ReadBuilding* one : plain_domes()) {
        const ReadBuilding& building = *one;
        CAPTURE(building.name);
        const auto& openings = building.plan.schedule.openings;
        std::size_t holes = openings.size();
        for (const DomeForm& dome : building.plan.schedule.building.domes)
            holes += dome.cap_courses == 0; // a skylight
        CHECK(building.of_type("IfcOpeningElement").size() == holes);
        CHECK(building.of_type("IfcRelVoidsElement").size() == holes);
        // A skylight's hole is plumb through the curb, or the last ring.
        for (const DomeForm& dome : building.plan.schedule.building.domes) {
            if (dome.cap_courses > 0)
                continue;
            const double low =
                dome.course_bottom(dome.curb_courses > 0 ? dome.last_ring + 1 : dome.last_ring);
            for (const json& hole : building.of_type("IfcOpeningElement"))
                if (hole.at("Description") == "Hole for the skylight of " + dome.id) {
                    const json& edges =
                        building.holes.at(std::to_string(hole.at("id").get<int>())).at("edges");
                    CHECK(edges[0][0][2].get<double>() == Approx(low).margin(1e-6));
                    CHECK(edges[1][0][2].get<double>() == Approx(dome.top()).margin(1e-6));
                    CHECK(building.quantity(hole, "Width") ==
                          Approx(2 * dome.last_ring_radius).margin(1e-6));
                    --holes; // found
                }
        }
        CHECK(holes == openings.size());
        std::map<int, int> filled;
        for (const json& relation : building.of_type("IfcRelFillsElement"))
            filled[relation.at("RelatedBuildingElement").at("ref")] =
                relation.at("RelatingOpeningElement").at("ref");
        CHECK(filled.size() == building.of_type("IfcOpeningElement").size());
        for (const OpeningPlan& opening : openings) {
            CAPTURE(opening.form.id);
            const bool is_door = opening.form.use == OpeningUse::door;
            const json* filling = nullptr;
            for (const auto& [id, line] : building.lines.items())
                if (line.at("type") == (is_door ? "IfcDoor" : "IfcWindow") &&
                    line.at("Description") ==
                        (word(opening.form.use) == opening.form.id
                             ? opening.form.id
                             : word(opening.form.use) + " " + opening.form.id))
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

namespace {

// GlobalIds by what bears them: "IFCWALL STORE_WALL"; of a set or a relation, whose names repeat,
// with all that it belongs to or joins.
using Identities = std::map<std::string, std::set<std::string>>;

// Read off the lines themselves, `#7=IFCWALL('guid',...,'name',...`, not by the writer.
Identities identities(const std::string& text) {
    static const std::regex form("^#([0-9]+)=([A-Z0-9]+)\\('([0-9A-Za-z_$]{22})',(?:\\$|#[0-9]+),"
                                 "(?:\\$|'((?:[^']|'')*)')");
    static const std::regex reference("#([0-9]+)");
    struct Root {
        std::string guid, key, refers;
        bool is_relation = false, is_set = false;
    };
    std::map<int, Root> roots;
    for (std::size_t at = 0, end; at < text.size(); at = end + 1) {
        end = std::min(text.find('\n', at), text.size());
        std::smatch match;
        const std::string line = text.substr(at, end - at);
        if (line.find("('") < 60 && std::regex_search(line, match, form)) {
            const std::string type = match[2];
            roots[std::stoi(match[1])] = {match[3], type + " " + match[4].str(), match.suffix(),
                                          type.rfind("IFCREL", 0) == 0,
                                          type == "IFCPROPERTYSET" || type == "IFCELEMENTQUANTITY"};
        }
    }
    const auto joined = [&](const Root& relation) {
        std::vector<Root*> ends;
        for (std::sregex_iterator at(relation.refers.begin(), relation.refers.end(), reference),
             last;
             at != last; ++at)
            if (const auto found = roots.find(std::stoi((*at)[1])); found != roots.end())
                ends.push_back(&found->second);
        return ends;
    };
    for (auto& [id, relation] : roots)
        if (relation.is_relation)
            for (Root* set : joined(relation))
                for (const Root* other : joined(relation))
                    if (set->is_set && !other->is_set)
                        set->key += " of " + other->key;
    Identities found;
    for (const auto& [id, root] : roots) {
        std::string key = root.key;
        if (root.is_relation)
            for (const Root* end : joined(root))
                key += ", " + end->key;
        found[key].insert(root.guid);
    }
    return found;
}

Identities identities_of(const std::string& toml) {
    DesignReading reading = read_design(toml);
    BuildingPlan plan = plan_building(std::move(reading.design), std::move(reading.diagnostics));
    REQUIRE(plan.sound());
    return identities(ifc_text(plan, courses_model(plan.schedule, 0.02).model, IfcSchema::ifc4));
}

struct ChangedWindow {
    std::string demo, opening, wider;
};

} // namespace

TEST_CASE("IFC: a change to one window leaves every other GlobalId with its own element") {
    for (const ChangedWindow& change :
         {ChangedWindow{"grain-store.toml", "[opening.west]", "18 in"},
          ChangedWindow{"home.toml", "[opening.bedside]", "22 in"}}) {
        CAPTURE(change.demo);
        const std::string toml = bytes_of(COILWRIGHT_SOURCE_DIR "/models/" + change.demo);
        const Identities before = identities_of(toml);
        CHECK(before.size() > 100);
        std::set<std::string> all;
        for (const auto& [key, guids] : before) {
            CAPTURE(key);
            CHECK(guids.size() == 1); // a name that others share could hide an exchange
            all.insert(guids.begin(), guids.end());
        }
        CHECK(all.size() == before.size());
        const std::size_t window = toml.find(change.opening);
        REQUIRE(window != std::string::npos);
        const std::size_t width = toml.find("width = \"", window);
        std::string wider = toml;
        wider.replace(width, toml.find('\n', width) - width, "width = \"" + change.wider + "\"");
        REQUIRE(wider != toml);
        CHECK(identities_of(wider) == before);
        // Renamed so that it comes first in the order of names: nothing moves along by one.
        std::string renamed = toml;
        renamed.replace(window, change.opening.size(), "[opening.alpha]");
        std::size_t kept = 0, left = 0;
        for (const auto& [key, guids] : identities_of(renamed))
            for (const std::string& guid : guids) {
                ++left;
                kept += all.count(guid);
            }
        CHECK(left == all.size());
        // What goes with the name: hole, window, their sets and relations.
        CHECK(all.size() - kept > 4);
        CHECK(all.size() - kept < 16);
    }
}

} // namespace coilwright
