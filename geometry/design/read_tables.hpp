// Readers of the tables of a design file, one source file a group; the order of the calls is free.
#pragma once

#include "geometry/design/design.hpp"
#include "geometry/design/table_reader.hpp"

#include <optional>

namespace coilwright {

// Settings (read_settings.cpp).
void read_course(TableReader& root, Design& design);
void read_compass(TableReader& root, Design& design);
void read_as_laid(TableReader& root, Design& design);
void read_finish(TableReader& root, Design& design);

// Ground, loads and joints (read_site.cpp).
void read_ground(TableReader& root, Design& design);
void read_trench(TableReader& root, Design& design);
void read_site(TableReader& root, Design& design);
void read_joint(TableReader& root, Design& design);
void read_wire(TableReader& root, Design& design);

// Materials (read_materials.cpp).
void read_tubes(TableReader& root, Design& design);
void read_fills(TableReader& root, Design& design);

// Elements.
void read_domes(TableReader& root, Design& design);    // read_domes.cpp
void read_openings(TableReader& root, Design& design); // read_openings.cpp
void read_tunnels(TableReader& root, Design& design);  // read_additions.cpp
void read_buttresses(TableReader& root, Design& design);
void read_joins(TableReader& root, Design& design);
void read_sleeves(TableReader& root, Design& design);
void read_context_objects(TableReader& root, Design& design); // read_context_objects.cpp

/// Key `at`: two lengths east and north of the design's origin (read_domes.cpp).
std::optional<Vec2> read_place(TableReader& table);

/// The profile of a dome or tunnel (read_profile.cpp); `width` is its inside diameter or width
/// where it is known. `may_fit`: rise = "fit" is allowed.
ProfileSpec read_profile(TableReader& parent, std::optional<double> width, bool may_fit);

/// Keys `side` and `along` of what may stand in a tunnel's wall (read_openings.cpp).
void read_place_in_tunnel(TableReader& table, TunnelSide& side, double& along,
                          SourcePlace& along_place);

/// Built-in headroom rules and limits of the checks, overridden by [rules.USE] and [rules.NAME]
/// (read_rules.cpp).
void read_rules(TableReader& root, Design& design);
// Of these, the headroom rules (read_headroom_rules.cpp).
const std::map<std::string, HeadroomRule>& built_in_headroom_rules();
void read_headroom_rules(TableReader& rules, std::map<std::string, HeadroomRule>& into);

// What holds between tables, when all are read.
void check_names(ReadContext& context);                     // check_names.cpp
void check_relations(Design& design, ReadContext& context); // check_relations.cpp
/// Openings and sleeves by what they stand in, a dome or a tunnel: the keys that each needs and
/// takes. Sets the bearings of those in tunnels. After tunnels have theirs.
void check_hosts(Design& design, ReadContext& context); // check_hosts.cpp
/// Sets `sound` of every element by the faults found in it and in what it stands on.
void mark_unsound(Design& design, const ReadContext& context); // check_relations.cpp

/// Reads every table [SECTION.NAME] into a list ordered by id, declares the ids and checks them.
template <typename Element, typename Read>
void read_elements(TableReader& root, const char* section, std::vector<Element>& list, Read read) {
    for (auto& [id, table] : root.named_tables(section)) {
        if (!is_id(id))
            table.context().add(faults::bad_id({table.path(), table.place()}, id));
        table.context().ids.push_back({section, id, {table.path(), table.place()}});
        Element element = read(table);
        element.id = id;
        element.place = table.place();
        table.finish();
        list.push_back(std::move(element));
    }
}

} // namespace coilwright
