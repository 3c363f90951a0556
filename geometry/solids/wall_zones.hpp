// What of a building can have to do with a change of some of its faces.
#pragma once

#include "geometry/plan/plan_bounds.hpp"
#include "geometry/solids/wall_topology.hpp"

#include <vector>

namespace coilwright {

class WallZones {
public:
    /// Keeps a reference to the faces.
    explicit WallZones(const WallFaces& faces);

    std::size_t terms() const { return terms_.size(); }
    /// Flags for tagged_wall: the terms whose bounds meet those of the faces' elements.
    std::vector<bool> around(const std::vector<int>& faces) const;
    /// Faces that start or end at a height, or open there.
    std::vector<int> changed_at(double z) const;

private:
    PlanBounds bounds_of(const SectionTag& tag) const;

    const WallFaces& faces_;
    std::vector<PlanBounds> terms_;
    std::vector<std::pair<double, int>> ends_; // heights at which a face ends, ascending
};

} // namespace coilwright
