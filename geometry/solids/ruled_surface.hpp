// The surface that a vertical section sweeps along a horizontal line: jambs and heads of openings,
// walls and vaults of tunnels, the faces of buttresses, plumb and battered.
#pragma once

#include "geometry/solids/section_trace.hpp"
#include "geometry/solids/surface.hpp"

namespace coilwright {

/// At height z the line that lies offset(z) from an origin in a horizontal direction, and runs
/// square to it. The front looks in that direction. Developed: first plane coordinate along the
/// line, to the left of the direction, second along the section.
class RuledSurface final : public Surface {
public:
    RuledSurface(Section section, double tolerance, const Vec2& origin, const Vec2& outward);
    Vec2 flatten(const Vec3& point) const override;
    Vec3 point(const Vec2& flat) const override;
    double spacing(const Vec2& flat) const override;
    double deviation(const Vec3& point) const override;
    Vec2 drawn_to_bend(const Vec2& flat, double reach) const override;
    double bend_between(const Vec3& from, const Vec3& to) const override;
    std::vector<Vec2> pattern(const Vec2& low, const Vec2& high) const override;
    const SectionTrace* section() const override { return &trace_; }

private:
    Section section_;
    Vec2 origin_, outward_, along_;
    SectionTrace trace_;
};

} // namespace coilwright
