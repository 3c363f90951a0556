// The kinds of pages of the crew book, each made by a source of its own.
#pragma once

#include "geometry/drawing/course_part.hpp"
#include "geometry/drawing/page.hpp"

#include <optional>
#include <vector>

namespace coilwright {

/// Where things stand in the book: names, as the cover writes them, and numbers of sheets from 1.
struct BookIndex {
    int sheets = 0; // in all
    struct Chapter {
        std::string name;
        int first = 0;
    };
    std::vector<Chapter> chapters; // before the courses
    struct Part {
        std::string id; // dome or tunnel
        int first = 0, sheets = 0;
        int first_course = 0, last_course = 0;
    };
    std::vector<Part> parts;  // in the order of their first sheets
    std::vector<int> courses; // first sheet of each course, from 1 on
};

/// The building at a glance: what it is, plan and section to scale, the caution, how many checks
/// fail, where things stand in the book.
std::vector<Sheet> cover_pages(const Drafting& drafting, const BookIndex& index,
                               const std::vector<Finding>& findings);
/// What to know, to make and to have ready before the first tube.
std::vector<Sheet> before_start_pages(const Drafting& drafting,
                                      const std::vector<Finding>& findings);
/// What the findings that fail say, with the remedy where it is the crew's to do
/// (crew_findings.cpp).
std::vector<std::string> failing_checks(const std::vector<Finding>& findings);
/// Of the findings that are advice those that the crew can do something about, one sentence each
/// (crew_findings.cpp).
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
/// The same on half a sheet, where it fits there.
std::optional<Sheet> dome_course_half(const Drafting& drafting, const CoursePart& part);
std::optional<Sheet> tunnel_course_half(const Drafting& drafting, const CoursePart& part);

/// The compass arm's marks of one dome, and a tunnel's gauge, full size.
std::vector<Sheet> strip_pages(const Drafting& drafting, const DomeForm& dome);
std::vector<Sheet> gauge_pages(const Drafting& drafting, const TunnelForm& tunnel);

} // namespace coilwright
