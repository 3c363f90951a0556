#include "geometry/plan/building_form.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

constexpr double beyond = 100; // metres: further than any wall that an opening goes through

void place_in_tunnel(OpeningForm& form, const Opening& opening, const TunnelForm& tunnel) {
    const Vec2 axis = tunnel.axis();
    form.origin = tunnel.origin;
    form.axis = axis;
    if (opening.side == TunnelSide::end)
        return;
    form.origin = tunnel.origin + opening.along * axis;
    form.axis = opening.side == TunnelSide::right ? right_of(tunnel.bearing)
                                                  : Vec2(-right_of(tunnel.bearing));
}

/// Writes shapes and terms down; the same shape is listed once.
class Builder {
public:
    Builder(const BuildingForm& building, double z, bool lay_over)
        : building_(building), z_(z), lay_over_(lay_over) {}

    PlanExpression wall() {
        for (const DomeForm& dome : building_.domes)
            add_dome(dome);
        for (const TunnelForm& tunnel : building_.tunnels)
            add_tunnel(tunnel);
        for (const ButtressForm& pier : building_.buttresses)
            add_buttress(pier);
        return std::move(expression_);
    }

    PlanExpression rooms() {
        for (const DomeForm& dome : building_.domes) {
            const double r = inside_radius(dome, z_);
            if (r <= 0)
                continue;
            PlanTerm term{dome.id, shape(Disc{dome.at, r}), {}};
            for (const DomeForm& other : building_.domes)
                if (join_effect(building_, dome.id, other.id) == JoinEffect::stops_at_wall &&
                    has_wall(other))
                    term.less.push_back(shape(Disc{other.at, outside_radius(other, z_)}));
            expression_.terms.push_back(term);
        }
        for (const TunnelForm& tunnel : building_.tunnels)
            if (tunnel_opens(tunnel))
                expression_.terms.push_back({tunnel.id, shape(tunnel_void(tunnel, z_)), {}});
        return std::move(expression_);
    }

    PlanExpression footprint() {
        for (const DomeForm& dome : building_.domes)
            if (has_wall(dome))
                expression_.terms.push_back(
                    {dome.id, shape(Disc{dome.at, outside_radius(dome, z_)}), {}});
        for (const TunnelForm& tunnel : building_.tunnels)
            if (outer_half_width(tunnel, z_) > 0)
                expression_.terms.push_back({tunnel.id, shape(tunnel_body(tunnel, z_)), {}});
        for (const ButtressForm& pier : building_.buttresses)
            if (stands(pier))
                expression_.terms.push_back({pier.id, shape(buttress_body(pier, z_)), {}});
        return std::move(expression_);
    }

private:
    const BuildingForm& building_;
    double z_;
    bool lay_over_;
    PlanExpression expression_;

    static bool same(const Shape& a, const Shape& b) {
        if (a.index() != b.index())
            return false;
        if (const Disc* disc = std::get_if<Disc>(&a)) {
            const Disc& other = std::get<Disc>(b);
            return disc->centre == other.centre && disc->radius == other.radius;
        }
        const Box& box = std::get<Box>(a);
        const Box& other = std::get<Box>(b);
        return box.origin == other.origin && box.axis == other.axis && box.from == other.from &&
               box.to == other.to && box.low == other.low && box.high == other.high;
    }

    int shape(const Shape& wanted) {
        auto& shapes = expression_.shapes;
        const auto found = std::find_if(shapes.begin(), shapes.end(),
                                        [&](const Shape& known) { return same(known, wanted); });
        if (found != shapes.end())
            return static_cast<int>(found - shapes.begin());
        shapes.push_back(wanted);
        return static_cast<int>(shapes.size()) - 1;
    }

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

    void cut_openings(PlanTerm& term, const std::string& in, double course_height,
                      double niche_face) {
        for (const OpeningForm& opening : building_.openings) {
            const double a = opening.in == in ? hole(opening, course_height) : 0;
            if (a <= 0)
                continue;
            const double to = opening.niche_depth > 0 ? niche_face + opening.niche_depth : beyond;
            term.less.push_back(shape(Box{opening.origin, opening.axis, 0, to, -a, a}));
        }
    }

    void cut_tunnels(PlanTerm& term, const std::string& dome) {
        for (const TunnelForm& tunnel : building_.tunnels)
            if ((tunnel.from == dome || tunnel.to == dome) && !tunnel.wall_stays &&
                tunnel_opens(tunnel))
                term.less.push_back(shape(tunnel_void(tunnel, z_)));
    }

    void add_dome(const DomeForm& dome) {
        if (!has_wall(dome))
            return;
        const double r = inside_radius(dome, z_);
        PlanTerm term{dome.id, shape(Disc{dome.at, outside_radius(dome, z_)}), {}};
        if (r > 0)
            term.less.push_back(shape(Disc{dome.at, r}));
        for (const DomeForm& other : building_.domes) {
            if (&other == &dome || !has_wall(other))
                continue;
            const JoinEffect effect = join_effect(building_, dome.id, other.id);
            const double cut = effect == JoinEffect::stops_at_wall   ? outside_radius(other, z_)
                               : effect == JoinEffect::opens_to_room ? inside_radius(other, z_)
                                                                     : 0;
            if (cut > 0)
                term.less.push_back(shape(Disc{other.at, cut}));
        }
        cut_tunnels(term, dome.id);
        cut_openings(term, dome.id, dome.course_height, r);
        expression_.terms.push_back(term);
    }

    void add_tunnel(const TunnelForm& tunnel) {
        if (outer_half_width(tunnel, z_) <= 0 || z_ >= tunnel.top() - height_tie)
            return;
        PlanTerm walls{tunnel.id, shape(tunnel_body(tunnel, z_)), {}};
        for (const std::string& id : {tunnel.from, tunnel.to}) {
            const DomeForm* dome = find_dome(building_, id);
            if (!dome)
                continue;
            // Where the dome's wall stays, the tunnel starts at its outside face.
            const double r = tunnel.wall_stays && id == tunnel.from ? outside_radius(*dome, z_)
                                                                    : inside_radius(*dome, z_);
            if (r > 0)
                walls.less.push_back(shape(Disc{dome->at, r}));
        }
        if (inner_half_width(tunnel, z_) > 0)
            walls.less.push_back(shape(tunnel_void(tunnel, z_)));
        cut_openings(walls, tunnel.id, tunnel.course_height, 0);
        expression_.terms.push_back(walls);
    }

    void add_buttress(const ButtressForm& pier) {
        if (!stands(pier))
            return;
        PlanTerm term{pier.id, shape(buttress_body(pier, z_)), {}};
        const DomeForm* dome = find_dome(building_, pier.dome);
        if (dome && inside_radius(*dome, z_) > 0)
            term.less.push_back(shape(Disc{dome->at, inside_radius(*dome, z_)}));
        cut_tunnels(term, pier.dome);
        if (dome)
            cut_openings(term, pier.dome, dome->course_height, inside_radius(*dome, z_));
        expression_.terms.push_back(term);
    }
};

template <typename Form>
const Form* find_form(const std::vector<Form>& forms, const std::string& id) {
    const auto found =
        std::find_if(forms.begin(), forms.end(), [&](const Form& form) { return form.id == id; });
    return found == forms.end() ? nullptr : &*found;
}

bool usable(const Design& design, const std::string& tube) {
    const TubeType* type = find_tube(design, tube);
    return type && type->sound;
}

} // namespace

const DomeForm* find_dome(const BuildingForm& building, const std::string& id) {
    return find_form(building.domes, id);
}
const TunnelForm* find_tunnel(const BuildingForm& building, const std::string& id) {
    return find_form(building.tunnels, id);
}

BuildingForm make_building_form(const Design& design) {
    BuildingForm building;
    if (!design.course.sound)
        return building;
    for (const Dome& dome : design.domes) {
        const bool to_fit = dome.fit_springline || dome.fit_diameter || dome.profile.fit_rise;
        if (!dome.sound || to_fit || !usable(design, dome.tube))
            continue;
        const DomeForm form = make_dome_form(design, dome);
        if (form.last_ring > 0)
            building.domes.push_back(form);
    }
    for (const Tunnel& tunnel : design.tunnels)
        if (tunnel.sound && usable(design, tunnel.tube) && find_dome(building, tunnel.from) &&
            (tunnel.to.empty() || find_dome(building, tunnel.to)))
            building.tunnels.push_back(make_tunnel_form(design, tunnel));
    for (const Buttress& buttress : design.buttresses)
        if (const DomeForm* dome = buttress.sound ? find_dome(building, buttress.on) : nullptr) {
            const auto piers = make_buttress_forms(design, buttress, *dome);
            building.buttresses.insert(building.buttresses.end(), piers.begin(), piers.end());
        }
    for (const Opening& opening : design.openings) {
        OpeningForm form = make_opening_form(opening);
        if (!opening.sound)
            continue;
        double tube_width = 0;
        if (const DomeForm* dome = find_dome(building, opening.in)) {
            form.origin = dome->at;
            tube_width = dome->width;
        } else if (const TunnelForm* tunnel = find_tunnel(building, opening.in)) {
            place_in_tunnel(form, opening, *tunnel);
            tube_width = tunnel->width;
        } else {
            continue;
        }
        if (opening.head.laid == HeadLaid::fan)
            form.fan_depth = opening.head.depth.value_or(tube_width);
        building.openings.push_back(form);
    }
    for (const Join& join : design.joins)
        if (join.sound && find_dome(building, join.first) && find_dome(building, join.second))
            building.joins.push_back({join.id, join.first, join.second, join.keep});
    return building;
}

JoinEffect join_effect(const BuildingForm& building, const std::string& dome,
                       const std::string& other) {
    for (const JoinForm& join : building.joins) {
        if (!((join.first == dome && join.second == other) ||
              (join.first == other && join.second == dome)))
            continue;
        if (join.keep.empty())
            return JoinEffect::opens_to_room;
        return join.keep == other ? JoinEffect::stops_at_wall : JoinEffect::none;
    }
    return JoinEffect::none;
}

PlanExpression wall_expression(const BuildingForm& building, double z) {
    return Builder(building, z, false).wall();
}

PlanExpression course_expression(const BuildingForm& building, int n, double lift) {
    return building.domes.empty()
               ? PlanExpression{}
               : Builder(building, building.domes.front().course_middle(n) + lift, true).wall();
}

PlanExpression room_expression(const BuildingForm& building, double z) {
    return Builder(building, z, false).rooms();
}

PlanExpression footprint_expression(const BuildingForm& building, double z) {
    return Builder(building, z, false).footprint();
}

} // namespace coilwright
