// The engineer's report of the demo designs: what stands on its sheets, and whether the lines of
// thrust that are drawn lie in the wall that is drawn.
#include "geometry/checks/check_building.hpp"
#include "geometry/drawing/crew_book.hpp"
#include "geometry/report/engineer_report.hpp"
#include "geometry/report/report_pages.hpp"
#include "geometry/report/thrust_view.hpp"
#include "tests/support/demos.hpp"

#include <catch2/catch.hpp>


using namespace coilwright;
using namespace coilwright::testing;

namespace {

/// A font of even width: the layout asks for no more.
TextExtent even_measure(const std::string& text, double size, bool bold) {
    return {static_cast<double>(text.size()) * size * (bold ? 0.56 : 0.5), size * 0.73, size * 0.2};
}

std::string words_of(const Sheet& sheet) {
    std::string all;
    for (const PaperItem& item : sheet.items)
        if (const auto* text = std::get_if<TextItem>(&item))
            all += text->text + " ";
    return all;
}

} // namespace

TEST_CASE("every sheet carries the caution and its number, nothing leaves the frame") {
    for (const char* demo :
         {"grain-store.toml", "washroom.toml", "workshop.toml", "home.toml", "cabin-metric.toml"}) {
        CAPTURE(demo);
        const BuildingPlan plan = demo_plan(demo);
        for (const PaperSize& paper : {letter_paper(), a4_paper()}) {
            const std::vector<Sheet> sheets =
                engineer_report(plan, checked_building(plan), paper, even_measure);
            REQUIRE(sheets.size() >= 4 + plan.schedule.building.domes.size());
            for (const Sheet& sheet : sheets) {
                CAPTURE(sheet.title);
                const std::string words = words_of(sheet);
                CHECK(words.find("CAUTION") != std::string::npos);
                CHECK(words.find(" of " + std::to_string(sheets.size())) != std::string::npos);
                const PaperBox frame = grown(frame_of(sheet.width, sheet.height), 0.5);
                for (const PaperItem& item : sheet.items) {
                    const PaperBox box = bounds(item, even_measure);
                    CAPTURE(item.index(), box.left, box.right, box.bottom, box.top);
                    CHECK(inside(box, frame));
                }
            }
        }
    }
}

TEST_CASE(
    "each check stands there with its formula, limits and source; there is room for a stamp") {
    const BuildingPlan plan = demo_plan("grain-store.toml");
    const CheckedBuilding checked = checked_building(plan);
    const std::vector<Finding>& findings = checked.findings;
    std::string all;
    for (const Sheet& sheet : engineer_report(plan, checked, letter_paper(), even_measure))
        all += words_of(sheet);
    CHECK(all.find("Stamp") != std::string::npos);
    CHECK(all.find("What was not considered") != std::string::npos);
    CHECK(all.find("Heyman") != std::string::npos);
    int told = 0;
    for (const Finding& finding : findings)
        if (!finding.formula.empty()) {
            CAPTURE(finding.code);
            CHECK(all.find(finding.subject + ": " + finding.code) != std::string::npos);
            CHECK(all.find("Value: " + finding.formula.substr(0, 20)) != std::string::npos);
            ++told;
        }
    CHECK(told >= 10);
}

TEST_CASE(
    "a line drawn lies on the flats where its factor is over 1, and is ringed where it leaves") {
    const BuildingPlan plan = demo_plan("grain-store.toml");
    const BuildingForm& building = plan.schedule.building;
    const DomeAnalysis analysis = analyse_dome(plan.design, building, building.domes[0]);
    const ThrustLine& line = analysis.statics.strips[0].centred.line;
    REQUIRE(analysis.statics.strips[0].centred.share < 1);
    const HalfFrame frame{{20, 60}, 50};
    Sheet sheet;
    add_thrust_line(sheet, line, frame, thrust_pens::centred);
    REQUIRE(sheet.items.size() == 1); // no ring
    const LineItem& drawn = std::get<LineItem>(sheet.items[0]);
    REQUIRE(drawn.points.size() > 20);
    for (const Vec2& point : drawn.points) {
        const double x = (point.x() - 20) / 50, z = (point.y() - 60) / 50;
        bool on_a_flat = false;
        for (const WallCourse& course : analysis.statics.courses)
            on_a_flat = on_a_flat || (std::abs(course.bottom - z) < 1e-6 &&
                                      x > course.contact_inner && x < course.contact_outer);
        CHECK(on_a_flat);
    }
    ThrustLine out = line;
    out.joints[5].reach = 1.2;
    Sheet ringed;
    add_thrust_line(ringed, out, frame, thrust_pens::centred);
    CHECK(ringed.items.size() == 2);
}
