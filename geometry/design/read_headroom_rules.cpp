#include "geometry/design/contradictions.hpp"
#include "geometry/design/read_tables.hpp"
#include "geometry/design/toml_text.hpp"

#include <cassert>

namespace coilwright {

namespace {

// Made from headroom_rules.toml when the program is built.
constexpr std::string_view built_in_text =
#include "headroom_rules.inc"
    ;

const std::vector<std::string>& uses() {
    static const std::vector<std::string> words{word(Use::habitable), word(Use::bath),
                                                word(Use::shower), word(Use::tiny_house),
                                                word(Use::store)};
    return words;
}

// A rule as the table changes it.
HeadroomRule read_rule(TableReader& table, const HeadroomRule& built_in) {
    HeadroomRule rule = built_in;
    const Need need = built_in.clear_height > 0 ? Need::may : Need::must;
    const auto source = table.text("source", 200, "local building code, 2024");
    const auto section = table.text("section", 200, "section 12");
    set(rule.clear_height, table.length({"clear_height", 0.5, 10, 2.1336}, need));
    if (const auto value = table.length({"low_height", 0, 10, 1.524}))
        rule.low_height = value;
    if (const auto value = table.measure({"required_area", 0.1, 1000, 6.5032128}, Measure::area))
        rule.required_area = value;
    set(rule.share, table.measure({"share", 0, 1, 0.5}, Measure::number));
    if (const auto value = table.length({"clear_square", 0.1, 20, 0.762}))
        rule.clear_square = value;
    if (const auto value = table.length({"least_dimension", 0.1, 30, 2.1336}))
        rule.least_dimension = value;
    table.finish();
    // Values of the design's own must not go out under the name of the code.
    rule.source = source.value_or("stated in the design");
    rule.section = section.value_or("[rules." + rule.use + "]");
    ReadContext& context = table.context();
    if (!context.is_faulty(table.path()) && rule.low_height.value_or(0) > rule.clear_height)
        context.add(faults::low_height_over_clear(
            table.at(table.has("low_height") ? "low_height" : "clear_height"), *rule.low_height,
            rule.clear_height, context.unit));
    return rule;
}

void read_all(TableReader& parent, std::map<std::string, HeadroomRule>& rules) {
    for (const std::string& use : uses()) {
        auto table = parent.table(use, "{ clear_height = \"7 ft\" }");
        if (!table)
            continue;
        HeadroomRule built_in;
        if (const auto found = rules.find(use); found != rules.end())
            built_in = found->second;
        built_in.use = use;
        rules[use] = read_rule(*table, built_in);
    }
}

} // namespace

const std::map<std::string, HeadroomRule>& built_in_headroom_rules() {
    static const std::map<std::string, HeadroomRule> rules = [] {
        const ParsedToml parsed = parse_toml(built_in_text);
        ReadContext context;
        TableReader root(parsed.table, "", {}, context);
        auto parent = root.table("rules", "");
        assert(parsed.faults.empty() && parent);
        std::map<std::string, HeadroomRule> read;
        read_all(*parent, read);
        parent->finish();
        assert(context.take_diagnostics().empty());
        return read;
    }();
    return rules;
}

void read_headroom_rules(TableReader& rules, std::map<std::string, HeadroomRule>& into) {
    read_all(rules, into);
}

} // namespace coilwright
