#include "geometry/solids/placement.hpp"

#include <cmath>

namespace coilwright {

void place(Mesh& mesh, const DomeForm& form) {
    const Vec2 x = along(form.datum), y = -right_of(form.datum);
    for (Vec3& v : mesh.vertices) {
        const Vec2 plan = form.at + v.x() * x + v.y() * y;
        v.head<2>() = plan;
    }
}

double angle_from_datum(const DomeForm& form, double bearing_degrees) {
    const double degrees = bearing_degrees - form.datum.degrees;
    return -std::round(degrees * 1e9) / 1e9 * radians_per_degree;
}

} // namespace coilwright
