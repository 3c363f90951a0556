// The face of the plaster: a profile offset inward along its normal.
//
// What is left inside is every point at least p from the wall's face, stem included. At a height H
// its half-width is therefore the least of x(y) - sqrt(p^2 - (y - H)^2) over the heights y that a
// disc of radius p about a point of the face can reach. That is the trimmed offset whatever the
// branches of the parallel curve do. The face never widens upwards, so only y >= H can decide, and
// with y = H + p sin(psi) the least value lies at psi = 0 or where sin(psi) + x'(y) cos(psi) grows
// through 0.
//
// The catenary and the parabola bend more the nearer they come to the crown, so the centres of
// their curvature lie beyond the pole: short of the pole no two normals of one side meet, each
// point has one nearest point of the face, and the parallel curve narrows steadily. One bracket
// finds it. A drawn curve can bend anywhere, and is searched.
#include "geometry/plan/profile.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

namespace coilwright {

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

// Below 0 where nothing is left at that height.
class Offset {
public:
    Offset(const Profile& profile, double p) : profile_(profile), p_(p) {}

    double half_width_at(double height) const {
        const double a = profile_.half_span, h = profile_.rise, radius = profile_.radius;
        switch (profile_.kind) {
        case ProfileKind::pointed:
        case ProfileKind::round:
            return arc_half_width(height, 0, radius - a);
        case ProfileKind::segmental:
            return arc_half_width(height, h - radius, 0);
        case ProfileKind::catenary:
        case ProfileKind::parabola:
            return steady_half_width(height);
        case ProfileKind::drawn:
            break;
        }
        return searched_half_width(height);
    }

    /// Height of the parallel curve where it is `half_width` wide; catenary and parabola alone.
    double steady_height(double half_width) const {
        double wide = 0, narrow = profile_.rise; // heights of the foot on the face
        for (int step = 0; step < 200; ++step) {
            const double middle = wide + (narrow - wide) / 2;
            if (middle <= wide || middle >= narrow)
                break;
            const double x = coilwright::half_width(profile_, middle) - p_ * level(middle);
            (x > half_width ? wide : narrow) = middle;
        }
        const double share = level(wide);
        return wide - p_ * std::sqrt((1 - share) * (1 + share));
    }

private:
    // Arc of `radius` about (-inset, centre); the offset arc has the same centre.
    double arc_half_width(double height, double centre, double inset) const {
        const double plumb = profile_.half_span - p_;
        if (height <= centre)
            return plumb;
        const double radius = profile_.radius - p_, above = height - centre;
        if (above > radius)
            return -infinity;
        return std::min(plumb, std::sqrt((radius - above) * (radius + above)) - inset);
    }

    // The level part of the face's unit normal: 1 on a plumb face, 0 at a level crown.
    double level(double height) const { return 1 / std::hypot(1, slope(profile_, height)); }

    double steady_half_width(double height) const {
        const double plumb = profile_.half_span - p_;
        if (height + p_ > profile_.rise)
            return -infinity; // the apex lies nearer than p
        if (height + p_ <= 0)
            return plumb;
        double low = height < 0 ? std::asin(-height / p_) + 1e-12 : 0, high = pi / 2;
        if (growing(height, low))
            return plumb;
        for (int step = 0; step < 60 && high - low > 1e-15; ++step) {
            const double middle = (low + high) / 2;
            (growing(height, middle) ? high : low) = middle;
        }
        return std::min(plumb, reach(height, low));
    }

    double reach(double height, double psi) const {
        return half_width(profile_, height + p_ * std::sin(psi)) - p_ * std::cos(psi);
    }

    bool growing(double height, double psi) const {
        const double slope_there = slope(profile_, height + p_ * std::sin(psi));
        return std::sin(psi) + slope_there * std::cos(psi) >= 0;
    }

    double searched_half_width(double height) const {
        if (height + p_ > profile_.rise)
            return -infinity; // the apex lies nearer than p
        if (height + p_ <= 0)
            return profile_.half_span - p_;
        std::vector<double> psi = starts(height);
        double least = reach(height, psi.front());
        for (std::size_t i = 0; i + 1 < psi.size(); ++i) {
            least = std::min(least, reach(height, psi[i + 1]));
            // Stand a hair inside the interval: slopes jump at its ends.
            double low = psi[i] + 1e-12, high = psi[i + 1] - 1e-12;
            if (low >= high || growing(height, low) || !growing(height, high))
                continue;
            for (int step = 0; step < 60 && high - low > 1e-15; ++step) {
                const double middle = (low + high) / 2;
                (growing(height, middle) ? high : low) = middle;
            }
            least = std::min(least, reach(height, low));
        }
        return least;
    }

    // Angles between which the search looks for one least value each: even steps, and every height
    // where the slope or its change jumps.
    std::vector<double> starts(double height) const {
        constexpr int steps = 24;
        std::vector<double> psi;
        for (int i = 0; i <= steps; ++i)
            psi.push_back(pi / 2 * i / steps);
        const auto add = [&](double y) {
            if (y > height && y < height + p_)
                psi.push_back(std::asin((y - height) / p_));
        };
        add(0);
        for (std::size_t i = 0; i + 1 < profile_.knots.size(); ++i)
            for (int quarter = 0; quarter < 4; ++quarter)
                add(profile_.knots[i].height +
                    quarter * (profile_.knots[i + 1].height - profile_.knots[i].height) / 4);
        std::sort(psi.begin(), psi.end());
        return psi;
    }

    const Profile& profile_;
    double p_;
};

} // namespace

double offset_half_width(const Profile& profile, double p, double height) {
    if (p <= 0)
        return half_width(profile, height);
    return std::max(0.0, Offset(profile, p).half_width_at(height));
}

double offset_height_at(const Profile& profile, double p, double half_width) {
    const double wanted = std::max(0.0, half_width);
    if (wanted > profile.half_span - p)
        return -infinity;
    if (p <= 0)
        return height_at(profile, wanted);
    const double a = profile.half_span, radius = profile.radius;
    if (profile.kind == ProfileKind::pointed || profile.kind == ProfileKind::round)
        return std::sqrt(std::max(0.0, (a - p - wanted) * (2 * radius - a - p + wanted)));
    if (profile.kind == ProfileKind::segmental)
        return profile.rise - radius + std::sqrt((radius - p - wanted) * (radius - p + wanted));
    const Offset offset(profile, p);
    if (profile.kind != ProfileKind::drawn)
        return offset.steady_height(wanted);
    // The offset's half-width does not grow with height.
    double low = -p, high = profile.rise - p;
    if (offset.half_width_at(high) >= wanted)
        return high;
    while (high - low > 1e-13 * (1 + profile.rise)) {
        const double middle = low + (high - low) / 2;
        (offset.half_width_at(middle) >= wanted ? low : high) = middle;
    }
    return low;
}

} // namespace coilwright
