// DXF files read back by ezdxf, which shares no code with the writer.
#include "exporters/dxf.hpp"
#include "exporters/dxf_file.hpp"
#include "geometry/views/upright_views.hpp"
#include "tests/views/building.hpp"
#include "tests/views/read_dxf.hpp"

#include <cmath>
#include <map>
#include <set>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

std::string dxf_of(const DrawnBuilding& building, const MeasureText& measure) {
    const Drafting drafting{building.plan, *drawing_paper("a3"), measure};
    return dxf_text_of(drawing_space(drafting, building.views), measure);
}

} // namespace

TEST_CASE("dxf: every demo's file is audited clean, has its layers and nothing empty") {
    const MeasureText measure = pango_measure();
    for (const std::string& name : demo_names()) {
        CAPTURE(name);
        const DrawnBuilding building = drawn(demo_plan(name));
        const std::string text = dxf_of(building, measure);
        CHECK(text == dxf_of(building, measure));
        for (const char byte : text)
            if (byte != '\n' && (byte < ' ' || byte > '~'))
                FAIL("a byte that is not ASCII");
        auto found = read_dxf(text);
        CHECK(found["audit"] == std::vector<Words>{});
        CHECK(found["empty"] == std::vector<Words>{});
        CHECK(found["other"] == std::vector<Words>{});
        CHECK(found["dangling"] == std::vector<Words>{});
        CHECK(found["version"] == std::vector<Words>{{"AC1015"}});
        const bool feet = building.plan.schedule.unit == DisplayUnit::feet;
        CHECK(found["unit"] == std::vector<Words>{{feet ? "1" : "4"}});
        std::set<std::string> layers, used;
        for (const Words& layer : found["layer"])
            layers.insert(layer[0]);
        for (const Words& entity : found["entity"])
            used.insert(entity[1]);
        for (const char* const layer :
             {"A-WALL", "A-WALL-PATT", "A-ANNO-DIMS", "A-ANNO-TEXT", "A-ANNO-TITL", "A-ANNO-CNTR",
              "A-ANNO-SYMB", "A-FLOR-OTLN", "A-ROOF-OTLN", "A-SECT-MCUT", "A-SECT-PATT",
              "A-SECT-MBND", "A-ELEV-OTLN", "S-FNDN", "S-FNDN-PATT", "S-FNDN-EXCV", "C-TOPO-PROF"})
            CHECK(used.count(layer) == 1);
        // No layer that nothing lies on, but the format's own.
        layers.erase("0");
        layers.erase("Defpoints");
        CHECK(layers == used);
    }
}

TEST_CASE("dxf: dimensions are dimensions, and what they measure is the schedule's") {
    const MeasureText measure = pango_measure();
    for (const std::string& name : demo_names()) {
        CAPTURE(name);
        const DrawnBuilding building = drawn(demo_plan(name));
        const Schedule& schedule = building.plan.schedule;
        auto found = read_dxf(dxf_of(building, measure));
        const double unit = schedule.unit == DisplayUnit::feet ? metres_per_inch : 0.001;
        std::multimap<std::string, double> by_name;
        REQUIRE(found["dimension"].size() > 10);
        for (const Words& dimension : found["dimension"]) {
            REQUIRE(dimension.size() == 5);
            const double stored = std::stod(dimension[0]);
            CHECK(stored == Approx(std::stod(dimension[4])).margin(1e-4)); // as the reader measures
            CHECK(std::stoi(dimension[2]) >= 6); // lines, strokes and a figure in its block
            CHECK(dimension[3] == length_text(stored * unit, schedule.unit));
            by_name.emplace(dimension[1], stored * unit);
        }
        const auto holds = [&](const std::string& of, double value) {
            const auto [from, to] = by_name.equal_range(of);
            for (auto at = from; at != to; ++at)
                if (std::abs(at->second - value) < 1e-6)
                    return true;
            return false;
        };
        const DomeForm& dome = *main_axis(schedule).dome;
        CHECK(holds("dome." + dome.id + ".widths", 2 * inside_radius(dome, 0)));
        CHECK(holds("dome." + dome.id + ".wall", dome.top() - dome.bottom()));
        for (const OpeningPlan& opening : schedule.openings) {
            const auto [from, to] = by_name.equal_range("opening." + opening.form.id + ".width");
            for (auto at = from; at != to; ++at)
                CHECK(at->second == Approx(2 * opening.form.half_width).margin(1e-6));
        }
    }
}

TEST_CASE("dxf: the wall's hatch has the exact region's area, and its arcs are arcs") {
    const MeasureText measure = pango_measure();
    for (const char* const name : {"cabin-metric", "home"}) {
        CAPTURE(name);
        const DrawnBuilding building = drawn(demo_plan(name));
        const BuildingForm& form = building.plan.schedule.building;
        auto found = read_dxf(dxf_of(building, measure));
        const double unit =
            building.plan.schedule.unit == DisplayUnit::feet ? metres_per_inch : 0.001;
        double area = 0;
        for (const Words& hatch : found["hatch"])
            if (hatch[0] == "A-WALL-PATT")
                area += std::stod(hatch[1]) * unit * unit;
        CHECK(area ==
              Approx(region_of(wall_expression(form, usual_plan_height), {}).area).epsilon(1e-3));
        // Each dome's inside face is an arc of its radius at the cut.
        for (const DomeForm& dome : form.domes) {
            const double radius = inside_radius(dome, usual_plan_height);
            bool drawn_so = false;
            for (const Words& arc : found["arc"])
                drawn_so = drawn_so || (arc[0] == "A-WALL" &&
                                        std::abs(std::stod(arc[1]) * unit - radius) < 1e-5);
            CAPTURE(dome.id);
            CHECK(drawn_so);
        }
    }
}

TEST_CASE("dxf: lines, arcs, circles and polylines come out as what they are; nothing empty does") {
    DxfFile file(DxfUnit::millimetres, 50, pango_measure());
    const DxfLayer layer{"A-TEST", 3, 0.35, {4, 1.5}};
    file.add_outline(layer, {{0, 0}, {{{100, 0}, 0}}});
    file.add_outline(layer, {{0, 0}, {{{100, 0}, 1}}});                 // half circle
    file.add_outline(layer, {{-50, 0}, {{{50, 0}, 1}, {{-50, 0}, 1}}}); // circle
    file.add_outline(layer, {{0, 0}, {{{80, 0}, 0}, {{80, 60}, 0.5}}}); // polyline
    file.add_outline(layer, {{5, 5}, {{{5, 5}, 0}}});                   // nothing
    file.add_line(layer, {1, 1}, {1, 1});                               // nothing
    file.add_arc(layer, {0, 0}, 10, 1, 1);                              // nothing
    file.add_hatch(layer, {{{0, 0}, {{{100, 0}, 0}, {{0, 0}, 0}}}}, 5); // no area
    file.add_hatch(layer, {{{0, 0}, {{{100, 0}, 0}, {{100, 100}, 0}, {{0, 0}, 0}}}}, 5);
    TextItem text;
    text.text = "  ";
    file.add_text(layer, text); // nothing
    text.text = "Ø 30° 100 %% ^ \xE7\xA9\x80";
    file.add_text(layer, text);
    auto found = read_dxf(std::move(file).finish());
    CHECK(found["audit"].empty());
    CHECK(found["empty"].empty());
    std::map<std::string, std::string> counts;
    for (const Words& entity : found["entity"])
        counts[entity[0]] = entity[2];
    CHECK(counts == std::map<std::string, std::string>{{"LINE", "1"},
                                                       {"ARC", "1"},
                                                       {"CIRCLE", "1"},
                                                       {"LWPOLYLINE", "1"},
                                                       {"HATCH", "1"},
                                                       {"TEXT", "1"}});
    REQUIRE(found["hatch"].size() == 1);
    CHECK(std::stod(found["hatch"][0][1]) == Approx(5000));
    REQUIRE(found["text"].size() == 1);
    CHECK(found["text"][0][1] == "Ø 30° 100 %% ^ \xE7\xA9\x80");
    for (const Words& one : found["layer"])
        if (one[0] == "A-TEST")
            CHECK(one == Words{"A-TEST", "3", "DASH_40_15", "35"});
}
