// What bounds the wall at a height, without where: which faces meet in which corners. Between two
// heights at which that changes every corner sweeps a curve, known in closed form.
#pragma once

#include "geometry/solids/wall_faces.hpp"

#include <compare>
#include <optional>
#include <vector>

namespace coilwright {

/// A crossing of two faces, a < b. Two circles cross twice: +1 to the left of the way from a's
/// centre to b's; a circle and a line too: +1 the further along the line. Two lines: 0.
struct CornerKey {
    int a = 0, b = 0, branch = 0;
    auto operator<=>(const CornerKey&) const = default;
};

/// Where a crossing is; `depth` tells how far the two are from parting there: metres by which they
/// overlap, negative where they do not meet (`at` is then where they come nearest).
struct CornerPlace {
    Vec2 at{0, 0};
    double depth = 0;
};
CornerPlace corner_at(const WallFaces& faces, const CornerKey& key, double z);

/// One side of one face: the wall lies inside the shape (even) or outside it (odd). Walked with the
/// wall on the left: odd ones against the face's own direction.
inline int patch_of(int face, bool outside) {
    return 2 * face + (outside ? 1 : 0);
}
inline int face_of(int patch) {
    return patch / 2;
}
inline bool walked_back(int patch) {
    return patch % 2 != 0;
}

/// An edge from one corner to another; a whole circle has -1 for both.
struct WallEdge {
    int patch = 0;
    int from = -1, to = -1;
    auto operator<=>(const WallEdge&) const = default;
};

/// Equal where nothing but places differs.
struct WallTopology {
    std::vector<CornerKey> corners; // ascending
    std::vector<WallEdge> edges;    // ascending
    bool operator==(const WallTopology&) const = default;
};

/// The wall's boundary at a height, not one of those at which it changes; nothing where no
/// arithmetic can tell, or it touches itself in a corner. Of the terms that are wanted alone (see
/// tagged_wall), empty: of all.
std::optional<WallTopology> wall_topology(const WallFaces& faces, double z,
                                          const std::vector<bool>& wanted = {});

} // namespace coilwright
