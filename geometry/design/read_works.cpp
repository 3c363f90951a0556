#include "geometry/design/read_works.hpp"

#include "geometry/design/faults.hpp"
#include "geometry/design/read_tables.hpp"
#include "geometry/design/toml_text.hpp"

#include <algorithm>

namespace coilwright {

namespace {

constexpr double most_money = 1e9;

void read_soil(TableReader& root, SoilData& soil) {
    auto table = root.table("soil", "{ swell = 0.25, shrink = 0.1 }");
    if (!table)
        return;
    set(soil.swell, table->measure({"swell", 0, 1, 0.25}, Measure::number));
    set(soil.shrink, table->measure({"shrink", 0, 0.5, 0.1}, Measure::number));
    set(soil.dry_density, table->measure({"dry_density", 500, 3000, 1762.03}, Measure::density));
    set(soil.moisture, table->measure({"moisture", 0, 0.5, 0.1}, Measure::number));
    table->finish();
}

void read_waste(TableReader& root, WasteShares& waste) {
    auto table = root.table("waste", "{ plaster = 0.1 }");
    if (!table)
        return;
    const std::pair<const char*, double*> keys[] = {
        {"tube", &waste.tube},       {"wire", &waste.wire},
        {"fill", &waste.fill},       {"stabiliser", &waste.stabiliser},
        {"plaster", &waste.plaster}, {"paint", &waste.paint},
        {"timber", &waste.timber},   {"membrane", &waste.membrane}};
    for (const auto& [key, share] : keys)
        set(*share, table->measure({key, 0, 1, 0.05}, Measure::number));
    table->finish();
}

void read_packs(TableReader& root, PackSizes& packs) {
    auto table = root.table("packs", "{ cement_bag = \"94 lb\" }");
    if (!table)
        return;
    set(packs.bucket, table->measure({"bucket", 1e-3, 0.1, 0.02}, Measure::volume));
    set(packs.barrow, table->measure({"barrow", 0.01, 1, 0.06}, Measure::volume));
    set(packs.cement_bag, table->measure({"cement_bag", 1, 2000, 25}, Measure::mass));
    set(packs.lime_bag, table->measure({"lime_bag", 1, 2000, 25}, Measure::mass));
    set(packs.spool, table->length({"spool", 10, 5000, 402.336}));
    table->finish();
}

// Replaces the built-in one of that name, or adds one; the list stays in the order of names.
template <typename Element>
void put(std::vector<Element>& list, Element element) {
    const auto place =
        std::lower_bound(list.begin(), list.end(), element,
                         [](const Element& a, const Element& b) { return a.id < b.id; });
    if (place != list.end() && place->id == element.id)
        *place = std::move(element);
    else
        list.insert(place, std::move(element));
}

void read_materials(TableReader& root, Works& works) {
    std::vector<MixMaterial> read;
    // Of a built-in material the density alone may be changed.
    read_elements(root, "material", read, [&](TableReader& table) {
        MixMaterial material;
        const std::string id = table.path().substr(table.path().rfind('.') + 1);
        if (!find_material(default_works(), id) &&
            (id.rfind("tube-", 0) == 0 ||
             std::find(price_items().begin(), price_items().end(), id) != price_items().end()))
            table.context().add(faults::reserved_id({table.path(), table.place()}, id));
        if (const MixMaterial* built_in = find_material(works, id))
            material = *built_in;
        set(material.density, table.measure({"density", 10, 5000, 1600}, Measure::density,
                                            material.density > 0 ? Need::may : Need::must));
        set(material.binder, table.truth("binder"));
        return material;
    });
    for (MixMaterial& material : read)
        put(works.materials, std::move(material));
}

Mix read_mix(TableReader& table, const Works& works) {
    Mix mix;
    constexpr const char* example = "{ lime = 1, sand = 3 }";
    if (auto parts = table.table("parts", example, Need::must)) {
        double filling = 0, all = 0;
        for (const MixMaterial& material : works.materials)
            if (const auto part = parts->measure({material.id, 0.001, 1000, 1}, Measure::number)) {
                mix.parts.emplace_back(material.id, *part);
                all += *part;
                filling += material.binder ? 0 : *part;
            }
        parts->finish();
        const bool faulty = table.context().is_faulty(table.path());
        if (!faulty && (all <= 0 || (filling <= 0 && !table.has("yield"))))
            table.context().add(faults::wrong_type(
                table.at("parts"), "without a part that fills the volume, and the mix has no yield",
                "parts by volume, at least one of them no binder", example));
    }
    set(mix.yield, table.measure({"yield", 0.1, 1.5, 0.75}, Measure::number));
    set(mix.water, table.measure({"water", 0, 0.6, 0.22}, Measure::number));
    return mix;
}

void read_mixes(TableReader& root, Works& works) {
    std::vector<Mix> read;
    read_elements(root, "mix", read, [&](TableReader& table) { return read_mix(table, works); });
    for (Mix& mix : read)
        put(works.mixes, std::move(mix));
}

WallSide read_side(TableReader& table) {
    return table
        .choice<WallSide>("side", {{"inside", WallSide::inside}, {"outside", WallSide::outside}},
                          Need::must)
        .value_or(WallSide::inside);
}

void read_coats(TableReader& root, Works& works) {
    struct Place {
        WallSide side;
        int order;
        faults::At at;
    };
    std::vector<Place> places;
    read_elements(root, "coat", works.coats, [&](TableReader& table) {
        Coat coat;
        coat.side = read_side(table);
        set(coat.order, table.whole("order", 1, 20, 1));
        const faults::At at{table.path() + ".order", table.place()};
        if (!table.context().is_faulty(at.path) &&
            !table.context().is_faulty(table.path() + ".side"))
            places.push_back({coat.side, coat.order, table.has("order") ? table.at("order") : at});
        set(coat.thickness, table.length({"thickness", 0.001, 0.2, 0.0127}, Need::must));
        set(coat.cure_days, table.measure({"cure", 0, 365, 7}, Measure::days));
        std::vector<std::string> names;
        for (const Mix& mix : works.mixes)
            names.push_back(mix.id);
        if (const auto name = table.text("mix", 12, "lime", Need::must)) {
            coat.mix = *name;
            if (!find_mix(works, *name))
                table.context().add(faults::unknown_word(table.at("mix"), *name, names));
        }
        return coat;
    });
    const auto taken = [&](WallSide side, int order, std::size_t end) {
        return std::find_if(
            places.begin(), places.begin() + static_cast<std::ptrdiff_t>(end),
            [&](const Place& place) { return place.side == side && place.order == order; });
    };
    for (std::size_t i = 0; i < places.size(); ++i) {
        const auto& [side, order, at] = places[i];
        const auto had = taken(side, order, i);
        if (had == places.begin() + static_cast<std::ptrdiff_t>(i))
            continue;
        int free = order;
        while (taken(side, free, places.size()) != places.end())
            ++free;
        root.context().add(faults::taken_number(at, order, had->at.table(), free));
    }
}

void read_paints(TableReader& root, Works& works) {
    read_elements(root, "paint", works.paints, [](TableReader& table) {
        Paint paint;
        paint.side = read_side(table);
        set(paint.coats, table.whole("coats", 1, 20, 2));
        set(paint.coverage, table.measure({"coverage", 0.1, 100, 6}, Measure::number));
        set(paint.roughness, table.measure({"roughness", 1, 4, 1.3}, Measure::number));
        set(paint.dry_days, table.measure({"dry", 0, 365, 1}, Measure::days));
        return paint;
    });
}

Price read_price(TableReader& table) {
    Price price;
    set(price.per, table.choice<PriceUnit>("per",
                                           {{"pack", PriceUnit::pack},
                                            {"piece", PriceUnit::piece},
                                            {"m", PriceUnit::metre},
                                            {"ft", PriceUnit::foot},
                                            {"m2", PriceUnit::square_metre},
                                            {"sq ft", PriceUnit::square_foot},
                                            {"m3", PriceUnit::cubic_metre},
                                            {"cu yd", PriceUnit::cubic_yard},
                                            {"kg", PriceUnit::kilogram},
                                            {"lb", PriceUnit::pound},
                                            {"t", PriceUnit::tonne},
                                            {"l", PriceUnit::litre},
                                            {"gal", PriceUnit::gallon},
                                            {"hour", PriceUnit::hour},
                                            {"day", PriceUnit::day}},
                                           Need::must));
    set(price.likely, table.measure({"likely", 0, most_money, 12.5}, Measure::number, Need::must));
    price.low = price.high = price.likely;
    set(price.low, table.measure({"low", 0, most_money, 10}, Measure::number));
    set(price.high, table.measure({"high", 0, most_money, 15}, Measure::number));
    set(price.source, table.text("source", 200, "quotation of a yard"));
    if (const auto date = table.text("date", 10, "2027-03-01")) {
        price.date = *date;
        if (!read_date(*date))
            table.context().add(faults::wrong_type(table.at("date"), "no day of the calendar",
                                                   "a date as year-month-day", "\"2027-03-01\""));
    }
    if (!table.context().is_faulty(table.path()) &&
        (price.low > price.likely || price.likely > price.high))
        table.context().add(faults::out_of_range(table.at("likely"), "not between `low` and `high`",
                                                 "low <= likely <= high",
                                                 short_number((price.low + price.high) / 2)));
    return price;
}

void read_prices(TableReader& root, Works& works) {
    for (auto& [item, table] : root.named_tables("price")) {
        std::vector<std::string> known = price_items();
        for (const MixMaterial& material : works.materials)
            known.push_back(material.id);
        std::sort(known.begin(), known.end());
        known.erase(std::unique(known.begin(), known.end()), known.end());
        if (item.rfind("tube-", 0) != 0 &&
            std::find(known.begin(), known.end(), item) == known.end())
            table.context().add(faults::unknown_name({table.path(), table.place()}, item, known,
                                                     ", or tube-NAME of a tube of the design"));
        Price price = read_price(table);
        price.item = item;
        price.place = table.place();
        table.finish();
        works.prices.push_back(std::move(price));
    }
}

void read_rest_days(TableReader& table, Crew& crew) {
    static const std::vector<std::string> days{"monday", "tuesday",  "wednesday", "thursday",
                                               "friday", "saturday", "sunday"};
    constexpr const char* allowed = "up to six days of the week";
    const toml::array* array = table.array("rest", allowed, "[\"sunday\"]");
    if (!array)
        return;
    for (const toml::node& node : *array) {
        const auto found = node.is_string()
                               ? std::find(days.begin(), days.end(), node.ref<std::string>())
                               : days.end();
        if (found == days.end()) {
            table.context().add(
                faults::wrong_type(table.at("rest"), "not a list of days of the week",
                                   faults::listed(days), "[\"saturday\", \"sunday\"]"));
            return;
        }
        crew.rest_days.push_back(static_cast<int>(found - days.begin()));
    }
    std::sort(crew.rest_days.begin(), crew.rest_days.end());
    crew.rest_days.erase(std::unique(crew.rest_days.begin(), crew.rest_days.end()),
                         crew.rest_days.end());
    if (crew.rest_days.size() > 6)
        table.context().add(
            faults::out_of_range(table.at("rest"), "the whole week", allowed, "[\"sunday\"]"));
}

void read_crew(TableReader& root, Crew& crew) {
    auto table = root.table("crew", "{ size = 4 }");
    if (!table)
        return;
    set(crew.size, table->whole("size", 1, 200, 4));
    set(crew.hours, table->measure({"hours", 1, 16, 8}, Measure::number));
    const std::pair<const char*, double*> rates[] = {
        {"fill_rate", &crew.fill_rate},   {"plaster_rate", &crew.plaster_rate},
        {"paint_rate", &crew.paint_rate}, {"dig_rate", &crew.dig_rate},
        {"floor_rate", &crew.floor_rate}, {"fit_rate", &crew.fit_rate}};
    for (const auto& [key, rate] : rates)
        set(*rate, table->measure({key, 0.01, 1000, *rate}, Measure::number));
    set(crew.most_courses, table->whole("most_courses", 1, 50, 4));
    set(crew.lift, table->whole("lift", 1, 50, 4));
    if (const auto start = table->text("start", 10, "2027-04-05")) {
        crew.start = read_date(*start);
        if (!crew.start)
            table->context().add(faults::wrong_type(table->at("start"), "no day of the calendar",
                                                    "a date as year-month-day, 1900 to 2199",
                                                    "\"2027-04-05\""));
    }
    read_rest_days(*table, crew);
    table->finish();
}

void read_head(TableReader& root, Works& works) {
    ReadContext& context = root.context();
    root.whole("works", 1, 1, 1, Need::must);
    const auto unit = root.choice<DisplayUnit>(
        "unit", {{"ft", DisplayUnit::feet}, {"m", DisplayUnit::metres}}, Need::must);
    set(works.unit, unit);
    context.unit = works.unit;
    context.unit_is_known = unit.has_value();
    set(works.currency, root.text("currency", 12, "shells"));
    set(works.note, root.text("note", 200, "Invented prices of a demo."));
}

} // namespace

std::optional<Date> read_date(std::string_view text) {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-')
        return std::nullopt;
    const auto number = [&](std::size_t from, std::size_t count) {
        int value = 0;
        for (const char c : text.substr(from, count))
            value = c >= '0' && c <= '9' && value >= 0 ? value * 10 + (c - '0') : -1;
        return value;
    };
    const Date date{number(0, 4), number(5, 2), number(8, 2)};
    const bool leap = date.year % 4 == 0 && (date.year % 100 != 0 || date.year % 400 == 0);
    constexpr int lengths[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    if (date.year < 1900 || date.year > 2199 || date.month < 1 || date.month > 12 || date.day < 1 ||
        date.day > lengths[date.month - 1] + (leap && date.month == 2 ? 1 : 0))
        return std::nullopt;
    return date;
}

WorksReading read_works(std::string_view text) {
    WorksReading reading{default_works(), {}};
    const ParsedToml parsed = parse_toml(text);
    if (!parsed.faults.empty()) {
        reading.diagnostics = parsed.faults;
    } else {
        ReadContext context;
        TableReader root(parsed.table, "", {1, 1}, context);
        Works& works = reading.works;
        works.stated = true;
        read_head(root, works);
        read_soil(root, works.soil);
        read_waste(root, works.waste);
        read_packs(root, works.packs);
        read_materials(root, works);
        read_mixes(root, works);
        read_coats(root, works);
        read_paints(root, works);
        read_prices(root, works);
        read_crew(root, works.crew);
        if (!works.prices.empty() && works.currency.empty() && !root.has("currency"))
            context.add(faults::missing_key({"currency", {1, 1}}, "the currency of the prices",
                                            "\"shells\""));
        root.finish_root();
        reading.diagnostics = context.take_diagnostics();
    }
    for (Diagnostic& diagnostic : reading.diagnostics)
        diagnostic.message = faults::as_sentence(std::move(diagnostic.message));
    return reading;
}

} // namespace coilwright
