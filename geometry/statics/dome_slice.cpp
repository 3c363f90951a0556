#include "geometry/statics/dome_slice.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace coilwright {

namespace {

/// Of a gap, not more than a half circle: another dome may cover a course from end to end.
double half_degrees(const WallCourse& course, const RingGap& gap) {
    return std::min(90.0, half_gap_degrees(gap, (course.inside + course.outside) / 2));
}

int top_course(const std::vector<WallCourse>& courses, const DomeSlice& what) {
    return what.last.value_or(static_cast<int>(courses.size()));
}

/// Degrees from one side of a gap to the nearest gap beyond it, in the courses it cuts; 360 if
/// none.
double free_arc(const std::vector<WallCourse>& courses, const std::string& id) {
    double least = 360;
    for (const WallCourse& course : courses) {
        const auto own = std::find_if(course.gaps.begin(), course.gaps.end(),
                                      [&](const RingGap& gap) { return gap.by == id; });
        if (own == course.gaps.end())
            continue;
        for (const RingGap& gap : course.gaps) {
            if (gap.by == id)
                continue;
            const double apart = std::abs(std::remainder(gap.middle - own->middle, 360));
            least = std::min(least, apart - half_degrees(course, gap) - half_degrees(course, *own));
        }
    }
    return std::max(0.0, least);
}

SliceBlock block_of(const WallCourse& course, double kept, const DomeSlice& what) {
    SliceBlock block;
    block.centre = {course.mass_radius, (course.bottom + course.top) / 2};
    block.weight = block.sway = course.weight * kept;
    block.push = -course.earth_push * kept;
    block.push_height = course.earth_height;
    block.hoop_bottom = course.bottom;
    block.hoop_top = block.tie_height = course.top;
    const bool is_whole = course.gaps.empty() || what.ignore_gaps;
    if (is_whole || std::all_of(course.gaps.begin(), course.gaps.end(),
                                [&](const RingGap& gap) { return what.propped.count(gap.by) > 0; }))
        block.hoop_limit = unlimited;
    if (is_whole)
        block.tie_limit = what.ties ? course.tie : 0;
    return block;
}

/// The course below, laid to a block above it: one body.
void merge(SliceBlock& above, const SliceBlock& below) {
    const double weight = above.weight + below.weight;
    above.centre = (above.weight * above.centre + below.weight * below.centre) / weight;
    above.weight = above.sway = weight;
    above.hoop_bottom = below.hoop_bottom;
    above.tie_limit = 0;
}

} // namespace

std::vector<double> kept_beside(const std::vector<WallCourse>& courses, const std::string& gap) {
    double half = 0;
    for (const WallCourse& course : courses)
        for (const RingGap& other : course.gaps)
            if (other.by == gap)
                half = std::max(half, half_degrees(course, other));
    const double side = std::min(half, free_arc(courses, gap) / 2);
    std::vector<double> kept(courses.size(), 1.0);
    for (std::size_t i = 0; i < courses.size(); ++i)
        for (const RingGap& other : courses[i].gaps)
            if (other.by == gap)
                kept[i] = 1 - half_degrees(courses[i], other) / (half + side);
    return kept;
}

Slice dome_slice(const std::vector<WallCourse>& courses, const DomeSlice& what) {
    const int last = top_course(courses, what);
    assert(1 <= what.first && what.first <= last && last <= static_cast<int>(courses.size()));
    const std::vector<double> kept =
        what.beside ? kept_beside(courses, *what.beside) : std::vector<double>(courses.size(), 1.0);
    Slice slice;
    slice.free_start = true;
    slice.joints.emplace_back();
    for (int n = last; n >= what.first; --n) {
        const auto i = static_cast<std::size_t>(n - 1);
        const WallCourse& course = courses[i];
        assert(course.contact_width() > 0);
        const SliceBlock block = block_of(course, kept[i], what);
        if (course.cap && n < last)
            merge(slice.blocks.back(), block);
        else
            slice.blocks.push_back(block);
        if (course.cap && n > what.first && courses[i - 1].cap)
            continue; // a joint within the cap
        slice.joints.push_back({{course.contact_inner, course.bottom},
                                {course.contact_outer, course.bottom},
                                n == 1 ? what.ground_friction : what.friction});
    }
    return slice;
}

int joint_under(const std::vector<WallCourse>& courses, const DomeSlice& what, int course) {
    int joint = 1;
    for (int n = top_course(courses, what); n > course; --n)
        if (!courses[static_cast<std::size_t>(n - 1)].cap ||
            !courses[static_cast<std::size_t>(n - 2)].cap)
            ++joint;
    return joint;
}

} // namespace coilwright
