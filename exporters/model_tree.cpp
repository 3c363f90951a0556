#include "exporters/model_tree.hpp"

#include "geometry/base/slug.hpp"

#include <map>
#include <set>

namespace coilwright {

ModelTree model_tree(const SolidModel& model) {
    ModelTree tree;
    SlugTable names;
    std::map<std::string, int> places;
    const auto parent = [&](const std::string& group) {
        const auto found = places.find(group);
        return found == places.end() ? -1 : found->second;
    };
    for (const SolidGroup& group : model.groups) {
        tree.group_parents.push_back(parent(group.parent));
        places.emplace(group.slug, static_cast<int>(tree.groups.size()));
        tree.groups.push_back(names.unique(group.slug));
    }
    for (const SolidPart& part : model.parts) {
        tree.part_parents.push_back(parent(part.group));
        tree.parts.push_back(names.unique(part.slug));
    }
    tree.building = names.unique(model.name);
    return tree;
}

SolidModel printed_model(const SolidModel& model) {
    SolidModel printed{model.name, {}, {}};
    std::set<std::string> left_out, kept;
    for (const SolidPart& part : model.parts) {
        (part.printed ? kept : left_out).insert(part.group);
        if (part.printed)
            printed.parts.push_back(part);
    }
    for (const SolidGroup& group : model.groups)
        if (kept.count(group.slug) > 0 || left_out.count(group.slug) == 0)
            printed.groups.push_back(group);
    return printed;
}

std::vector<Material> materials_of(const SolidModel& model) {
    std::set<Material> used;
    for (const SolidPart& part : model.parts)
        used.insert(part.material);
    return {used.begin(), used.end()};
}

} // namespace coilwright
