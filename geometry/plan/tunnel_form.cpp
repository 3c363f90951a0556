#include "geometry/plan/tunnel_form.hpp"

#include "geometry/plan/section.hpp"
#include "geometry/plan/wall_form.hpp"

#include <cmath>

namespace coilwright {

namespace {

template <typename AnyTunnel>
std::optional<Bearing> seen_from(const AnyTunnel& tunnel, const std::string& dome) {
    if (tunnel.from == dome)
        return tunnel.bearing;
    if (tunnel.to == dome)
        return turned(tunnel.bearing, 180);
    return std::nullopt;
}

} // namespace

std::optional<Bearing> bearing_from(const Tunnel& tunnel, const std::string& dome) {
    return seen_from(tunnel, dome);
}

std::optional<Bearing> bearing_from(const TunnelForm& tunnel, const std::string& dome) {
    return seen_from(tunnel, dome);
}

TunnelForm make_tunnel_form(const Design& design, const Tunnel& tunnel) {
    TunnelForm form;
    const Dome* from = find_dome(design, tunnel.from);
    const Dome* to = find_dome(design, tunnel.to);
    const TubeType* tube = find_tube(design, tunnel.tube);
    form.id = tunnel.id;
    form.from = tunnel.from;
    form.to = tunnel.to;
    if (from)
        form.origin = from->at;
    form.bearing = tunnel.bearing;
    form.reach = tunnel.reach.value_or(0.0);
    if (from && to) {
        const Vec2 apart = to->at - from->at;
        form.bearing = to_bearing({std::atan2(apart.y(), apart.x())});
        form.reach = apart.norm();
    }
    form.profile = make_profile(tunnel.profile, tunnel.width / 2);
    form.springline = tunnel.springline;
    form.course_height = design.course.height;
    form.foundation = design.course.foundation;
    form.measured_tops = design.as_laid_tops;
    form.width = tube ? tamped_width(*tube, design.course.height) : 0;
    form.tube = tunnel.tube;
    form.end_wall = tunnel.end_wall;
    form.wall_stays = tunnel.wall_stays;

    int last = 0;
    while (last < most_courses && form.course_middle(last + 1) < form.crown() - height_tie)
        ++last;
    form.side_courses = last;
    form.cap = make_cap_curve(form.profile, form.springline, form.course_middle(last),
                              form.course_height, form.width);
    form.crown_courses =
        count_cap_courses(form.profile, form.springline, form.cap, form.course_middle(last + 1),
                          form.course_height, form.width, most_courses - last);
    if (form.crown_courses == 0) { // as a dome's eye: one course still closes the vault
        form.crown_courses = 1;
        form.cap = {false, form.course_middle(last),
                    half_width(form.profile, form.course_middle(last) - form.springline),
                    form.width / 2 / form.course_height};
    }
    return form;
}

double inner_half_width(const TunnelForm& form, double z) {
    return z >= form.crown() - height_tie ? 0 : half_width(form.profile, z - form.springline);
}

bool stops_ring(const TunnelForm& form, double z) {
    return 2 * inner_half_width(form, z) >= form.course_height - height_tie;
}

double outer_half_width(const TunnelForm& form, double z) {
    if (z < form.bottom() - height_tie || z > form.top() + height_tie)
        return 0;
    const double last_middle = form.course_middle(form.side_courses + form.crown_courses);
    if (z <= last_middle)
        return extended_half_width(form.profile, form.springline, form.cap, z) + form.width;
    return cap_rim(form.profile, form.springline, form.cap, form.width, last_middle, form.top(), z);
}

Box tunnel_void(const TunnelForm& form, double z) {
    const double b = inner_half_width(form, z);
    return {
        form.origin, form.axis(), 0, form.end_wall ? form.reach - form.width : form.reach, -b, b};
}

Box tunnel_body(const TunnelForm& form, double z) {
    const double outer = outer_half_width(form, z);
    return {form.origin, form.axis(), 0, form.reach, -outer, outer};
}

} // namespace coilwright
