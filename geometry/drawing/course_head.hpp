// The band at the head of a course's sheet: number, setting, key plan, and in the largest type the
// warning that a form carries the course or that it must not be laid.
#pragma once

#include "geometry/drawing/course_part.hpp"
#include "geometry/drawing/page.hpp"

namespace coilwright {

/// "Course 7", "Course 7 of 'bath'", "Course 30, cap".
std::string sheet_title(const Drafting& drafting, const CoursePart& part);

/// Of two parts of a course that share a sheet: "Course 7 of 'bath' and 'porch', crown".
std::string joint_title(const Drafting& drafting, const CoursePart& first,
                        const CoursePart& second);

/// Height of the head in mm. A warning that was given in full on the first sheet is a line on those
/// that continue it.
double course_head_height(const Drafting& drafting, const CoursePart& part, bool first_sheet,
                          bool half = false);
/// A page of the part's sheet with its head drawn, the `number`th (from 1) `of` so many, which the
/// head tells where there are several; what is free lies below it.
Page course_page(const Drafting& drafting, const CoursePart& part, int number, int of,
                 bool half = false);

} // namespace coilwright
