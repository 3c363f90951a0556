#include "geometry/statics/membrane.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

/// d2x/dy2. Of a drawn curve by differences: its pieces are cubics.
double bend(const Profile& profile, double y) {
    const double rho = profile.radius, h = profile.rise, a = profile.half_span;
    switch (profile.kind) {
    case ProfileKind::pointed:
    case ProfileKind::round: {
        const double root = std::sqrt(rho * rho - y * y);
        return -rho * rho / (root * root * root);
    }
    case ProfileKind::segmental: {
        const double up = y + rho - h, root = std::sqrt(rho * rho - up * up);
        return -rho * rho / (root * root * root);
    }
    case ProfileKind::catenary: {
        const double u = 1 + (h - y) / rho, root = std::sqrt(u * u - 1);
        return -u / (rho * root * root * root);
    }
    case ProfileKind::parabola:
        return -a / (4 * h * h) * std::pow(1 - y / h, -1.5);
    case ProfileKind::drawn:
        break;
    }
    const double d = 1e-5 * h, low = std::max(0.0, y - d), high = std::min(h, y + d);
    return (slope(profile, high) - slope(profile, low)) / (high - low);
}

} // namespace

MembraneForces spherical_membrane(double skin_weight, double radius, double phi) {
    const double cosine = std::cos(phi), qr = skin_weight * radius;
    return {qr / (1 + cosine), qr * (cosine - 1 / (1 + cosine))};
}

MembraneForces conical_membrane(double skin_weight, double slant, double half_angle) {
    const double cosine = std::cos(half_angle), sine = std::sin(half_angle);
    return {skin_weight * slant / (2 * cosine), skin_weight * slant * sine * sine / cosine};
}

MembraneForces membrane_forces(const MembraneShell& shell, double height) {
    const Profile& profile = shell.profile;
    const double r = half_width(profile, height) + shell.offset;
    const double lean = slope(profile, height); // dx/dy <= 0
    const double stretch = std::sqrt(1 + lean * lean);
    const double skin = surface_between(profile, height, shell.top) / (2 * pi) +
                        shell.offset * length_between(profile, height, shell.top);
    const double load = shell.skin_weight * skin +
                        shell.ring_load * (half_width(profile, shell.top) + shell.offset);
    return {load * stretch / r,
            -shell.skin_weight * r * lean + load * bend(profile, height) / stretch};
}

std::optional<double> hoop_turns_at(const MembraneShell& shell) {
    constexpr int steps = 256;
    double above = shell.top * (1 - 0.5 / steps);
    if (membrane_forces(shell, above).hoop < 0)
        return std::nullopt;
    for (int i = 1; i <= steps; ++i) {
        double below = shell.top * (1 - (i + 0.5) / steps);
        below = std::max(below, 0.0);
        if (membrane_forces(shell, below).hoop >= 0) {
            above = below;
            continue;
        }
        for (int k = 0; k < 60; ++k) {
            const double middle = (above + below) / 2;
            (membrane_forces(shell, middle).hoop >= 0 ? above : below) = middle;
        }
        return above;
    }
    return std::nullopt;
}

std::vector<CourseMembrane> dome_membrane(const DomeForm& dome,
                                          const std::vector<WallCourse>& courses) {
    std::vector<CourseMembrane> result;
    double load = 0, thrust_above = 0;
    for (auto course = courses.rbegin(); course != courses.rend(); ++course) {
        load += course->weight;
        if (course->cap || course->number > dome.last_ring)
            continue;
        if (course->bottom < dome.springline - height_tie)
            break;
        const double y = course->bottom - dome.springline;
        // At the springline itself the curve's own slope, not that of the plumb wall below it.
        const double lean = slope(dome.profile, std::max(y, 1e-9));
        const double r = half_width(dome.profile, y) + (course->outside - course->inside) / 2;
        const double skin = (course->top - course->bottom) * std::sqrt(1 + lean * lean);
        CourseMembrane row;
        row.course = course->number;
        row.thrust = load * std::abs(lean);
        row.forces.meridional = load * std::sqrt(1 + lean * lean) / r;
        row.forces.hoop = (row.thrust - thrust_above) / skin;
        thrust_above = row.thrust;
        result.push_back(row);
    }
    std::reverse(result.begin(), result.end());
    return result;
}

} // namespace coilwright
