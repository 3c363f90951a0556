#include "geometry/drawing/crew_pages.hpp"
#include "geometry/drawing/figures.hpp"
#include "geometry/drawing/words.hpp"
#include "geometry/plan/clear_outline.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace coilwright {
namespace {

std::string head_text(const Drafting& drafting, const OpeningForm& form) {
    if (form.head_kind == HeadKind::square || form.head_kind == HeadKind::circle)
        return word(form.head_kind);
    return word(form.head_kind) + ", rise " + drafting.length(form.top - form.springing);
}

Table form_table(const Drafting& drafting) {
    Table table;
    table.columns = {{{"Form for"}, Align::left, true},
                     {{"Width"}, Align::right, true},
                     {{"Height"}, Align::right, true},
                     {{"Head"}, Align::left, false},
                     {{"Foot above", "the floor"}, Align::right, false},
                     {{"Depth,", "at least"}, Align::right, true}};
    for (const OpeningPlan& opening : drafting.schedule().openings) {
        const OpeningForm& form = opening.form;
        table.rows.push_back({form.id, drafting.length(2 * form.half_width),
                              drafting.length(form.top - form.sill), head_text(drafting, form),
                              drafting.length(form.sill),
                              drafting.length(opening.least_form_depth)});
    }
    return table;
}

/// How high over the clear sill an opening is as wide as its clear width. Under a head that leans
/// in where it springs, as a segment does, that ends below the head: plaster and frame bring it
/// down.
std::string full_width_text(const Drafting& drafting, const OpeningPlan& opening) {
    if (opening.form.head_kind == HeadKind::circle)
        return "its middle";
    const ClearOutline outline = clear_outline(opening);
    const double high = top_over_width(outline, opening.clear_width) - outline.bottom;
    return high > 0 ? drafting.length(high) : "nowhere";
}

Table frame_table(const Drafting& drafting) {
    Table table;
    table.columns = {{{"Opening"}, Align::left, true},
                     {{"Use"}, Align::left, false},
                     {{"Bearing"}, Align::right, false},
                     {{"Clear width × height", "in the middle"}, Align::right, false},
                     {{"Full width", "up to"}, Align::right, false},
                     {{"Cuts", "courses"}, Align::right, false},
                     {{"Frame between,", "from the pole"}, Align::right, false},
                     {{"Form out", "after"}, Align::right, true}};
    for (const OpeningPlan& opening : drafting.schedule().openings) {
        const OpeningForm& form = opening.form;
        const bool band = opening.frame_band_end > opening.frame_band_start + 1e-6;
        table.rows.push_back(
            {form.id, word(form.use), degrees_text(turned_into_circle(form.bearing.degrees)),
             drafting.length(opening.clear_width) + " × " + drafting.length(opening.clear_height),
             full_width_text(drafting, opening),
             std::to_string(opening.first_course) + "–" + std::to_string(opening.last_course),
             band ? drafting.length(opening.frame_band_start) + " – " +
                        drafting.length(opening.frame_band_end)
             : form.use == OpeningUse::niche ? "–"
                                             : "nowhere plumb",
             "course " + std::to_string(opening.strike_after_course)});
    }
    return table;
}

void add_totals(Flow& flow, const Drafting& drafting) {
    const Totals& totals = drafting.schedule().totals;
    double fill = totals.fill_volume;
    for (const Course& course : drafting.schedule().courses)
        for (const CoursePart& part : parts_of(drafting.schedule(), course))
            fill += pieces_fill(part);
    Table table;
    table.columns = {{{"For the whole building"}, Align::left, false},
                     {{"In all"}, Align::right, true}};
    table.rows = {
        {"Tube along the centre of the wall", supply_text(totals.tube_length, drafting.unit())},
        {"Fill, tamped", volume_text(fill, drafting.unit())},
        {drafting.unit() == DisplayUnit::feet ? "Fill in 5 gal buckets"
                                              : "Fill in litres (10 L buckets)",
         fill_text(fill, drafting.unit())},
        {"Barbed wire", supply_text(totals.wire_length, drafting.unit())}};
    const GroundPlan& ground = drafting.schedule().ground;
    for (const auto& [what, region] : {std::pair{"Floor between the bags", &ground.floor},
                                       {"Footprint over the outside faces", &ground.footprint},
                                       {"First course, for the trench", &ground.ground_course}})
        if (region->decided)
            table.rows.push_back({what, area_text(region->area, drafting.unit())});
    flow.table("To have ready", table);
}

/// Rolls that the cut lengths fill at least; cutting leaves ends over.
std::string rolls_text(const Drafting& drafting, const std::string& tube, double cut) {
    for (const TubeType& type : drafting.plan.design.tubes)
        if (type.id == tube && type.roll > 0)
            return std::to_string(static_cast<int>(std::ceil(cut / type.roll - 1e-9))) + " × " +
                   supply_text(type.roll, drafting.unit());
    return "–";
}

/// What to order: by dome, tunnel and buttress, and by tube type.
void add_order(Flow& flow, const Drafting& drafting) {
    const std::vector<TubeOrder>& order = drafting.schedule().totals.order;
    const bool lined = std::any_of(order.begin(), order.end(),
                                   [](const TubeOrder& line) { return line.linings > 0; });
    Table table;
    table.columns = {{{"Tube for"}, Align::left, true},
                     {{"Tube", "type"}, Align::left, false},
                     {{"Tubes"}, Align::right, false},
                     {{"Bags"}, Align::right, false},
                     {{"Rings,", "walls, piers"}, Align::right, false},
                     {{"Cap", "bags"}, Align::right, false},
                     {{"Fan", "bags"}, Align::right, false},
                     {{"Backs,", "wedges"}, Align::right, false}};
    if (lined)
        table.columns.push_back({{"Second", "tube"}, Align::right, false});
    table.columns.push_back({{"In all"}, Align::right, true});
    const auto length = [&](double metres) {
        return metres > 0 ? supply_text(metres, drafting.unit()) : "–";
    };
    const auto add = [&](const TubeOrder& line, const std::string& whose) {
        table.rows.push_back({whose, line.tube, std::to_string(line.tubes),
                              std::to_string(line.bags), length(line.rings + line.straights),
                              length(line.cap_bags), length(line.fan_bags),
                              length(line.niche_backs + line.wedges)});
        if (lined)
            table.rows.back().push_back(length(line.linings));
        table.rows.back().push_back(length(line.cut_length));
    };
    std::map<std::string, TubeOrder> by_type;
    for (const TubeOrder& line : order) {
        add(line, word(line.kind) + " '" + line.element + "'");
        TubeOrder& sum = by_type[line.tube];
        sum.tube = line.tube;
        sum.tubes += line.tubes;
        sum.bags += line.bags;
        sum.rings += line.rings + line.straights;
        sum.cap_bags += line.cap_bags;
        sum.fan_bags += line.fan_bags;
        sum.niche_backs += line.niche_backs + line.wedges;
        sum.linings += line.linings;
        sum.cut_length += line.cut_length;
    }
    std::string rolls;
    for (const auto& [tube, sum] : by_type) {
        if (order.size() > 1)
            add(sum, "IN ALL");
        rolls += " '" + tube + "': at least " + rolls_text(drafting, tube, sum.cut_length) + ".";
    }
    flow.table("Tube to order", table, sizes::body, sizes::least);
    flow.paragraph(
        "Cut lengths, both ends included, without waste." +
            std::string(lined ? " Courses of gravel lie in two tubes, one in the other." : "") +
            " Rolls," + rolls,
        sizes::small);
}

/// "13–16": the courses before which bags of a fan are set.
std::string fan_courses(const Schedule& schedule, const Fan& fan) {
    int first = 0, last = 0;
    for (const Course& course : schedule.courses)
        for (const Ring& ring : course.rings)
            for (const Piece& piece : ring.pieces)
                if (piece.of == fan.opening) {
                    first = first == 0 ? course.number : first;
                    last = course.number;
                }
    const std::string text = std::to_string(first);
    return first == last ? text : text + "–" + std::to_string(last);
}

/// Fans and lintels.
void add_heads(Flow& flow, const Drafting& drafting) {
    const Schedule& schedule = drafting.schedule();
    if (!schedule.fans.empty()) {
        Table table;
        table.columns = {{{"Fan bags for"}, Align::left, true},
                         {{"Bags"}, Align::right, true},
                         {{"Width at the", "outer curve"}, Align::right, true},
                         {{"Width at", "the form"}, Align::right, true},
                         {{"Depth"}, Align::right, false},
                         {{"Before", "courses"}, Align::right, false}};
        for (const Fan& fan : schedule.fans)
            table.rows.push_back({fan.opening, std::to_string(fan.count),
                                  drafting.length(fan.outer_width),
                                  drafting.length(fan.inner_width), drafting.length(fan.depth),
                                  fan_courses(schedule, fan)});
        flow.table("Fan bags to have ready", table);
    }
    if (!schedule.lintels.empty()) {
        Table table;
        table.columns = {{{"Lintel of"}, Align::left, true},
                         {{"Kind"}, Align::left, false},
                         {{"Length"}, Align::right, true},
                         {{"Height"}, Align::right, true},
                         {{"Width"}, Align::right, true},
                         {{"Bearing,", "each side"}, Align::right, false},
                         {{"Underside at"}, Align::right, false},
                         {{"Before", "course"}, Align::right, false}};
        for (const Lintel& lintel : schedule.lintels)
            table.rows.push_back(
                {lintel.opening, lintel.kind == LintelKind::timber ? "timber" : "concrete",
                 drafting.length(lintel.length), drafting.length(lintel.depth),
                 drafting.length(lintel.width), drafting.length(lintel.bearing),
                 drafting.length(lintel.bottom), std::to_string(lintel.first_course)});
        flow.table("Lintels to have ready", table);
        flow.paragraph("Their strength is not judged here.", sizes::small);
    }
}

/// How long the form of a vault is: from the inside face of its dome's base ring to its end, or to
/// that of the other dome.
double vault_form_length(const BuildingForm& building, const TunnelForm& tunnel) {
    double length = tunnel.reach - (tunnel.end_wall ? tunnel.width : 0);
    for (const std::string& id : {tunnel.from, tunnel.to})
        if (const DomeForm* dome = find_dome(building, id))
            length -= inside_radius(*dome, tunnel.crown());
    return length;
}

void add_tunnels(Flow& flow, const Drafting& drafting) {
    const BuildingForm& building = drafting.schedule().building;
    if (building.tunnels.empty())
        return;
    Table table;
    table.columns = {{{"Vault form of"}, Align::left, true},
                     {{"Axis from", "the pole of"}, Align::left, false},
                     {{"Bearing"}, Align::right, false},
                     {{"Width"}, Align::right, true},
                     {{"Rise"}, Align::right, true},
                     {{"Length"}, Align::right, true},
                     {{"Springing", "on the rod"}, Align::right, false}};
    for (const TunnelForm& tunnel : building.tunnels)
        table.rows.push_back(
            {tunnel.id, tunnel.from, degrees_text(turned_into_circle(tunnel.bearing.degrees)),
             drafting.length(2 * tunnel.profile.half_span), drafting.length(tunnel.profile.rise),
             drafting.length(vault_form_length(building, tunnel)),
             drafting.length(tunnel.springline)});
    flow.need(36 + 5.0 * static_cast<double>(table.rows.size())); // with what is said of it
    flow.table("Vault forms to make", table);
    flow.paragraph(
        "Length is from the inside face of the dome at the crown's height to the inside of "
        "the tunnel's far end: the whole vault lies on it. Stretch a string along the "
        "axis from the pole to a stake beyond the end; walls are gauged from it.",
        sizes::small);
}

void add_tunnel_headroom(Flow& flow, const Drafting& drafting) {
    const std::vector<TunnelHeadroom>& rooms = drafting.plan.tunnel_headroom;
    if (rooms.empty())
        return;
    Table table;
    table.columns = {{{"Tunnel"}, Align::left, true},
                     {{"Clear height", "in its middle"}, Align::right, true},
                     {{"Clear", "width"}, Align::right, false}};
    for (const TunnelHeadroomRow& row : rooms[0].rows)
        table.columns.push_back({{drafting.length(row.height), "high over"}, Align::right, false});
    for (const TunnelHeadroom& room : rooms) {
        std::vector<std::string> cells{room.tunnel, drafting.length(room.at_middle),
                                       drafting.length(room.width)};
        for (const TunnelHeadroomRow& row : room.rows)
            cells.push_back(row.width > 0 ? drafting.length(row.width) : "–");
        table.rows.push_back(std::move(cells));
    }
    flow.table("Headroom along tunnels, after plaster", table);
}

/// Poles and datum lines of several domes.
void add_setting_out(Flow& flow, const Drafting& drafting) {
    const std::vector<DomeForm>& domes = drafting.schedule().building.domes;
    if (domes.size() < 2)
        return;
    const auto way = [&](const DomeForm& from, const DomeForm& to) {
        const Vec2 off = to.at - from.at;
        return std::pair{drafting.length(off.norm()),
                         degrees_text(to_bearing({std::atan2(off.y(), off.x())}).degrees)};
    };
    Table table;
    table.columns = {{{"Pole of"}, Align::left, true},
                     {{"From '" + domes[0].id + "'"}, Align::right, true},
                     {{"Bearing"}, Align::right, false}};
    if (domes.size() > 2)
        table.columns.push_back({{"Check: from '" + domes[1].id + "'"}, Align::right, true});
    table.columns.push_back({{"Datum line on"}, Align::left, false});
    table.columns.push_back({{"Its bearing"}, Align::right, true});
    for (const DomeForm& dome : domes) {
        const bool first = &dome == &domes[0];
        const auto [distance, bearing] = way(domes[0], dome);
        std::vector<std::string> row{dome.id, first ? "–" : distance, first ? "–" : bearing};
        if (domes.size() > 2)
            row.push_back(&dome == &domes[1] ? "–" : way(domes[1], dome).first);
        const std::string datum = datum_element(drafting.plan, dome);
        row.push_back(datum.empty() ? "north" : datum);
        row.push_back(degrees_text(turned_into_circle(dome.datum.degrees)));
        table.rows.push_back(std::move(row));
    }
    flow.table("Setting out the poles", table, sizes::body, sizes::least);
    flow.paragraph(domes.size() > 2
                       ? "Two distances fix each pole. Bearings are from north."
                       : "The distance and the bearing, from north, fix the second pole.",
                   sizes::small);
}

void add_list(Flow& flow, const std::string& heading, const std::vector<std::string>& lines) {
    flow.heading(heading);
    for (const std::string& line : lines)
        flow.item(line, Flow::Mark::dot);
}

/// Before all else: what the design does not hold.
void add_failing(Flow& flow, const std::vector<Finding>& findings) {
    const std::vector<std::string> failing = failing_checks(findings);
    if (failing.empty())
        return;
    flow.heading("CHECKS THAT FAIL: " + std::to_string(failing.size()));
    flow.paragraph(
        "This book is laid out from a design that does not hold them. Do not build from it "
        "until whoever drew the design has mended it, or a licensed professional has "
        "judged each of them.",
        0, true);
    for (const std::string& line : failing)
        flow.item(line, Flow::Mark::dot);
}

} // namespace

std::vector<Sheet> before_start_pages(const Drafting& drafting,
                                      const std::vector<Finding>& findings) {
    const Schedule& schedule = drafting.schedule();
    bool first = true;
    Flow flow(drafting, [&] {
        const std::string title = first ? "Before you start" : "Before you start, continued";
        first = false;
        return titled_page(drafting, title, "");
    });
    add_failing(flow, findings);
    add_order(flow, drafting);
    if (!schedule.openings.empty()) {
        flow.table("Forms to make", form_table(drafting));
        flow.paragraph(
            "Width and height are of the hole between the tubes. A form shallower than its "
            "least depth leaves the innermost or outermost course without support.",
            sizes::small);
        flow.table("Openings and frames", frame_table(drafting), sizes::body, sizes::least);
        flow.paragraph(
            "Clear is what plaster and frame leave; under a head that closes in, the full width "
            "only up to the height that stands beside it, over the sill or the floor. A plumb "
            "frame lies inside the wall at "
            "every course only between the two distances from the pole's axis. A form "
            "comes out only as the sheet of that course says.",
            sizes::small);
    }
    if (const std::vector<std::string> asked = asked_of_crew(findings); !asked.empty())
        add_list(flow, "What the checks ask of you", asked);
    add_heads(flow, drafting);
    add_tunnels(flow, drafting);
    add_tunnel_headroom(flow, drafting);
    add_setting_out(flow, drafting);
    // What holds for all domes alike is said once.
    const DomeForm& first_dome = schedule.building.domes.front();
    add_list(flow, "The datum", words::datum(drafting.plan, first_dome));
    add_list(flow, "The compass", words::compass(drafting.plan, first_dome));
    add_list(flow, "The pole", words::pole(drafting.plan, first_dome));
    add_list(flow, "Heights", words::bench_mark(drafting.plan));
    add_list(flow, "Tubes", words::tubes(drafting.plan));
    add_totals(flow, drafting);
    return flow.finish();
}

} // namespace coilwright
