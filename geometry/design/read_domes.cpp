#include "geometry/design/contradictions.hpp"
#include "geometry/design/read_tables.hpp"

namespace coilwright {

namespace {

constexpr MeasureKey diameter_key = usual_length("inside_diameter", 0.5, 12, 30, 2.7432);
constexpr MeasureKey springline_key = usual_length("springline", 0, 4, 15, 0.508);

TopSpec read_top(TableReader& parent, const std::optional<double>& inside_diameter) {
    TopSpec top;
    auto table = parent.table("top", "{ kind = \"closed\" }");
    if (!table)
        return top;
    top.place = table->place();
    const auto kind = table->choice<TopKind>(
        "kind", {{"closed", TopKind::closed}, {"skylight", TopKind::skylight}}, Need::must);
    set(top.kind, kind);
    const bool is_skylight = top.kind == TopKind::skylight;
    const auto diameter = table->length(usual_length("diameter", 0.1, 3, 10, 0.6096),
                                        is_skylight ? Need::must : Need::may);
    set(top.diameter, diameter);
    set(top.curb, table->whole("curb", 0, 20, 2));
    top.glazing_load = table->measure({"glazing_load", 0, 20e3, 291.878}, Measure::line_load);
    table->finish();

    ReadContext& context = table->context();
    if (kind && !is_skylight)
        for (const char* key : {"diameter", "curb", "glazing_load"})
            if (table->has(key))
                context.add(faults::key_out_of_place(
                    table->at(key), "kind = \"closed\"", "only with kind = \"skylight\"",
                    "top = { kind = \"skylight\", diameter = \"24 in\" }"));
    if (is_skylight && diameter && inside_diameter && *diameter >= *inside_diameter)
        context.add(faults::skylight_too_wide(table->at("diameter"), *diameter, *inside_diameter,
                                              context.unit));
    return top;
}

FitWish read_fit_wish(TableReader& parent) {
    FitWish fit;
    auto table = parent.table("fit", "{ clear_height = \"6 ft 8 in\", clear_square = \"30 in\" }");
    if (!table)
        return fit;
    fit.place = table->place();
    fit.clear_height = table->length(usual_length("clear_height", 0.3, 5, 15, 2.032));
    fit.clear_square = table->length(usual_length("clear_square", 0.05, 5, 20, 0.762));
    fit.clear_circle = table->length(usual_length("clear_circle", 0.05, 8, 30, 1.5));
    fit.apex = table->length(usual_length("apex", 0.5, 14, 60, 3.6));
    fit.floor_area = table->measure({"floor_area", 0.2, 700, 11.1483648}, Measure::area);
    fit.outside_area = table->measure({"outside_area", 0.5, 1000, 18.580608}, Measure::area);
    table->finish();
    return fit;
}

// The keys of `fit` beside the keys that are to be fitted.
class FitCheck {
public:
    explicit FitCheck(const TableReader& dome) : dome_(dome), context_(dome.context()) {}

    void springline(bool wanted, const FitWish& fit) {
        const bool has_place = has("clear_square") || has("clear_circle");
        if (wanted && !(has("clear_height") && has_place))
            missing("springline", "clear_height, and clear_square or clear_circle",
                    "fit = { clear_height = \"6 ft 8 in\", clear_square = \"30 in\" }");
        if (!wanted)
            for (const char* key : {"clear_height", "clear_square", "clear_circle"})
                idle(key, "springline");
        if (fit.clear_square && fit.clear_circle)
            both("clear_square", "clear_circle", "clear_square = \"30 in\"");
    }

    void rise(bool wanted) {
        if (wanted && !has("apex"))
            missing("profile.rise", "apex", "fit = { apex = \"12 ft\" }");
        if (!wanted)
            idle("apex", "rise");
    }

    void diameter(bool wanted, const FitWish& fit) {
        if (wanted && !has("floor_area") && !has("outside_area"))
            missing("inside_diameter", "floor_area or outside_area",
                    "fit = { floor_area = \"120 sq ft\" }");
        if (!wanted)
            for (const char* key : {"floor_area", "outside_area"})
                idle(key, "inside_diameter");
        if (fit.floor_area && fit.outside_area)
            both("floor_area", "outside_area", "floor_area = \"120 sq ft\"");
    }

private:
    // The key stands, even where its value could not be read.
    bool has(const char* key) const { return context_.has_place(dome_.path() + ".fit." + key); }
    void missing(const char* key, const std::string& wish, const std::string& example) {
        if (context_.is_faulty(dome_.path() + ".fit"))
            return; // the wish may be what could not be read
        context_.add(
            faults::fit_without_wish(context_.at(dome_.path() + "." + key), wish, example));
    }
    void idle(const char* key, const std::string& fitted) {
        const std::string path = dome_.path() + (fitted == "rise" ? ".profile" : "." + fitted);
        if (has(key) && !context_.is_faulty(path))
            context_.add(
                faults::wish_without_fit(context_.at(dome_.path() + ".fit." + key), fitted));
    }
    void both(const char* first, const char* second, const std::string& typed) {
        context_.add(faults::exclusive_keys(context_.at(dome_.path() + ".fit." + second), first,
                                            {first, second}, typed));
    }

    const TableReader& dome_;
    ReadContext& context_;
};

Dome read_dome(TableReader& table) {
    Dome dome;
    set(dome.at, read_place(table));
    set(dome.use, table.choice<Use>("use", {{"habitable", Use::habitable},
                                            {"bath", Use::bath},
                                            {"shower", Use::shower},
                                            {"tiny-house", Use::tiny_house},
                                            {"store", Use::store}}));
    const auto diameter = table.length_or_fit(diameter_key, dome.fit_diameter, Need::must);
    set(dome.inside_diameter, diameter);
    set(dome.springline, table.length_or_fit(springline_key, dome.fit_springline, Need::must));
    dome.profile = read_profile(table, diameter, true);
    dome.top = read_top(table, diameter);
    set(dome.tube, table.reference("tube", {"tube"}, Need::must));
    dome.tube_place = table.place_of_key("tube");
    set(dome.datum, table.reference("datum", {"opening", "tunnel"}));
    dome.datum_place = table.place_of_key("datum");
    dome.chain_height = table.length(usual_length("chain_height", -5, 5, 20, 0.508));
    set(dome.lower_tube, table.reference("lower_tube", {"tube"}));
    dome.lower_tube_place = table.place_of_key("lower_tube");
    set(dome.lower_height, table.length(usual_length("lower_height", 0.05, 5, 20, 1.016)));
    dome.lower_height_place = table.place_of_key("lower_height");
    set(dome.second_wythe, table.length(usual_length("second_wythe", 0.05, 5, 20, 0.508)));
    dome.second_wythe_place = table.place_of_key("second_wythe");
    dome.fit = read_fit_wish(table);

    // A second tube and the height up to which it is laid: both or neither.
    const char* const both[] = {"lower_tube", "lower_height"};
    for (int i = 0; i < 2; ++i)
        if (table.has(both[i]) && !table.has(both[1 - i]) && !table.is_misspelt(both[1 - i]))
            table.context().add(faults::half_of_a_pair(table.at(both[1 - i]), both[i],
                                                       i == 0 ? "\"3 ft 4 in\"" : "\"wide\""));

    FitCheck check(table);
    check.springline(dome.fit_springline, dome.fit);
    check.rise(dome.profile.fit_rise);
    check.diameter(dome.fit_diameter, dome.fit);
    if (dome.fit_diameter && dome.profile.kind == ProfileKind::drawn)
        table.context().add(faults::key_out_of_place(
            table.at("inside_diameter"), "a drawn profile: its points state the width",
            "a length, twice the first point's half-width", "inside_diameter = \"9 ft\""));
    return dome;
}

} // namespace

std::optional<Vec2> read_place(TableReader& table) {
    constexpr const char* allowed = "two lengths: east and north of the design's origin";
    constexpr const char* example = "[\"20 ft\", \"0 ft\"]";
    const toml::array* array = table.array("at", allowed, example);
    if (!array)
        return std::nullopt;
    if (array->size() != 2) {
        table.context().add(
            faults::wrong_type(table.at("at"), "an array, but not of two", allowed, example));
        return std::nullopt;
    }
    const std::string path = table.at("at").path;
    const MeasureKey key{"at", -1000, 1000, 6.096, example};
    const auto coordinate = [&](std::size_t i) {
        const toml::node& node = *array->get(i);
        return read_measure_value(node, key, Measure::length, {path, place_of(node)},
                                  table.context());
    };
    const auto east = coordinate(0), north = coordinate(1);
    if (!east || !north)
        return std::nullopt;
    return Vec2{*east, *north};
}

void read_domes(TableReader& root, Design& design) {
    read_elements(root, "dome", design.domes, read_dome);
}

} // namespace coilwright
