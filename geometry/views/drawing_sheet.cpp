#include "geometry/views/drawing_sheet.hpp"

#include "geometry/drawing/pen.hpp"
#include "geometry/drawing/words.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

const std::vector<PaperSize>& drawing_papers() {
    static const std::vector<PaperSize> papers{{"a4", 210, 297},         {"a3", 297, 420},
                                               {"a2", 420, 594},         {"a1", 594, 841},
                                               {"letter", 215.9, 279.4}, {"tabloid", 279.4, 431.8},
                                               {"arch-a", 228.6, 304.8}, {"arch-b", 304.8, 457.2},
                                               {"arch-c", 457.2, 609.6}, {"arch-d", 609.6, 914.4}};
    return papers;
}

std::optional<PaperSize> drawing_paper(const std::string& name) {
    for (const PaperSize& paper : drawing_papers())
        if (paper.name == name)
            return paper;
    return std::nullopt;
}

namespace {

constexpr double block_height = 25; // mm, of the title block
constexpr double ruler_cell = 110;

void add_title_lines(Sheet& sheet, const PaperBox& cell, const std::vector<std::string>& lines,
                     const MeasureText& measure) {
    double y = cell.top;
    bool close =
        false; // a title of two lines: what follows is set smaller, clear of the sheet's number
    for (std::size_t i = 0; i < lines.size(); ++i) {
        double size = i < 2 ? sizes::strong : close ? sizes::least : sizes::small;
        std::vector<std::string> parts{lines[i]};
        // A title tells sheets apart: it is set smaller, then in two lines, rather than cut.
        if (i == 1) {
            const auto fit = [&] {
                return wrapped(lines[i], cell.width() - 4, size, true, measure);
            };
            for (parts = fit(); parts.size() > 1 && size > sizes::small; parts = fit())
                size = std::max(sizes::small, size - 0.2);
        }
        close = close || parts.size() > 1;
        if (parts.size() > 2)
            parts = {parts[0], parts[1] + "…"};
        for (const std::string& part : parts) {
            y -= size * 1.2;
            add_text(sheet, {cell.left + 2, y},
                     shortened(part, cell.width() - 4, size, i < 2, measure), size, i < 2);
        }
    }
}

/// Lines to fill in by hand: an output that is the same each time has no date of its own.
void add_blanks(Sheet& sheet, const PaperBox& cell, const MeasureText& measure) {
    const char* const labels[] = {"Drawn", "Checked", "Date", "Revision"};
    const double step = (cell.height() - 2) / 4;
    double y = cell.top - 0.4;
    for (const char* const label : labels) {
        y -= step;
        add_text(sheet, {cell.left + 2, y + 0.7}, label, sizes::least, false);
        const double used = measure(label, sizes::least, false).width + 3.5;
        add_line(sheet, {cell.left + used, y}, {cell.right - 2, y}, pens::fine);
    }
}

} // namespace

Page start_drawing(const Drafting& drafting, const std::string& title, const std::string& scale) {
    Page page;
    page.sheet.title = title;
    page.sheet.width = drafting.paper.height;
    page.sheet.height = drafting.paper.width;
    const PaperBox frame = frame_of(page.sheet.width, page.sheet.height);
    // The frame's stroke stays within it.
    add_box(page.sheet, grown(frame, -pens::cut.width / 2), pens::cut);
    const PaperBox block{frame.left, frame.bottom, frame.right, frame.bottom + block_height};
    add_line(page.sheet, {block.left, block.top}, {block.right, block.top}, pens::cut);
    const double rest = block.width() - ruler_cell;
    const double titles = block.left + ruler_cell + rest * 0.53;
    const double signs = block.left + ruler_cell + rest * 0.34;
    for (const double x : {block.left + ruler_cell, signs, titles})
        add_line(page.sheet, {x, block.bottom}, {x, block.top}, pens::seen);
    add_blanks(page.sheet, {signs, block.bottom, titles, block.top}, drafting.measure);
    add_text(page.sheet, {block.left + 3, block.top - 5}, words::print_at_full_size(), sizes::small,
             true);
    add_check_ruler(page.sheet, {block.left + 3, block.top - 13});
    // The caution, as large as its cell allows.
    const PaperBox caution{block.left + ruler_cell, block.bottom, signs, block.top};
    double size = sizes::body;
    std::vector<std::string> lines;
    for (;; size -= 0.1) {
        lines = wrapped("CAUTION. " + words::caution(), caution.width() - 4, size, true,
                        drafting.measure);
        if (lines_height(lines.size(), size) <= block_height - 2.5 || size <= sizes::least + 0.05)
            break;
    }
    add_lines(page.sheet, {caution.left + 2, caution.top - 1}, lines, size, true);
    add_title_lines(page.sheet, {titles, block.bottom, block.right, block.top},
                    {drafting.schedule().name, title,
                     scale.empty() ? std::string() : "Scale " + scale,
                     drafting.unit() == DisplayUnit::feet ? "Dimensions in feet and inches"
                                                          : "Dimensions in millimetres"},
                    drafting.measure);
    page.body = {frame.left + 2, block.top + 2, frame.right - 2, frame.top - 2};
    return page;
}

void number_drawings(std::vector<Sheet>& sheets) {
    for (std::size_t i = 0; i < sheets.size(); ++i) {
        const PaperBox frame = frame_of(sheets[i].width, sheets[i].height);
        add_text(sheets[i], {frame.right - 2, frame.bottom + 2},
                 "Sheet " + std::to_string(i + 1) + " of " + std::to_string(sheets.size()),
                 sizes::small, true, Align::right);
    }
}

namespace {

/// The arrangement of n views in equal cells that allows the largest scale.
struct Arrangement {
    int columns = 1, rows = 1;
    Scale scale;
};

Scale scale_in(const View& view, double width, double height, DisplayUnit unit) {
    const ViewMargins margins = margins_of(view);
    const Vec2 size = extent_of(view).size();
    return largest_scale(size.x(), size.y(), width - margins.left - margins.right,
                         height - margins.bottom - margins.top, unit);
}

Arrangement arrange(const std::vector<View>& views, const PaperBox& body, DisplayUnit unit) {
    Arrangement best;
    best.scale.per = 0;
    const int count = static_cast<int>(views.size());
    for (int columns = 1; columns <= count; ++columns) {
        const int rows = (count + columns - 1) / columns;
        Scale least{0, {}};
        for (const View& view : views) {
            const Scale scale = scale_in(view, body.width() / columns, body.height() / rows, unit);
            if (scale.per > least.per)
                least = scale;
        }
        if (best.scale.per == 0 || least.per < best.scale.per)
            best = {columns, rows, least};
    }
    return best;
}

PaperBox body_of(const Drafting& drafting) {
    const PaperBox frame = frame_of(drafting.paper.height, drafting.paper.width);
    return {frame.left + 2, frame.bottom + block_height + 2, frame.right - 2, frame.top - 2};
}

} // namespace

Scale sheet_scale(const Drafting& drafting, const std::vector<View>& views) {
    return arrange(views, body_of(drafting), drafting.unit()).scale;
}

Sheet view_sheet(const Drafting& drafting, const std::string& title,
                 const std::vector<View>& views) {
    const Arrangement arrangement = arrange(views, body_of(drafting), drafting.unit());
    Page page = start_drawing(drafting, title, arrangement.scale.text);
    const double width = page.body.width() / arrangement.columns;
    const double height = page.body.height() / arrangement.rows;
    for (std::size_t i = 0; i < views.size(); ++i) {
        const int column = static_cast<int>(i) % arrangement.columns;
        const int row = static_cast<int>(i) / arrangement.columns;
        const double left = page.body.left + column * width;
        const double top = page.body.top - row * height;
        lay_view(page.sheet, {left, top - height, left + width, top}, views[i], arrangement.scale,
                 drafting.measure);
    }
    return page.sheet;
}

Sheet picture_sheet(const View& view, const Drafting& drafting, double width, double height) {
    constexpr double rim = 3;
    const Scale scale = scale_in(view, width - 2 * rim, height - 2 * rim, drafting.unit());
    const ViewMargins margins = margins_of(view);
    const Vec2 size = extent_of(view).size() * scale.on_paper(1);
    Sheet sheet;
    sheet.title = view.title;
    sheet.width = std::ceil(size.x() + margins.left + margins.right + 2 * rim);
    sheet.height = std::ceil(size.y() + margins.bottom + margins.top + 2 * rim);
    lay_view(sheet, {rim, rim, sheet.width - rim, sheet.height - rim}, view, scale,
             drafting.measure);
    return sheet;
}

} // namespace coilwright
