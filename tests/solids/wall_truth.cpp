#include "tests/solids/wall_truth.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

/// Under the cap the inside radius drops to 0: taken a hair below.
double room_radius(const DomeForm& form, double z) {
    return inside_radius(form, std::min(z, form.ceiling() - 2e-6));
}

double room_end(const DomeForm& form) {
    return form.cap_courses > 0 ? form.ceiling() : form.top();
}

/// Half of an opening's outline from its middle up; a circle is like above as below.
FallingCurve upper_outline(const OpeningForm& opening) {
    const double low = opening.head_kind == HeadKind::circle ? opening.springing : opening.sill;
    return FallingCurve(
        [&](double z) {
            return opening.head ? half_width(*opening.head, z - opening.springing)
                                : opening.half_width;
        },
        {low, std::max(low, opening.springing), opening.top});
}

/// Heights between the foot and `end` at which a face or an opening may bend or end.
std::vector<double> joints_of(const DomeForm& form, const std::vector<OpeningForm>& openings,
                              double end) {
    std::vector<double> joints{form.bottom(),
                               form.springline,
                               form.ceiling(),
                               form.top(),
                               form.course_middle(form.last_ring),
                               form.course_middle(form.courses()),
                               form.cap.line_z};
    if (form.cap_courses > 0)
        joints.push_back(form.springline + height_at(form.profile, form.last_ring_radius / 2));
    for (const OpeningForm& opening : openings)
        joints.insert(joints.end(), {opening.sill, opening.springing, opening.top});
    for (const auto& knot : form.profile.knots)
        joints.push_back(form.springline + knot.height);
    for (double& z : joints)
        z = std::clamp(z, form.bottom(), end);
    std::sort(joints.begin(), joints.end());
    return joints;
}

} // namespace

FallingCurve::FallingCurve(const std::function<double(double)>& value, std::vector<double> joints) {
    std::sort(joints.begin(), joints.end());
    const std::function<void(const Vec2&, const Vec2&, int)> add = [&](const Vec2& a, const Vec2& b,
                                                                       int depth) {
        if (depth < 40 && (depth < 4 || (b - a).norm() > 0.004)) {
            const double z = (a.y() + b.y()) / 2;
            const Vec2 middle(value(z), z);
            add(a, middle, depth + 1);
            add(middle, b, depth + 1);
        } else {
            points_.push_back(b);
        }
    };
    points_.emplace_back(value(joints.front()), joints.front());
    for (std::size_t i = 1; i < joints.size(); ++i)
        if (joints[i] - joints[i - 1] > 1e-9) {
            const Vec2 start = points_.back();
            add(start, Vec2(value(joints[i]), joints[i]), 0);
        }
}

double FallingCurve::distance(const Vec2& point, double reach) const {
    const auto key = [](const Vec2& p) { return p.y() - p.x(); };
    const auto by_key = [&](const Vec2& p, double k) { return key(p) < k; };
    auto from = std::lower_bound(points_.begin(), points_.end(), key(point) - 2 * reach, by_key);
    auto to = std::lower_bound(points_.begin(), points_.end(), key(point) + 2 * reach, by_key);
    if (from != points_.begin())
        --from;
    if (to == points_.end())
        --to;
    double least = (*from - point).norm();
    for (; from < to; ++from) {
        const Vec2 run = from[1] - from[0], off = point - from[0];
        const double share = std::clamp(off.dot(run) / run.squaredNorm(), 0.0, 1.0);
        least = std::min(least, (off - share * run).norm());
    }
    return least;
}

WallTruth::WallTruth(const DomeForm& form, const std::vector<OpeningForm>& openings)
    : form_(form), openings_(openings),
      inside_([&](double z) { return room_radius(form, z); }, joints_of(form, {}, room_end(form))),
      outside_([&](double z) { return outside_radius(form, z); }, joints_of(form, {}, form.top())) {
    for (const OpeningForm& opening : openings)
        outlines_.push_back(upper_outline(opening));
}

double WallTruth::off_dome(const Vec3& point, double reach) const {
    const Vec2 at(point.head<2>().norm(), point.z());
    return std::min({inside_.distance(at, reach), outside_.distance(at, reach),
                     std::abs(point.z() - form_.bottom()), std::abs(point.z() - form_.top()),
                     std::abs(point.z() - form_.ceiling())});
}

double WallTruth::off_opening(std::size_t i, const Vec3& point, double reach) const {
    const OpeningForm& opening = openings_[i];
    // Bearings run clockwise, angles about z the other way.
    const double angle = (form_.datum.degrees - opening.bearing.degrees) * radians_per_degree;
    const double across = std::abs(-std::sin(angle) * point.x() + std::cos(angle) * point.y());
    const bool circle = opening.head_kind == HeadKind::circle;
    const double z =
        circle ? opening.springing + std::abs(point.z() - opening.springing) : point.z();
    double off = outlines_[i].distance({across, z}, reach);
    if (!circle)
        off = std::min(off, std::abs(point.z() - opening.sill));
    if (opening.head_kind == HeadKind::square)
        off = std::min(off, std::abs(point.z() - opening.top));
    return off;
}

double WallTruth::area(double z) const {
    const double r = z < room_end(form_) ? room_radius(form_, z) : 0, R = outside_radius(form_, z);
    double area = pi * (R * R - r * r);
    // Twice the area under a circle's arc from the middle to a: a sqrt(r^2 - a^2) + r^2 asin(a /
    // r).
    const auto strip = [](double radius, double a) {
        return a * std::sqrt(radius * radius - a * a) + radius * radius * std::asin(a / radius);
    };
    for (const OpeningForm& opening : openings_) {
        const double a = half_width(opening, z);
        if (a > 0)
            area -= strip(R, a) - strip(r, a);
    }
    return area;
}

// Between joints the area is smooth but for roots at crowns and crests, which the sine stretches
// out; Simpson's rule then errs far less than any mesh.
double WallTruth::volume() const {
    const std::vector<double> joints = joints_of(form_, openings_, form_.top());
    double volume = 0;
    for (std::size_t i = 1; i < joints.size(); ++i) {
        const double middle = (joints[i] + joints[i - 1]) / 2,
                     half = (joints[i] - joints[i - 1]) / 2;
        if (half < 1e-7)
            continue;
        constexpr int count = 400;
        for (int k = 0; k <= count; ++k) {
            const double angle = pi * k / count - pi / 2;
            const double weight = k == 0 || k == count ? 1 : k % 2 != 0 ? 4 : 2;
            const double inset = half * (1 - 1e-9); // never on the far side of a joint
            volume += weight * (pi / count / 3) * half * std::cos(angle) *
                      area(middle + inset * std::sin(angle));
        }
    }
    return volume;
}

} // namespace coilwright
