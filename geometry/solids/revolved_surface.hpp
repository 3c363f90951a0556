// The surface that a meridian sweeps about a vertical axis.
#pragma once

#include "geometry/solids/surface.hpp"

#include <functional>
#include <vector>

namespace coilwright {

/// A meridian: radius, positive, as a function of height; it never grows with height.
struct Meridian {
    std::function<double(double)> radius;
    double low = 0, high = 0;   // heights between which the surface reaches
    std::vector<double> breaks; // heights inside at which its direction or curvature may jump
};

/// A meridian turned about the vertical through the origin; the front is outside and above.
/// Flattened by the conformal map of a surface of revolution: bearing kept, radius
/// exp(-integral of ds / r), so that higher points lie nearer to the plane's origin.
class RevolvedSurface final : public Surface {
public:
    RevolvedSurface(Meridian meridian, double tolerance);
    Vec2 flatten(const Vec3& point) const override;
    Vec3 point(const Vec2& flat) const override;
    double spacing(const Vec2& flat) const override;
    double deviation(const Vec3& point) const override;
    Vec2 drawn_to_bend(const Vec2& flat, double reach) const override;
    double bend_between(const Vec3& from, const Vec3& to) const override;
    std::vector<Vec2> pattern(const Vec2& low, const Vec2& high) const override;

    double radius_at(double z) const { return meridian_.radius(z); }
    double spacing_at(double z) const;
    double low() const { return meridian_.low; }
    double high() const { return meridian_.high; }
    /// The breaks at which the meridian's direction does jump, upward.
    const std::vector<double>& kinks() const { return kinks_; }
    /// Way along the meridian from a height to the nearest of them; infinite if there is none.
    double way_to_kink(double z) const;

private:
    // Places along the meridian, close enough for a straight line between two to be taken for the
    // curve itself when distances from it are measured.
    struct Node {
        double z, radius, arc, plane_radius, spacing;
        bool is_break;
    };
    void trace(double tolerance);
    void refine(const Node& from, const Node& to, double error, double longest, int depth);
    void set_plane_radii();
    void set_spacings(double tolerance);
    void limit_between_kinks();
    double between(double z, double Node::*value) const;

    Meridian meridian_;
    std::vector<Node> nodes_;
    std::vector<double> kinks_;
};

} // namespace coilwright
