// Weights, centres and contacts of a dome's courses.
#include "geometry/base/quantity.hpp"
#include "geometry/plan/section.hpp"
#include "geometry/statics/course_mass.hpp"
#include "geometry/statics/dome_slice.hpp"
#include "geometry/statics/materials.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

struct Turned { // a section turned about the pole: per radian
    double volume = 0;
    double moment = 0; // volume x radius of its centre

    void add(double section, double radius, double density) { // a small section at a radius
        volume += density * section * radius;
        moment += density * section * radius * radius;
    }
};

/// Second moment of a stadium about its upright axis of symmetry.
double stadium_second_moment(double w, double t) {
    const double flat = w - t, half = t / 2;
    const double rectangle = t * flat * flat * flat / 12;
    // Half discs: about their own centroid, then shifted to the axis.
    const double area = pi * half * half / 2, off = 4 * half / (3 * pi);
    const double own = pi * half * half * half * half / 8 - area * off * off;
    const double arm = flat / 2 + off;
    return rectangle + 2 * (own + area * arm * arm);
}

Turned fill_of(const WallCourse& course, double t, double density) {
    Turned mass;
    if (course.cap) { // a sector of a disc with its whole height
        const double r = course.outside;
        mass.volume = density * t * r * r / 2;
        mass.moment = density * t * r * r * r / 3;
        return mass;
    }
    const double w = course.outside - course.inside, r = (course.inside + course.outside) / 2;
    const double area = stadium_area(w, t);
    mass.volume = density * area * r;
    mass.moment = density * (area * r * r + stadium_second_moment(w, t));
    return mass;
}

/// Depth grows from the ground's level down to the floor; below it the soil inside takes the rest.
void set_bank(WallCourse& course, const Design& design) {
    const double level = design.ground.level, high = std::min(course.top, level);
    if (high <= course.bottom)
        return;
    const double at_top = bank_pressure(design, level - std::max(high, 0.0));
    const double at_bottom = bank_pressure(design, level - std::max(course.bottom, 0.0));
    const double tall = high - course.bottom;
    course.earth_push = (at_top + at_bottom) / 2 * tall * course.outside;
    course.earth_height =
        course.bottom + tall / 3 * (at_bottom + 2 * at_top) / (at_bottom + at_top);
}

double open_share(const std::vector<RingGap>& gaps, double radius) {
    if (gaps.empty())
        return 0;
    double kept = 0;
    for (const KeptArc& arc : kept_arcs(gaps, radius))
        kept += arc.end - arc.start;
    return 1 - kept / 360;
}

} // namespace

double plaster_section(double thickness, double t, double step) {
    if (thickness <= 0)
        return 0;
    return thickness * std::hypot(t, step) + (1 - pi / 4) * t * t / 2 + std::abs(step) * t / 2;
}

void set_contact(WallCourse& course, const WallCourse* below, double edge) {
    double inner = course.inside, outer = course.outside;
    if (below) {
        inner = std::max(inner, below->inside);
        outer = std::min(outer, below->outside);
    }
    course.contact_inner = inner > 0 ? inner + edge : 0;
    course.contact_outer = outer - edge;
}

double sector_mass_radius(double inside_radius, double outside_radius) {
    const double sum = inside_radius + outside_radius;
    return 2.0 / 3 * (sum - inside_radius * outside_radius / sum);
}

std::vector<WallCourse> dome_courses(const Design& design, const BuildingForm& building,
                                     const DomeForm& dome, const DomeLoads& loads) {
    const double t = dome.course_height;
    const double edge = design.course.edge == TubeEdge::round ? t / 2 : 0;
    const Dome* written = find_dome(design, dome.id);
    const TubeType* tube = written ? find_tube(design, written->tube) : nullptr;
    std::vector<WallCourse> courses;
    for (int n = 1; n <= dome.courses(); ++n) {
        const double z = dome.course_middle(n);
        WallCourse course;
        course.number = n;
        course.cap = n > dome.last_ring + dome.curb_courses;
        course.bottom = dome.course_bottom(n);
        course.top = course.bottom + t;
        course.inside = inside_radius(dome, z);
        course.outside = course.cap ? outside_radius(dome, z) : course.inside + ring_width(dome, z);
        set_contact(course, courses.empty() ? nullptr : &courses.back(), edge);
        course.strength = fill_strength(design, n).value;
        course.tie = tube ? wire_tension(design, *tube) : 0;
        course.gaps =
            course.cap ? std::vector<RingGap>{} : gaps_in_ring(building, dome, n, Bond::wall);
        course.open_share = open_share(course.gaps, (course.inside + course.outside) / 2);
        courses.push_back(course);
    }
    const double snow = loads.snow ? design.site.snow.value_or(0.0) : 0;
    for (std::size_t i = 0; i < courses.size(); ++i) {
        WallCourse& course = courses[i];
        const WallCourse* above = i + 1 < courses.size() ? &courses[i + 1] : nullptr;
        Turned mass = fill_of(course, t, fill_density(design, course.number).value);
        const double outside_above = above ? above->outside : course.inside;
        if (loads.plaster) {
            const double density = plaster_density().value;
            if (!course.cap && course.bottom >= -height_tie)
                mass.add(plaster_section(design.finish.inside_plaster, t,
                                         above && !above->cap ? course.inside - above->inside : 0),
                         course.inside, density);
            if (course.top > design.ground.level + height_tie)
                mass.add(plaster_section(design.finish.outside_plaster, t,
                                         above ? course.outside - outside_above : 0),
                         course.outside, density);
        }
        if (loads.earth && bank_against_wall(design) && bank_known(design))
            set_bank(course, design);
        course.weight = standard_gravity * mass.volume;
        double moment = standard_gravity * mass.moment;
        const double in = std::min(outside_above, course.outside);
        course.snow_weight = snow * (course.outside * course.outside - in * in) / 2;
        if (course.snow_weight > 0)
            moment += course.snow_weight * sector_mass_radius(in, course.outside);
        course.weight += course.snow_weight;
        if (!above && written && written->top.kind == TopKind::skylight) {
            const double r = (course.inside + course.outside) / 2;
            const double glazing = written->top.glazing_load.value_or(0.0) * r;
            course.weight += glazing;
            moment += glazing * r;
        }
        course.mass_radius = moment / course.weight;
    }
    return courses;
}

std::optional<int> first_without_contact(const std::vector<WallCourse>& courses) {
    for (const WallCourse& course : courses)
        if (course.contact_width() <= 0)
            return course.number;
    return std::nullopt;
}

std::vector<std::string> gap_ids(const std::vector<WallCourse>& courses) {
    std::vector<std::string> ids;
    for (const WallCourse& course : courses)
        for (const RingGap& gap : course.gaps)
            ids.push_back(gap.by);
    std::sort(ids.begin(), ids.end());
    ids.erase(std::unique(ids.begin(), ids.end()), ids.end());
    return ids;
}

} // namespace coilwright
