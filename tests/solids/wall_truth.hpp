// The true wall of a dome, reckoned apart from the mesher: distances and volume to hold meshes to.
#pragma once

#include "geometry/base/vec.hpp"
#include "geometry/plan/wall_form.hpp"

#include <functional>
#include <vector>

namespace coilwright {

/// A curve as closely set points of it, whose first coordinate never grows while the second never
/// falls, so that second less first finds a place on it.
class FallingCurve {
public:
    /// value: the first coordinate by the second, between the least and the greatest of the joints,
    /// at which the curve may bend.
    FallingCurve(const std::function<double(double)>& value, std::vector<double> joints);
    /// Distance of a point from the curve, exact where it is under `reach`, else more than that.
    double distance(const Vec2& point, double reach) const;

private:
    std::vector<Vec2> points_;
};

/// The wall in the dome's own frame: pole at the origin, x along the datum.
class WallTruth {
public:
    WallTruth(const DomeForm& form, const std::vector<OpeningForm>& openings);

    /// Distance from the nearest of the dome's own faces, and from the faces of one opening.
    double off_dome(const Vec3& point, double reach) const;
    double off_opening(std::size_t opening, const Vec3& point, double reach) const;

    /// Volume by quadrature over height of the exact plan area, m3: ring less strips.
    double volume() const;

private:
    double area(double z) const;

    DomeForm form_;
    std::vector<OpeningForm> openings_;
    FallingCurve inside_, outside_;
    std::vector<FallingCurve> outlines_;
};

} // namespace coilwright
