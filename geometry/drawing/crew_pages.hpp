// The kinds of pages of the crew book, each made by a source of its own.
#pragma once

#include "geometry/drawing/course_part.hpp"
#include "geometry/drawing/page.hpp"

#include <vector>

namespace coilwright {

/// The building at a glance: what it is, plan and section to scale, the caution.
std::vector<Sheet> cover_pages(const Drafting& drafting);
/// What to know, to make and to have ready before the first tube.
std::vector<Sheet> before_start_pages(const Drafting& drafting,
                                      const std::vector<Finding>& findings);
/// Of the findings that fail or are advice those that the crew can do something about, one sentence
/// each (crew_findings.cpp).
std::vector<std::string> asked_of_crew(const std::vector<Finding>& findings);
/// Every tube to cut, course by course, to be ticked off.
std::vector<Sheet> cut_list_pages(const Drafting& drafting);
/// All courses of each dome, and of each tunnel, in a table.
std::vector<Sheet> compass_table_pages(const Drafting& drafting);
/// Heights to mark on the story rod.
std::vector<Sheet> story_rod_pages(const Drafting& drafting);
/// What one dome, or one tunnel, lays in one course.
std::vector<Sheet> dome_course_pages(const Drafting& drafting, const CoursePart& part);
std::vector<Sheet> tunnel_course_pages(const Drafting& drafting, const CoursePart& part);

/// The compass arm's marks of one dome, and a tunnel's gauge, full size.
std::vector<Sheet> strip_pages(const Drafting& drafting, const DomeForm& dome);
std::vector<Sheet> gauge_pages(const Drafting& drafting, const TunnelForm& tunnel);

} // namespace coilwright
