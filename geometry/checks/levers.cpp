#include "geometry/checks/levers.hpp"

#include <map>

namespace coilwright {

namespace {

/// "rise+ tube+ springline": + is tried upward alone, - downward alone, else both ways.
std::vector<Lever> words(std::string_view text) {
    std::vector<Lever> all;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        std::string_view word = text.substr(at, end - at);
        at = end + 1;
        Lever lever;
        if (word.back() == '+' || word.back() == '-') {
            lever.up = word.back() == '+';
            lever.down = !lever.up;
            word.remove_suffix(1);
        }
        lever.word = word;
        all.push_back(std::move(lever));
    }
    return all;
}

/// What the plan tells only where there is something to tell.
Levers advice(std::string_view text) {
    return {Judge::plan, true, false, words(text)};
}
Levers of(Judge judge, std::string_view text) {
    return {judge, false, false, words(text)};
}
Levers worst_of(Judge judge, std::string_view text) {
    return {judge, false, true, words(text)};
}

const std::map<std::string_view, Levers>& table() {
    // The thrust of a dome: its shape, its wall, the rings that openings break.
    constexpr std::string_view wall =
        "rise springline diameter- skylight tube+ lower_tube+ own.width- own.height- own.sill";
    static const std::map<std::string_view, Levers> all{
        {"headroom", of(Judge::plan, "springline+ rise+ diameter+")},
        {"tamped-width-off-practice", advice("tube.tamped")},
        {"tube-narrow-for-diameter", advice("tube+ diameter-")},
        {"step-in-over-quarter", advice("rise+ tube+ skylight+ diameter-")},
        {"step-in-over-half", advice("rise+ tube+ skylight+ diameter-")},
        {"course-without-bearing", advice("rise+ tube+ skylight+ diameter-")},
        {"lintel-above-springline", advice("springline+ opening.height- opening.sill-")},
        {"skylight-wider-than-asked", advice("rise skylight springline")},
        {"cap-hole", advice("rise+ least_radius- diameter-")},
        {"joint-lap-short", advice("longest_tube")},
        {"sill-misses-joint", advice("opening.sill")},
        {"head-misses-joint", advice("opening.height")},
        {"frame-deeper-than-band",
         advice("springline+ opening.frame- opening.height- opening.sill- opening.width-")},
        {"buttress-low", advice("buttress.height+ springline-")},
        {"tunnel-wide", advice("tunnel.width-")},
        {"fan-bags-thin", advice("opening.fan- opening.width+")},
        {"head-takes-rain", advice("springline+ opening.height- opening.sill-")},
        {"room-area", of(Judge::rooms, "diameter+")},
        {"room-light", of(Judge::rooms, "opening.width+ opening.height+ skylight+")},
        {"room-air", of(Judge::rooms, "opening.width+ opening.height+")},
        {"egress-door", of(Judge::ways_out, "opening.width+ opening.height+ opening.sill- "
                                            "tunnel.width+ tunnel.springline+ tunnel.rise+")},
        {"escape-opening", of(Judge::ways_out, "opening.width+ opening.height+ opening.sill-")},
        {"door-step", worst_of(Judge::passages, "opening.sill- ground_level+")},
        {"sill-near-ground", worst_of(Judge::passages, "opening.sill+ ground_level-")},
        {"tunnel-headroom", of(Judge::passages, "tunnel.springline+ tunnel.rise+ tunnel.width+")},
        {"permit-area", of(Judge::permit, "diameter-")},
        {"dome-rise", of(Judge::shape, "rise+ diameter-")},
        {"coil-radius", of(Judge::shape, "least_radius+ rise skylight+")},
        {"foundation-courses", worst_of(Judge::ground, "foundation+")},
        {"footing-depth", worst_of(Judge::ground, "foundation+ ground_level+")},
        {"frost-depth", worst_of(Judge::ground, "gravel+ foundation+ ground_level+")},
        {"opening-sum", of(Judge::seismic, "own.width- tunnel.width- diameter+")},
        {"opening-pier", of(Judge::seismic, "own.bearing own.width- tunnel.width- diameter+")},
        {"opening-width", of(Judge::seismic, "own.width- tunnel.width-")},
        {"door-spacing", of(Judge::wall_openings, "own.bearing diameter+ own.width-")},
        {"head-cover", of(Judge::wall_openings, "own.sill own.height- own.bearing springline")},
        {"lintel-rest", of(Judge::wall_openings, "opening.lintel_bearing+")},
        {"lintel-width", of(Judge::wall_openings, "opening.lintel_width+")},
        {"buttress-at-opening", of(Judge::doorways, "buttress.height+ tunnel.springline+ "
                                                    "tunnel.rise+ springline- own.bearing")},
        {"wire-strands", of(Judge::work, "strands+")},
        {"geometric-safety", of(Judge::dome_safety, wall)},
        {"joint-sliding", of(Judge::dome_friction, wall)},
        {"fill-crushing", of(Judge::dome_crushing, wall)},
        {"free-corbel", of(Judge::dome_corbel, "rise+ tube+ diameter-")},
        {"stem-sliding", of(Judge::dome_stem, "rise+ springline- tube+ foundation+ diameter-")},
        {"stem-overturning",
         of(Judge::dome_stem, "rise+ springline- tube+ lower_tube+ foundation- diameter-")},
        {"ground-pressure",
         of(Judge::dome_ground,
            "gravel+ tube+ lower_tube+ springline- rise- diameter- foundation-")},
        {"pier-pressure", of(Judge::dome_piers, "tube+ own.width- own.bearing springline- rise-")},
        {"earthquake-slice",
         of(Judge::dome_sideways, "tube+ lower_tube+ rise springline- diameter")},
        {"wind-slice", of(Judge::dome_sideways, "tube+ lower_tube+ rise springline- diameter")},
        {"open-stages",
         of(Judge::dome_stages, "rise tube+ springline skylight diameter- own.width-")},
        {"buttress-sliding", of(Judge::piers, "buttress.projection+ buttress.width+ buttress.top+ "
                                              "buttress.height+ rise+ foundation+ springline-")},
        {"buttress-overturning",
         of(Judge::piers, "buttress.projection+ buttress.width+ buttress.top+ buttress.height "
                          "rise+ foundation- springline-")},
        {"tunnel-safety",
         of(Judge::tunnel,
            "tunnel.rise+ tunnel.springline- tunnel.width- tunnel.tube+ foundation-")},
        {"tunnel-corbel", of(Judge::tunnel, "tunnel.rise+ tunnel.width- tunnel.tube+")},
        {"tunnel-sliding",
         of(Judge::tunnel, "tunnel.rise+ tunnel.width- tunnel.tube+ tunnel.springline")},
        {"tunnel-crushing", of(Judge::tunnel, "tunnel.tube+ tunnel.springline- tunnel.width-")},
        {"tunnel-ground", of(Judge::tunnel, "gravel+ tunnel.tube+ tunnel.springline- foundation-")},
        {"tunnel-earthquake",
         of(Judge::tunnel, "tunnel.tube+ tunnel.springline- tunnel.rise tunnel.width")},
        {"tunnel-wind",
         of(Judge::tunnel, "tunnel.tube+ tunnel.springline- tunnel.rise tunnel.width")},
        {"end-wall-earthquake", of(Judge::tunnel, "tunnel.tube+ tunnel.springline- tunnel.rise-")},
        {"end-wall-wind", of(Judge::tunnel, "tunnel.tube+ tunnel.springline- tunnel.rise-")},
        {"tunnel-abutment",
         of(Judge::tunnel,
            "tunnel.rise+ tunnel.width- tunnel.tube+ tunnel.springline foundation+")},
        {"lintel-bending", of(Judge::heads, "opening.lintel_depth+ opening.width-")},
        {"lintel-bearing", of(Judge::heads, "opening.lintel_bearing+ opening.width-")},
        {"fan-head", of(Judge::heads, "opening.fan+ opening.width-")},
    };
    return all;
}

} // namespace

const Levers* levers_of(std::string_view code) {
    const auto found = table().find(code);
    return found == table().end() ? nullptr : &found->second;
}

} // namespace coilwright
