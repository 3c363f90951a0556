// [rules.NAME]: the limits of the checks, built in and as a design changes them.
#include "geometry/design/read_tables.hpp"
#include "geometry/design/toml_text.hpp"

#include <cassert>

namespace coilwright {

namespace {

// Made from rules/*.toml when the program is built.
constexpr std::string_view built_in_texts[] = {
#include "check_rules.inc"
};

struct LimitKey {
    MeasureKey key;
    Measure measure;
};
struct RuleTable {
    const char* name;
    std::vector<LimitKey> keys;
};

constexpr double inch = metres_per_inch, square_foot = metres_per_foot * metres_per_foot;

LimitKey length(std::string_view name, double low, double high, double example) {
    return {{name, low, high, example}, Measure::length};
}
LimitKey area(std::string_view name, double high, double example) {
    return {{name, 0.01, high, example}, Measure::area};
}
LimitKey number(std::string_view name, double low, double high, double example) {
    return {{name, low, high, example}, Measure::number};
}

LimitKey pressure(std::string_view name, double low, double high, double example) {
    return {{name, low, high, example}, Measure::pressure};
}

LimitKey density(std::string_view name, double low, double high, double example) {
    return {{name, low, high, example}, Measure::density};
}

/// Every rule with the keys that it takes.
const std::vector<RuleTable>& rule_tables() {
    static const std::vector<RuleTable> tables{
        {"escape",
         {area("net_area", 10, 5.7 * square_foot), area("net_area_at_grade", 10, 5 * square_foot),
          length("grade_sill", 0, 5, 44 * inch), length("clear_height", 0.1, 3, 24 * inch),
          length("clear_width", 0.1, 3, 20 * inch), length("sill", 0, 5, 44 * inch)}},
        {"egress-door",
         {length("clear_width", 0.1, 3, 32 * inch), length("clear_height", 0.5, 4, 78 * inch)}},
        {"threshold", {length("step", 0, 1, 7.75 * inch)}},
        {"light", {number("share", 0, 1, 0.08)}},
        {"ventilation", {number("share", 0, 1, 0.04)}},
        {"permit",
         {area("area", 1000, 200 * square_foot), area("lower_area", 1000, 120 * square_foot)}},
        {"footing", {length("depth", 0, 3, 12 * inch)}},
        {"foundation", {number("least_courses", 0, 40, 2), number("most_courses", 0, 40, 3)}},
        {"base", {length("above_ground", 0, 3, 6 * inch)}},
        {"doors", {{{"between", 0, 180, 90}, Measure::degrees}, length("apart", 0, 10, 1.25)}},
        {"buttress", {length("above_springline", 0, 5, 18 * inch)}},
        {"lintel", {length("bearing", 0.05, 2, 12 * inch), number("carried", 0, 1, 0.5)}},
        {"cap", {number("hole", 0, 20, 2)}},
        {"tube-width", {number("of_diameter", 0, 1, 0.0833333)}},
        {"step-in", {number("share", 0, 1, 0.25), number("most", 0, 1, 0.5)}},
        {"wire",
         {number("strands", 0, 8, 2), number("narrow_strands", 0, 8, 1),
          length("narrow_lay_flat", 0, 1, 12 * inch)}},
        {"as-laid", {length("step_change", 0, 0.5, inch)}},
        {"vault", {length("span", 0.1, 10, 4 * metres_per_foot)}},
        {"fan-bag", {length("width", 0, 1, 4 * inch)}},
        {"joint", {length("slack", 0, 0.1, 0.01)}},
        {"rise", {number("rise_to_diameter", 0.1, 5, 1)}},
        {"rise-slack", {number("share", 0, 1, 0.15)}},
        {"coil", {number("radius_share", 0, 5, 0.5)}},
        {"head-cover", {number("courses", 0, 40, 3)}},
        {"passage", {length("clear_height", 0.5, 4, 78 * inch)}},
        {"daily-height", {length("built", 0.01, 5, 0.23)}},
        {"lift", {length("height", 0.01, 5, 30 * inch)}},
        {"geometric-safety", {number("least", 0.1, 10, 1), number("good", 0.1, 10, 2)}},
        {"overturning", {number("least", 0.1, 10, 1), number("good", 0.1, 10, 1.5)}},
        {"crushing", {number("least", 0.1, 20, 1), number("good", 0.1, 20, 3)}},
        {"lintel-beam", {pressure("timber_bending", 1e5, 1e8, 6894757)}},
        {"lintel-weight",
         {density("timber", 200, 1500, 600), density("concrete", 200, 4000, 2400)}},
        {"standing", {length("square", 0, 3, 30 * inch), length("tolerance", 0, 0.3, inch)}},
        {"doorway-pier", {length("from_jamb", 0, 3, 0.6)}},
        {"fill-strength", {pressure("best", 1e4, 1e8, 2.144e6)}},
        {"remedy",
         {length("door_width", 0.1, 3, 30 * inch), length("door_height", 0.5, 4, 74 * inch),
          length("window_width", 0.05, 3, 12 * inch), number("skylight", 0, 1, 0.333333),
          length("lay_flat", 0.1, 2, 24 * inch), number("diameter", 0, 1, 0.25)}},
        {"soil",
         {pressure("presumptive", 1e3, 1e7, 71820), pressure("presumptive_sand", 1e3, 1e7, 95760),
          pressure("presumptive_gravel", 1e3, 1e7, 143640)}},
        {"seismic-openings",
         {length("width", 0.1, 10, 1.2), length("pier", 0.1, 10, 1.2),
          number("share", 0, 1, 0.333333), length("lintel_bearing", 0.05, 2, 0.5)}},
    };
    return tables;
}

std::string unit_of(Measure measure) {
    return measure == Measure::length     ? "m"
           : measure == Measure::area     ? "m2"
           : measure == Measure::degrees  ? "deg"
           : measure == Measure::pressure ? "Pa"
           : measure == Measure::density  ? "kg/m3"
                                          : "";
}

void read_rule(TableReader& table, const RuleTable& rule, Limits& limits) {
    Limit as;
    const auto source = table.text("source", 200, "local building code");
    const auto edition = table.text("edition", 200, "2024");
    const auto section = table.text("section", 200, "section 12");
    const auto standing = table.choice<Standing>("standing", {{"read", Standing::read},
                                                              {"memory", Standing::memory},
                                                              {"reckoned", Standing::reckoned},
                                                              {"practice", Standing::practice},
                                                              {"judgement", Standing::judgement},
                                                              {"stated", Standing::stated}});
    // Values of the design's own must not go out under the name of the code.
    as.source = source.value_or("stated in the design");
    as.edition = edition.value_or("");
    as.section = section.value_or(source ? "" : std::string("[rules.") + rule.name + "]");
    as.standing = standing.value_or(Standing::stated);
    for (const LimitKey& key : rule.keys)
        if (const auto value = table.measure(key.key, key.measure)) {
            as.value = *value;
            as.unit = unit_of(key.measure);
            limits[std::string(rule.name) + "." + std::string(key.key.name)] = as;
        }
    table.finish();
}

void read_limits(TableReader& rules, Limits& limits) {
    for (const RuleTable& rule : rule_tables())
        if (auto table = rules.table(rule.name, "{ source = \"local building code\" }"))
            read_rule(*table, rule, limits);
}

/// The built-in limits, read once.
const Limits& built_in_limits() {
    static const Limits limits = [] {
        Limits read;
        for (const std::string_view text : built_in_texts) {
            const ParsedToml parsed = parse_toml(text);
            ReadContext context;
            TableReader root(parsed.table, "", {}, context);
            auto rules = root.table("rules", "");
            assert(parsed.faults.empty() && rules);
            read_limits(*rules, read);
            rules->finish();
            assert(context.take_diagnostics().empty());
        }
        return read;
    }();
    return limits;
}

} // namespace

void read_rules(TableReader& root, Design& design) {
    design.rules = built_in_headroom_rules();
    design.limits = built_in_limits();
    auto parent = root.table("rules", "{ habitable = { clear_height = \"7 ft\" } }");
    if (!parent)
        return;
    read_headroom_rules(*parent, design.rules);
    read_limits(*parent, design.limits);
    parent->finish();
}

} // namespace coilwright
