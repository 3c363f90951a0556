#include "geometry/statics/sway.hpp"

#include "geometry/statics/course_mass.hpp"
#include "geometry/statics/materials.hpp"

#include <algorithm>
#include <cassert>

namespace coilwright {

namespace {

SliceJoint mirrored(const SliceJoint& joint) {
    return {
        {-joint.inner.x(), joint.inner.y()}, {-joint.outer.x(), joint.outer.y()}, joint.friction};
}

SliceBlock block_of(const WallCourse& course) {
    SliceBlock block;
    block.centre = {course.mass_radius, (course.bottom + course.top) / 2};
    block.weight = block.sway = course.weight;
    return block;
}

/// Height of a course that the wind meets, and the middle of that.
void set_wind(SliceBlock& block, double bottom, double top, const SwaySlice& what) {
    const double from = std::max(bottom, what.wind_from);
    if (from >= top)
        return;
    block.push += what.wind * (top - from);
    block.push_height = (from + top) / 2;
}

} // namespace

std::vector<WallCourse> parallel_courses(const Design& design, const DomeForm& dome,
                                         const DomeLoads& loads) {
    const double edge = design.course.edge == TubeEdge::round ? dome.course_height / 2 : 0;
    std::vector<WallCourse> courses;
    for (int n = 1; n <= dome.courses(); ++n) {
        const double z = dome.course_middle(n);
        WallCourse course;
        course.number = n;
        course.cap = n > dome.last_ring + dome.curb_courses;
        course.bottom = dome.course_bottom(n);
        course.top = course.bottom + dome.course_height;
        course.inside = inside_radius(dome, z);
        course.outside = course.cap ? outside_radius(dome, z) : course.inside + ring_width(dome, z);
        set_contact(course, courses.empty() ? nullptr : &courses.back(), edge);
        course.strength = fill_strength(design, n).value;
        courses.push_back(course);
    }
    weigh_parallel(courses, design, loads);
    return courses;
}

int crown_block_from(const DomeForm& dome) {
    return dome.cap_courses > 0 ? dome.last_ring + dome.curb_courses + 1 : dome.last_ring;
}

Slice sway_slice(const std::vector<WallCourse>& courses, int spans_from, const SwaySlice& what) {
    assert(1 < spans_from && spans_from <= static_cast<int>(courses.size()));
    const auto crown_at = static_cast<std::size_t>(spans_from - 1);
    SliceBlock crown;
    double moment = 0;
    for (std::size_t i = crown_at; i < courses.size(); ++i) {
        crown.weight += 2 * courses[i].weight;
        moment += courses[i].weight * (courses[i].bottom + courses[i].top);
    }
    crown.sway = crown.weight;
    crown.centre = {0, moment / crown.weight};
    set_wind(crown, courses[crown_at].bottom, courses.back().top, what);

    const auto joint = [&](std::size_t i) -> SliceJoint {
        return {{courses[i].contact_inner, courses[i].bottom},
                {courses[i].contact_outer, courses[i].bottom},
                i == 0 ? what.ground_friction : what.friction};
    };
    Slice slice;
    for (std::size_t i = 0; i <= crown_at; ++i) {
        slice.joints.push_back(mirrored(joint(i)));
        if (i == crown_at)
            break;
        SliceBlock left = block_of(courses[i]);
        left.centre.x() = -left.centre.x();
        set_wind(left, courses[i].bottom, courses[i].top, what);
        slice.blocks.push_back(left);
    }
    slice.blocks.push_back(crown);
    for (std::size_t i = crown_at + 1; i-- > 0;) {
        slice.joints.push_back(joint(i));
        if (i > 0)
            slice.blocks.push_back(block_of(courses[i - 1]));
    }
    return slice;
}

double sway_capacity(const Slice& slice) {
    const ThrustLine line = greatest_sway(slice);
    return line.stands ? line.load_factor : 0;
}

double wind_capacity(const std::vector<WallCourse>& courses, int spans_from, SwaySlice what) {
    what.wind = 1;
    Slice slice = sway_slice(courses, spans_from, what);
    // The load factor counts on the wind of 1 Pa, which acts where it meets each course.
    std::vector<double> wind;
    for (SliceBlock& block : slice.blocks) {
        block.sway = block.push;
        block.sway_height = block.push_height;
        block.push = 0;
    }
    return sway_capacity(slice);
}

double free_wall_capacity(double contact_width, double height, double friction) {
    return std::min(contact_width / height, friction);
}

} // namespace coilwright
