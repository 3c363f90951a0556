// Tables of what a dome's course meets, and of what a tunnel's course is laid of.
#pragma once

#include "geometry/drawing/course_part.hpp"
#include "geometry/drawing/page.hpp"

namespace coilwright {

/// How a dome's ring meets its piers, its tunnels and the domes that it is joined with, in this
/// course and in the one below; a last line says what is laid first. No rows where it meets
/// nothing.
Table bond_table(const Drafting& drafting, const CoursePart& part);
/// What to lay first, and how rings that cross share their corner; empty where neither arises.
std::string bond_remark(const Drafting& drafting, const CoursePart& part);

/// Piers: where their axis stands, their tubes and how far out they end.
Table pier_table(const Drafting& drafting, const CoursePart& part);
/// Sleeves that are set with the course.
Table sleeve_table(const Drafting& drafting, const CoursePart& part);
/// The straight tubes of a tunnel: from where to where, along the centre, to cut.
Table straight_table(const Drafting& drafting, const CoursePart& part);

} // namespace coilwright
