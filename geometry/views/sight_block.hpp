// Parallel views from afar, and what stands before what in them.
#pragma once

#include "geometry/base/bearing.hpp"
#include "geometry/solids/mesh.hpp"

#include <cstdint>
#include <limits>
#include <vector>

namespace coilwright {

/// How a parallel view is seen. Unit vectors; right x up = toward, which points to the viewer.
struct SightFrame {
    Vec3 right{1, 0, 0}, up{0, 1, 0}, toward{0, 0, 1};
    /// x to the right, y up in the view, z towards the viewer.
    Vec3 of(const Vec3& point) const {
        return {right.dot(point), up.dot(point), toward.dot(point)};
    }
};
/// Level, from a place that lies along a bearing: from the south (180), east is on the right.
SightFrame sight_from(Bearing bearing);
/// From above, north up.
SightFrame sight_from_above();
/// From a bearing and `pitch` degrees above the level.
SightFrame sight_from(Bearing bearing, double pitch);

/// Whether points are hidden behind a mesh, by a grid over its triangles as projected: about a
/// microsecond a point.
class SightBlock {
public:
    /// What lies nearer to the viewer than `near` (along toward) is taken away before.
    /// Precondition: the mesh is closed; with all of it there, what hides a point has a facet
    /// towards the viewer that does.
    SightBlock(const Mesh& mesh, const SightFrame& frame,
               double near = std::numeric_limits<double>::infinity());
    const SightFrame& frame() const { return frame_; }
    double near() const { return near_; }
    /// Whether the mesh stands more than `clearance` metres before the point (in the view's frame).
    bool hides(const Vec3& projected, double clearance) const;

private:
    struct Facet {
        Vec3 a, b, c;
    };
    template <typename Visit>
    void visit_cells(const Facet& facet, const Visit& visit) const;

    SightFrame frame_;
    Vec2 low_{0, 0};
    double cell_ = 1;
    int columns_ = 0, rows_ = 0;
    double near_;
    std::vector<Facet> facets_;
    std::vector<std::uint32_t> first_;  // of each cell's in listed_, and the end
    std::vector<std::uint32_t> listed_; // facets, cell by cell
};

} // namespace coilwright
