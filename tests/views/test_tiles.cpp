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

TEST_CASE(
    "tiles: only cells that straight lines run through are left out and the rest hangs together") {
    const MeasureText measure = pango_measure();
    const BuildingPlan plan = demo_plan("grain-store");
    const Drafting drafting{plan, *drawing_paper("letter"), measure};
    // A room of 1.2 m by 0.9 m with a round corner, a line across it and a name in its middle.
    Sheet drawing;
    drawing.items.push_back(LineItem{{{0, 900}, {0, 0}, {1200, 0}, {1200, 800}}, false, {}});
    drawing.items.push_back(ArcItem{{1100, 800}, 100, 0, pi / 2, {}});
    drawing.items.push_back(LineItem{{{1100, 900}, {0, 900}}, false, {}});
    drawing.items.push_back(LineItem{{{500, 0}, {500, 900}}, false, {}});
    TextItem name;
    name.text = "name";
    name.size = 4;
    name.at = {1200, 450}; // on the right edge
    drawing.items.emplace_back(name);
    const TileGrid all = tile_grid(drafting, drawing), some = tile_grid(drafting, drawing, true);
    CHECK((some.columns == all.columns && some.rows == all.rows));
    CHECK(some.used.size() < all.used.size());
    CHECK(some.used.size() > 5);
    const auto cell = [&](std::pair<int, int> tile) {
        const double left = all.low.x() + tile.first * all.width;
        const double bottom = all.low.y() + (all.rows - 1 - tile.second) * all.height;
        return PaperBox{left, bottom, left + all.width, bottom + all.height};
    };
    const auto holds = [](const PaperBox& box, Vec2 at) {
        return at.x() >= box.left && at.x() <= box.right && at.y() >= box.bottom &&
               at.y() <= box.top;
    };
    for (const auto& tile : all.used) {
        if (some.is_used(tile.first, tile.second))
            continue;
        // None of the ends, the corners, the arc's ends and middle and the name is in it.
        CAPTURE(tile_name(tile.first, tile.second));
        for (const Vec2& at :
             {Vec2(0, 0), Vec2(0, 900), Vec2(1200, 0), Vec2(1200, 800), Vec2(1100, 900),
              Vec2(1171, 871), Vec2(500, 0), Vec2(500, 900), Vec2(1203, 451)})
            CHECK_FALSE(holds(cell(tile), at));
    }
    // Every tile is reached from the first over sides.
    std::set<std::pair<int, int>> reached{some.used.front()};
    for (std::size_t before = 0; before != reached.size();) {
        before = reached.size();
        for (const auto& [column, row] : some.used)
            for (const auto& [x, y] : std::set<std::pair<int, int>>(reached))
                if (std::abs(x - column) + std::abs(y - row) == 1)
                    reached.insert({column, row});
    }
    CHECK(reached.size() == some.used.size());
}

TEST_CASE("tiles: columns have letters, rows numbers") {
    CHECK(tile_name(0, 0) == "A1");
    CHECK(tile_name(25, 9) == "Z10");
    CHECK(tile_name(26, 0) == "AA1");
}
