#include "geometry/templates/half_templates.hpp"

#include "geometry/drawing/figures.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {
namespace {

constexpr double jamb = 0.1; // m of plumb jamb below the springing, to set the template by

View start_view(const std::string& id, const std::string& title) {
    View view;
    view.kind = ViewKind::form;
    view.id = id;
    view.title = title;
    view.rim = 5;
    return view;
}

std::string ids_of(const FormKind& kind) {
    std::string text;
    for (const std::string& id : kind.ids)
        text += (text.empty() ? "" : ", ") + id;
    return text;
}

View head_view(const FormKind& kind) {
    View view = start_view(kind.mark + "-head", kind.mark + " head of " + ids_of(kind) +
                                                    ", right half: turn over on the centre line");
    const bool closed = kind.form.hole.edges.size() == 2;
    const double above = closed ? -1e3 : std::max(kind.form.hole.from.y(), kind.springing - jamb);
    const auto add = [&](const Outline& outline, LineRole role, const std::string& name) {
        for (const Outline& path : right_half(outline, above))
            view.paths.push_back({role, path});
        // Named on the curve, over its jamb.
        const Vec2 foot = outline.edges.front().to;
        const double bottom = closed ? 0 : (foot - outline.from).norm();
        const double plumb = closed ? 0 : std::max(0.0, kind.springing - foot.y());
        const double half = (length_of(outline) - bottom) / 2;
        const OutlinePlace place =
            place_along(outline, bottom + plumb + 0.6 * std::max(0.0, half - plumb));
        view.notes.push_back({name, place.at,
                              role == LineRole::hidden ? place.outward : Vec2(-place.outward), 2.5,
                              false, true, true});
    };
    add(kind.form.hole, LineRole::hidden, "hole");
    add(kind.form.face, LineRole::cut, "face of the form");
    if (kind.frame) {
        add(kind.frame->outer, LineRole::seen, "frame, outside");
        add(kind.frame->inner, LineRole::seen, "frame, clear");
        add(kind.frame->pane, LineRole::glazing,
            kind.frame->use == OpeningUse::door ? "leaf" : "pane");
    }
    const ViewExtent box = extent_of(view);
    add_segment(view, LineRole::axis, {0, box.low.y()}, {0, box.high.y()});
    if (!closed) {
        add_segment(view, LineRole::level, {0, kind.springing}, {box.high.x(), kind.springing});
        view.notes.push_back(
            {"springing", {box.high.x() / 2, kind.springing}, {0, 1}, 3, false, false, true});
    }
    return view;
}

View strip_view(const FormKind& kind) {
    const SoffitStrip& strip = *kind.strip;
    View view =
        start_view(kind.mark + "-strip", kind.mark + " strip over the form of " + ids_of(kind) +
                                             ", from the springing to the crown: turn over there");
    const double from =
        kind.form.hole.edges.size() == 2 ? 0 : std::max(0.0, strip.springing_right - jamb);
    const double crown = strip.crown, depth = strip.depth;
    view.paths.push_back(
        {LineRole::cut,
         {{from, 0}, {{{crown, 0}, 0}, {{crown, depth}, 0}, {{from, depth}, 0}, {{from, 0}, 0}}}});
    const auto add_face = [&](const std::vector<Vec2>& face, const std::string& name) {
        ViewPath path;
        path.role = LineRole::seen;
        bool first = true;
        for (const Vec2& point : face) {
            if (point.x() < from - 1e-9 || point.x() > crown + 1e-9)
                continue;
            if (first)
                path.path.from = point;
            else
                path.path.edges.push_back({point, 0});
            first = false;
        }
        if (path.path.edges.empty())
            return;
        const Vec2 at = path.path.edges[path.path.edges.size() / 2].to;
        view.paths.push_back(std::move(path));
        view.notes.push_back({name, at, {0, 1}, 3, false, true, true});
    };
    add_face(strip.inner_face, "wall, inside");
    add_face(strip.outer_face, "wall, outside");
    for (const auto& [course, u] : strip.joints)
        if (u > from + 1e-6) {
            add_segment(view, LineRole::hidden, {u, 0}, {u, depth});
            view.notes.push_back({"top of course " + std::to_string(course),
                                  {u, depth / 2},
                                  {1, 0},
                                  4,
                                  false,
                                  true,
                                  true});
        }
    if (strip.springing_right > from + 1e-6)
        add_segment(view, LineRole::axis, {strip.springing_right, 0},
                    {strip.springing_right, depth});
    view.notes.push_back({"inner end", {(from + crown) / 2, 0}, {0, 1}, 4, false, false, true});
    return view;
}

/// Lying on its chord: it takes the fewest sheets.
View board_view(const ProfileBoard& board, DisplayUnit unit) {
    View view = start_view("board-" + board.dome + "-" + std::to_string(board.piece),
                           "Profile board of " + board.dome + ", piece " +
                               std::to_string(board.piece) + " of " + std::to_string(board.pieces));
    const Vec2 from = board.board.from, to = board.board.edges[board.profile_edges - 1].to;
    const Vec2 ahead = (to - from).normalized(), left(-ahead.y(), ahead.x());
    const auto lying = [&](Vec2 point) {
        return Vec2(ahead.dot(point - from), left.dot(point - from));
    };
    // The curve and a little of both ends: the back runs beside it, at a distance that is told.
    const auto& edges = board.board.edges;
    const auto profile = static_cast<std::ptrdiff_t>(board.profile_edges);
    const Vec2 back_to = edges[board.profile_edges].to, back_from = edges[edges.size() - 2].to;
    const double width = (back_from - from).norm(), stub = std::min(width, 0.04);
    const auto toward = [&](Vec2 corner, Vec2 back) {
        return lying(corner + (back - corner).normalized() * stub);
    };
    Outline outline{toward(from, back_from), {{lying(from), 0}}};
    for (auto edge = edges.begin(); edge != edges.begin() + profile; ++edge)
        outline.edges.push_back({lying(edge->to), edge->bulge});
    outline.edges.push_back({toward(to, back_to), 0});
    view.paths.push_back({LineRole::cut, std::move(outline)});
    for (const ProfileBoard::Mark& mark : board.marks) {
        const Vec2 on = lying(mark.at), off = lying(mark.at + 0.03 * mark.inward);
        add_segment(view, LineRole::seen, on, off);
        view.notes.push_back(
            {"course " + std::to_string(mark.course), off, off - on, 6, false, false, true});
    }
    view.notes.push_back({"inside face of the dome; springline this way; board " +
                              length_text(width, unit) + " wide",
                          lying(board.board.from) + Vec2(0.1, 0.05),
                          {0, 1},
                          4,
                          false,
                          false,
                          true});
    return view;
}

} // namespace

std::vector<Outline> right_half(const Outline& outline, double above) {
    constexpr double far = 1e3;
    const Vec2 low(0, above), high(far, far);
    std::vector<Outline> paths;
    const auto add = [&](Vec2 from, Vec2 to, double bulge) {
        if (!paths.empty()) {
            const Vec2 end = paths.back().edges.back().to;
            if ((end - from).norm() < 1e-7) {
                paths.back().edges.push_back({to, bulge});
                return;
            }
        }
        paths.push_back({from, {{to, bulge}}});
    };
    Vec2 from = outline.from;
    for (const OutlineEdge& edge : outline.edges) {
        if (const auto arc = arc_of(BoundaryEdge{0, from, edge.to, edge.bulge})) {
            const Vec2 first = (edge.bulge > 0 ? from : edge.to) - arc->centre;
            const double start = std::atan2(first.y(), first.x());
            for (const auto& [a, b] :
                 clipped_arc(arc->centre, arc->radius, start,
                             start + 4 * std::atan(std::abs(edge.bulge)), low, high)) {
                const auto at = [&](double angle) {
                    return Vec2(arc->centre + arc->radius * Vec2(std::cos(angle), std::sin(angle)));
                };
                const double bulge = std::tan((b - a) / 4);
                if (edge.bulge > 0)
                    add(at(a), at(b), bulge);
                else
                    add(at(b), at(a), -bulge);
            }
        } else {
            for (const Segment& part : clipped(Segment{from, edge.to}, low, high))
                add(part.from, part.to, 0);
        }
        from = edge.to;
    }
    return paths;
}

std::vector<View> half_templates(const FormSet& set) {
    std::vector<View> views;
    for (const FormKind& kind : set.kinds) {
        if (!kind.curved_head)
            continue;
        views.push_back(head_view(kind));
        if (kind.strip)
            views.push_back(strip_view(kind));
    }
    for (const ProfileBoard& board : set.boards)
        views.push_back(board_view(board, set.unit));
    return views;
}

} // namespace coilwright
