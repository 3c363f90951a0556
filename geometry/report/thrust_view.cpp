#include "geometry/report/thrust_view.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

bool outside(const JointThrust& joint) {
    return joint.normal > 0 && std::abs(joint.reach) > 1 + 1e-6;
}

bool leaves_contact(const ThrustLine& line) {
    return std::any_of(line.joints.begin(), line.joints.end(), outside);
}

} // namespace

void add_half_section(Sheet& sheet, const std::vector<WallCourse>& courses,
                      const HalfFrame& frame) {
    for (const WallCourse& course : courses) {
        const Vec2 low = frame.at(course.inside, course.bottom);
        const Vec2 high = frame.at(course.outside, course.top);
        const PaperBox box{low.x(), low.y(), high.x(), high.y()};
        add_fill(sheet, box, {0.9});
        add_box(sheet, box, pens::fine);
        add_line(sheet, frame.at(course.contact_inner, course.bottom),
                 frame.at(course.contact_outer, course.bottom), pens::cut);
    }
    if (courses.empty())
        return;
    add_line(sheet, frame.at(0, courses.front().bottom), frame.at(0, courses.back().top),
             pens::axis);
    add_line(sheet, frame.at(0, 0), frame.at(courses.front().inside, 0), pens::seen);
}

void add_thrust_line(Sheet& sheet, const ThrustLine& line, const HalfFrame& frame,
                     const Stroke& stroke) {
    std::vector<Vec2> points;
    for (const JointThrust& joint : line.joints)
        if (joint.normal > 0) {
            points.push_back(frame.at(joint.point.x(), joint.point.y()));
            if (outside(joint))
                add_circle(sheet, points.back(), 1.2, pens::cut);
        }
    if (points.size() > 1)
        add_polyline(sheet, points, stroke);
}

DrawnLines add_thrust_lines(Sheet& sheet, const HalfFrame& frame, const ThrustLine& centred,
                            const ThrustLine& least, const ThrustLine& greatest) {
    DrawnLines drawn;
    const auto add = [&](const ThrustLine& line, const Stroke& stroke) {
        if (!line.stands)
            return false;
        add_thrust_line(sheet, line, frame, stroke);
        drawn.leaves = drawn.leaves || leaves_contact(line);
        return true;
    };
    drawn.greatest = add(greatest, thrust_pens::greatest);
    drawn.least = add(least, thrust_pens::least);
    drawn.centred = add(centred, thrust_pens::centred);
    return drawn;
}

void add_thrust_legend(Sheet& sheet, Vec2 top_left, const DrawnLines& drawn) {
    double y = top_left.y() - 4;
    const Vec2 sample(14, 0);
    const auto name = [&](const std::string& text) {
        add_text(sheet, {top_left.x() + 17, y}, text, sizes::small);
        y -= 4.6;
    };
    const auto line = [&](bool there, const Stroke& stroke, const std::string& text) {
        if (!there)
            return;
        const Vec2 from(top_left.x(), y + 1);
        add_line(sheet, from, from + sample, stroke);
        name(text);
    };
    add_line(sheet, {top_left.x() + 4, y + 1}, {top_left.x() + 10, y + 1}, pens::cut); // as short
    name("the part of each joint that carries");
    line(drawn.centred, thrust_pens::centred, "the most centred line of thrust");
    line(drawn.least, thrust_pens::least, "the line of the least thrust on the ground");
    line(drawn.greatest, thrust_pens::greatest, "the line of the greatest thrust on the ground");
    if (drawn.leaves) {
        add_circle(sheet, {top_left.x() + 7, y + 1}, 1.2, pens::cut);
        name("where a line leaves the part that carries");
    }
}

} // namespace coilwright
