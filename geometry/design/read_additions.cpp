#include "geometry/design/contradictions.hpp"
#include "geometry/design/read_tables.hpp"

#include <algorithm>

namespace coilwright {

namespace {

// What stands beside a dome: tunnels, buttresses, joins with other domes, sleeves.

Tunnel read_tunnel(TableReader& table) {
    Tunnel tunnel;
    ReadContext& context = table.context();
    set(tunnel.from, table.reference("from", {"dome"}, Need::must));
    set(tunnel.to, table.reference("to", {"dome"}));
    const bool leads_to_dome = table.has("to");
    // Between domes the bearing follows from their places; check_relations compares.
    if (const auto bearing = table.bearing("bearing", leads_to_dome ? Need::may : Need::must))
        tunnel.bearing = {turned_into_circle(*bearing)};
    const auto width = table.length({"width", 0.3, 10, 0.9144}, Need::must);
    set(tunnel.width, width);
    set(tunnel.springline, table.length(usual_length("springline", 0, 4, 15, 1.143), Need::must));
    tunnel.profile = read_profile(table, width, false);
    tunnel.reach = table.length(usual_length("reach", 0.3, 20, 200, 2.8956));
    set(tunnel.end_wall, table.choice<bool>("end", {{"open", false}, {"wall", true}}));
    set(tunnel.wall_stays, table.choice<bool>("wall", {{"opened", false}, {"stays", true}}));
    set(tunnel.tube, table.reference("tube", {"tube"}, Need::must));

    const std::string reach = "reach = \"9 ft 6 in\"";
    if (leads_to_dome && table.has("reach"))
        context.add(faults::exclusive_keys(table.at("reach"), "to", {"to", "reach"}, reach));
    if (!leads_to_dome && !table.has("reach") && !table.is_misspelt("reach") &&
        !table.is_misspelt("to"))
        context.add(faults::none_of_keys(table.at("reach"), {"reach", "to"}, reach));
    if (leads_to_dome && table.has("end"))
        context.add(faults::key_out_of_place(table.at("end"), "`to`: a dome closes that end",
                                             "only with `reach`", reach));
    return tunnel;
}

std::vector<double> read_bearings(TableReader& table) {
    constexpr const char* allowed = "1 to 36 numbers of degrees clockwise from north";
    constexpr const char* example = "[60, 240]";
    std::vector<double> bearings;
    const toml::array* array = table.array("bearings", allowed, example);
    if (!array)
        return bearings;
    ReadContext& context = table.context();
    const faults::At at = table.at("bearings");
    if (array->empty() || array->size() > 36) {
        context.add(faults::out_of_range(at, std::to_string(array->size()) + " bearings", allowed,
                                         example));
        return bearings;
    }
    for (const toml::node& node : *array) {
        const faults::At entry{at.path, place_of(node)};
        const auto bearing = read_measure_value(node, {"bearings", -360, 360, 60, example},
                                                Measure::degrees, entry, context);
        if (!bearing)
            continue;
        const double turned = turned_into_circle(*bearing);
        for (const double other : bearings)
            if (other == turned)
                context.add(faults::repeated_bearing(entry, *bearing));
        bearings.push_back(turned);
    }
    return bearings;
}

// Exactly one of bearings, count and beside says where a buttress stands.
void check_where(const TableReader& table) {
    ReadContext& context = table.context();
    const std::vector<std::string> ways{"bearings", "count", "beside"};
    std::string first;
    for (const std::string& way : ways) {
        if (!table.has(way))
            continue;
        if (first.empty())
            first = way;
        else
            context.add(faults::exclusive_keys(table.at(way), first, ways, "bearings = [60, 240]"));
    }
    const bool misspelt = std::any_of(
        ways.begin(), ways.end(), [&](const std::string& way) { return table.is_misspelt(way); });
    if (first.empty() && !misspelt)
        context.add(faults::none_of_keys(table.at("bearings"), ways, "bearings = [60, 240]"));
    if (table.has("first") && first != "count" && !first.empty())
        context.add(faults::key_out_of_place(table.at("first"), "`" + first + "`",
                                             "only with `count`", "count = 4"));
    if (table.has("gap") && first != "beside" && !first.empty())
        context.add(faults::key_out_of_place(table.at("gap"), "`" + first + "`",
                                             "only with `beside`", "beside = \"door\""));
}

Buttress read_buttress(TableReader& table) {
    Buttress buttress;
    set(buttress.on, table.reference("on", {"dome"}, Need::must));
    buttress.bearings = read_bearings(table);
    const auto count = table.whole("count", 1, 36, 4);
    const double first = table.bearing("first").value_or(0);
    if (count)
        for (int i = 0; i < *count; ++i)
            buttress.bearings.push_back(turned_into_circle(first + 360.0 * i / *count));
    set(buttress.beside, table.reference("beside", {"opening", "tunnel"}));
    set(buttress.gap, table.length(usual_length("gap", 0, 1, 3, 0.1524)));
    buttress.width = table.length({"width", 0.1, 5, 0.762});
    set(buttress.height, table.length(usual_length("height", 0.05, 5, 20, 1.016), Need::must));
    const auto projection = table.length({"projection", 0, 5, 0.762}, Need::must);
    set(buttress.projection, projection);
    buttress.projection_top = table.length({"projection_top", 0, 5, 0.381});
    check_where(table);
    if (projection && buttress.projection_top && *buttress.projection_top > *projection)
        table.context().add(faults::projection_grows(table.at("projection_top"),
                                                     *buttress.projection_top, *projection,
                                                     table.context().unit));
    return buttress;
}

// The two domes of a join; each is looked up with the other references.
void read_between(TableReader& table, Join& join, const std::string& keep) {
    constexpr const char* allowed = "the names of two domes";
    const std::string example = table.context().names_of_two_domes(keep);
    const toml::array* array = table.array("between", allowed, example, Need::must);
    if (!array)
        return;
    ReadContext& context = table.context();
    const std::string path = table.at("between").path;
    const bool two = array->size() == 2 && array->is_homogeneous(toml::node_type::string);
    if (!two) {
        context.add(
            faults::wrong_type(table.at("between"), "not a pair of names", allowed, example));
        return;
    }
    std::string* const ends[] = {&join.first, &join.second};
    for (std::size_t i = 0; i < 2; ++i) {
        const toml::node& node = *array->get(i);
        *ends[i] = node.ref<std::string>();
        context.references.push_back({{path, place_of(node)}, *ends[i], {"dome"}});
    }
    if (join.first == join.second)
        context.add(faults::same_dome_twice(table.at("between"), join.first, example));
}

Join read_join(TableReader& table) {
    Join join;
    constexpr const char* allowed = "the name of the dome whose wall stays, or \"neither\"";
    const toml::node* node = table.node("keep", allowed, "\"neither\"", Need::must);
    const std::string keep = node ? node->value_or(std::string()) : std::string();
    read_between(table, join, keep);
    if (node && !node->is_string())
        table.context().add(
            faults::wrong_type(table.at("keep"), found_text(*node), allowed,
                               join.first.empty() ? "\"neither\"" : '"' + join.first + '"'));
    set(join.bonded, table.choice<bool>("bond", {{"alternate", true}, {"butt", false}}));
    if (keep == "neither" && table.has("bond"))
        table.context().add(faults::key_out_of_place(table.at("bond"), "keep = \"neither\"",
                                                     "only where the wall of one dome stays",
                                                     "keep = \"neither\""));
    if (!node || !node->is_string() || keep == "neither")
        return join;
    join.keep = keep;
    const bool is_one = keep == join.first || keep == join.second;
    if (!is_one && !join.first.empty())
        table.context().add(
            faults::unknown_word(table.at("keep"), keep, {join.first, join.second, "neither"}));
    return join;
}

Sleeve read_sleeve(TableReader& table) {
    Sleeve sleeve;
    set(sleeve.in, table.reference("in", {"dome", "tunnel"}, Need::must));
    sleeve.in_place = table.place_of_key("in");
    if (const auto bearing = table.bearing("bearing"))
        sleeve.bearing = {turned_into_circle(*bearing)};
    sleeve.bearing_place = table.place_of_key("bearing");
    set(sleeve.height, table.length(usual_length("height", -5, 4, 20, 0.254), Need::must));
    sleeve.height_place = table.place_of_key("height");
    set(sleeve.diameter, table.length({"diameter", 0.01, 1, 0.1016}, Need::must));
    read_place_in_tunnel(table, sleeve.side, sleeve.along, sleeve.along_place);
    return sleeve;
}

} // namespace

void read_tunnels(TableReader& root, Design& design) {
    read_elements(root, "tunnel", design.tunnels, read_tunnel);
}

void read_buttresses(TableReader& root, Design& design) {
    read_elements(root, "buttress", design.buttresses, read_buttress);
}

void read_joins(TableReader& root, Design& design) {
    read_elements(root, "join", design.joins, read_join);
}

void read_sleeves(TableReader& root, Design& design) {
    read_elements(root, "sleeve", design.sleeves, read_sleeve);
}

} // namespace coilwright
