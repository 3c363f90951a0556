// forms.dxf and forms.pdf as other programs read them.
#include "exporters/dxf.hpp"
#include "exporters/pdf.hpp"
#include "geometry/base/bearing.hpp"
#include "geometry/drawing/figures.hpp"
#include "geometry/templates/form_set.hpp"
#include "geometry/views/tiles.hpp"
#include "tests/drawing/plans.hpp"
#include "tests/drawing/sheet_checks.hpp"
#include "tests/exporters/scratch.hpp"
#include "tests/views/read_dxf.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <set>

using namespace coilwright;
using namespace coilwright::testing;
using Catch::Matchers::Contains;

namespace {

const std::vector<std::string> demos{"grain-store", "cabin-metric", "washroom", "workshop",
                                     "square-door", "home",         "retreat"};

std::string forms_dxf(const BuildingPlan& plan, double kerf) {
    const MeasureText measure = pango_measure();
    const Drafting drafting{plan, *drawing_paper("a3"), measure};
    const auto views = cutting_views(form_set(plan.schedule), kerf);
    std::vector<ViewRow> rows;
    for (const auto& row : views) {
        rows.push_back({{}, Scale{5, ""}});
        for (const View& view : row)
            rows.back().views.push_back(&view);
    }
    return dxf_text_of(lay_side_by_side(drafting, rows, Scale{5, ""}), measure);
}

/// What a sheet's title block says of it: the lines under the design's name, joined.
std::string title_in_block(const Sheet& sheet, const std::string& design) {
    std::string title;
    bool under = false;
    for (const TextItem* text : text_items(sheet)) {
        if (text->text.rfind("Scale ", 0) == 0)
            break;
        if (under)
            title += (title.empty() ? "" : " ") + text->text;
        under = under || text->text.rfind(design.substr(0, 8), 0) == 0;
    }
    return title;
}

/// Areas of what is cut, m2, smallest first.
std::vector<double> cut_areas(std::map<std::string, std::vector<Words>>& found, double unit) {
    std::vector<double> areas;
    for (const Words& area : found["area"])
        if (area[0] == "FORM-CUT")
            areas.push_back(std::abs(std::stod(area[1])) * unit * unit);
    std::sort(areas.begin(), areas.end());
    return areas;
}

} // namespace

TEST_CASE("forms.dxf: audited clean, every cut closed, areas those of the pieces") {
    for (const std::string& name : demos) {
        CAPTURE(name);
        const BuildingPlan plan = demo_plan(name);
        auto found = read_dxf(forms_dxf(plan, 0));
        CHECK(found["audit"] == std::vector<Words>{});
        CHECK(found["empty"] == std::vector<Words>{});
        CHECK(found["other"] == std::vector<Words>{});
        for (const Words& entity : found["entity"])
            if (entity[1] == "FORM-CUT")
                CHECK((entity[0] == "LWPOLYLINE" || entity[0] == "CIRCLE"));
        const double unit = plan.schedule.unit == DisplayUnit::feet ? metres_per_inch : 0.001;
        const std::vector<double> areas = cut_areas(found, unit);
        const FormSet set = form_set(plan.schedule);
        const auto is_cut = [&](double wanted) {
            return std::any_of(areas.begin(), areas.end(), [&](double area) {
                return std::abs(area - wanted) < 1e-4 * wanted + 1e-6;
            });
        };
        std::size_t pieces = set.boards.size();
        for (const FormKind& kind : set.kinds) {
            CAPTURE(kind.mark);
            CHECK(is_cut(area_of(kind.form.face)));
            ++pieces;
            if (kind.strip) {
                CHECK(is_cut(kind.strip->length * kind.strip->depth));
                ++pieces;
            }
            if (kind.frame) {
                CHECK(is_cut(area_of(kind.frame->pane)));
                const bool open =
                    kind.frame->use == OpeningUse::door && kind.frame->outer.edges.size() > 2;
                if (open) // one outline round the frame
                    CHECK(is_cut(area_of(kind.frame->outer) - area_of(kind.frame->inner)));
                pieces += open ? 2 : 3;
            }
        }
        CHECK(areas.size() == pieces);
    }
}

TEST_CASE("forms.dxf: the kerf moves the cut outwards by half of itself, in holes inwards") {
    const BuildingPlan plan = demo_plan("cabin-metric");
    auto exact = read_dxf(forms_dxf(plan, 0));
    auto wide = read_dxf(forms_dxf(plan, 0.006));
    const std::vector<double> before = cut_areas(exact, 0.001), after = cut_areas(wide, 0.001);
    REQUIRE(before.size() == after.size());
    const FormSet set = form_set(plan.schedule);
    for (const FormKind& kind : set.kinds) {
        // A convex outline moved out by d gains d times its length and, at corners of turning t,
        // d^2 tan(t / 2) each: at least pi d^2, at most 8 d^2 here.
        const double d = 0.003, area = area_of(kind.form.face), girth = length_of(kind.form.face);
        const bool found = std::any_of(after.begin(), after.end(), [&](double one) {
            return one > area + d * girth + 3 * d * d && one < area + d * girth + 12 * d * d;
        });
        CHECK(found);
        if (!kind.frame || kind.frame->use == OpeningUse::door)
            continue;
        const double hole = area_of(moved_out(kind.frame->inner, -d).value());
        CHECK(std::any_of(after.begin(), after.end(),
                          [&](double one) { return std::abs(one - hole) < 1e-5; }));
    }
    // Dimensions stay those of the pieces.
    REQUIRE(exact["dimension"].size() == wide["dimension"].size());
    for (std::size_t i = 0; i < exact["dimension"].size(); ++i)
        CHECK(exact["dimension"][i][0] == wide["dimension"][i][0]);
}

// Of the store on Letter: before the backs of boards and cells of straight lines were left out
// there were 113 sheets.
TEST_CASE("forms.pdf: no sheets for what a straight edge draws") {
    const MeasureText measure = pango_measure();
    const BuildingPlan plan = demo_plan("grain-store");
    const Drafting drafting{plan, *drawing_paper("letter"), measure};
    const FormSet set = form_set(plan.schedule);
    const std::vector<Sheet> sheets = form_sheets(drafting, set);
    CHECK(sheets.size() < 95);
    std::string all;
    for (const Sheet& sheet : sheets)
        all += all_text(sheet) + " ";
    CHECK_THAT(all, Contains("straight edge from tile to tile"));
    // The width of the boards, whose backs are not drawn: by the first board's own corners.
    for (const ProfileBoard& board : set.boards) {
        const auto& edges = board.board.edges;
        const double width = (edges[edges.size() - 2].to - board.board.from).norm();
        CHECK_THAT(all, Contains("board " + length_text(width, plan.schedule.unit) + " wide"));
    }
}

TEST_CASE("forms.pdf: sheets exact, nothing overlaps, every piece is listed") {
    const MeasureText measure = pango_measure();
    for (const std::string& name : demos) {
        CAPTURE(name);
        const BuildingPlan plan = demo_plan(name);
        const FormSet set = form_set(plan.schedule);
        for (const char* const paper : {"a2", "letter"}) {
            CAPTURE(paper);
            const Drafting drafting{plan, *drawing_paper(paper), measure};
            const std::vector<Sheet> sheets = form_sheets(drafting, set);
            std::string lists;
            std::set<std::string> printed; // in the title blocks of tiles
            for (const Sheet& sheet : sheets) {
                CHECK(sheet.width == drafting.paper.height);
                CHECK(sheet.height == drafting.paper.width);
                CAPTURE(sheet.title);
                CHECK(sheet_faults(sheet, page_margin, measure) == std::vector<std::string>{});
                const std::string text = all_text(sheet);
                CHECK_THAT(text, Contains("Print at 100 %"));
                CHECK_THAT(text, Contains("CAUTION"));
                lists += text;
                if (sheet.title.rfind("Tile ", 0) != 0)
                    continue;
                const std::string title = title_in_block(sheet, plan.schedule.name);
                CAPTURE(title);
                CHECK(printed.insert(title).second);
                CHECK(title.rfind("Tile ", 0) == 0);
                const std::size_t piece = sheet.title.find("piece ");
                if (piece != std::string::npos)
                    CHECK(title == sheet.title);
            }
            for (const FormKind& kind : set.kinds)
                CHECK_THAT(lists, Contains(kind.mark));
        }
    }
    const ScratchDirectory scratch;
    const auto file = scratch.path() / "forms.pdf";
    const BuildingPlan plan = demo_plan("cabin-metric");
    const Drafting drafting{plan, *drawing_paper("a3"), measure};
    put_bytes(file, pdf_bytes(form_sheets(drafting, form_set(plan.schedule)), "Forms"));
    CHECK_NOTHROW(output_of({"qpdf", "--check", file}));
    CHECK_THAT(output_of({"pdfinfo", file}), Contains("1190.55 x 841.89"));
}
