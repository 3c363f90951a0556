#include "geometry/report/thrust_view.hpp"

#include <cmath>

namespace coilwright {

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
            if (std::abs(joint.reach) > 1 + 1e-6)
                add_circle(sheet, points.back(), 1.2, pens::cut);
        }
    if (points.size() > 1)
        add_polyline(sheet, points, stroke);
}

void add_thrust_legend(Sheet& sheet, Vec2 top_left) {
    double y = top_left.y() - 4;
    for (const auto& [stroke, text] :
         {std::pair{thrust_pens::centred, "the most centred line of thrust"},
          {thrust_pens::least, "that of the least thrust on the ground"},
          {thrust_pens::greatest, "that of the greatest"}}) {
        add_line(sheet, {top_left.x(), y + 1}, {top_left.x() + 14, y + 1}, stroke);
        add_text(sheet, {top_left.x() + 17, y}, text, sizes::small);
        y -= 4.6;
    }
}

} // namespace coilwright
