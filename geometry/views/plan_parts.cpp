#include "geometry/views/plan_parts.hpp"

#include "geometry/drawing/figures.hpp"
#include "geometry/plan/building_rooms.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

std::map<std::string, std::string> opening_tags(const Schedule& schedule) {
    std::map<std::string, std::string> tags;
    std::map<char, int> counts;
    for (const OpeningPlan& opening : schedule.openings) {
        char letter = 'W';
        switch (opening.form.use) {
        case OpeningUse::door:
            letter = 'D';
            break;
        case OpeningUse::window:
            letter = 'W';
            break;
        case OpeningUse::vent:
            letter = 'V';
            break;
        case OpeningUse::niche:
            letter = 'N';
            break;
        }
        tags[opening.form.id] = letter + std::to_string(++counts[letter]);
    }
    return tags;
}

std::map<std::string, std::string> skylight_tags(const Schedule& schedule) {
    std::map<std::string, std::string> tags;
    for (const DomeForm& dome : schedule.building.domes)
        if (dome.cap_courses == 0 && dome.last_ring_radius > 0)
            tags[dome.id] = "S" + std::to_string(tags.size() + 1);
    return tags;
}

HoleFaces hole_faces(const BuildingForm& building, const OpeningForm& opening, double half,
                     double z) {
    HoleFaces faces;
    faces.half = half;
    const Vec2 right(opening.axis.y(), -opening.axis.x());
    const auto at = [&](double ahead, double aside) {
        return Vec2(opening.origin + opening.axis * ahead + right * aside);
    };
    double inner_jamb = 0, outer_jamb = 0;
    if (const TunnelForm* tunnel =
            opening.in_tunnel ? find_tunnel(building, opening.in) : nullptr) {
        const bool end = opening.side == TunnelSide::end;
        faces.inner = end ? tunnel->reach - tunnel->width : inner_half_width(*tunnel, z);
        faces.outer = end ? tunnel->reach : outer_half_width(*tunnel, z);
        inner_jamb = faces.inner;
        outer_jamb = faces.outer;
    } else if (const DomeForm* dome = find_dome(building, opening.in)) {
        faces.inner = inside_radius(*dome, z);
        faces.outer = outside_radius(*dome, z);
        const auto jamb = [&](double radius) {
            return std::sqrt(std::max(0.0, radius * radius - half * half));
        };
        inner_jamb = jamb(faces.inner);
        outer_jamb = jamb(faces.outer);
        if (const ButtressForm* reveal = find_reveal(building, opening.id, z))
            faces.outer = outer_jamb = outer_face(*reveal, z);
    }
    if (opening.niche_depth > 0)
        faces.outer = outer_jamb = faces.inner + opening.niche_depth;
    faces.inner_left = at(inner_jamb, -half);
    faces.inner_right = at(inner_jamb, half);
    faces.outer_left = at(outer_jamb, -half);
    faces.outer_right = at(outer_jamb, half);
    return faces;
}

Region decided_region(const PlanExpression& expression) {
    return region_of(expression, {});
}

void add_chain(View& view, std::vector<double> places, Vec2 along, Vec2 at, int row,
               DisplayUnit unit, const std::string& of) {
    std::sort(places.begin(), places.end());
    places.erase(std::unique(places.begin(), places.end(),
                             [](double a, double b) { return std::abs(a - b) < 0.001; }),
                 places.end());
    for (std::size_t i = 0; i + 1 < places.size(); ++i) {
        ViewDimension dimension;
        dimension.from = at + along * (places[i] - along.dot(at));
        dimension.to = at + along * (places[i + 1] - along.dot(at));
        dimension.along = along;
        dimension.row = row;
        dimension.text = length_text(places[i + 1] - places[i], unit);
        dimension.of = of;
        view.dimensions.push_back(std::move(dimension));
    }
}

void add_pole_chains(View& view, const BuildingForm& building, DisplayUnit unit) {
    const ViewExtent extent = extent_of(view);
    std::vector<double> east{extent.low.x(), extent.high.x()};
    std::vector<double> north{extent.low.y(), extent.high.y()};
    for (const DomeForm& dome : building.domes) {
        east.push_back(dome.at.x());
        north.push_back(dome.at.y());
    }
    // Read from below and from the left: along runs west under the plan, north beside it.
    std::vector<double> west;
    for (const double place : east)
        west.push_back(-place);
    add_chain(view, west, {-1, 0}, extent.low, 0, unit, "poles");
    add_chain(view, north, {0, 1}, extent.low, 0, unit, "poles");
    add_chain(view, {-extent.low.x(), -extent.high.x()}, {-1, 0}, extent.low, 1, unit, "overall");
    add_chain(view, {extent.low.y(), extent.high.y()}, {0, 1}, extent.low, 1, unit, "overall");
}

void add_sleeves(View& view, const BuildingPlan& plan, bool below_floor) {
    for (const SleevePlan& sleeve : plan.schedule.sleeves) {
        const double z = sleeve.mark();
        if ((z < -height_tie) != below_floor)
            continue;
        const SleeveForm& form = sleeve.form;
        const WallBand wall = wall_of(form, plan.schedule.building, z);
        const Vec2 out = along(form.bearing), aside = right_of(form.bearing) * (form.diameter / 2);
        for (const double side : {1.0, -1.0})
            add_segment(view, LineRole::hidden, form.origin + out * wall.inside + aside * side,
                        form.origin + out * wall.outside + aside * side);
        view.notes.push_back({form.id + " Ø " + length_text(form.diameter, plan.schedule.unit) +
                                  ", " + length_text(std::abs(z), plan.schedule.unit) +
                                  (below_floor ? " below" : " up"),
                              form.origin + out * wall.outside, out, 4, false, true, !below_floor});
    }
}

void add_dome_names(View& view, const BuildingPlan& plan, bool floors) {
    const std::vector<BuildingRoom> rooms =
        building_rooms(plan.schedule.building, plan.design.finish.inside_plaster);
    for (const DomeForm& dome : plan.schedule.building.domes) {
        // Of several in open plan the largest names the floor of all.
        const auto room = std::find_if(rooms.begin(), rooms.end(), [&](const BuildingRoom& one) {
            return one.tunnel.empty() && one.id == dome.id && one.floor.decided;
        });
        const double within = dome.profile.half_span;
        view.notes.push_back({dome.id, dome.at, {0, 1}, 3.2, true, false, false, within});
        view.notes.push_back(
            {"Ø " + length_text(2 * dome.profile.half_span, plan.schedule.unit) + " inside",
             dome.at,
             {0, -1},
             5,
             false,
             false,
             true,
             within});
        if (floors && room != rooms.end())
            view.notes.push_back({area_text(room->floor.area, plan.schedule.unit) +
                                      (room->domes.size() > 1 ? " clear, open plan" : " clear"),
                                  dome.at,
                                  {0, -1},
                                  9.5,
                                  false,
                                  false,
                                  true,
                                  within});
    }
}

} // namespace coilwright
