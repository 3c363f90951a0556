// The names and the tree of a model as its files show them.
#pragma once

#include "geometry/solids/solid_model.hpp"

#include <string>
#include <vector>

namespace coilwright {

/// One name a node, unique among nodes of all kinds: the building is the root, then come its groups
/// and parts in the model's order. A parent is an index into the groups, or -1: the building.
struct ModelTree {
    std::string building;
    std::vector<std::string> groups, parts;
    std::vector<int> group_parents, part_parents;
};

/// A group or part that hangs under an unknown group hangs under the building.
ModelTree model_tree(const SolidModel& model);

/// What printers print: the parts with `printed`, and the groups that hold one of them, or had none
/// before.
SolidModel printed_model(const SolidModel& model);

/// The materials that parts of the model have, each once, in the order of the enumeration.
std::vector<Material> materials_of(const SolidModel& model);

} // namespace coilwright
