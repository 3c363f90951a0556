#include "geometry/statics/tunnel_slice.hpp"

#include "geometry/base/quantity.hpp"
#include "geometry/plan/section.hpp"
#include "geometry/statics/course_mass.hpp"
#include "geometry/statics/materials.hpp"

#include <cassert>
#include <cmath>

namespace coilwright {

namespace {

void weigh(WallCourse& course, const WallCourse* above, const Design& design,
           const DomeLoads& loads) {
    const double t = course.top - course.bottom;
    const double fill = fill_density(design, course.number).value;
    double mass = 0, moment = 0;
    const auto add = [&](double more, double centre) {
        mass += more;
        moment += more * centre;
    };
    if (course.cap)
        add(fill * course.outside * t, course.outside / 2);
    else
        add(fill * stadium_area(course.outside - course.inside, t),
            (course.inside + course.outside) / 2);
    if (loads.plaster) {
        const double density = plaster_density().value;
        const double outside_above = above ? above->outside : course.inside;
        if (!course.cap && course.bottom >= -height_tie)
            add(density * plaster_section(design.finish.inside_plaster, t,
                                          above && !above->cap ? course.inside - above->inside : 0),
                course.inside);
        if (course.top > design.ground.level + height_tie)
            add(density * plaster_section(design.finish.outside_plaster, t,
                                          course.outside - outside_above),
                course.outside);
    }
    course.weight = standard_gravity * mass;
    const double outside_above = std::min(above ? above->outside : course.inside, course.outside);
    course.snow_weight =
        loads.snow ? design.site.snow.value_or(0.0) * (course.outside - outside_above) : 0;
    course.weight += course.snow_weight;
    course.mass_radius =
        (standard_gravity * moment + course.snow_weight * (course.outside + outside_above) / 2) /
        course.weight;
}

} // namespace

void weigh_parallel(std::vector<WallCourse>& courses, const Design& design,
                    const DomeLoads& loads) {
    for (std::size_t i = 0; i < courses.size(); ++i)
        weigh(courses[i], i + 1 < courses.size() ? &courses[i + 1] : nullptr, design, loads);
}

std::vector<WallCourse> tunnel_courses(const Design& design, const TunnelForm& tunnel,
                                       const DomeLoads& loads) {
    const double edge = design.course.edge == TubeEdge::round ? tunnel.course_height / 2 : 0;
    std::vector<WallCourse> courses;
    for (int n = 1; n <= tunnel.side_courses + tunnel.crown_courses; ++n) {
        const double z = tunnel.course_middle(n);
        WallCourse course;
        course.number = n;
        course.cap = n > tunnel.side_courses;
        course.bottom = tunnel.course_bottom(n);
        course.top = course.bottom + tunnel.course_height;
        course.inside = course.cap ? 0 : inner_half_width(tunnel, z);
        course.outside = course.cap ? outer_half_width(tunnel, z) : course.inside + tunnel.width;
        set_contact(course, courses.empty() ? nullptr : &courses.back(), edge);
        course.strength = fill_strength(design, n).value;
        courses.push_back(course);
    }
    weigh_parallel(courses, design, loads);
    return courses;
}

Slice tunnel_slice(const std::vector<WallCourse>& courses, const TunnelSlice& what) {
    assert(!courses.empty() && courses.back().cap);
    Slice slice;
    SliceBlock crown;
    double crown_bottom = 0;
    for (const WallCourse& course : courses) {
        if (!course.cap)
            continue;
        if (crown.weight == 0)
            crown_bottom = course.bottom;
        const Vec2 centre(course.mass_radius, (course.bottom + course.top) / 2);
        crown.centre =
            (crown.weight * crown.centre + course.weight * centre) / (crown.weight + course.weight);
        crown.weight += course.weight;
    }
    crown.sway = crown.weight;
    slice.blocks.push_back(crown);
    slice.joints.push_back({{0, crown_bottom}, {0, courses.back().top}, 0});
    for (std::size_t i = courses.size(); i-- > 0;) {
        const WallCourse& course = courses[i];
        if (course.cap && i > 0 && courses[i - 1].cap)
            continue;
        if (!course.cap) {
            SliceBlock block;
            block.centre = {course.mass_radius, (course.bottom + course.top) / 2};
            block.weight = block.sway = course.weight;
            slice.blocks.push_back(block);
        }
        slice.joints.push_back({{course.contact_inner, course.bottom},
                                {course.contact_outer, course.bottom},
                                i == 0 ? what.ground_friction : what.friction});
    }
    return slice;
}

} // namespace coilwright
