#include "geometry/solids/placement.hpp"

#include <cmath>

namespace coilwright {

void place(Mesh& mesh, const DomeForm& form) {
    place(mesh, form.at, along(form.datum));
}

void place(Mesh& mesh, const Vec2& origin, const Vec2& axis) {
    const Vec2 left(-axis.y(), axis.x());
    for (Vec3& v : mesh.vertices) {
        const Vec2 plan = origin + v.x() * axis + v.y() * left;
        v.head<2>() = plan;
    }
}

double angle_from_datum(const DomeForm& form, double bearing_degrees) {
    const double degrees = bearing_degrees - form.datum.degrees;
    return -std::round(degrees * 1e9) / 1e9 * radians_per_degree;
}

} // namespace coilwright
