// Sheets of drawings: nothing overlaps or leaves the frame, and what is measured on the page is
// what the schedule says.
#include "tests/drawing/pdf_content.hpp"
#include "tests/drawing/sheet_checks.hpp"
#include "tests/exporters/scratch.hpp"
#include "tests/views/building.hpp"

#include "geometry/views/upright_views.hpp"

#include <cmath>
#include <fstream>
#include <sstream>

using namespace coilwright;
using namespace coilwright::testing;
using Catch::Matchers::Contains;

namespace {

std::string bytes_to(const std::filesystem::path& path, const std::string& bytes) {
    std::ofstream(path, std::ios::binary) << bytes;
    return path.string();
}

/// Whether two ticks of dimensions stand so far apart in a direction, within 0.2 mm.
bool has_ticks_apart(const std::vector<DrawnPath>& paths, double distance) {
    std::vector<Vec2> ticks;
    for (const DrawnPath& path : segments(paths))
        if (std::abs(path.width - 0.5) < 0.01 &&
            std::abs((path.points[1] - path.points[0]).norm() - 2.6) < 0.01)
            ticks.push_back((path.points[0] + path.points[1]) / 2);
    for (const Vec2& a : ticks)
        for (const Vec2& b : ticks)
            if (std::abs((b - a).norm() - distance) < 0.2)
                return true;
    return false;
}

} // namespace

TEST_CASE("no two texts overlap, no line runs through one and nothing leaves the frame") {
    const MeasureText measure = pango_measure();
    for (const std::string& name : demo_names()) {
        const DrawnBuilding building = drawn(demo_plan(name));
        for (const PaperSize& paper : drawing_papers()) {
            const Drafting drafting{building.plan, paper, measure};
            for (const Sheet& sheet : drawing_set(drafting, building.views)) {
                CAPTURE(name, paper.name);
                CHECK(sheet_faults(sheet, page_margin, measure) == std::vector<std::string>{});
            }
        }
    }
}

TEST_CASE("every sheet is drawn at a standard scale at which its views fit") {
    const MeasureText measure = pango_measure();
    for (const std::string& name : demo_names()) {
        const DrawnBuilding building = drawn(demo_plan(name));
        int last = 1 << 30;
        for (const char* const paper : {"a4", "a3", "a2", "a1"}) {
            const Drafting drafting{building.plan, *drawing_paper(paper), measure};
            const Scale scale = sheet_scale(drafting, building.views.elevations);
            CAPTURE(name, paper, scale.text);
            CHECK(scale.per <= last); // larger paper, no smaller drawing
            last = scale.per;
            const Sheet sheet = view_sheet(drafting, "Elevations", building.views.elevations);
            CHECK_THAT(all_text(sheet), Contains("Scale " + scale.text));
        }
    }
}

TEST_CASE("dimensions measured on the page are those of the schedule") {
    const MeasureText measure = pango_measure();
    for (const std::string& name : demo_names()) {
        const DrawnBuilding building = drawn(demo_plan(name));
        const Drafting drafting{building.plan, *drawing_paper("a3"), measure};
        const ScratchDirectory scratch;
        const auto file = scratch.path() / "drawings.pdf";
        bytes_to(file, pdf_bytes(drawing_set(drafting, building.views), name));
        const auto pages = drawn_paths(file, scratch.path());
        CAPTURE(name);
        // Rough widths of openings that are plumb where the plan is cut.
        const double plan_scale = sheet_scale(drafting, {building.views.floor}).on_paper(1);
        int widths = 0;
        for (const OpeningPlan& opening : building.plan.schedule.openings) {
            const OpeningForm& form = opening.form;
            if (form.use == OpeningUse::niche || form.head_kind == HeadKind::circle ||
                form.sill > usual_plan_height || form.springing < usual_plan_height)
                continue;
            CAPTURE(form.id);
            CHECK(has_ticks_apart(pages[0], 2 * form.half_width * plan_scale));
            ++widths;
        }
        CHECK(widths + (name == "workshop" || name == "retreat" ? 1 : 0) > 0);
        // Springline and inside diameter in the sections.
        const double scale = sheet_scale(drafting, building.views.sections).on_paper(1);
        const DomeForm& dome = *main_axis(building.plan.schedule).dome;
        CHECK(has_ticks_apart(pages[3], 2 * dome.profile.half_span * scale));
        if (dome.springline > 0.01)
            CHECK(has_ticks_apart(pages[3], dome.springline * scale));
    }
}

TEST_CASE("the PDF is sound, its fonts are embedded, its pages exact, its text can be found") {
    const MeasureText measure = pango_measure();
    const DrawnBuilding building = drawn(demo_plan("home"));
    const ScratchDirectory scratch;
    const auto file = scratch.path() / "drawings.pdf";
    for (const char* const paper : {"a3", "arch-d"}) {
        const Drafting drafting{building.plan, *drawing_paper(paper), measure};
        bytes_to(file, pdf_bytes(drawing_set(drafting, building.views), "Home"));
        CHECK_NOTHROW(output_of({"qpdf", "--check", file}));
        const std::string fonts = output_of({"pdffonts", file});
        std::istringstream lines(fonts);
        std::string line;
        std::getline(lines, line);
        std::getline(lines, line);
        int count = 0;
        while (std::getline(lines, line)) {
            CHECK_THAT(line, Contains(" yes "));
            ++count;
        }
        CHECK(count >= 2);
        const std::string text = text_of(file);
        for (const char* const word :
             {"Floor plan", "Foundation plan", "Roof and site plan", "Section A-A",
              "Elevation from the south", "Openings", "CAUTION", "hall", "D1", "16 ft 0 in",
              "Print at 100 %", "Sheet 1 of"})
            CHECK_THAT(text, Contains(word));
        const std::string info = output_of({"pdfinfo", "-box", file});
        CHECK_THAT(info, Contains(std::string(paper) == "a3" ? "1190.55 x 841.89" : "2592 x 1728"));
    }
}
