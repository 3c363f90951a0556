#include "geometry/templates/form_set.hpp"

#include <cmath>

namespace coilwright {
namespace {

constexpr double same = 1e-4; // metres: shapes that differ by less are cut as one

bool alike(const Outline& a, const Outline& b) {
    if (a.edges.size() != b.edges.size() || (a.from - b.from).norm() > same)
        return false;
    for (std::size_t i = 0; i < a.edges.size(); ++i)
        if ((a.edges[i].to - b.edges[i].to).norm() > same ||
            std::abs(a.edges[i].bulge - b.edges[i].bulge) > 1e-6)
            return false;
    return true;
}

bool alike(const std::vector<Vec2>& a, const std::vector<Vec2>& b) {
    if (a.size() != b.size())
        return false;
    for (std::size_t i = 0; i < a.size(); ++i)
        if ((a[i] - b[i]).norm() > same)
            return false;
    return true;
}

bool alike(const FormKind& a, const FormKind& b) {
    if (a.form.vault || b.form.vault || !alike(a.form.face, b.form.face) ||
        std::abs(a.form.depth - b.form.depth) > same ||
        a.frame.has_value() != b.frame.has_value() || !a.strip || !b.strip)
        return false;
    if (a.frame &&
        ((a.frame->use == OpeningUse::door) != (b.frame->use == OpeningUse::door) ||
         !alike(a.frame->outer, b.frame->outer) || !alike(a.frame->inner, b.frame->inner)))
        return false;
    return alike(a.strip->inner_face, b.strip->inner_face) &&
           alike(a.strip->outer_face, b.strip->outer_face);
}

void add(FormSet& set, FormKind kind) {
    for (FormKind& one : set.kinds)
        if (alike(one, kind)) {
            one.ids.push_back(kind.ids.front());
            return;
        }
    kind.mark = "F" + std::to_string(set.kinds.size() + 1);
    set.kinds.push_back(std::move(kind));
}

} // namespace

FormSet form_set(const Schedule& schedule) {
    FormSet set;
    set.unit = schedule.unit;
    set.stock = form_stock(schedule.unit);
    for (const OpeningPlan& opening : schedule.openings) {
        const auto form = arch_form(opening, set.stock);
        if (!form)
            continue;
        FormKind kind;
        kind.ids = {opening.form.id};
        kind.form = *form;
        kind.frame = frame_parts(opening);
        kind.strip = soffit_strip(schedule, opening, *form);
        kind.springing = opening.form.springing;
        kind.sill = opening.form.sill;
        kind.curved_head = opening.form.head_kind != HeadKind::square;
        add(set, std::move(kind));
    }
    for (const VaultForm& vault : schedule.vault_forms)
        if (const auto form = vault_form(schedule, vault, set.stock)) {
            FormKind kind;
            kind.ids = {vault.tunnel};
            kind.form = *form;
            kind.sill = form->hole.from.y();
            kind.springing = find_tunnel(schedule.building, vault.tunnel)->springline;
            add(set, std::move(kind));
        }
    for (const DomeForm& dome : schedule.building.domes)
        for (ProfileBoard& board : profile_boards(schedule, dome, set.stock))
            set.boards.push_back(std::move(board));
    return set;
}

} // namespace coilwright
