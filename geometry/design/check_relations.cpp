#include "geometry/design/contradictions.hpp"
#include "geometry/design/read_tables.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

// A tube's width against the height of the courses.
void check_tubes(const Design& design, ReadContext& context) {
    const double course = design.course.height;
    if (course <= 0)
        return;
    for (const TubeType& tube : design.tubes) {
        const std::string path = "tube." + tube.id;
        if (tube.lay_flat <= 0 || context.is_faulty(path + ".tamped_width"))
            continue;
        if (tube.tamped_width) {
            if (*tube.tamped_width <= course || *tube.tamped_width >= tube.lay_flat)
                context.add(faults::impossible_tamped_width(context.at(path + ".tamped_width"),
                                                            *tube.tamped_width, course,
                                                            tube.lay_flat, context.unit));
        } else if (tube.lay_flat <= course * pi / 2) {
            // The perimeter 2 L of a stadium as high as it is wide is pi t.
            context.add(faults::tube_too_narrow(context.at(path + ".lay_flat"), tube.lay_flat,
                                                course, context.unit));
        }
    }
}

// True too where it cannot be told: what names nothing is reported with the references.
bool stands_on(const Design& design, const std::string& id, const std::string& dome) {
    if (const Opening* opening = find_opening(design, id))
        return opening->in == dome ||
               !(find_dome(design, opening->in) || find_tunnel(design, opening->in));
    if (const Tunnel* tunnel = find_tunnel(design, id))
        return tunnel->from == dome || tunnel->to == dome || !find_dome(design, tunnel->from) ||
               (!tunnel->to.empty() && !find_dome(design, tunnel->to));
    return true;
}

// A datum, or what a buttress flanks, that belongs to another dome.
void check_same_dome(const Design& design, ReadContext& context, const std::string& path,
                     const std::string& id, const std::string& dome) {
    if (id.empty() || stands_on(design, id, dome))
        return;
    std::vector<std::string> known;
    for (const Opening& opening : design.openings)
        if (opening.in == dome)
            known.push_back(opening.id);
    for (const Tunnel& tunnel : design.tunnels)
        if (tunnel.from == dome || tunnel.to == dome)
            known.push_back(tunnel.id);
    const std::string works = known.empty() ? id : known.front();
    context.add(faults::wrong_reference(
        context.at(path), "\"" + id + "\" stands in another dome than \"" + dome + "\"",
        known.empty() ? "an opening or tunnel of that dome" : faults::listed(known),
        '"' + works + '"'));
}

std::string name_of_other_dome(const Design& design, const std::string& id) {
    for (const Dome& dome : design.domes)
        if (dome.id != id && is_id(dome.id))
            return '"' + dome.id + '"';
    return "\"south\"";
}

// A tunnel from dome to dome lies on the line between their centres.
void check_tunnel_lines(Design& design, ReadContext& context) {
    constexpr double same_place = 1e-3; // m
    for (Tunnel& tunnel : design.tunnels) {
        const std::string path = "tunnel." + tunnel.id;
        const Dome* from = find_dome(design, tunnel.from);
        const Dome* to = find_dome(design, tunnel.to);
        if (tunnel.to.empty() || !from || !to)
            continue;
        if (from == to) {
            context.add(faults::same_dome_twice(context.at(path + ".to"), tunnel.to,
                                                name_of_other_dome(design, tunnel.to)));
            continue;
        }
        if (context.is_faulty("dome." + from->id + ".at") ||
            context.is_faulty("dome." + to->id + ".at"))
            continue;
        const Vec2 way = to->at - from->at;
        if (way.norm() < same_place) {
            context.add(faults::domes_in_one_place(context.at(path + ".to")));
            continue;
        }
        const Bearing line = to_bearing({std::atan2(way.y(), way.x())});
        const double off = clockwise_degrees(line, tunnel.bearing);
        const bool is_written = context.has_place(path + ".bearing");
        if (is_written && !context.is_faulty(path + ".bearing") && std::min(off, 360 - off) > 1)
            context.add(faults::tunnel_off_its_line(context.at(path + ".bearing"),
                                                    tunnel.bearing.degrees, line.degrees));
        else
            tunnel.bearing = line;
    }
}

void check_joins(const Design& design, ReadContext& context) {
    const auto pair = [](const Join& join) { return std::minmax(join.first, join.second); };
    for (std::size_t i = 0; i < design.joins.size(); ++i) {
        const Join& join = design.joins[i];
        for (std::size_t j = 0; j < i && !join.first.empty(); ++j) {
            const Join& other = design.joins[j];
            if (pair(join) != pair(other))
                continue;
            const Join& later = other.place.line < join.place.line ? join : other;
            const Join& earlier = &later == &join ? other : join;
            context.add(faults::repeated_join(context.at("join." + later.id), "join." + earlier.id,
                                              earlier.place));
            break;
        }
    }
}

// Piers of one table are told apart by a number after its name.
void check_pier_names(const Design& design, ReadContext& context) {
    for (const Buttress& buttress : design.buttresses) {
        const std::size_t piers = buttress.beside.empty() ? buttress.bearings.size() : 2;
        for (std::size_t i = 1; piers > 1 && i <= piers; ++i)
            for (const DeclaredId& declared : context.ids)
                if (declared.id == buttress.id + "-" + std::to_string(i) &&
                    declared.section != "fill" && declared.section != "join")
                    context.add(faults::pier_name_taken(context.at("buttress." + buttress.id),
                                                        declared.id, declared.at.place));
    }
    for (const Opening& opening : design.openings)
        for (const DeclaredId& declared : context.ids)
            if (opening.reveal_plumb && declared.id == opening.id + "-reveal" &&
                declared.section != "fill" && declared.section != "join")
                context.add(faults::pier_name_taken(context.at("opening." + opening.id),
                                                    declared.id, declared.at.place));
}

void check_plaster(const Design& design, ReadContext& context) {
    const double plaster = design.finish.inside_plaster;
    for (const Dome& dome : design.domes)
        if (dome.inside_diameter > 0 && dome.inside_diameter <= 2 * plaster)
            context.add(
                faults::plaster_fills_dome(context.at("dome." + dome.id + ".inside_diameter"),
                                           dome.inside_diameter, plaster, context.unit));
}

template <typename Element>
void mark_by_faults(const char* section, std::vector<Element>& elements,
                    const ReadContext& context) {
    for (Element& element : elements)
        element.sound = !context.is_faulty(element_path(section, element.id));
}

template <typename Element>
bool is_sound(const Element* element) {
    return element && element->sound;
}

// The dome or tunnel that an opening or a sleeve is in.
bool host_is_sound(const Design& design, const std::string& id) {
    return is_sound(find_dome(design, id)) || is_sound(find_tunnel(design, id));
}

} // namespace

void check_relations(Design& design, ReadContext& context) {
    check_tubes(design, context);
    for (const Dome& dome : design.domes)
        check_same_dome(design, context, "dome." + dome.id + ".datum", dome.datum, dome.id);
    for (const Buttress& buttress : design.buttresses)
        check_same_dome(design, context, "buttress." + buttress.id + ".beside", buttress.beside,
                        buttress.on);
    check_tunnel_lines(design, context);
    check_hosts(design, context);
    check_pier_names(design, context);
    check_joins(design, context);
    check_plaster(design, context);
}

void mark_unsound(Design& design, const ReadContext& context) {
    // A misspelt [course] is a fault of another name, and leaves no height. Where no course lies
    // hangs on the table's other keys.
    design.course.sound = design.course.height > 0 && !context.is_faulty("course.height") &&
                          !context.is_faulty("course.foundation") &&
                          !context.is_faulty("course.least_inside_radius");
    mark_by_faults("tube", design.tubes, context);
    mark_by_faults("fill", design.fills, context);
    mark_by_faults("dome", design.domes, context);
    mark_by_faults("opening", design.openings, context);
    mark_by_faults("tunnel", design.tunnels, context);
    mark_by_faults("buttress", design.buttresses, context);
    mark_by_faults("join", design.joins, context);
    mark_by_faults("sleeve", design.sleeves, context);
    mark_by_faults("context", design.context, context);
    for (Dome& dome : design.domes)
        dome.itself_sound = dome.sound && design.course.sound;
    for (Opening& opening : design.openings)
        opening.itself_sound = opening.sound;
    // What stands on an unsound element cannot be judged either.
    for (Dome& dome : design.domes)
        dome.sound = dome.sound && design.course.sound && is_sound(find_tube(design, dome.tube)) &&
                     (dome.lower_tube.empty() || is_sound(find_tube(design, dome.lower_tube)));
    for (Tunnel& tunnel : design.tunnels)
        tunnel.sound = tunnel.sound && is_sound(find_tube(design, tunnel.tube)) &&
                       is_sound(find_dome(design, tunnel.from)) &&
                       (tunnel.to.empty() || is_sound(find_dome(design, tunnel.to)));
    for (Opening& opening : design.openings)
        opening.sound = opening.sound && host_is_sound(design, opening.in);
    for (Buttress& buttress : design.buttresses)
        buttress.sound = buttress.sound && is_sound(find_dome(design, buttress.on));
    for (Join& join : design.joins)
        join.sound = join.sound && is_sound(find_dome(design, join.first)) &&
                     is_sound(find_dome(design, join.second));
    for (Sleeve& sleeve : design.sleeves)
        sleeve.sound = sleeve.sound && host_is_sound(design, sleeve.in);
}

} // namespace coilwright
