#include "geometry/drawing/figures.hpp"
#include "geometry/templates/form_set.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {
namespace {

View start_view(const std::string& id, const std::string& title) {
    View view;
    view.kind = ViewKind::form;
    view.id = id;
    view.title = title;
    view.rim = 4;
    return view;
}

/// The tool's way round an outline.
void add_cut(View& view, const Outline& outline, double out) {
    view.paths.push_back({LineRole::cut, out != 0 ? moved_out(outline, out).value() : outline});
}

void add_size(View& view, Vec2 low, Vec2 high, DisplayUnit unit, const std::string& of) {
    const auto add = [&](Vec2 from, Vec2 to, Vec2 along, const char* what) {
        ViewDimension dimension;
        dimension.from = from;
        dimension.to = to;
        dimension.along = along;
        dimension.row = 0;
        dimension.text = length_text(std::abs(along.dot(to - from)), unit);
        dimension.of = of + what;
        view.dimensions.push_back(std::move(dimension));
    };
    add({high.x(), low.y()}, low, {-1, 0}, ".width");
    add(low, {low.x(), high.y()}, {0, 1}, ".height");
}

ViewExtent extent(const Outline& outline) {
    View view;
    view.paths.push_back({LineRole::cut, outline});
    return extent_of(view);
}

void add_name(View& view, const std::string& text, Vec2 at, bool bold = true) {
    view.notes.push_back({text, at, {0, -1}, 0.5, bold, false, true});
}

std::string names_of(const FormKind& kind) {
    std::string text;
    for (const std::string& id : kind.ids)
        text += (text.empty() ? "" : ", ") + id;
    return text;
}

int count_of(const FormKind& kind) {
    return static_cast<int>(kind.ids.size());
}

View face_view(const FormSet& set, const FormKind& kind, double kerf) {
    const ArchForm& form = kind.form;
    View view = start_view(kind.mark + "-face",
                           kind.mark + " face of the form of " + names_of(kind) + ", " +
                               std::to_string(form.faces * count_of(kind)) + " pieces");
    add_cut(view, form.face, kerf / 2);
    const ViewExtent box = extent(form.face);
    add_segment(view, LineRole::axis, {0, box.low.y()}, {0, box.high.y()});
    if (kind.springing > box.low.y() + 0.01 && kind.springing < box.high.y() - 0.01)
        add_segment(view, LineRole::seen, {box.low.x(), kind.springing},
                    {box.high.x(), kind.springing});
    // Where the stiffeners stand behind it.
    const bool closed = form.hole.edges.size() == 2;
    const double bottom = closed ? 0 : (form.face.edges.front().to - form.face.from).norm();
    for (const double u : form.stiffener_places) {
        const OutlinePlace place = place_along(form.face, bottom + u);
        add_segment(view, LineRole::seen, place.at, place.at - 0.04 * place.outward);
    }
    add_size(view, box.low, box.high, set.unit, "form." + kind.ids.front() + ".face");
    add_name(view, kind.mark, {0, (box.low.y() + box.high.y()) / 2});
    return view;
}

View strip_view(const FormSet& set, const FormKind& kind, double kerf) {
    const SoffitStrip& strip = *kind.strip;
    View view =
        start_view(kind.mark + "-strip", kind.mark + " strip over the soffit of " + names_of(kind) +
                                             ", " + std::to_string(count_of(kind)) +
                                             (count_of(kind) == 1 ? " piece" : " pieces"));
    const double length = strip.length, depth = strip.depth;
    add_cut(view, {{0, 0}, {{{length, 0}, 0}, {{length, depth}, 0}, {{0, depth}, 0}, {{0, 0}, 0}}},
            kerf / 2);
    for (const auto* face : {&strip.inner_face, &strip.outer_face}) {
        ViewPath path;
        path.role = LineRole::seen;
        path.path.from = face->front();
        for (std::size_t i = 1; i < face->size(); ++i)
            path.path.edges.push_back({(*face)[i], 0});
        view.paths.push_back(std::move(path));
    }
    for (const auto& [course, u] : strip.joints)
        for (const double at : {u, length - u})
            add_segment(view, LineRole::hidden, {at, 0}, {at, depth});
    for (const double u : {strip.springing_right, strip.crown, strip.springing_left})
        add_segment(view, LineRole::axis, {u, 0}, {u, depth});
    add_size(view, {0, 0}, {length, depth}, set.unit, "form." + kind.ids.front() + ".strip");
    add_name(view, kind.mark + " strip, inside of the room below", {length / 2, depth / 2});
    return view;
}

std::vector<View> frame_views(const FormSet& set, const FormKind& kind, double kerf) {
    const FrameParts& frame = *kind.frame;
    const bool door = frame.use == OpeningUse::door;
    const std::string pieces =
        std::to_string(count_of(kind)) + (count_of(kind) == 1 ? " piece" : " pieces");
    std::vector<View> views;
    View ring =
        start_view(kind.mark + "-frame", kind.mark + " frame of " + names_of(kind) + ", " + pieces);
    const ViewExtent box = extent(frame.outer);
    if (door && frame.outer.edges.size() > 2) { // open at the foot: one outline
        const Outline& inner = frame.inner;
        Outline outline = {frame.outer.edges.front().to, {}};
        for (std::size_t i = 1; i < frame.outer.edges.size(); ++i)
            outline.edges.push_back(frame.outer.edges[i]);
        outline.edges.push_back({inner.from, 0});
        std::vector<Vec2> corners{inner.from};
        for (const OutlineEdge& edge : inner.edges)
            corners.push_back(edge.to);
        for (std::size_t i = inner.edges.size(); i-- > 1;)
            outline.edges.push_back({corners[i], -inner.edges[i].bulge});
        outline.edges.push_back({outline.from, 0});
        add_cut(ring, outline, kerf / 2);
    } else {
        add_cut(ring, frame.outer, kerf / 2);
        add_cut(ring, frame.inner, -kerf / 2);
    }
    add_size(ring, box.low, box.high, set.unit, "form." + kind.ids.front() + ".frame");
    add_name(ring, kind.mark + " frame", {0, (box.low.y() + box.high.y()) / 2});
    views.push_back(std::move(ring));
    View pane =
        start_view(kind.mark + (door ? "-leaf" : "-pane"),
                   kind.mark + (door ? " leaf of " : " pane of ") + names_of(kind) + ", " + pieces);
    add_cut(pane, frame.pane, kerf / 2);
    const ViewExtent inside = extent(frame.pane);
    add_size(pane, inside.low, inside.high, set.unit,
             "form." + kind.ids.front() + (door ? ".leaf" : ".pane"));
    add_name(pane, kind.mark + (door ? " leaf" : " pane"),
             {0, (inside.low.y() + inside.high.y()) / 2});
    views.push_back(std::move(pane));
    return views;
}

View board_view(const FormSet& set, const ProfileBoard& board, double kerf) {
    View view = start_view("board-" + board.dome + "-" + std::to_string(board.piece),
                           "Profile board of " + board.dome + ", piece " +
                               std::to_string(board.piece) + " of " + std::to_string(board.pieces));
    add_cut(view, board.board, kerf / 2);
    for (const ProfileBoard::Mark& mark : board.marks) {
        add_segment(view, LineRole::seen, mark.at, mark.at + 0.03 * mark.inward);
        view.notes.push_back({std::to_string(mark.course), mark.at + 0.03 * mark.inward,
                              mark.inward, 4, false, false, true});
    }
    const ViewExtent box = extent(board.board);
    add_size(view, box.low, box.high, set.unit, "board." + board.dome);
    return view;
}

} // namespace

std::vector<std::vector<View>> cutting_views(const FormSet& set, double kerf) {
    std::vector<std::vector<View>> rows(3);
    for (const FormKind& kind : set.kinds) {
        rows[0].push_back(face_view(set, kind, kerf));
        if (kind.strip)
            rows[0].push_back(strip_view(set, kind, kerf));
        if (kind.frame)
            for (View& view : frame_views(set, kind, kerf))
                rows[1].push_back(std::move(view));
    }
    for (const ProfileBoard& board : set.boards)
        rows[2].push_back(board_view(set, board, kerf));
    rows.erase(
        std::remove_if(rows.begin(), rows.end(), [](const auto& row) { return row.empty(); }),
        rows.end());
    return rows;
}

} // namespace coilwright
