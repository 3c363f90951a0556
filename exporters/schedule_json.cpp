#include "exporters/schedule_json.hpp"

#include "exporters/schedule_elements.hpp"
#include "geometry/checks/check_building.hpp"
#include "geometry/exact/exact_region.hpp"
#include "geometry/plan/building_rooms.hpp"

#include <cmath>

namespace coilwright {
namespace {

// Raised when a key is added; readers ignore keys that they do not know.
constexpr int minor_version = 5;

Json notes(const std::vector<SetNote>& all) {
    Json json = Json::array();
    for (const SetNote& note : all)
        json.push_back({{"element", note.element}, {"what", note.what}, {"text", note.text}});
    return json;
}

std::string side_word(Side side) {
    return side == Side::left ? "left" : "right";
}

// A run keeps its bearings in one piece: they start in [0, 360) and may pass 360. The bags of a cap
// lie anyhow and have none.
Json json_run(const Run& run, RingKind kind) {
    const bool wraps = json_number(run.start_bearing).get<double>() >= 360;
    const auto turned = [&](double degrees) { return json_number(degrees - (wraps ? 360 : 0)); };
    const auto of_tube = [&](double degrees) {
        return kind == RingKind::ring ? turned(degrees) : Json(nullptr);
    };
    const Json start = turned(run.start_bearing);
    Json tubes = Json::array();
    for (const LaidTube& tube : run.tubes)
        tubes.push_back({{"id", tube.id},
                         {"length", json_number(tube.length)},
                         {"cut_length", json_number(tube.cut_length)},
                         {"outer_length", json_number(tube.outer_length)},
                         {"start_bearing", of_tube(tube.start_bearing)},
                         {"end_bearing", of_tube(tube.end_bearing)},
                         {"lap_short", tube.lap_short}});
    return {{"id", run.id},
            {"start_bearing", start},
            {"end_bearing",
             run.closed ? json_number(start.get<double>() + 360) : turned(run.end_bearing)},
            {"length", json_number(run.length)},
            {"tubes", std::move(tubes)},
            {"closed", run.closed},
            {"start_by", run.start_by},
            {"end_by", run.end_by}};
}

Json json_cut(const Cut& cut) {
    return {{"by", cut.by},
            {"side", side_word(cut.side)},
            {"half_width", json_number(cut.half_width)},
            {"inside_bearing", json_bearing({cut.inside_bearing})},
            {"centre_bearing", json_bearing({cut.centre_bearing})},
            {"outside_bearing", json_bearing({cut.outside_bearing})},
            {"inside_arc_from_datum", json_number(cut.inside_arc_from_datum)},
            {"letter", cut.letter},
            {"short_arc", json_number(cut.short_arc)},
            {"short_way", side_word(cut.short_way)},
            {"chord", json_number(cut.chord)}};
}

/// A fan's bags lie on one another: they have no place along the ring.
Json json_piece(const Piece& piece) {
    const bool of_fan = piece.kind == PieceKind::fan_bag || piece.kind == PieceKind::keystone;
    return {{"id", piece.id},
            {"kind", word(piece.kind)},
            {"of", piece.of},
            {"other", piece.other},
            {"length", json_number(piece.length)},
            {"longest", json_number(piece.longest)},
            {"cut_length", json_number(piece.cut_length)},
            {"fill_volume", json_number(piece.fill_volume)},
            {"start_bearing", of_fan ? Json(nullptr) : json_bearing({piece.start_bearing})},
            {"end_bearing", of_fan ? Json(nullptr) : json_bearing({piece.end_bearing})}};
}

Json json_ring(const Ring& ring) {
    Json runs = Json::array(), cuts = Json::array(), pieces = Json::array();
    for (const Piece& piece : ring.pieces)
        pieces.push_back(json_piece(piece));
    for (const Run& run : ring.runs)
        runs.push_back(json_run(run, ring.kind));
    for (const Cut& cut : ring.cuts)
        cuts.push_back(json_cut(cut));
    return {{"dome", ring.dome},
            {"kind", ring.kind == RingKind::ring ? "ring" : "cap"},
            {"inside_radius", json_number(ring.inside_radius)},
            {"centre_radius", json_number(ring.centre_radius)},
            {"outside_radius", json_number(ring.outside_radius)},
            {"chain", json_number(ring.chain)},
            {"step_in", json_number(ring.step_in)},
            {"bearing_width", json_number(ring.bearing_width)},
            {"runs", std::move(runs)},
            {"cuts", std::move(cuts)},
            {"curb", ring.curb},
            {"pole_face", json_number(ring.pole_face)},
            {"chain_face", json_number(ring.chain_face)},
            {"radius_per_height", json_number(ring.radius_per_height)},
            {"wythe", ring.wythe},
            {"tube", ring.tube},
            {"width", json_number(ring.width)},
            {"fill_volume", json_number(ring.fill_volume)},
            {"pieces", std::move(pieces)}};
}

Json json_straight(const Straight& straight) {
    Json tubes = Json::array();
    for (const LaidTube& tube : straight.tubes)
        tubes.push_back({{"id", tube.id},
                         {"length", json_number(tube.length)},
                         {"cut_length", json_number(tube.cut_length)},
                         {"lap_short", tube.lap_short}});
    return {{"of", straight.of},
            {"part", word(straight.part)},
            {"length", json_number(straight.length)},
            {"start", json_point(straight.start)},
            {"end", json_point(straight.end)},
            {"tubes", std::move(tubes)},
            {"start_distance", json_number(straight.start_distance)},
            {"end_distance", json_number(straight.end_distance)},
            {"start_by", straight.start_by},
            {"end_by", straight.end_by},
            {"tube", straight.tube},
            {"width", json_number(straight.width)}};
}

Json json_edge(const BoundaryEdge& edge) {
    Json json{{"kind", "line"}, {"from", json_point(edge.from)}, {"to", json_point(edge.to)}};
    if (const std::optional<EdgeArc> arc = arc_of(edge)) {
        json["kind"] = "arc";
        json["centre"] = json_point(arc->centre);
        json["radius"] = json_number(arc->radius);
        json["clockwise"] = arc->clockwise;
    }
    return json;
}

/// The outline of the wall; null where it could not be decided.
Json json_region(const Region& region) {
    if (!region.decided)
        return nullptr;
    Json loops = Json::array();
    for (const BoundaryLoop& loop : region.loops) {
        Json edges = Json::array();
        for (const BoundaryEdge& edge : loop.edges)
            edges.push_back(json_edge(edge));
        loops.push_back({{"area", json_number(loop.area)}, {"edges", std::move(edges)}});
    }
    return loops;
}

// Openings and tunnels whose form may be struck from this course on, by their own rule.
Json struck_after(const Schedule& schedule, int course) {
    Json ids = Json::array();
    for (const OpeningPlan& opening : schedule.openings)
        if (opening.strike_after_course == course)
            ids.push_back(opening.form.id);
    for (const VaultForm& form : schedule.vault_forms)
        if (form.strike_after_course == course)
            ids.push_back(form.tunnel);
    return ids;
}

Json json_course(const Course& course, const Schedule& schedule) {
    Json rings = Json::array(), straights = Json::array();
    for (const Ring& ring : course.rings)
        rings.push_back(json_ring(ring));
    for (const Straight& straight : course.straights)
        straights.push_back(json_straight(straight));
    return {{"number", course.number},
            {"bottom", json_number(course.bottom)},
            {"top", json_number(course.top)},
            {"below_floor", course.below_floor},
            {"rings", std::move(rings)},
            {"straights", std::move(straights)},
            {"wall_area", json_number(course.wall_area)},
            {"fill_volume", json_number(course.fill_volume)},
            {"tube_length", json_number(course.tube_length)},
            {"cut_length", json_number(course.cut_length)},
            {"wire_length", json_number(course.wire_length)},
            {"middle", json_number(course.middle)},
            {"top_measured", course.top_measured},
            {"set", {{"before", notes(course.before)}, {"after", notes(course.after)}}},
            {"strike", struck_after(schedule, course.number)},
            {"region", json_region(course.wall)}};
}

/// The size and the outline of a part of the building on the ground; null where it could not be
/// decided.
Json json_ground_part(const Region& region) {
    if (!region.decided)
        return nullptr;
    return {{"area", json_number(region.area)},
            {"outer_length", json_number(outer_perimeter(region))},
            {"hole_length", json_number(hole_perimeter(region))},
            {"region", json_region(region)}};
}

Json json_ground(const GroundPlan& ground) {
    return {{"floor", json_ground_part(ground.floor)},
            {"footprint", json_ground_part(ground.footprint)},
            {"ground_course", json_ground_part(ground.ground_course)}};
}

Json json_order(const std::vector<TubeOrder>& order) {
    Json lines = Json::array();
    for (const TubeOrder& line : order)
        lines.push_back({{"element", line.element},
                         {"kind", word(line.kind)},
                         {"tube", line.tube},
                         {"tubes", line.tubes},
                         {"bags", line.bags},
                         {"rings", json_number(line.rings)},
                         {"straights", json_number(line.straights)},
                         {"cap_bags", json_number(line.cap_bags)},
                         {"fan_bags", json_number(line.fan_bags)},
                         {"niche_backs", json_number(line.niche_backs)},
                         {"wedges", json_number(line.wedges)},
                         {"linings", json_number(line.linings)},
                         {"cut_length", json_number(line.cut_length)}});
    return lines;
}

Json json_rooms(const BuildingPlan& plan) {
    Json json = Json::array();
    for (const BuildingRoom& room :
         building_rooms(plan.schedule.building, plan.design.finish.inside_plaster, exact_region))
        json.push_back({{"id", room.id},
                        {"domes", room.domes},
                        {"tunnel", room.tunnel.empty() ? Json(nullptr) : Json(room.tunnel)},
                        {"height", json_number(room.height)},
                        {"volume", json_number(room.volume)},
                        {"floor", json_ground_part(room.floor)}});
    return json;
}

Json json_totals(const Totals& totals) {
    return {{"tube_length", json_number(totals.tube_length)},
            {"cut_length", json_number(totals.cut_length)},
            {"fill_volume", json_number(totals.fill_volume)},
            {"wire_length", json_number(totals.wire_length)},
            {"wall_volume", json_number(totals.wall_volume)},
            {"courses", totals.courses},
            {"order", json_order(totals.order)}};
}

Json json_findings(const std::vector<Finding>& findings,
                   const std::vector<SoughtChanges>& changes = {}) {
    Json json = Json::array();
    for (const Finding& finding : findings)
        json.push_back(json_finding(finding, sought_for(changes, finding)));
    return json;
}

template <typename Room>
Json json_headrooms(const std::vector<Room>& rooms) {
    Json json = Json::array();
    for (const Room& room : rooms)
        json.push_back(json_headroom(room));
    return json;
}

Json json_limits(const Limits& limits) {
    Json json = Json::object();
    for (const auto& [name, limit] : limits)
        json[name] = {{"value", json_number(limit.value)},
                      {"unit", limit.unit},
                      {"source", limit.source},
                      {"edition", limit.edition},
                      {"section", limit.section},
                      {"standing", word(limit.standing)}};
    return json;
}

} // namespace

std::string schedule_json(const BuildingPlan& plan) {
    const Schedule& schedule = plan.schedule;
    Json courses = Json::array(), fitted = Json::array();
    for (const Course& course : schedule.courses)
        courses.push_back(json_course(course, schedule));
    for (const Fitted& fit : schedule.fitted)
        fitted.push_back(json_fitted(fit));
    return json_text({{"format", "coilwright-schedule"},
                      {"version", 1},
                      {"name", schedule.name},
                      {"course_height", json_number(schedule.course_height)},
                      {"courses", std::move(courses)},
                      {"totals", json_totals(schedule.totals)},
                      {"minor_version", minor_version},
                      {"display_unit", schedule.unit == DisplayUnit::feet ? "ft" : "m"},
                      {"elements", json_elements(plan)},
                      {"fitted", std::move(fitted)},
                      {"headroom", json_headrooms(plan.headroom)},
                      {"findings", json_findings(plan.findings)},
                      {"tunnel_headroom", json_headrooms(plan.tunnel_headroom)},
                      {"ground", json_ground(schedule.ground)},
                      {"rooms", json_rooms(plan)}});
}

std::string diagnostics_json(const std::vector<Diagnostic>& diagnostics,
                             const std::string& file_name) {
    Json all = Json::array();
    for (const Diagnostic& diagnostic : diagnostics)
        all.push_back({{"code", diagnostic.code},
                       {"line", diagnostic.place.line},
                       {"column", diagnostic.place.column},
                       {"subject", diagnostic.subject},
                       {"message", diagnostic.message},
                       {"allowed", diagnostic.allowed},
                       {"example", diagnostic.example},
                       {"hint", diagnostic.hint}});
    return json_text({{"format", "coilwright-diagnostics"},
                      {"version", 1},
                      {"file", file_name},
                      {"diagnostics", std::move(all)}});
}

std::string findings_json(const BuildingPlan& plan, const std::vector<Finding>& findings,
                          const std::vector<SoughtChanges>& changes) {
    return json_text({{"format", "coilwright-findings"},
                      {"version", 1},
                      {"name", plan.schedule.name},
                      {"caution", checks_caution()},
                      {"headroom", json_headrooms(plan.headroom)},
                      {"findings", json_findings(findings, changes)},
                      {"limits", json_limits(plan.design.limits)},
                      {"tunnel_headroom", json_headrooms(plan.tunnel_headroom)},
                      {"ground", json_ground(plan.schedule.ground)},
                      {"rooms", json_rooms(plan)}});
}

} // namespace coilwright
