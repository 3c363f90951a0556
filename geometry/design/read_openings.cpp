#include "geometry/design/contradictions.hpp"
#include "geometry/design/read_tables.hpp"

#include <cmath>

namespace coilwright {

namespace {

constexpr double same_length = 1e-6; // m

void check_head_keys(const TableReader& table, const HeadSpec& head) {
    ReadContext& context = table.context();
    const std::string because = "kind = \"" + word(head.kind) + "\"";
    const bool takes_rise = head.kind == HeadKind::pointed || head.kind == HeadKind::segmental;
    if (!takes_rise && table.has("rise"))
        context.add(faults::key_out_of_place(table.at("rise"), because,
                                             "only with kind = \"pointed\" or \"segmental\"",
                                             "head = { " + because + " }"));
    const bool takes_fan = head.kind != HeadKind::square;
    if (!takes_fan && head.laid == HeadLaid::fan)
        context.add(faults::key_out_of_place(table.at("laid"), because,
                                             "\"fan\" only with a curved head",
                                             "head = { kind = \"round\", laid = \"fan\" }"));
    if (head.laid != HeadLaid::fan && table.has("depth"))
        context.add(faults::key_out_of_place(
            table.at("depth"), "a head that is not laid as a fan", "only with laid = \"fan\"",
            "head = { kind = \"round\", laid = \"fan\", depth = \"15 in\" }"));
    if (head.kind != HeadKind::square && table.has("lintel"))
        context.add(faults::key_out_of_place(
            table.at("lintel"), because, "only with kind = \"square\"",
            "head = { kind = \"square\", lintel = { kind = \"timber\" } }"));
}

std::optional<LintelSpec> read_lintel(TableReader& head) {
    auto table = head.table("lintel", "{ kind = \"timber\", bearing = \"12 in\" }");
    if (!table)
        return std::nullopt;
    LintelSpec lintel;
    lintel.place = table->place();
    set(lintel.kind, table->choice<LintelKind>("kind", {{"timber", LintelKind::timber},
                                                        {"concrete", LintelKind::concrete}}));
    set(lintel.bearing, table->length({"bearing", 0.05, 1.5, 0.3048}));
    lintel.depth = table->length({"depth", 0.02, 1, 0.127});
    lintel.width = table->length({"width", 0.05, 1.5, 0.254});
    table->finish();
    return lintel;
}

HeadSpec read_head(TableReader& parent) {
    HeadSpec head;
    auto table = parent.table("head", "{ kind = \"pointed\", rise = \"24 in\" }");
    if (!table)
        return head;
    head.place = table->place();
    const auto kind = table->choice<HeadKind>("kind",
                                              {{"square", HeadKind::square},
                                               {"pointed", HeadKind::pointed},
                                               {"round", HeadKind::round},
                                               {"segmental", HeadKind::segmental},
                                               {"circle", HeadKind::circle}},
                                              Need::must);
    set(head.kind, kind);
    head.rise = table->length(usual_length("rise", 0.01, 3, 10, 0.6096),
                              kind == HeadKind::segmental ? Need::must : Need::may);
    set(head.laid, table->choice<HeadLaid>(
                       "laid", {{"corbelled", HeadLaid::corbelled}, {"fan", HeadLaid::fan}}));
    head.depth = table->length({"depth", 0.05, 2, 0.381});
    head.lintel = read_lintel(*table);
    table->finish();
    if (kind)
        check_head_keys(*table, head);
    return head;
}

// The head against the hole that it closes; only where both were read.
void check_head(const TableReader& table, const HeadSpec& head, double width, double height) {
    ReadContext& context = table.context();
    const DisplayUnit unit = context.unit;
    const double half = width / 2;
    const auto complain_height = [&](double rise, double example) {
        context.add(faults::head_too_high(table.at("height"), rise, height, unit, example));
    };
    const faults::At rise_at = context.at(table.path() + ".head.rise");
    switch (head.kind) {
    case HeadKind::square:
        break;
    case HeadKind::circle:
        if (std::abs(height - width) > same_length)
            context.add(faults::circle_not_round(table.at("height"), width, height, unit));
        break;
    case HeadKind::round:
        if (half > height + same_length)
            complain_height(half, 2 * half);
        break;
    case HeadKind::pointed: {
        const double equilateral = half * std::sqrt(3.0);
        const double rise = head.rise.value_or(equilateral);
        if (rise < half - same_length)
            context.add(faults::head_too_flat(rise_at, rise, half, height, unit));
        else if (rise > height + same_length && head.rise && height > half)
            context.add(faults::head_too_high(rise_at, rise, height, unit, height));
        else if (rise > height + same_length)
            complain_height(rise, 2 * rise);
        break;
    }
    case HeadKind::segmental:
        if (*head.rise > half + same_length)
            context.add(faults::head_too_steep(rise_at, *head.rise, half, unit));
        else if (*head.rise > height + same_length)
            context.add(faults::head_too_high(rise_at, *head.rise, height, unit, height / 2));
        break;
    }
}

/// How deep a niche is; nothing else has a depth.
void read_niche_depth(TableReader& table, Opening& opening, bool use_is_known) {
    const bool is_niche = use_is_known && opening.use == OpeningUse::niche;
    opening.niche_depth =
        table.length({"depth", 0.02, 1, 0.1524}, is_niche ? Need::must : Need::may);
    opening.niche_depth_place = table.place_of_key("depth");
    if (use_is_known && !is_niche && table.has("depth"))
        table.context().add(faults::key_out_of_place(
            table.at("depth"), "use = \"" + word(opening.use) + "\"",
            "only with use = \"niche\"; other openings go through", "use = \"niche\""));
}

Opening read_opening(TableReader& table) {
    Opening opening;
    set(opening.in, table.reference("in", {"dome", "tunnel"}, Need::must));
    opening.in_place = table.place_of_key("in");
    set(opening.use, table.choice<OpeningUse>("use", {{"door", OpeningUse::door},
                                                      {"window", OpeningUse::window},
                                                      {"vent", OpeningUse::vent},
                                                      {"niche", OpeningUse::niche}}));
    if (const auto bearing = table.bearing("bearing"))
        opening.bearing = {turned_into_circle(*bearing)};
    opening.bearing_place = table.place_of_key("bearing");
    const auto width = table.length(usual_length("width", 0.05, 4, 8, 0.8128), Need::must);
    set(opening.width, width);
    opening.width_place = table.place_of_key("width");
    set(opening.sill, table.length(usual_length("sill", -5, 5, 20, 0.889), Need::must));
    opening.sill_place = table.place_of_key("sill");
    const auto height = table.length(usual_length("height", 0.05, 5, 15, 2.032), Need::must);
    set(opening.height, height);
    opening.height_place = table.place_of_key("height");
    opening.head = read_head(table);
    set(opening.frame, table.length({"frame", 0, 0.3, 0.0381}));
    set(opening.frame_depth, table.length({"frame_depth", 0, 1, 0.1143}));
    set(opening.reveal_plumb, table.choice<bool>("reveal", {{"leaning", false}, {"plumb", true}}));
    read_niche_depth(table, opening, !table.context().is_faulty(table.path() + ".use"));
    read_place_in_tunnel(table, opening.side, opening.along, opening.along_place);
    if (width && height && !table.context().is_faulty(table.path() + ".head"))
        check_head(table, opening.head, *width, *height);
    return opening;
}

} // namespace

void read_place_in_tunnel(TableReader& table, TunnelSide& side, double& along,
                          SourcePlace& along_place) {
    set(side, table.choice<TunnelSide>("side", {{"end", TunnelSide::end},
                                                {"left", TunnelSide::left},
                                                {"right", TunnelSide::right}}));
    set(along, table.length(usual_length("along", 0.1, 20, 200, 3.048)));
    along_place = table.place_of_key("along");
    // Which of them must stand depends on what the element is in: check_hosts asks.
    for (const char* key : {"bearing", "side", "along"})
        if (table.is_misspelt(key))
            table.context().misspelt.insert(table.path() + "." + key);
}

void read_openings(TableReader& root, Design& design) {
    read_elements(root, "opening", design.openings, read_opening);
}

} // namespace coilwright
