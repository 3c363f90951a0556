#include "geometry/plan/plan_parts.hpp"

#include "geometry/plan/plan_outline.hpp"

#include <map>
#include <numeric>

namespace coilwright {

namespace {

constexpr double clearance = 1e-6; // metres between the bounds of parts

class Groups {
public:
    explicit Groups(std::size_t count) : parent_(count) {
        std::iota(parent_.begin(), parent_.end(), 0);
    }
    int find(int i) {
        while (parent_[static_cast<std::size_t>(i)] != i)
            i = parent_[static_cast<std::size_t>(i)] =
                parent_[static_cast<std::size_t>(parent_[static_cast<std::size_t>(i)])];
        return i;
    }
    void unite(int a, int b) { parent_[static_cast<std::size_t>(find(a))] = find(b); }

private:
    std::vector<int> parent_;
};

} // namespace

std::vector<PlanPart> separate_parts(const PlanExpression& expression) {
    const PlanOutline outline = make_outline(expression, clearance);
    Groups groups(expression.shapes.size());
    for (std::size_t i = 0; i < expression.shapes.size(); ++i)
        groups.unite(static_cast<int>(i), outline.same_as[i]);
    for (const auto& [i, j] : outline.neighbours)
        groups.unite(i, j);

    std::vector<PlanPart> parts;
    std::map<int, std::size_t> part_of; // group -> index
    std::map<int, int> place_in_part;   // shape -> index in its part
    const auto placed = [&](PlanPart& part, int shape) {
        const auto [place, is_new] =
            place_in_part.emplace(shape, static_cast<int>(part.shapes.size()));
        if (is_new) {
            part.shapes.push_back(shape);
            part.expression.shapes.push_back(expression.shapes[static_cast<std::size_t>(shape)]);
        }
        return place->second;
    };
    for (const PlanTerm& term : expression.terms) {
        const int group = groups.find(term.solid);
        const auto [index, is_new] = part_of.emplace(group, parts.size());
        if (is_new)
            parts.emplace_back();
        PlanPart& part = parts[index->second];
        PlanTerm copy{term.element, placed(part, term.solid), {}};
        for (const int less : term.less)
            if (groups.find(less) == group)
                copy.less.push_back(placed(part, less));
        part.expression.terms.push_back(std::move(copy));
    }
    return parts;
}

} // namespace coilwright
