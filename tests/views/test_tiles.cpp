// Tiles: together they are the drawing, and every page is whole.
#include "geometry/base/bearing.hpp"
#include "geometry/views/tiles.hpp"
#include "tests/drawing/sheet_checks.hpp"
#include "tests/views/building.hpp"

#include <cmath>
#include <set>

using namespace coilwright;
using namespace coilwright::testing;
using Catch::Matchers::Contains;

namespace {

double length_of(const PaperItem& item) {
    double length = 0;
    if (const auto* line = std::get_if<LineItem>(&item)) {
        for (std::size_t i = 0; i + 1 < line->points.size(); ++i)
            length += (line->points[i + 1] - line->points[i]).norm();
        if (line->closed)
            length += (line->points.front() - line->points.back()).norm();
    } else if (const auto* arc = std::get_if<ArcItem>(&item)) {
        length = arc->radius * std::min(arc->end - arc->start, 2 * pi);
    }
    return length;
}

double area_of(const std::vector<PaperItem>& items) {
    double twice = 0;
    for (const PaperItem& item : items)
        if (const auto* fill = std::get_if<FillItem>(&item))
            for (const FillItem::Loop& loop : fill->loops) {
                Vec2 from = loop.from;
                for (const FillItem::Edge& edge : loop.edges) {
                    twice += from.x() * edge.to.y() - from.y() * edge.to.x();
                    from = edge.to;
                }
                twice += from.x() * loop.from.y() - from.y() * loop.from.x();
            }
    return twice / 2;
}

} // namespace

TEST_CASE("tiles: the parts of lines, arcs and fills in all cells are the whole") {
    const std::vector<PaperItem> items{
        LineItem{{{-30, 10}, {95, 40}, {20, 130}}, true, {}}, ArcItem{{40, 50}, 37, -1, 4, {}},
        ArcItem{{60, 60}, 25, 0, 2 * pi, {}},
        FillItem{{{{5, 5}, {{{110, 20}, 0}, {{70, 90}, 0}, {{5, 5}, 0}}}}, {0}, 0, {}}};
    std::vector<PaperItem> parts;
    for (double x = -40; x < 160; x += 40)
        for (double y = -40; y < 160; y += 40)
            for (const PaperItem& item : items)
                for (const PaperItem& part : clipped_item(item, {x, y, x + 40, y + 40}))
                    parts.push_back(part);
    double whole = 0, sum = 0;
    for (const PaperItem& item : items)
        whole += length_of(item);
    for (const PaperItem& part : parts)
        sum += length_of(part);
    CHECK(sum == Approx(whole));
    CHECK(area_of(parts) == Approx(area_of(items)));
    CHECK(area_of(items) == Approx(0.5 * std::abs(105 * 85 - 65 * 15)));
}

TEST_CASE("tiles: a hatch is the same lines on whichever tile") {
    FillItem hatched{
        {{{0, 0}, {{{100, 0}, 0}, {{100, 60}, 0}, {{0, 60}, 0}, {{0, 0}, 0}}}}, {1}, 1.6, {}};
    double whole = 0, sum = 0;
    for (const PaperItem& part : clipped_item(hatched, {-10, -10, 110, 70}))
        whole += length_of(part);
    for (const double x : {0.0, 50.0})
        for (const PaperItem& part : clipped_item(hatched, {x, 0, x + 50, 60}))
            sum += length_of(part);
    CHECK(sum == Approx(whole));
    CHECK(whole * 1.6 == Approx(6000).epsilon(0.02)); // lines 1.6 mm apart fill the area
}

TEST_CASE("tiles: a drawing at a scale of its own keeps to the pages, each tile once") {
    const MeasureText measure = pango_measure();
    for (const char* const name : {"grain-store", "home"}) {
        const DrawnBuilding building = drawn(demo_plan(name));
        const Drafting drafting{building.plan, *drawing_paper("a3"), measure};
        // 1:12 and 1:24: both designs are in feet.
        const Scale scale = standard_scales(DisplayUnit::feet)[std::string(name) == "home" ? 6 : 4];
        const std::vector<Sheet> sheets = drawing_set(drafting, building.views, scale);
        CAPTURE(name, scale.text);
        CHECK(sheets.size() > drawing_set(drafting, building.views).size() + 8);
        std::set<std::string> titles;
        const PaperBox frame = frame_of(420, 297);
        for (const Sheet& sheet : sheets) {
            CAPTURE(sheet.title);
            CHECK(titles.insert(sheet.title).second);
            for (const PaperItem& item : sheet.items)
                CHECK(inside(bounds(item, measure), grown(frame, 0.75)));
            CHECK_THAT(all_text(sheet), Contains("CAUTION"));
        }
        CHECK(titles.count("Tile A1 of Floor plan") == 1);
        CHECK(titles.count("Floor plan: how its tiles lie") == 1);
    }
}

TEST_CASE("tiles: columns have letters, rows numbers") {
    CHECK(tile_name(0, 0) == "A1");
    CHECK(tile_name(25, 9) == "Z10");
    CHECK(tile_name(26, 0) == "AA1");
}
