// Smooth surfaces that bound a solid, each with a flattening in which it can be triangulated.
#pragma once

#include "geometry/base/vec.hpp"

#include <vector>

namespace coilwright {

class SectionTrace;

/// A smooth surface with a map to a plane. The map keeps angles (nearly: that is all the triangles'
/// shape asks for) and is one to one on the part that is meshed. Triangles anticlockwise in the
/// plane have their normal on the surface's front side. Another kind of surface is one more class.
class Surface {
public:
    virtual ~Surface() = default;

    /// Where a point of the surface lies in the plane.
    virtual Vec2 flatten(const Vec3& point) const = 0;
    /// The inverse: a point exactly on the surface.
    virtual Vec3 point(const Vec2& flat) const = 0;
    /// Edge length, metres, at which triangles about here keep the tolerance; infinite on a plane.
    virtual double spacing(const Vec2& flat) const = 0;
    /// Distance of a point near the surface from it, metres.
    virtual double deviation(const Vec3& point) const = 0;
    /// The same place, moved onto a line where the surface bends if one lies within reach (metres),
    /// so that facets meet along it.
    virtual Vec2 drawn_to_bend(const Vec2& flat, double /*reach*/) const { return flat; }
    /// Where on the way from one point of the surface to another (0..1) such a line is passed;
    /// negative if none is.
    virtual double bend_between(const Vec3& /*from*/, const Vec3& /*to*/) const { return -1; }
    /// Points at the right spacing, in rows, that cover at least the box between two corners of the
    /// plane; the mesher takes those that suit its boundary.
    virtual std::vector<Vec2> pattern(const Vec2& low, const Vec2& high) const = 0;
    /// Its vertical section, if the surface is a section swept about an axis or along a line.
    virtual const SectionTrace* section() const { return nullptr; }
};

/// Edge length at which an equilateral triangle on a surface of two principal curvatures (1/m)
/// stays within a tolerance: along an edge h^2 k / 8, at the middle of a facet h^2 (k1 + k2) / 12.
/// Infinite where both are 0. k1 1, k2 0, tolerance 0.002 -> 0.126.
double edge_for_tolerance(double k1, double k2, double tolerance);

/// A horizontal plane, seen from above.
class LevelSurface final : public Surface {
public:
    explicit LevelSurface(double z) : z_(z) {}
    Vec2 flatten(const Vec3& point) const override { return point.head<2>(); }
    Vec3 point(const Vec2& flat) const override { return {flat.x(), flat.y(), z_}; }
    double spacing(const Vec2& flat) const override;
    double deviation(const Vec3& point) const override { return std::abs(point.z() - z_); }
    std::vector<Vec2> pattern(const Vec2&, const Vec2&) const override { return {}; }

private:
    double z_;
};

} // namespace coilwright
