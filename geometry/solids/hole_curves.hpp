// The curves in which an opening's faces meet a face of the wall.
#pragma once

#include "geometry/solids/hole_outline.hpp"
#include "geometry/solids/revolved_surface.hpp"

#include <vector>

namespace coilwright {

/// An opening's axis from the pole: unit vectors in plan along it and to its left.
struct HoleAxis {
    Vec2 along{1, 0}, left{0, 1};
};

/// One outline drawn onto one surface of revolution. A point of the outline, y to the left of the
/// axis and z up, lies on it at sqrt(r(z)^2 - y^2) along the axis.
class HoleCurves {
public:
    /// Keeps references to the wall and the outline. Precondition: |y| < r(z) all round.
    HoleCurves(const RevolvedSurface& wall, const HoleAxis& axis, const HoleOutline& outline,
               double tolerance);

    Vec3 point(const Vec2& in_outline) const;
    /// Points between the ends of a piece's curve: chords within the tolerance, no longer than
    /// `spacing` and the wall's own, shorter towards short pieces and beside bends of the wall.
    std::vector<Vec3> between_ends(std::size_t piece, double spacing) const;
    /// Length about which edges at a place of the outline are to have.
    double edge_about(const Vec2& in_outline) const;

private:
    /// A corner of the outline, or where it passes a bend of the wall, with the shorter of the
    /// stretches beside it.
    struct Event {
        Vec2 at;
        double stretch;
    };
    void add_events();

    const RevolvedSurface& wall_;
    HoleAxis axis_;
    const HoleOutline& outline_;
    double tolerance_;
    std::vector<std::vector<double>> ends_; // of each piece's stretches, by arc length
    std::vector<Event> events_;
};

} // namespace coilwright
