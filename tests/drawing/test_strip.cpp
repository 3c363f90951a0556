// The compass strip, measured on the page.
#include "exporters/pdf.hpp"
#include "geometry/drawing/crew_book.hpp"
#include "tests/drawing/pdf_content.hpp"
#include "tests/drawing/plans.hpp"
#include "tests/drawing/sheet_checks.hpp"
#include "tests/exporters/scratch.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <regex>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

struct Band {
    double left = 0, right = 0, bottom = 0, top = 0;
};

/// The strips of a page from the top: pairs of long level strokes of one length.
std::vector<Band> bands_of(const std::vector<DrawnPath>& strokes) {
    std::vector<DrawnPath> level;
    for (const DrawnPath& stroke : strokes)
        if (std::abs(stroke.points[1].y() - stroke.points[0].y()) < 1e-3 &&
            std::abs(stroke.points[1].x() - stroke.points[0].x()) > 150)
            level.push_back(stroke);
    std::sort(level.begin(), level.end(), [](const DrawnPath& a, const DrawnPath& b) {
        return a.points[0].y() > b.points[0].y();
    });
    std::vector<Band> bands;
    for (std::size_t i = 0; i + 1 < level.size(); ++i) {
        const double gap = level[i].points[0].y() - level[i + 1].points[0].y();
        if (gap < 12 && std::abs(level[i].points[1].x() - level[i + 1].points[1].x()) < 1e-3)
            bands.push_back({level[i].points[0].x(), level[i].points[1].x(),
                             level[i + 1].points[0].y(), level[i].points[0].y()});
    }
    return bands;
}

} // namespace

TEST_CASE("Marks on the strip stand at their true distances") {
    struct Case {
        BuildingPlan plan;
        PaperSize paper;
    };
    for (const Case& one :
         {Case{demo_plan("grain-store"), letter_paper()},
          Case{demo_plan("grain-store"), a4_paper()}, Case{demo_plan("cabin-metric"), a4_paper()},
          Case{demo_plan("workshop"), letter_paper()}}) {
        CAPTURE(one.plan.schedule.name, one.paper.name);
        const Schedule& schedule = one.plan.schedule;
        const ScratchDirectory scratch;
        const std::filesystem::path file = scratch.path() / "strip.pdf";
        put_bytes(file, pdf_bytes(compass_strip(one.plan, one.paper, pango_measure()), "Strip"));
        // Where its left end lies, as the crew reads it.
        std::string text = text_of(file, 1);
        text = std::regex_replace(text, std::regex("\\s+"), " ");
        std::smatch found;
        REQUIRE(std::regex_search(text, found, std::regex("left end lies ([^.]+) from the pole")));
        const LengthReading start = read_length(found[1].str(), schedule.unit);
        REQUIRE(start.fault.empty());

        std::vector<double> drawn;
        double joined = start.value * 1000; // mm from the axis to the band's left end
        for (const std::vector<DrawnPath>& page : drawn_paths(file, scratch.path())) {
            const std::vector<DrawnPath> strokes = segments(page);
            for (const Band& band : bands_of(strokes)) {
                for (const DrawnPath& stroke : strokes) {
                    const Vec2 foot = stroke.points[0], head = stroke.points[1];
                    const bool mark = std::abs(foot.x() - head.x()) < 1e-3 &&
                                      std::abs(stroke.width - 0.35) < 0.01 &&
                                      std::min(foot.y(), head.y()) > band.bottom - 0.01 &&
                                      std::max(foot.y(), head.y()) < band.top + 0.01;
                    if (mark)
                        drawn.push_back(joined + foot.x() - band.left);
                }
                joined += band.right - band.left;
            }
        }
        std::sort(drawn.begin(), drawn.end());
        std::vector<double> wanted;
        for (const Course& course : schedule.courses)
            for (const Ring& ring : course.rings)
                if (ring.kind == RingKind::ring)
                    wanted.push_back(ring.inside_radius * 1000);
        REQUIRE_FALSE(wanted.empty());
        for (const double radius : wanted) {
            const auto near = std::min_element(drawn.begin(), drawn.end(), [&](double a, double b) {
                return std::abs(a - radius) < std::abs(b - radius);
            });
            REQUIRE(near != drawn.end());
            CHECK(std::abs(*near - radius) < 0.1);
        }
        // And no mark without a course.
        for (const double mark : drawn)
            CHECK(std::any_of(wanted.begin(), wanted.end(),
                              [&](double radius) { return std::abs(radius - mark) < 0.1; }));
    }
}

TEST_CASE("Every ring's number stands on the strip") {
    for (const BuildingPlan& plan : {demo_plan("grain-store"), pair_plan()}) {
        std::vector<int> named;
        for (const Sheet& sheet : compass_strip(plan, letter_paper(), pango_measure()))
            for (const TextItem* item : text_items(sheet)) {
                // "12", "1–7", "8, 9": labels hold nothing else.
                if (!item->bold || item->size < 4)
                    continue;
                std::smatch range;
                const std::string text = std::regex_replace(item->text, std::regex("–"), "-");
                if (std::regex_match(text, range, std::regex("(\\d+)-(\\d+)"))) {
                    for (int n = std::stoi(range[1]); n <= std::stoi(range[2]); ++n)
                        named.push_back(n);
                } else if (std::regex_match(text, std::regex("\\d+(, \\d+)*"))) {
                    const std::regex number("\\d+");
                    for (std::sregex_iterator it(text.begin(), text.end(), number), end; it != end;
                         ++it)
                        named.push_back(std::stoi(it->str()));
                }
            }
        for (const Course& course : plan.schedule.courses) {
            int rings = 0;
            for (const Ring& ring : course.rings)
                rings += ring.kind == RingKind::ring;
            CAPTURE(course.number);
            CHECK(std::count(named.begin(), named.end(), course.number) == rings);
        }
    }
}

TEST_CASE("A tunnel's gauge is marked at its half-width in every course") {
    const BuildingPlan plan = whole_plan("retreat");
    for (const TunnelForm& tunnel : plan.schedule.building.tunnels) {
        // Marks of all bands of the tunnel's sheets, from the axis outwards.
        std::vector<double> marks;
        for (const Sheet& sheet : compass_strip(plan, letter_paper(), pango_measure())) {
            if (sheet.title != "Gauge of '" + tunnel.id + "'")
                continue;
            for (const PaperItem& item : sheet.items)
                if (const auto* line = std::get_if<LineItem>(&item))
                    if (line->stroke.width == 0.35)
                        marks.push_back(line->points[0].x());
        }
        CAPTURE(tunnel.id);
        std::vector<double> expected; // one a setting
        for (int n = 1; n <= tunnel.side_courses; ++n) {
            const double half = inner_half_width(tunnel, tunnel.course_middle(n));
            if (expected.empty() || std::abs(expected.back() - half) > 1e-5)
                expected.push_back(half);
        }
        REQUIRE(marks.size() == expected.size());
        // Sorted inwards out: neighbours in one band stand as far apart as their settings differ.
        std::sort(expected.begin(), expected.end());
        for (std::size_t i = 1; i < marks.size(); ++i)
            if (marks[i] > marks[i - 1]) // of one band
                CHECK(marks[i] - marks[i - 1] ==
                      Approx((expected[i] - expected[i - 1]) * 1000).margin(0.001));
    }
}
