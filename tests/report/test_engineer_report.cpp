// The engineer's report of the demo designs: what stands on its sheets, and whether the lines of
// thrust that are drawn lie in the wall that is drawn.
#include "geometry/checks/check_building.hpp"
#include "geometry/checks/formulas.hpp"
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

namespace {

/// The words of a demo's report, sheet by sheet.
std::vector<std::pair<std::string, std::string>> report_of(const char* demo) {
    const BuildingPlan plan = demo_plan(demo);
    std::vector<std::pair<std::string, std::string>> sheets;
    for (const Sheet& sheet :
         engineer_report(plan, checked_building(plan), letter_paper(), even_measure))
        sheets.emplace_back(sheet.title, words_of(sheet));
    return sheets;
}

} // namespace

TEST_CASE("below each table stand the formulas of its columns") {
    std::string all;
    for (const auto& [title, words] : report_of("square-door.toml"))
        all += words;
    for (const ReportTable table :
         {ReportTable::sections, ReportTable::courses, ReportTable::joints, ReportTable::membrane,
          ReportTable::lintels})
        for (const ColumnFormula& one : formulas_of(table)) {
            CAPTURE(one.column);
            CHECK(all.find(one.column + ":") != std::string::npos);
        }
    CHECK(all.find("Meyerhof 1953") != std::string::npos);
    CHECK(all.find("Pappus-Guldinus") != std::string::npos);
    CHECK(all.find("Lintels as beams on two supports") != std::string::npos);
}

TEST_CASE("pressures are tabled only where a line of thrust stands at the friction of the joints") {
    std::string words;
    for (const auto& [title, text] : report_of("retreat.toml"))
        words += text;
    const std::string table = "Joints along the line that asks least strength, the same strip";
    // Of its two domes one stands so.
    CHECK(words.find(table) != std::string::npos);
    CHECK(words.find(table) == words.rfind(table));
    CHECK(words.find("runs along the edges of joints") != std::string::npos);
}

TEST_CASE("a legend names the lines that are drawn and no other") {
    const BuildingPlan plan = demo_plan("grain-store.toml");
    const BuildingForm& building = plan.schedule.building;
    const DomeAnalysis analysis = analyse_dome(plan.design, building, building.domes[0]);
    const StripStatics& strip = analysis.statics.strips[0];
    const HalfFrame frame{{20, 60}, 50};
    const auto legend = [&](const ThrustLine& least, const ThrustLine& greatest) {
        Sheet section, sheet;
        const DrawnLines drawn =
            add_thrust_lines(section, frame, strip.centred.line, least, greatest);
        add_thrust_legend(sheet, {0, 0}, drawn);
        return words_of(sheet);
    };
    REQUIRE(strip.least.stands);
    const std::string all = legend(strip.least, strip.greatest);
    for (const char* const name : {"most centred", "least thrust", "greatest thrust"})
        CHECK(all.find(name) != std::string::npos);
    CHECK(all.find("leaves") == std::string::npos);
    const std::string one = legend({}, {});
    CHECK(one.find("most centred") != std::string::npos);
    CHECK(one.find("least thrust") == std::string::npos);
    CHECK(one.find("greatest") == std::string::npos);
    ThrustLine out = strip.least;
    out.joints[5].reach = 1.2;
    CHECK(legend(out, {}).find("leaves the part that carries") != std::string::npos);
}

TEST_CASE("beside an advice stands from where on the value is good, and all findings are told") {
    std::string all;
    for (const auto& [title, words] : report_of("grain-store.toml"))
        all += words;
    CHECK(all.find("1.40; against 1.00, good from 2.00") != std::string::npos); // Heyman: 2
    CHECK(all.find("good from 1.50") != std::string::npos); // sliding, [joint] factor
    for (const Finding& finding : all_findings(demo_plan("grain-store.toml"))) {
        CAPTURE(finding.code);
        CHECK(all.find(finding.subject + ": " + finding.code) != std::string::npos);
        CHECK_FALSE(finding.source.empty());
    }
}

TEST_CASE("no pressure of a design in feet is told in pascals") {
    for (const auto& [title, words] : report_of("home.toml")) {
        CAPTURE(title);
        CHECK(words.find(" Pa") == std::string::npos);
        CHECK(words.find(" kPa") == std::string::npos);
        CHECK(words.find(" N m") == std::string::npos);
    }
}
