// Edges of solids as they are seen from afar: creases and the outlines of round surfaces, with what
// stands before them taken away.
#pragma once

#include "geometry/base/bearing.hpp"
#include "geometry/solids/mesh.hpp"

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
    SightBlock(const Mesh& mesh, const SightFrame& frame,
               double near = std::numeric_limits<double>::infinity());
    /// Whether the mesh stands more than `clearance` metres before the point (in the view's frame).
    bool hides(const Vec3& projected, double clearance) const;

private:
    struct Facet {
        Vec3 a, b, c;
    };
    Vec2 low_{0, 0};
    double cell_ = 1;
    int columns_ = 0, rows_ = 0;
    double near_;
    std::vector<Facet> facets_;
    std::vector<std::vector<int>> cells_;
};

/// A line in the view's frame (x right, y up), as seen. `depth` is that of its points.
struct SeenLine {
    std::vector<Vec2> points;
    std::vector<double> depths;
};

/// Visible edges of a closed mesh: its creases (facets that meet at over 30 degrees) and the
/// outlines of its round surfaces, less what is hidden or nearer than `near`. `tolerance` is that
/// of the mesh. Pieces are joined into lines; ends are found
/// within 1 mm, gaps under 10 mm may be missed.
std::vector<SeenLine> seen_edges(const Mesh& mesh, const SightFrame& frame, double tolerance,
                                 double near = std::numeric_limits<double>::infinity());

} // namespace coilwright
