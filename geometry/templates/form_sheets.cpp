#include "geometry/base/bearing.hpp"
#include "geometry/drawing/figures.hpp"
#include "geometry/templates/form_set.hpp"
#include "geometry/templates/half_templates.hpp"
#include "geometry/views/laid_view.hpp"
#include "geometry/views/tiles.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace coilwright {
namespace {

std::string joined(const std::vector<std::string>& words) {
    std::string text;
    for (const std::string& word : words)
        text += (text.empty() ? "" : ", ") + word;
    return text;
}

Vec2 size_of(const Outline& outline) {
    View view;
    view.paths.push_back({LineRole::cut, outline});
    return extent_of(view).size();
}

Table form_table(const Drafting& drafting, const FormSet& set) {
    Table table;
    table.columns = {{{"Mark"}, Align::left, true},
                     {{"Form of"}, Align::left, false},
                     {{"Forms"}, Align::right, false},
                     {{"Faces", "each"}, Align::right, false},
                     {{"Face", "width"}, Align::right, false},
                     {{"Face", "height"}, Align::right, false},
                     {{"Depth"}, Align::right, false},
                     {{"Battens", "each"}, Align::right, false},
                     {{"Gap", "between"}, Align::right, false},
                     {{"Stiffeners", "each"}, Align::right, false},
                     {{"Stiffener", "length"}, Align::right, false}};
    for (const FormKind& kind : set.kinds) {
        const ArchForm& form = kind.form;
        const Vec2 size = size_of(form.face);
        table.rows.push_back({kind.mark, joined(kind.ids), std::to_string(kind.ids.size()),
                              std::to_string(form.faces), drafting.length(size.x()),
                              drafting.length(size.y()), drafting.length(form.depth),
                              std::to_string(form.battens),
                              fine_length_text(form.batten_gap, drafting.unit()),
                              std::to_string(form.stiffeners * (form.faces - 1)),
                              drafting.length(form.stiffener_length)});
    }
    return table;
}

Table frame_table(const Drafting& drafting, const FormSet& set) {
    Table table;
    table.columns = {{{"Mark"}, Align::left, true},
                     {{"Frame of"}, Align::left, false},
                     {{"Frames"}, Align::right, false},
                     {{"Outside", "width"}, Align::right, false},
                     {{"Outside", "height"}, Align::right, false},
                     {{"Clear", "width"}, Align::right, false},
                     {{"Clear", "height"}, Align::right, false},
                     {{"Holds a"}, Align::left, false},
                     {{"Its", "width"}, Align::right, false},
                     {{"Its", "height"}, Align::right, false},
                     {{"Its", "area"}, Align::right, false}};
    for (const FormKind& kind : set.kinds) {
        if (!kind.frame)
            continue;
        const FrameParts& frame = *kind.frame;
        const Vec2 outer = size_of(frame.outer), inner = size_of(frame.inner),
                   pane = size_of(frame.pane);
        table.rows.push_back({kind.mark, joined(kind.ids), std::to_string(kind.ids.size()),
                              drafting.length(outer.x()), drafting.length(outer.y()),
                              drafting.length(inner.x()), drafting.length(inner.y()),
                              frame.use == OpeningUse::door ? "leaf" : "pane",
                              drafting.length(pane.x()), drafting.length(pane.y()),
                              area_text(area_of(frame.pane), drafting.unit())});
    }
    return table;
}

Table board_table(const Drafting& drafting, const FormSet& set) {
    Table table;
    table.columns = {{{"Profile board of"}, Align::left, true},
                     {{"Piece"}, Align::left, false},
                     {{"Length", "along the curve"}, Align::right, false},
                     {{"From the springline up"}, Align::left, false},
                     {{"Courses"}, Align::left, false}};
    for (const ProfileBoard& board : set.boards) {
        Outline edge{board.board.from, {}};
        edge.edges.assign(board.board.edges.begin(),
                          board.board.edges.begin() +
                              static_cast<std::ptrdiff_t>(board.profile_edges));
        const std::string courses = board.marks.empty()
                                        ? "–"
                                        : std::to_string(board.marks.front().course) + " to " +
                                              std::to_string(board.marks.back().course);
        table.rows.push_back(
            {board.dome, std::to_string(board.piece) + " of " + std::to_string(board.pieces),
             drafting.length(length_of(edge)),
             drafting.length(edge.from.y()) + " to " + drafting.length(edge.edges.back().to.y()),
             courses});
    }
    return table;
}

/// A template at full size, ready to be cut into tiles.
struct Full {
    std::string title;
    Sheet drawing;
    TileGrid grid;
};

Full full_size(const Drafting& drafting, View view) {
    const Scale scale{1, ""};
    const ViewMargins margins = margins_of(view);
    const Vec2 size = extent_of(view).size() * scale.on_paper(1);
    Full full;
    full.title = std::exchange(view.title, ""); // it stands in the title block
    lay_view(
        full.drawing,
        {0, 0, size.x() + margins.left + margins.right, size.y() + margins.bottom + margins.top},
        view, scale, drafting.measure);
    full.grid = tile_grid(drafting, full.drawing, true);
    return full;
}

void add_keys(Flow& flow, const std::vector<Full>& templates) {
    constexpr double width = 92, height = 74, caption = 10; // mm, the caption on two lines
    const std::size_t across =
        std::max<std::size_t>(1, static_cast<std::size_t>(flow.width() / width));
    flow.heading("How the tiles lie", height + caption);
    flow.paragraph(tile_words());
    for (std::size_t first = 0; first < templates.size(); first += across)
        flow.block(height + caption, [&](Sheet& sheet, const PaperBox& box) {
            for (std::size_t i = first; i < std::min(templates.size(), first + across); ++i) {
                const double left = box.left + static_cast<double>(i - first) * width;
                add_tile_key(sheet,
                             {left + 2, box.bottom + caption + 1, left + width - 4, box.top - 2},
                             templates[i].drawing, templates[i].grid);
                add_lines(
                    sheet, {left + 2, box.bottom + caption},
                    wrapped(templates[i].title, width - 6, sizes::small, false, flow.measure(), 2),
                    sizes::small, false);
            }
        });
}

} // namespace

std::vector<Sheet> form_sheets(const Drafting& drafting, const FormSet& set) {
    std::vector<Full> templates;
    for (const View& view : half_templates(set))
        templates.push_back(full_size(drafting, view));
    const auto start = [&] {
        Page page = start_drawing(drafting, "Forms, frames, boards", "");
        page.body = grown(page.body, -2);
        return page;
    };
    Flow flow(drafting, start, sizes::body);
    const FormStock& stock = set.stock;
    const auto length = [&](double metres) { return drafting.length(metres); };
    if (!set.kinds.empty())
        flow.table("Forms", form_table(drafting, set), sizes::body, sizes::least, true);
    flow.paragraph(
        "Faces are of boards " + length(stock.board) +
        " thick, one at each end of the form and others no more than " + length(stock.span) +
        " apart. Battens of " + length(stock.batten) + " by " + length(stock.batten_width) +
        ", as long as the form is deep, lie close along the curved edge and the jambs: face "
        "and battens together fill the hole. Stiffeners stand between the faces where the marks on "
        "the face are. "
        "A form stands on folding wedges, " +
        length(stock.wedge) +
        " above its sill, so that it can be eased. These sizes are common practice for spans of a "
        "door, not reckoned for a load: "
        "whoever builds the forms answers for them.");
    flow.paragraph("A form carries the wall over it. It stays until the crew book says STRIKE; "
                   "ease its wedges first, and let nobody "
                   "stand below.",
                   0, true);
    const Table frames = frame_table(drafting, set);
    if (!frames.rows.empty())
        flow.table("Frames, panes, leaves", frames, sizes::body, sizes::least, true);
    if (!set.boards.empty()) {
        flow.table("Profile boards", board_table(drafting, set), sizes::body, sizes::least, true);
        flow.paragraph("The curved edge is the inside face of the dome, measured from the pole. "
                       "Join the pieces end to end, "
                       "fix the board plumb to a sleeve that turns about the pole, its foot at the "
                       "springline, and check each course against "
                       "its mark. The compass stays the measure: the board shows where a course "
                       "has wandered.");
    }
    if (!templates.empty())
        add_keys(flow, templates);
    std::vector<Sheet> sheets = flow.finish();
    for (const Full& full : templates)
        for (Sheet& sheet : tile_sheets(drafting, full.drawing, full.grid, full.title, "full size"))
            sheets.push_back(std::move(sheet));
    number_drawings(sheets);
    return sheets;
}

} // namespace coilwright
