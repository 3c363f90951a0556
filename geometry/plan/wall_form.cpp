#include "geometry/plan/wall_form.hpp"

#include "geometry/plan/section.hpp"
#include "geometry/plan/tunnel_form.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace coilwright {

namespace {

Bearing datum_bearing(const Design& design, const Dome& dome) {
    if (const Opening* opening = find_opening(design, dome.datum))
        return opening->bearing;
    if (const Tunnel* tunnel = find_tunnel(design, dome.datum))
        return bearing_from(*tunnel, dome.id).value_or(tunnel->bearing);
    // None named: the smallest bearing; elements come sorted by id, so ties fall to the first id.
    std::optional<double> smallest;
    const auto offer = [&](Bearing bearing) {
        const double degrees = turned_into_circle(bearing.degrees);
        if (!smallest || degrees < *smallest)
            smallest = degrees;
    };
    for (const Opening& opening : design.openings)
        if (opening.sound && opening.in == dome.id)
            offer(opening.bearing);
    for (const Tunnel& tunnel : design.tunnels)
        if (const auto bearing = bearing_from(tunnel, dome.id); tunnel.sound && bearing)
            offer(*bearing);
    return {smallest.value_or(0.0)};
}

/// The top of the last course whose middle lies below a height.
double joint_over(const DomeForm& form, double height) {
    int n = 0;
    while (n < most_courses && form.course_middle(n + 1) < height - height_tie)
        ++n;
    return form.course_bottom(n + 1);
}

void count_rings(DomeForm& form, double skylight_radius, double least_radius) {
    for (int n = 1; n <= most_courses; ++n) {
        const double z = form.course_middle(n);
        if (z >= form.apex() - height_tie)
            break;
        const double r = half_width(form.profile, z - form.springline);
        if (r <= skylight_radius || r < least_radius)
            break;
        form.last_ring = n;
        form.last_ring_radius = r;
    }
}

void count_cap(DomeForm& form) {
    const double w = form.width;
    int below_apex = form.last_ring;
    while (below_apex < most_courses &&
           form.course_middle(below_apex + 1) < form.apex() - height_tie)
        ++below_apex;
    form.cap = make_cap_curve(form.profile, form.springline, form.course_middle(below_apex),
                              form.course_height, w);
    form.cap_courses = count_cap_courses(form.profile, form.springline, form.cap,
                                         form.course_middle(form.last_ring + 1), form.course_height,
                                         w, most_courses - form.last_ring);
    if (form.cap_courses > 0)
        return;
    // So flat a crown that the curve passes from a ring to less than half a tube beyond the pole in
    // one course: the eye must still be closed, by one disc that lies half a tube on the last ring.
    form.cap_courses = 1;
    form.cap = {false, form.course_middle(form.last_ring), form.last_ring_radius,
                w / 2 / form.course_height};
}

} // namespace

DomeForm make_dome_form(const Design& design, const Dome& dome) {
    const TubeType* tube = find_tube(design, dome.tube);
    DomeForm form;
    form.id = dome.id;
    form.at = dome.at;
    form.use = dome.use;
    form.springline = dome.springline;
    form.profile = make_profile(dome.profile, dome.inside_diameter / 2);
    form.course_height = design.course.height;
    form.foundation = design.course.foundation;
    form.width = tube ? tamped_width(*tube, design.course.height) : 0;
    form.tube = dome.tube;
    form.measured_tops = design.as_laid_tops;
    if (const TubeType* lower = find_tube(design, dome.lower_tube)) {
        form.lower_tube = dome.lower_tube;
        form.lower_width = tamped_width(*lower, design.course.height);
        form.lower_top = joint_over(form, dome.lower_height);
    }
    form.second_wythe = dome.second_wythe > 0;
    if (form.second_wythe)
        form.second_wythe_top = joint_over(form, dome.second_wythe);
    form.datum = datum_bearing(design, dome);
    form.chain_height = dome.chain_height ? *dome.chain_height
                                          : design.compass.chain_height.value_or(dome.springline);
    const bool skylight = dome.top.kind == TopKind::skylight;
    count_rings(form, skylight ? dome.top.diameter / 2 : 0,
                design.course.least_inside_radius.value_or(form.width / 2));
    if (form.last_ring == 0)
        return form;
    if (skylight)
        form.curb_courses = dome.top.curb;
    else
        count_cap(form);
    return form;
}

double inside_radius(const DomeForm& form, double z) {
    if (z < form.bottom() - height_tie || z > form.top() + height_tie)
        return 0;
    if (form.cap_courses > 0 && z >= form.ceiling() - height_tie)
        return 0;
    const double curve = half_width(form.profile, z - form.springline);
    if (z <= form.course_middle(form.last_ring))
        return curve;
    return std::max(curve,
                    form.cap_courses > 0 ? form.last_ring_radius / 2 : form.last_ring_radius);
}

double ring_width(const DomeForm& form, double z) {
    return form.lower_width > 0 && z < form.lower_top - height_tie ? form.lower_width : form.width;
}

bool has_second_wythe(const DomeForm& form, double z) {
    return form.second_wythe && z < form.second_wythe_top - height_tie;
}

const std::string& ring_tube(const DomeForm& form, double z) {
    return form.lower_width > 0 && z < form.lower_top - height_tie ? form.lower_tube : form.tube;
}

double outside_radius(const DomeForm& form, double z) {
    if (z < form.bottom() - height_tie || z > form.top() + height_tie)
        return 0;
    const double w = form.width;
    if (form.cap_courses == 0 || z < form.course_middle(form.last_ring)) {
        const double second = has_second_wythe(form, z) ? w : 0;
        return inside_radius(form, z) + ring_width(form, z) + second;
    }
    const double last_middle = form.course_middle(form.courses());
    if (z <= last_middle)
        return extended_half_width(form.profile, form.springline, form.cap, z) + w;
    return cap_rim(form.profile, form.springline, form.cap, w, last_middle, form.top(), z);
}

double base_outside(const DomeForm& form) {
    return outside_radius(form, form.bottom());
}

OpeningForm make_opening_form(const Opening& opening) {
    OpeningForm form;
    form.id = opening.id;
    form.in = opening.in;
    form.use = opening.use;
    form.head_kind = opening.head.kind;
    form.bearing = opening.bearing;
    form.axis = along(opening.bearing);
    if (opening.use == OpeningUse::niche)
        form.niche_depth = opening.niche_depth.value_or(0.0);
    form.lintel = opening.head.lintel;
    form.half_width = opening.width / 2;
    form.sill = opening.sill;
    form.top = opening.sill + opening.height;
    switch (opening.head.kind) {
    case HeadKind::square:
        form.springing = form.top;
        break;
    case HeadKind::pointed:
        form.head = pointed_profile(form.half_width,
                                    opening.head.rise.value_or(opening.width * std::sqrt(3.0) / 2));
        break;
    case HeadKind::round:
        form.head = round_profile(form.half_width);
        break;
    case HeadKind::segmental:
        assert(opening.head.rise); // the reader asks for it
        form.head = segmental_profile(form.half_width, opening.head.rise.value_or(0));
        break;
    case HeadKind::circle:
        form.top = opening.sill + opening.width;
        form.head = round_profile(form.half_width);
        break;
    }
    if (form.head)
        form.springing = form.top - form.head->rise;
    return form;
}

double half_width(const OpeningForm& form, double z) {
    if (z < form.sill - height_tie || z >= form.top - height_tie)
        return 0;
    if (!form.head)
        return form.half_width;
    if (form.head_kind == HeadKind::circle)
        return half_width(*form.head, std::abs(z - form.springing));
    return half_width(*form.head, z - form.springing);
}

double cut_half_width(const OpeningForm& opening, const CourseLevels& levels, int n) {
    const double a = half_width(opening, levels.course_middle(n));
    return 2 * a >= levels.course_height - height_tie ? a : 0;
}

bool cuts_course(const OpeningForm& opening, const DomeForm& dome, int n) {
    return n <= dome.last_ring && cut_half_width(opening, dome, n) > 0;
}

double half_angle_degrees(double half_width, double radius) {
    return std::asin(half_width / radius) / radians_per_degree;
}

} // namespace coilwright
