#include "geometry/plan/contact.hpp"

#include <algorithm>

namespace coilwright {

namespace {

struct Band {
    double from, to;
};

Band band_of(const DomeForm& dome, int n) {
    const double z = dome.course_middle(n);
    const double inside = inside_radius(dome, z);
    const bool is_cap = n > dome.last_ring + dome.curb_courses;
    return {inside, is_cap ? outside_radius(dome, z) : inside + ring_width(dome, z)};
}

/// What of course n lies over the course below, as radii.
Band bearing_of(const DomeForm& dome, int n) {
    const Band own = band_of(dome, n);
    if (n == 1)
        return own;
    const Band below = band_of(dome, n - 1);
    return {std::max(own.from, below.from), std::min(own.to, below.to)};
}

} // namespace

double bearing_overlap(const DomeForm& dome, int n) {
    const Band bearing = bearing_of(dome, n);
    return bearing.to - bearing.from;
}

double contact_overlap(const DomeForm& dome, int n, TubeEdge edge) {
    const Band bearing = bearing_of(dome, n);
    const double round = edge == TubeEdge::square ? 0 : dome.course_height / 2;
    const bool has_inner_edge = bearing.from > 0;
    return bearing.to - bearing.from - round * (has_inner_edge ? 2 : 1);
}

int first_without_contact(const DomeForm& dome, TubeEdge edge) {
    for (int n = 1; n <= dome.courses(); ++n)
        if (contact_overlap(dome, n, edge) <= 0)
            return n;
    return 0;
}

} // namespace coilwright
