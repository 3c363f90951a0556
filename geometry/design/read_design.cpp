#include "geometry/design/read_design.hpp"

#include "geometry/design/faults.hpp"
#include "geometry/design/read_parsed_design.hpp"
#include "geometry/design/read_tables.hpp"

namespace coilwright {

namespace {

constexpr int design_format = 1;

// What the rest of the file hangs on: its version and its unit.
bool read_head_of_file(TableReader& root, Design& design) {
    ReadContext& context = root.context();
    // Of other versions than this one it is said that they are that; a missing one can only be
    // this.
    const int most = root.has("coilwright") ? 1000000 : design_format;
    if (const auto version = root.whole("coilwright", 1, most, design_format, Need::must);
        version && *version != design_format) {
        context.add(faults::wrong_version(root.at("coilwright"), std::to_string(*version)));
        return false;
    }
    set(design.name, root.text("name", 80, "Grain store", Need::must));
    const auto unit = root.choice<DisplayUnit>(
        "unit", {{"ft", DisplayUnit::feet}, {"m", DisplayUnit::metres}}, Need::must);
    set(design.unit, unit);
    context.unit = design.unit;
    context.unit_is_known = unit.has_value();
    return true;
}

void read_tables(TableReader& root, Design& design) {
    read_course(root, design);
    read_tubes(root, design);
    read_domes(root, design);
    read_openings(root, design);
    read_tunnels(root, design);
    read_buttresses(root, design);
    read_joins(root, design);
    read_sleeves(root, design);
    read_context_objects(root, design);
    read_finish(root, design);
    read_ground(root, design);
    read_trench(root, design);
    read_site(root, design);
    read_fills(root, design);
    read_wire(root, design);
    read_joint(root, design);
    read_compass(root, design);
    read_as_laid(root, design);
    read_rules(root, design);
}

void check_needed_tables(const TableReader& root, const Design& design) {
    ReadContext& context = root.context();
    if (!root.has("course") && !root.is_misspelt("course"))
        context.add(faults::missing_table("course", "one table [course] with `height`"));
    if (design.domes.empty() && !root.has("dome") && !root.is_misspelt("dome"))
        context.add(faults::missing_table("dome.north", "at least one dome, of any name"));
    // Names in a section that is not there at all are not each a fault of their own.
    for (const char* section : {"tube", "dome", "opening", "tunnel"})
        if (root.is_misspelt(section))
            context.lost_sections.insert(section);
    if (!root.has("dome"))
        context.lost_sections.insert("dome");
}

DesignReading read_tables_of(const ParsedToml& parsed) {
    DesignReading reading;
    if (!parsed.faults.empty()) {
        reading.diagnostics = parsed.faults;
        return reading;
    }
    ReadContext context;
    TableReader root(parsed.table, "", {1, 1}, context);
    if (read_head_of_file(root, reading.design)) {
        read_tables(root, reading.design);
        check_needed_tables(root, reading.design);
        root.finish_root();
        check_names(context);
        check_relations(reading.design, context);
    }
    mark_unsound(reading.design, context);
    reading.diagnostics = context.take_diagnostics();
    return reading;
}

} // namespace

DesignReading read_parsed_design(const ParsedToml& parsed) {
    DesignReading reading = read_tables_of(parsed);
    for (Diagnostic& diagnostic : reading.diagnostics)
        diagnostic.message = faults::as_sentence(std::move(diagnostic.message));
    return reading;
}

DesignReading read_design(std::string_view text) {
    return read_parsed_design(parse_toml(text));
}

} // namespace coilwright
