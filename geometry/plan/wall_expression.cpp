// The wall, the rooms and the footprint of a building at a height, as set algebra in plan.
#include "geometry/plan/building_form.hpp"

#include <utility>

namespace coilwright {

namespace {

constexpr double beyond = 100; // metres: further than any wall that an opening goes through

/// Writes shapes and terms down; the same shape is listed once.
class Builder {
public:
    Builder(const BuildingForm& building, const WallRelations& relations, double z, bool lay_over)
        : building_(building), relations_(relations), z_(z), lay_over_(lay_over) {
        const std::size_t counts[] = {building.domes.size(),      building.domes.size(),
                                      building.tunnels.size(),    building.tunnels.size(),
                                      building.buttresses.size(), building.openings.size()};
        for (const std::size_t count : counts) {
            first_.push_back(known_.size());
            known_.resize(known_.size() + count, -1);
        }
    }

    TaggedExpression wall(const std::vector<bool>& wanted = {}) {
        std::size_t term = 0;
        const auto next_is_wanted = [&] { return wanted.empty() || wanted[term++]; };
        for (int i = 0; i < static_cast<int>(building_.domes.size()); ++i)
            if (next_is_wanted())
                add_dome(i);
        for (int i = 0; i < static_cast<int>(building_.tunnels.size()); ++i)
            if (next_is_wanted())
                add_tunnel(i);
        for (int i = 0; i < static_cast<int>(building_.buttresses.size()); ++i)
            if (next_is_wanted())
                add_buttress(i);
        return std::move(expression_);
    }

    PlanExpression rooms() {
        for (int i = 0; i < static_cast<int>(building_.domes.size()); ++i) {
            if (inside_radius(dome(i), z_) <= 0)
                continue;
            PlanTerm term{dome(i).id, inside(i), {}};
            for (const auto& [other, effect] : relations_.joins[at(i)])
                if (effect == JoinEffect::stops_at_wall && has_wall(dome(other)))
                    term.less.push_back(outside(other));
            add(term);
        }
        for (int i = 0; i < static_cast<int>(building_.tunnels.size()); ++i)
            if (tunnel_opens(building_.tunnels[at(i)]))
                add({building_.tunnels[at(i)].id, void_of(i), {}});
        return std::move(expression_.plan);
    }

    PlanExpression footprint() {
        for (int i = 0; i < static_cast<int>(building_.domes.size()); ++i)
            if (has_wall(dome(i)))
                add({dome(i).id, outside(i), {}});
        for (int i = 0; i < static_cast<int>(building_.tunnels.size()); ++i)
            if (outer_half_width(building_.tunnels[at(i)], z_) > 0)
                add({building_.tunnels[at(i)].id, body_of(i), {}});
        for (int i = 0; i < static_cast<int>(building_.buttresses.size()); ++i)
            if (stands(building_.buttresses[at(i)]))
                add({building_.buttresses[at(i)].id, pier_of(i), {}});
        return std::move(expression_.plan);
    }

private:
    const BuildingForm& building_;
    const WallRelations& relations_;
    double z_;
    bool lay_over_;
    TaggedExpression expression_;
    std::vector<std::size_t> first_; // per role: where its elements start in `known_`
    std::vector<int> known_;         // the shape of each tag, -1: none yet

    static std::size_t at(int index) { return static_cast<std::size_t>(index); }
    const DomeForm& dome(int index) const { return building_.domes[at(index)]; }

    int shape(SectionRole role, int element, const Shape& wanted) {
        int& known = known_[first_[static_cast<std::size_t>(role)] + at(element)];
        if (known < 0) {
            known = static_cast<int>(expression_.plan.shapes.size());
            expression_.plan.shapes.push_back(wanted);
            expression_.tags.push_back({role, element});
        }
        return known;
    }
    int outside(int index) {
        return shape(SectionRole::dome_outside, index,
                     Disc{dome(index).at, outside_radius(dome(index), z_)});
    }
    int inside(int index) {
        return shape(SectionRole::dome_inside, index,
                     Disc{dome(index).at, inside_radius(dome(index), z_)});
    }
    int void_of(int tunnel) {
        return shape(SectionRole::tunnel_void, tunnel,
                     tunnel_void(building_.tunnels[at(tunnel)], z_));
    }
    int body_of(int tunnel) {
        return shape(SectionRole::tunnel_body, tunnel,
                     tunnel_body(building_.tunnels[at(tunnel)], z_));
    }
    int pier_of(int pier) {
        return shape(SectionRole::pier, pier, buttress_body(building_.buttresses[at(pier)], z_));
    }
    void add(PlanTerm term) { expression_.plan.terms.push_back(std::move(term)); }

    bool has_wall(const DomeForm& dome) const {
        return z_ >= dome.bottom() - height_tie && z_ < dome.top() - height_tie;
    }
    bool stands(const ButtressForm& pier) const {
        return z_ >= pier.bottom - height_tie && z_ < pier.top - height_tie;
    }
    /// Whether the void opens the walls of its domes at this height.
    bool tunnel_opens(const TunnelForm& tunnel) const {
        return z_ >= -height_tie && inner_half_width(tunnel, z_) > 0;
    }

    /// Half-width of a hole at this height, 0 where it does not cut.
    double hole(const OpeningForm& opening, double course_height) const {
        const double a = half_width(opening, z_);
        return lay_over_ && 2 * a < course_height - height_tie ? 0 : a;
    }

    void cut_openings(PlanTerm& term, const std::vector<int>& openings, double course_height,
                      double niche_face) {
        for (const int index : openings) {
            const OpeningForm& opening = building_.openings[at(index)];
            const double a = hole(opening, course_height);
            if (a <= 0)
                continue;
            const double to = opening.niche_depth > 0 ? niche_face + opening.niche_depth : beyond;
            term.less.push_back(
                shape(SectionRole::hole, index, Box{opening.origin, opening.axis, 0, to, -a, a}));
        }
    }

    void cut_tunnels(PlanTerm& term, int dome) {
        for (const int index : relations_.dome_tunnels[at(dome)])
            if (const TunnelForm& tunnel = building_.tunnels[at(index)];
                !tunnel.wall_stays && tunnel_opens(tunnel) &&
                (!lay_over_ || stops_ring(tunnel, z_)))
                term.less.push_back(void_of(index));
    }

    void add_dome(int index) {
        const DomeForm& dome = this->dome(index);
        if (!has_wall(dome))
            return;
        const double r = inside_radius(dome, z_);
        PlanTerm term{dome.id, outside(index), {}};
        if (r > 0)
            term.less.push_back(inside(index));
        for (const auto& [other, effect] : relations_.joins[at(index)]) {
            if (!has_wall(this->dome(other)))
                continue;
            if (effect == JoinEffect::stops_at_wall && outside_radius(this->dome(other), z_) > 0)
                term.less.push_back(outside(other));
            if (effect == JoinEffect::opens_to_room && inside_radius(this->dome(other), z_) > 0)
                term.less.push_back(inside(other));
        }
        cut_tunnels(term, index);
        cut_openings(term, relations_.dome_openings[at(index)], dome.course_height, r);
        add(std::move(term));
    }

    void add_tunnel(int index) {
        const TunnelForm& tunnel = building_.tunnels[at(index)];
        if (outer_half_width(tunnel, z_) <= 0 || z_ >= tunnel.top() - height_tie)
            return;
        PlanTerm walls{tunnel.id, body_of(index), {}};
        const auto [from, to] = relations_.tunnel_domes[at(index)];
        for (const int end : {from, to}) {
            if (end < 0)
                continue;
            // Where the dome's wall stays, the tunnel starts at its outside face.
            const bool stays = tunnel.wall_stays && end == from;
            const double r = stays ? outside_radius(dome(end), z_) : inside_radius(dome(end), z_);
            if (r > 0)
                walls.less.push_back(stays ? outside(end) : inside(end));
        }
        if (inner_half_width(tunnel, z_) > 0)
            walls.less.push_back(void_of(index));
        cut_openings(walls, relations_.tunnel_openings[at(index)], tunnel.course_height, 0);
        add(std::move(walls));
    }

    void add_buttress(int index) {
        const ButtressForm& pier = building_.buttresses[at(index)];
        if (!stands(pier))
            return;
        PlanTerm term{pier.id, pier_of(index), {}};
        const int dome = relations_.pier_domes[at(index)];
        if (dome >= 0) {
            const double r = inside_radius(this->dome(dome), z_);
            if (r > 0)
                term.less.push_back(inside(dome));
            cut_tunnels(term, dome);
            cut_openings(term, relations_.dome_openings[at(dome)], this->dome(dome).course_height,
                         r);
        }
        add(std::move(term));
    }
};

} // namespace

PlanExpression wall_expression(const BuildingForm& building, double z) {
    return tagged_wall(building, make_relations(building), z).plan;
}

TaggedExpression tagged_wall(const BuildingForm& building, const WallRelations& relations, double z,
                             const std::vector<bool>& wanted) {
    return Builder(building, relations, z, false).wall(wanted);
}

PlanExpression course_expression(const BuildingForm& building, int n, double lift) {
    return course_expression(building, make_relations(building), n, lift);
}

PlanExpression course_expression(const BuildingForm& building, const WallRelations& relations,
                                 int n, double lift) {
    if (building.domes.empty())
        return {};
    return Builder(building, relations, building.domes.front().course_middle(n) + lift, true)
        .wall()
        .plan;
}

PlanExpression room_expression(const BuildingForm& building, double z) {
    return Builder(building, make_relations(building), z, false).rooms();
}

PlanExpression footprint_expression(const BuildingForm& building, double z) {
    return Builder(building, make_relations(building), z, false).footprint();
}

} // namespace coilwright
