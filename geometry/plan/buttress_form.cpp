#include "geometry/plan/buttress_form.hpp"

#include "geometry/plan/reveal_form.hpp"
#include "geometry/plan/section.hpp"
#include "geometry/plan/tunnel_form.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

/// The bearings of a table's piers: as written, or the pair beside an opening or a tunnel.
std::vector<double> pier_bearings(const Design& design, const Buttress& buttress,
                                  const DomeForm& dome, double width) {
    if (buttress.beside.empty())
        return buttress.bearings;
    double bearing = 0, half = 0;
    if (const Opening* opening = find_opening(design, buttress.beside)) {
        bearing = opening->bearing.degrees;
        half = opening->width / 2;
    } else if (const Tunnel* tunnel = find_tunnel(design, buttress.beside)) {
        // Clear of the tunnel's own walls.
        bearing = bearing_from(*tunnel, dome.id).value_or(tunnel->bearing).degrees;
        const TubeType* tube = find_tube(design, tunnel->tube);
        half = tunnel->width / 2 + (tube ? tamped_width(*tube, design.course.height) : 0);
    }
    const double turn = beside_degrees(half, buttress.gap, dome.profile.half_span, width);
    return {turned({bearing}, -turn).degrees, turned({bearing}, turn).degrees};
}

} // namespace

double beside_degrees(double half_width, double gap, double inside_radius, double width) {
    return (std::asin((half_width + gap) / std::hypot(inside_radius, width / 2)) +
            std::atan(width / 2 / inside_radius)) /
           radians_per_degree;
}

std::vector<ButtressForm> make_buttress_forms(const Design& design, const Buttress& buttress,
                                              const DomeForm& dome) {
    ButtressForm pier;
    pier.table = buttress.id;
    pier.dome = dome.id;
    pier.origin = dome.at;
    const double width = buttress.width.value_or(2 * dome.width);
    pier.half_width = width / 2;
    pier.tubes = std::max(1, static_cast<int>(std::lround(width / dome.width)));
    pier.bottom = dome.bottom();
    pier.height = buttress.height;
    pier.last_course = dome.foundation;
    while (pier.last_course < dome.last_ring &&
           dome.course_middle(pier.last_course + 1) < buttress.height - height_tie)
        ++pier.last_course;
    pier.top = dome.course_bottom(pier.last_course + 1);
    pier.base_outside = base_outside(dome);
    pier.projection = buttress.projection;
    pier.projection_top = buttress.projection_top.value_or(buttress.projection);

    std::vector<ButtressForm> piers;
    const std::vector<double> bearings = pier_bearings(design, buttress, dome, width);
    for (std::size_t i = 0; i < bearings.size(); ++i) {
        pier.id = bearings.size() == 1 ? buttress.id : buttress.id + "-" + std::to_string(i + 1);
        pier.bearing = {turned_into_circle(bearings[i])};
        piers.push_back(pier);
    }
    return piers;
}

double outer_face(const ButtressForm& form, double z) {
    const double part = form.height > 0 ? std::clamp(z / form.height, 0.0, 1.0) : 0.0;
    return form.base_outside + form.projection + part * (form.projection_top - form.projection);
}

Box buttress_body(const ButtressForm& form, double z) {
    if (z < form.bottom - height_tie || z >= form.top - height_tie)
        return {form.origin, form.axis(), 0, 0, 0, 0};
    const double half = pier_half_width(form, z);
    return {form.origin, form.axis(), 0, outer_face(form, z), -half, half};
}

double pier_half_width(const ButtressForm& form, double z) {
    return form.reveal ? reveal_half_width(*form.reveal, z) : form.half_width;
}

std::vector<PierTube> pier_tubes(const ButtressForm& form, int n) {
    double half = form.half_width;
    int count = form.tubes;
    if (form.reveal) {
        const RevealForm& reveal = *form.reveal;
        const double w = reveal.width;
        if (const double a = cut_half_width(reveal.opening, reveal.levels, n); a > 0)
            return {{-a - w / 2, w}, {a + w / 2, w}};
        half = pier_half_width(form, reveal.levels.course_middle(n));
        count = std::max(1, static_cast<int>(std::lround(2 * half / w)));
    }
    std::vector<PierTube> tubes;
    const double width = 2 * half / count;
    for (int i = 0; i < count; ++i)
        tubes.push_back({(i - (count - 1) / 2.0) * width, width});
    return tubes;
}

} // namespace coilwright
