#include "geometry/design/contradictions.hpp"
#include "geometry/design/read_tables.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

constexpr MeasureKey rise_key = usual_length("rise", 0.1, 14, 60, 2.7432);
constexpr MeasureKey arc_key = usual_length("arc_radius", 0.1, 20, 300, 2.7432);
constexpr MeasureKey ratio_key{"rise_to_span", 0.05, 10, 1};
constexpr std::size_t most_points = 200;
constexpr double same_length = 1e-3; // m: what no tape tells apart
constexpr double same_width = 2e-3;  // m: what rounding to 1/8 in or to millimetres may leave

// The keys that give a profile its height, in the order of the documents.
const std::vector<std::string>& height_keys(ProfileKind kind) {
    static const std::vector<std::string> pointed{"rise", "arc_radius", "rise_to_span"};
    static const std::vector<std::string> by_rise{"rise", "rise_to_span"};
    static const std::vector<std::string> drawn{"points"};
    static const std::vector<std::string> none;
    switch (kind) {
    case ProfileKind::pointed:
        return pointed;
    case ProfileKind::catenary:
    case ProfileKind::parabola:
        return by_rise;
    case ProfileKind::drawn:
        return drawn;
    default:
        return none;
    }
}

// Points of a profile as tall as wide, as typed.
std::string typed_points(std::optional<double> width, DisplayUnit unit) {
    const double half_span = width.value_or(2.7432) / 2;
    const auto pair = [&](double height, double half) {
        return "[" + typed_measure(height, Measure::length, unit) + ", " +
               typed_measure(half, Measure::length, unit) + "]";
    };
    return "[" + pair(0, half_span) + ", " + pair(half_span, 0.8 * half_span) + ", " +
           pair(2 * half_span, 0) + "]";
}

// Whether exactly the keys stand that the kind of profile takes.
void check_keys(const TableReader& table, ProfileKind kind, std::optional<double> width) {
    ReadContext& context = table.context();
    const std::vector<std::string>& taken = height_keys(kind);
    const std::string because = "kind = \"" + word(kind) + "\"";
    std::string first;
    for (const char* key : {"rise", "arc_radius", "rise_to_span", "points"}) {
        if (!table.has(key))
            continue;
        if (std::find(taken.begin(), taken.end(), key) == taken.end()) {
            context.add(faults::key_out_of_place(
                table.at(key), because,
                taken.empty() ? "no further key: its rise is half its width"
                              : faults::listed(taken),
                kind == ProfileKind::round
                    ? "profile = { kind = \"round\" }"
                    : "profile = { " + because + ", " + taken.front() + " = ... }"));
        } else if (first.empty()) {
            first = key;
        } else {
            context.add(faults::exclusive_keys(
                table.at(key), first, taken,
                "rise = " + typed_measure(rise_key.example, Measure::length, context.unit)));
        }
    }
    const bool misspelt = std::any_of(
        taken.begin(), taken.end(), [&](const std::string& key) { return table.is_misspelt(key); });
    if (first.empty() && !taken.empty() && !misspelt) {
        const std::string typed =
            kind == ProfileKind::drawn
                ? "points = " + typed_points(width, context.unit)
                : "rise = " + typed_measure(rise_key.example, Measure::length, context.unit);
        context.add(faults::none_of_keys(table.at(taken.front()), taken, typed));
    }
}

// A pointed profile is at least as high as half its width.
void check_pointed(const TableReader& table, const ProfileSpec& spec, std::optional<double> width) {
    ReadContext& context = table.context();
    const auto length = [&](double metres) { return length_text(metres, context.unit); };
    const auto typed = [&](double metres) {
        return typed_measure(metres, Measure::length, context.unit);
    };
    if (spec.rise_to_span && *spec.rise_to_span < 0.5)
        context.add(faults::profile_too_flat(table.at("rise_to_span"),
                                             short_number(*spec.rise_to_span), "0.5", "1"));
    if (!width)
        return;
    if (spec.rise && *spec.rise < *width / 2 - same_length)
        context.add(faults::profile_too_flat(table.at("rise"), length(*spec.rise),
                                             length(*width / 2), typed(*width)));
    if (spec.arc_radius && *spec.arc_radius < *width / 2 - same_length)
        context.add(faults::profile_too_flat(table.at("arc_radius"), length(*spec.arc_radius),
                                             length(*width / 2), typed(*width)));
}

// One [height, half-width] of the points; none, and diagnostics, where it is not one.
std::optional<std::pair<double, double>> read_point(const toml::node& node, const faults::At& at,
                                                    const std::string& example,
                                                    ReadContext& context) {
    constexpr const char* allowed = "a pair: height above the springline, half-width";
    const toml::array* pair = node.as_array();
    if (!pair || pair->size() != 2) {
        context.add(faults::wrong_type(at, pair ? "not made of pairs" : found_text(node), allowed,
                                       example));
        return std::nullopt;
    }
    const auto height =
        read_measure_value(*pair->get(0), {"points", 0, 60, 1.27, example}, Measure::length,
                           {at.path, place_of(*pair->get(0))}, context);
    const auto half =
        read_measure_value(*pair->get(1), {"points", 0, 15, 1.0922, example}, Measure::length,
                           {at.path, place_of(*pair->get(1))}, context);
    if (!height || !half)
        return std::nullopt;
    return std::pair{*height, *half};
}

void check_points(const TableReader& table, const toml::array& array, const ProfileSpec& spec,
                  std::optional<double> width, const std::string& example) {
    ReadContext& context = table.context();
    const auto& points = spec.points;
    const std::string path = table.at("points").path;
    const double half_span = width ? *width / 2 : points.front().second;
    const auto complain = [&](std::size_t i, const std::string& message) {
        context.add(faults::drawn_points({path, place_of(*array.get(i))}, message, example));
    };
    if (points.front().first > same_length)
        complain(0, "the drawn profile does not start at height 0");
    if (width && std::abs(points.front().second - half_span) > same_width)
        complain(0, "the drawn profile starts with a half-width of " +
                        length_text(points.front().second, context.unit) +
                        ", but half the width is " + length_text(half_span, context.unit));
    for (std::size_t i = 1; i < points.size(); ++i) {
        if (points[i].first < points[i - 1].first + same_length)
            complain(i, "the heights of the drawn profile do not rise here");
        if (points[i].second > points[i - 1].second)
            complain(i, "the half-width of the drawn profile grows with the height here");
    }
    if (points.back().second > same_length)
        complain(points.size() - 1, "the drawn profile does not end at half-width 0");
}

void read_points(TableReader& table, ProfileSpec& spec, std::optional<double> width) {
    constexpr const char* allowed = "2 to 200 pairs of height above the springline and half-width";
    const std::string example = typed_points(width, table.context().unit);
    const toml::array* array = table.array("points", allowed, example);
    if (!array)
        return;
    ReadContext& context = table.context();
    if (array->size() < 2 || array->size() > most_points) {
        context.add(faults::out_of_range(
            table.at("points"), std::to_string(array->size()) + " points", allowed, example));
        return;
    }
    const std::string path = table.at("points").path;
    for (const toml::node& node : *array) {
        const auto point = read_point(node, {path, place_of(node)}, example, context);
        if (!point)
            return;
        spec.points.push_back(*point);
    }
    check_points(table, *array, spec, width, example);
    // What the checks let pass by less than a millimetre is made exact.
    spec.points.front() = {0, width ? *width / 2 : spec.points.front().second};
    spec.points.back().second = 0;
}

} // namespace

ProfileSpec read_profile(TableReader& parent, std::optional<double> width, bool may_fit) {
    ProfileSpec spec;
    auto table = parent.table("profile", "{ kind = \"pointed\", rise = \"9 ft\" }", Need::must);
    if (!table)
        return spec;
    spec.place = table->place();
    const auto kind = table->choice<ProfileKind>("kind",
                                                 {{"pointed", ProfileKind::pointed},
                                                  {"round", ProfileKind::round},
                                                  {"catenary", ProfileKind::catenary},
                                                  {"parabola", ProfileKind::parabola},
                                                  {"drawn", ProfileKind::drawn}},
                                                 Need::must);
    if (may_fit)
        spec.rise = table->length_or_fit(rise_key, spec.fit_rise);
    else
        spec.rise = table->length(rise_key);
    spec.arc_radius = table->length(arc_key);
    spec.rise_to_span = table->measure(ratio_key, Measure::number);
    read_points(*table, spec, width);
    table->finish();
    if (!kind)
        return spec;
    spec.kind = *kind;
    check_keys(*table, *kind, width);
    if (*kind == ProfileKind::pointed)
        check_pointed(*table, spec, width);
    return spec;
}

} // namespace coilwright
