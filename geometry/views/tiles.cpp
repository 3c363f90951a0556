#include "geometry/views/tiles.hpp"

#include "geometry/base/bearing.hpp"
#include "geometry/drawing/pen.hpp"
#include "geometry/drawing/placer.hpp"
#include "geometry/views/drawing_sheet.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {
namespace {

constexpr double beyond = 8; // mm beyond a cell on each side
constexpr double ring = 2.5; // mm, radius of a match mark

PaperBox cell_of(const TileGrid& grid, int column, int row) {
    const double left = grid.low.x() + column * grid.width;
    const double bottom = grid.low.y() + (grid.rows - 1 - row) * grid.height;
    return {left, bottom, left + grid.width, bottom + grid.height};
}

bool meet(const PaperBox& a, const PaperBox& b) {
    return a.left < b.right && b.left < a.right && a.bottom < b.top && b.bottom < a.top;
}

/// Whether a line runs straight through a cell: along one line, with both ends on its rim.
bool runs_through(const LineItem& line, const PaperBox& cell) {
    if (line.closed || line.points.size() < 2)
        return false;
    const Vec2 from = line.points.front(), way = line.points.back() - from;
    for (const Vec2& point : line.points)
        if (std::abs(way.x() * (point - from).y() - way.y() * (point - from).x()) >
            0.05 * way.norm())
            return false;
    const auto on_rim = [&](Vec2 point) {
        return std::min({std::abs(point.x() - cell.left), std::abs(point.x() - cell.right),
                         std::abs(point.y() - cell.bottom), std::abs(point.y() - cell.top)}) < 1e-6;
    };
    return on_rim(from) && on_rim(line.points.back());
}

/// Whether tiles hang together over their sides.
bool hang_together(const std::vector<std::pair<int, int>>& tiles) {
    std::vector<std::pair<int, int>> left = tiles, next;
    if (left.empty())
        return false;
    next.push_back(left.back());
    left.pop_back();
    while (!next.empty()) {
        const auto [column, row] = next.back();
        next.pop_back();
        for (std::size_t i = left.size(); i-- > 0;)
            if (std::abs(left[i].first - column) + std::abs(left[i].second - row) == 1) {
                next.push_back(left[i]);
                left.erase(left.begin() + static_cast<std::ptrdiff_t>(i));
            }
    }
    return left.empty();
}

/// One tile in the making: lines and marks first, then texts where they are clear of both.
class TilePage {
public:
    TilePage(Page page, const TileGrid& grid, int column, int row, const MeasureText& measure)
        : page_(std::move(page)), grid_(grid), column_(column), row_(row),
          cell_(cell_of(grid, column, row)), placer_(page_.body, measure),
          by_(page_.body.left + beyond - cell_.left, page_.body.bottom + beyond - cell_.bottom) {}

    void add_lines(const Sheet& drawing, const std::vector<PaperBox>& boxes) {
        const PaperBox window = grown(cell_, beyond);
        for (std::size_t i = 0; i < drawing.items.size(); ++i) {
            if (std::holds_alternative<TextItem>(drawing.items[i]) || !meet(boxes[i], window))
                continue;
            for (PaperItem& part : clipped_item(drawing.items[i], window)) {
                PaperItem placed = moved(std::move(part), by_);
                take(placed);
                page_.sheet.items.push_back(std::move(placed));
            }
        }
    }

    void add_marks() {
        const PaperBox cell{page_.body.left + beyond, page_.body.bottom + beyond,
                            page_.body.left + beyond + grid_.width,
                            page_.body.bottom + beyond + grid_.height};
        constexpr double arm = 5;
        for (const double x : {cell.left, cell.right})
            for (const double y : {cell.bottom, cell.top}) {
                line({x - arm, y}, {x + arm, y}, pens::fine);
                line({x, y - arm}, {x, y + arm}, pens::fine);
            }
        side({cell.left, (cell.bottom + cell.top) / 2}, {-1, 0}, column_ - 1, row_);
        side({cell.right, (cell.bottom + cell.top) / 2}, {1, 0}, column_ + 1, row_);
        side({(cell.left + cell.right) / 2, cell.top}, {0, 1}, column_, row_ - 1);
        side({(cell.left + cell.right) / 2, cell.bottom}, {0, -1}, column_, row_ + 1);
    }

    void add_texts(const Sheet& drawing, const std::vector<PaperBox>& boxes) {
        for (std::size_t i = 0; i < drawing.items.size(); ++i) {
            const auto* text = std::get_if<TextItem>(&drawing.items[i]);
            const Vec2 middle = boxes[i].centre();
            if (!text || text->text.empty() || middle.x() < cell_.left ||
                middle.x() >= cell_.right || middle.y() < cell_.bottom || middle.y() >= cell_.top)
                continue;
            put(*text, boxes[i]);
        }
    }

    Sheet finish() { return std::move(page_.sheet); }

private:
    void take(const PaperItem& item) {
        if (const auto* some = std::get_if<LineItem>(&item)) {
            for (std::size_t i = 0; i + 1 < some->points.size(); ++i)
                placer_.take_line(some->points[i], some->points[i + 1], some->stroke.width);
        } else if (const auto* arc = std::get_if<ArcItem>(&item)) {
            placer_.take_arc(arc->centre, arc->radius, arc->start, arc->end);
        }
    }

    void line(Vec2 from, Vec2 to, const Stroke& stroke) {
        add_line(page_.sheet, from, to, stroke);
        placer_.take_line(from, to, stroke.width);
    }

    void side(Vec2 middle, Vec2 out, int other_column, int other_row) {
        if (!grid_.is_used(other_column, other_row))
            return;
        const Vec2 along(-out.y(), out.x());
        add_circle(page_.sheet, middle, ring, pens::seen);
        placer_.take_arc(middle, ring, 0, 2 * pi);
        line(middle - along * 2 * ring, middle + along * 2 * ring, pens::seen);
        line(middle - out * ring, middle + out * ring, pens::fine);
        TextItem name =
            text_at(middle + out * 5.2 + along * 7 - Vec2(0, 1.1),
                    tile_name(other_column, other_row), sizes::small, true, Align::centre);
        name.on_white = true;
        placer_.take(corners(name, placer_.measure()));
        page_.sheet.items.emplace_back(name);
    }

    /// Whole on this tile, where it stood or as near as it is clear of all else.
    void put(const TextItem& text, const PaperBox& box) {
        const PaperBox window = grown(cell_, beyond);
        TextItem whole = text;
        whole.at +=
            by_ +
            Vec2(std::max(0.0, window.left - box.left) - std::max(0.0, box.right - window.right),
                 std::max(0.0, window.bottom - box.bottom) - std::max(0.0, box.top - window.top));
        std::vector<TextItem> candidates{whole};
        for (double away = 1.5; away <= 30; away += 1.5)
            for (int turn = 0; turn < 16; ++turn) {
                TextItem moved_text = whole;
                moved_text.at += away * Vec2(std::cos(turn * pi / 8), std::sin(turn * pi / 8));
                candidates.push_back(moved_text);
            }
        if (const auto placed = placer_.place(candidates, 0.15)) {
            page_.sheet.items.emplace_back(*placed);
            return;
        }
        whole.on_white = true;
        placer_.take(corners(whole, placer_.measure()));
        page_.sheet.items.emplace_back(whole);
    }

    Page page_;
    const TileGrid& grid_;
    int column_, row_;
    PaperBox cell_;
    Placer placer_;
    Vec2 by_;
};

} // namespace

bool TileGrid::is_used(int column, int row) const {
    return std::find(used.begin(), used.end(), std::pair(column, row)) != used.end();
}

std::string tile_name(int column, int row) {
    std::string name;
    for (int left = column; left >= 0; left = left / 26 - 1)
        name.insert(name.begin(), static_cast<char>('A' + left % 26));
    return name + std::to_string(row + 1);
}

TileGrid tile_grid(const Drafting& drafting, const Sheet& drawing, bool without_straight) {
    const Page page = start_drawing(drafting, "", "");
    TileGrid grid;
    grid.width = page.body.width() - 2 * beyond;
    grid.height = page.body.height() - 2 * beyond;
    std::vector<PaperBox> boxes;
    PaperBox all{0, 0, 0, 0};
    for (const PaperItem& item : drawing.items) {
        boxes.push_back(bounds(item, drafting.measure));
        const PaperBox& box = boxes.back();
        all = boxes.size() == 1
                  ? box
                  : PaperBox{std::min(all.left, box.left), std::min(all.bottom, box.bottom),
                             std::max(all.right, box.right), std::max(all.top, box.top)};
    }
    grid.columns = std::max(1, static_cast<int>(std::ceil(all.width() / grid.width - 1e-9)));
    grid.rows = std::max(1, static_cast<int>(std::ceil(all.height() / grid.height - 1e-9)));
    grid.low = Vec2(all.centre()) - 0.5 * Vec2(grid.columns * grid.width, grid.rows * grid.height);
    for (int row = 0; row < grid.rows; ++row)
        for (int column = 0; column < grid.columns; ++column) {
            const PaperBox cell = cell_of(grid, column, row);
            bool any = false;
            for (std::size_t i = 0; i < boxes.size() && !any; ++i)
                any = meet(boxes[i], cell) && !clipped_item(drawing.items[i], cell).empty();
            if (any)
                grid.used.emplace_back(column, row);
        }
    if (!without_straight || !hang_together(grid.used))
        return grid;
    const auto is_needed = [&](const PaperBox& cell) {
        for (std::size_t i = 0; i < boxes.size(); ++i) {
            if (!meet(boxes[i], cell))
                continue;
            if (std::holds_alternative<TextItem>(drawing.items[i]))
                return true;
            for (const PaperItem& part : clipped_item(drawing.items[i], cell)) {
                const auto* line = std::get_if<LineItem>(&part);
                if (!line || !runs_through(*line, cell))
                    return true;
            }
        }
        return false;
    };
    for (std::size_t i = grid.used.size(); i-- > 0;) {
        std::vector<std::pair<int, int>> rest = grid.used;
        rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(i));
        if (!is_needed(cell_of(grid, grid.used[i].first, grid.used[i].second)) &&
            hang_together(rest))
            grid.used = std::move(rest);
    }
    return grid;
}

std::vector<Sheet> tile_sheets(const Drafting& drafting, const Sheet& drawing, const TileGrid& grid,
                               const std::string& title, const std::string& scale) {
    std::vector<PaperBox> boxes;
    for (const PaperItem& item : drawing.items)
        boxes.push_back(bounds(item, drafting.measure));
    std::vector<Sheet> sheets;
    for (const auto& [column, row] : grid.used) {
        const std::string called =
            grid.used.size() > 1 ? "Tile " + tile_name(column, row) + " of " + title : title;
        TilePage page(start_drawing(drafting, called, scale), grid, column, row, drafting.measure);
        page.add_lines(drawing, boxes);
        if (grid.used.size() > 1)
            page.add_marks();
        page.add_texts(drawing, boxes);
        sheets.push_back(page.finish());
    }
    return sheets;
}

void add_tile_key(Sheet& sheet, const PaperBox& box, const Sheet& drawing, const TileGrid& grid) {
    const double width = grid.columns * grid.width, height = grid.rows * grid.height;
    const double part = std::min(box.width() / width, box.height() / height);
    const Vec2 low = Vec2(box.centre()) - 0.5 * part * Vec2(width, height);
    const auto place = [&](Vec2 point) { return Vec2(low + (point - grid.low) * part); };
    for (const PaperItem& item : drawing.items) {
        if (const auto* line = std::get_if<LineItem>(&item)) {
            LineItem small = *line;
            for (Vec2& point : small.points)
                point = place(point);
            small.stroke = pens::fine;
            sheet.items.emplace_back(std::move(small));
        } else if (const auto* arc = std::get_if<ArcItem>(&item)) {
            sheet.items.push_back(
                ArcItem{place(arc->centre), arc->radius * part, arc->start, arc->end, pens::fine});
        }
    }
    for (const auto& [column, row] : grid.used) {
        const PaperBox cell = cell_of(grid, column, row);
        const Vec2 a = place({cell.left, cell.bottom}), b = place({cell.right, cell.top});
        add_box(sheet, {a.x(), a.y(), b.x(), b.y()}, pens::seen);
        TextItem name = text_at((a + b) / 2 - Vec2(0, 1.1), tile_name(column, row), sizes::small,
                                true, Align::centre);
        name.on_white = true;
        sheet.items.emplace_back(name);
    }
}

std::string tile_words() {
    return "Print at 100 % and check the bar. Cut each tile along the line through its corner "
           "crosses on two sides, lay it over its neighbour so that the rings and crosses match, "
           "and "
           "glue. The name beyond a ring is the neighbour's. Where the key has no tile there are "
           "only "
           "straight lines: draw them with a straight edge from tile to tile.";
}

} // namespace coilwright
