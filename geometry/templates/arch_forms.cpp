#include "geometry/base/bearing.hpp"
#include "geometry/templates/forms.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {
namespace {

constexpr double least_length = 1e-6;

void add_edge(Outline& outline, Vec2 to, double bulge = 0) {
    const Vec2 from = outline.edges.empty() ? outline.from : outline.edges.back().to;
    if ((to - from).norm() > least_length)
        outline.edges.push_back({to, bulge});
}

/// The head or vault over its springing, from the right foot to the left one.
void add_curve(Outline& outline, const Profile& profile, double springing) {
    const double a = profile.half_span, top = springing + profile.rise;
    switch (profile.kind) {
    case ProfileKind::round:
        add_edge(outline, {-a, springing}, 1);
        return;
    case ProfileKind::segmental:
        add_edge(outline, {-a, springing},
                 std::tan(std::asin(std::min(1.0, a / profile.radius)) / 2));
        return;
    case ProfileKind::pointed: {
        const double bulge = std::tan(std::acos((profile.radius - a) / profile.radius) / 4);
        add_edge(outline, {0, top}, bulge);
        add_edge(outline, {-a, springing}, bulge);
        return;
    }
    default:
        break;
    }
    // No circle: chords within 0.1 mm, as many as steps that are finer towards a level crown.
    constexpr int steps = 96;
    std::vector<Vec2> right;
    for (int i = 1; i < steps; ++i) {
        const double y = profile.rise * std::sin(pi / 2 * i / steps);
        right.push_back({half_width(profile, y), springing + y});
    }
    for (const Vec2& point : right)
        add_edge(outline, point);
    add_edge(outline, {0, top});
    for (auto point = right.rbegin(); point != right.rend(); ++point)
        add_edge(outline, {-point->x(), point->y()});
    add_edge(outline, {-a, springing});
}

/// Battens and stiffeners along an edge of a length, both ends counted for the stiffeners.
void count_boards(ArchForm& form, const FormStock& stock, bool closed) {
    const FormBoards boards = form_boards(form.girth, form.depth, closed, stock);
    form.faces = boards.faces;
    form.battens = boards.battens;
    form.batten_gap = form.girth / form.battens - stock.batten_width;
    form.stiffeners = boards.stiffeners;
    form.stiffener_length = boards.stiffener_length;
    const int steps = closed ? form.stiffeners : form.stiffeners - 1;
    // Whole widths of a stiffener (39 mm) within the edge, so that those at the feet have room.
    for (int i = 0; i < form.stiffeners; ++i)
        form.stiffener_places.push_back(closed ? form.girth * i / steps
                                               : 0.03 + (form.girth - 0.06) * i / steps);
}

std::optional<ArchForm> fill(ArchForm form, const Outline& lowered, bool closed,
                             const FormStock& stock) {
    const auto face = moved_out(lowered, -stock.batten);
    if (!face || !(area_of(*face) > 1e-4))
        return std::nullopt;
    form.face = *face;
    double bottom = 0;
    if (!closed)
        bottom = (face->edges.front().to - face->from).norm();
    form.girth = length_of(*face) - bottom;
    count_boards(form, stock, closed);
    return form;
}

} // namespace

Outline hole_outline(const OpeningForm& opening, double bottom) {
    const double a = opening.half_width;
    if (opening.head_kind == HeadKind::circle)
        return {{0, opening.sill}, {{{0, opening.top}, 1}, {{0, opening.sill}, 1}}};
    Outline outline{{-a, bottom}, {}};
    add_edge(outline, {a, bottom});
    add_edge(outline, {a, opening.springing});
    if (opening.head)
        add_curve(outline, *opening.head, opening.springing);
    else
        add_edge(outline, {-a, opening.top});
    add_edge(outline, {-a, bottom});
    return outline;
}

Outline vault_outline(const TunnelForm& tunnel, double bottom) {
    const double a = tunnel.profile.half_span;
    Outline outline{{-a, bottom}, {}};
    add_edge(outline, {a, bottom});
    add_edge(outline, {a, tunnel.springline});
    add_curve(outline, tunnel.profile, tunnel.springline);
    add_edge(outline, {-a, bottom});
    return outline;
}

std::optional<ArchForm> arch_form(const OpeningPlan& opening, const FormStock& stock) {
    const OpeningForm& hole = opening.form;
    const bool closed = hole.head_kind == HeadKind::circle;
    // A face stands on wedges; the battens cover jambs and head, not the bottom.
    const double bottom = hole.sill + stock.wedge;
    if (!closed && bottom - stock.batten >= hole.springing - 1e-3 && hole.head)
        return std::nullopt;
    ArchForm form;
    form.of = hole.id;
    form.hole = hole_outline(hole, closed ? hole.sill : bottom);
    form.depth = opening.least_form_depth;
    form.start = opening.innermost;
    return fill(form, hole_outline(hole, bottom - stock.batten), closed, stock);
}

std::optional<ArchForm> vault_form(const Schedule& schedule, const VaultForm& vault,
                                   const FormStock& stock) {
    const TunnelForm* tunnel = find_tunnel(schedule.building, vault.tunnel);
    if (!tunnel)
        return std::nullopt;
    ArchForm form;
    form.of = tunnel->id;
    form.vault = true;
    const double bottom =
        tunnel->springline - std::min(vault_foot, std::max(0.0, tunnel->springline));
    form.hole = vault_outline(*tunnel, bottom);
    // From where the dome's inside ends, at the springline, to the end.
    const DomeForm* from = find_dome(schedule.building, tunnel->from);
    const DomeForm* to = find_dome(schedule.building, tunnel->to);
    const auto inside = [&](const DomeForm* dome) {
        return dome
                   ? std::sqrt(std::max(0.0, std::pow(inside_radius(*dome, tunnel->springline), 2) -
                                                 std::pow(tunnel->profile.half_span, 2)))
                   : 0.0;
    };
    form.start = inside(from);
    form.depth = tunnel->reach - inside(to) - form.start;
    if (!(form.depth > 0.1))
        return std::nullopt;
    return fill(form, vault_outline(*tunnel, bottom - stock.batten), false, stock);
}

std::optional<FrameParts> frame_parts(const OpeningPlan& opening) {
    const OpeningForm& form = opening.form;
    if (form.use == OpeningUse::niche || !(opening.frame_width > 0))
        return std::nullopt;
    const bool closed = form.head_kind == HeadKind::circle;
    // A door's frame has no sill: its jambs stand on the floor.
    const bool open_below = form.use == OpeningUse::door;
    const auto at = [&](double inset) {
        const double bottom = open_below ? form.sill - inset : form.sill;
        return moved_out(hole_outline(form, closed ? form.sill : bottom), -inset);
    };
    const double clear = opening.frame_inset + opening.frame_width;
    const auto outer = opening.frame_inset > 0 ? at(opening.frame_inset)
                                               : std::optional(hole_outline(form, form.sill));
    const auto inner = at(clear);
    const auto pane =
        at(open_below ? clear + leaf_clearance : clear - pane_rebate + pane_clearance);
    if (!outer || !inner || !pane || !(area_of(*inner) > 1e-4))
        return std::nullopt;
    return FrameParts{form.id, form.use, *outer, *inner, *pane};
}

} // namespace coilwright
