// The kinds of pages of the crew book, each made by a source of its own.
#pragma once

#include "geometry/drawing/page.hpp"

#include <vector>

namespace coilwright {

/// The building at a glance: what it is, plan and section to scale, the caution.
std::vector<Sheet> cover_pages(const Drafting& drafting);
/// What to know, to cut and to have ready before the first tube.
std::vector<Sheet> before_start_pages(const Drafting& drafting);
/// All courses of each dome in a table.
std::vector<Sheet> compass_table_pages(const Drafting& drafting);
/// Heights to mark on the story rod.
std::vector<Sheet> story_rod_pages(const Drafting& drafting);
/// What one dome lays in one course. Precondition: the dome has a ring in it.
std::vector<Sheet> course_pages(const Drafting& drafting, const Course& course, const Ring& ring);

/// The compass arm's marks of one dome, full size.
std::vector<Sheet> strip_pages(const Drafting& drafting, const DomeForm& dome);

} // namespace coilwright
