#include "geometry/plan/form_stock.hpp"
#include "geometry/takeoff/ledger.hpp"

#include <algorithm>
#include <map>

namespace coilwright {

namespace {

/// A form of so many boards: its faces, what is sawn for it, and both to buy.
void take_boards(const Ledger& ledger, Phase phase, const std::string& element,
                 const std::string& name, double girth, double depth, double face, bool closed) {
    const FormStock stock = form_stock(ledger.schedule().unit);
    const FormBoards boards = form_boards(girth, depth, closed, stock);
    const int stiffeners = boards.stiffeners * (boards.faces - 1);
    ledger.take.pieces.push_back(
        {element, "batten of the form", depth, stock.batten_width, stock.batten, boards.battens});
    ledger.take.pieces.push_back({element, "stiffener of the form", boards.stiffener_length,
                                  stock.batten_width, stock.batten, stiffeners});
    ledger.add({"form-sheet",
                element,
                phase,
                name + ": faces",
                boards.faces * face,
                "The hole's area for each face. A form that serves twice is counted twice.",
                {{"faces", static_cast<double>(boards.faces), ""}, {"hole", face, "m2"}}});
    ledger.add({"form-timber",
                element,
                phase,
                name + ": battens",
                girth * depth,
                "Edge of the hole times the depth of the form, laid close; stiffeners between the "
                "faces are of offcuts.",
                {{"edge", girth, "m"},
                 {"depth", depth, "m"},
                 {"stiffeners", static_cast<double>(stiffeners), ""}}});
}

void take_form(const Ledger& ledger, const OpeningPlan& opening) {
    take_boards(ledger, stage_of_setting(ledger, opening.form.id, "form"), opening.form.id, "Form",
                hole_edge(opening.form), opening.least_form_depth,
                inset_area(opening.form, 0, false), opening.form.head_kind == HeadKind::circle);
}

void take_frame(const Ledger& ledger, const OpeningPlan& opening) {
    const OpeningForm& form = opening.form;
    const bool has_sill = form.use != OpeningUse::door && form.head_kind != HeadKind::circle;
    const double sill = has_sill ? 2 * form.half_width : 0;
    ledger.add(
        {"frame",
         form.id,
         Phase::openings,
         form.use == OpeningUse::door ? "Door frame" : "Frame",
         hole_edge(form) + sill,
         "Edge of the rough hole" + std::string(has_sill ? " and its sill." : ", without a sill."),
         {{"edge", hole_edge(form), "m"}, {"sill", sill, "m"}}});
    const double inset = opening.frame_inset + opening.frame_width;
    const std::vector<Figure> figures{{"hole", inset_area(form, 0, false), "m2"},
                                      {"taken on each side", inset, "m"}};
    if (form.use == OpeningUse::window)
        ledger.add({"glass", form.id, Phase::openings, "Glass", inset_area(form, inset, true),
                    "The hole less plaster and frame all round.", figures});
    if (form.use == OpeningUse::door)
        ledger.add({"door-leaf",
                    form.id,
                    Phase::openings,
                    "Door leaf",
                    1,
                    "One leaf; its area is the hole less plaster and frame.",
                    {{"area", inset_area(form, inset, false), "m2"}}});
}

/// The hole that the last course leaves: its light, the frame on it with four plates, and the hoop
/// under a curb.
void take_skylight(const Ledger& ledger, const DomeForm& dome) {
    const double radius = dome.last_ring_radius;
    const std::vector<Figure> hole{{"radius", radius, "m"}};
    ledger.add({"frame", dome.id, Phase::openings, "Frame of the skylight", 2 * pi * radius,
                "Edge of the hole that the last course leaves.", hole});
    ledger.add({"glass", dome.id, Phase::openings, "Skylight", pi * radius * radius,
                "The hole that the last course leaves.", hole});
    ledger.add({"anchor-plate",
                dome.id,
                Phase::walls,
                "Anchor plates of the skylight",
                4,
                "A quarter of the ring apart.",
                {}});
    if (dome.curb_courses > 0)
        ledger.add({"hoop",
                    dome.id,
                    Phase::walls,
                    "Hoop under the curb",
                    2 * pi * (dome.last_ring_radius + dome.width / 2),
                    "Along the middle of the last ring.",
                    {{"radius", dome.last_ring_radius + dome.width / 2, "m"}}});
}

void take_vault_form(const Ledger& ledger, const TunnelForm& tunnel) {
    double length = 0;
    for (const Course& course : ledger.schedule().courses)
        for (const Straight& straight : course.straights)
            if (straight.of == tunnel.id &&
                (straight.part == StraightPart::left || straight.part == StraightPart::right))
                length = std::max(length, straight.length);
    take_boards(ledger, stage_of_setting(ledger, tunnel.id, "vault form"), tunnel.id,
                "Form of the vault", 2 * length_between(tunnel.profile, 0, tunnel.profile.rise),
                length, area_between(tunnel.profile, 0, tunnel.profile.rise), false);
}

void take_lintel(const Ledger& ledger, const Lintel& lintel) {
    const double volume = lintel.length * lintel.width * lintel.depth;
    ledger.take.pieces.push_back(
        {lintel.opening, word(lintel.kind) + " lintel", lintel.length, lintel.width, lintel.depth});
    TakeOffLine line{"lintel-timber",
                     lintel.opening,
                     stage_of_setting(ledger, lintel.opening, "lintel"),
                     "Lintel",
                     volume,
                     "Length times width times depth.",
                     {{"length", lintel.length, "m"},
                      {"width", lintel.width, "m"},
                      {"depth", lintel.depth, "m"}}};
    if (lintel.kind == LintelKind::timber)
        ledger.add(std::move(line));
    else
        take_mix(ledger, *find_mix(ledger.works, "concrete"), volume, line);
}

void take_anchor_plates(const Ledger& ledger, const OpeningPlan& opening) {
    std::map<Phase, int> joints;
    for (const Course& course : ledger.schedule().courses)
        for (const SetNote& note : course.after)
            if (note.element == opening.form.id && note.what == "anchor plates")
                ++joints[is_base_course(ledger.plan.design, course) ? Phase::base : Phase::walls];
    for (const auto& [phase, count] : joints)
        ledger.add({"anchor-plate",
                    opening.form.id,
                    phase,
                    "Anchor plates",
                    2.0 * count,
                    "One on each jamb on the joints that the crew's sheets name.",
                    {{"joints", static_cast<double>(count), ""}}});
}

} // namespace

Phase stage_of_setting(const Ledger& ledger, const std::string& element, const std::string& what) {
    const auto sets = [&](const SetNote& note) {
        return note.element == element && (what.empty() || note.what == what);
    };
    for (const Course& course : ledger.schedule().courses)
        if (std::any_of(course.before.begin(), course.before.end(), sets) ||
            std::any_of(course.after.begin(), course.after.end(), sets))
            return is_base_course(ledger.plan.design, course) ? Phase::base : Phase::walls;
    return Phase::walls;
}

void take_openings(const Ledger& ledger) {
    const Schedule& schedule = ledger.schedule();
    for (const OpeningPlan& opening : schedule.openings) {
        take_form(ledger, opening);
        if (opening.form.use != OpeningUse::niche)
            take_frame(ledger, opening);
        take_anchor_plates(ledger, opening);
    }
    for (const DomeForm& dome : schedule.building.domes)
        if (dome.cap_courses == 0)
            take_skylight(ledger, dome);
    for (const TunnelForm& tunnel : schedule.building.tunnels)
        take_vault_form(ledger, tunnel);
    for (const Lintel& lintel : schedule.lintels)
        take_lintel(ledger, lintel);
    const Finish& finish = ledger.plan.design.finish;
    for (const SleevePlan& sleeve : schedule.sleeves) {
        const WallBand band = wall_of(sleeve.form, schedule.building, sleeve.mark());
        const double wall = band.outside - band.inside;
        const double stands_out = 0.1;
        ledger.add({"sleeve-pipe",
                    sleeve.form.id,
                    stage_of_setting(ledger, sleeve.form.id),
                    "Sleeve",
                    wall + finish.inside_plaster + finish.outside_plaster + 2 * stands_out,
                    "Thickness of wall and plaster, and 100 mm at both ends.",
                    {{"wall", wall, "m"}, {"diameter", sleeve.form.diameter, "m"}}});
    }
}

} // namespace coilwright
