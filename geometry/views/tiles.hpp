// A drawing larger than the paper, cut into tiles that are joined again by match marks.
#pragma once

#include "geometry/drawing/page.hpp"

#include <string>
#include <utility>
#include <vector>

namespace coilwright {

/// How a drawing is cut: columns from the left (A, B, ...), rows from the top (1, 2, ...).
struct TileGrid {
    int columns = 1, rows = 1;
    double width = 0, height = 0;          // mm, of a cell
    Vec2 low{0, 0};                        // lower left corner of the grid in the drawing
    std::vector<std::pair<int, int>> used; // column, row of the tiles that hold anything
    bool is_used(int column, int row) const;
};
/// "B3". Columns past Z: AA, AB ...
std::string tile_name(int column, int row);

/// The least grid of cells, as large as the paper allows, that holds the drawing.
/// `without_straight` leaves out cells through which nothing but straight lines run, as far as the
/// other tiles hang together without them: such a line is drawn along a straight edge from tile to
/// tile.
TileGrid tile_grid(const Drafting& drafting, const Sheet& drawing, bool without_straight = false);

/// One sheet for each tile that holds anything: its cell and 8 mm beyond it on each side. Corners
/// of the cell are marked by crosses; on each side that is shared stands a ring, cut by the side,
/// with the neighbour's name beyond it. Lines, arcs and hatches are cut at the tile's edge; a text
/// stands whole on the tile that holds its middle.
std::vector<Sheet> tile_sheets(const Drafting& drafting, const Sheet& drawing, const TileGrid& grid,
                               const std::string& title, const std::string& scale);

/// The drawing's lines small in a box with the grid and the tiles' names: how they are joined.
void add_tile_key(Sheet& sheet, const PaperBox& box, const Sheet& drawing, const TileGrid& grid);

/// How tiles are joined, in words.
std::string tile_words();

/// The part of an item that lies in a box; a hatch as lines. Texts only whole.
std::vector<PaperItem> clipped_item(const PaperItem& item, const PaperBox& box);

} // namespace coilwright
