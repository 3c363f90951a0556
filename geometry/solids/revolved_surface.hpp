// The surface that a meridian sweeps about a vertical axis.
#pragma once

#include "geometry/solids/section_trace.hpp"
#include "geometry/solids/surface.hpp"

namespace coilwright {

/// A meridian turned about a vertical axis; its radius, the section's offset, is positive and never
/// grows with height. The front is outside and above. Flattened by the conformal map of a surface
/// of revolution: bearing kept, radius exp(-integral of ds / r), so that higher points lie nearer
/// to the plane's origin.
class RevolvedSurface final : public Surface {
public:
    RevolvedSurface(Section meridian, double tolerance, const Vec2& axis = Vec2::Zero());
    Vec2 flatten(const Vec3& point) const override;
    Vec3 point(const Vec2& flat) const override;
    double spacing(const Vec2& flat) const override;
    double deviation(const Vec3& point) const override;
    Vec2 drawn_to_bend(const Vec2& flat, double reach) const override;
    double bend_between(const Vec3& from, const Vec3& to) const override;
    std::vector<Vec2> pattern(const Vec2& low, const Vec2& high) const override;
    const SectionTrace* section() const override { return &trace_; }

    double radius_at(double z) const { return meridian_.offset(z); }
    double spacing_at(double z) const { return trace_.spacing_at(z); }
    const std::vector<double>& kinks() const { return trace_.kinks(); }
    double way_to_kink(double z) const { return trace_.way_to_kink(z); }

private:
    double plane_radius_at(double z) const;
    double height_at(double plane_radius) const;

    Section meridian_;
    Vec2 axis_;
    SectionTrace trace_;
    std::vector<double> plane_radii_; // per node of the trace
};

} // namespace coilwright
