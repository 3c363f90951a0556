// The curves on a building's shell: corners swept between levels and pieces of levels, each turned
// into vertices once for both faces that it bounds.
#pragma once

#include "geometry/solids/chain.hpp"
#include "geometry/solids/mesh.hpp"
#include "geometry/solids/wall_levels.hpp"

#include <memory>
#include <vector>

namespace coilwright {

/// One curve. Faces are numbered: patches of the wall (patch_of), then the horizontal faces.
struct ShellCurve {
    bool swept = false;
    // Swept: a corner between two heights; breaks, ascending, are where it bends.
    CornerKey corner;
    double low = 0, high = 0;
    std::vector<double> breaks;
    // A piece of a level.
    PlanWay way;
    double z = 0;

    int from = -1, to = -1; // vertices of the mesh; -1: a whole circle
    std::vector<int> faces; // that it bounds
    Chain chain;
    std::vector<std::uint32_t> break_vertices; // per break
};

/// A horizontal face: a sill, a foot, the top of a buttress, a ceiling.
struct HorizontalFace {
    double z = 0;
    bool under = false; // seen from below
    std::string element;
};

/// Faces with their surfaces and the curves that bound each.
struct ShellPlan {
    std::vector<ShellCurve> curves;
    std::vector<std::vector<int>> curves_of;        // per face
    std::vector<std::unique_ptr<Surface>> surfaces; // per face of the wall, null if unused
    std::vector<HorizontalFace> horizontals;
    std::vector<WallSlab> slabs;
    Mesh mesh; // so far the ends of curves, then all their vertices
    std::optional<ShapeFault> fault;
    std::string first, second;

    /// The horizontal face of a number, or null.
    const HorizontalFace* horizontal(int face) const {
        const auto walls = static_cast<int>(2 * surfaces.size());
        return face < walls ? nullptr : &horizontals[static_cast<std::size_t>(face - walls)];
    }
    std::string element(const WallFaces& faces, int face) const;
};

/// Finds every curve and its ends.
ShellPlan plan_shell(const WallFaces& faces, double tolerance);

/// Samples every curve.
void sample_curves(const WallFaces& faces, double tolerance, ShellPlan& plan);

/// A place on a curve by its stretch (between breaks) and a share of it; even smoothly at both ends
/// of a swept one.
Vec3 place_on(const WallFaces& faces, const ShellCurve& curve, std::size_t stretch, double share);
inline std::size_t stretches_of(const ShellCurve& curve) {
    return curve.breaks.size() + 1;
}

} // namespace coilwright
