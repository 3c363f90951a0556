#include "geometry/drawing/barred_course.hpp"
#include "geometry/drawing/course_head.hpp"
#include "geometry/drawing/course_tables.hpp"
#include "geometry/drawing/crew_pages.hpp"

namespace coilwright {
namespace {

/// Kept on one line: blanks that do not break.
std::string unbroken(const std::string& text) {
    std::string kept;
    for (const char sign : text)
        kept += sign == ' ' ? std::string("\u00a0") : std::string(1, sign);
    return kept;
}

/// "T1 10 ft 8-5/8 in, T2 13 ft 1 in": what a part cuts for a course, as its sheet names it.
std::string tubes_text(const Drafting& drafting, const CoursePart& part) {
    std::string text;
    const auto add = [&](const std::vector<LaidTube>& tubes) {
        for (const LaidTube& tube : tubes)
            text += (text.empty() ? "" : ", ") +
                    unbroken(tube.id + " " + drafting.length(tube.cut_length));
    };
    for (const Ring* ring : part.rings)
        for (const Run& run : ring->runs)
            add(run.tubes);
    for (const Ring* ring : part.rings)
        for (const Piece& piece : ring->pieces)
            text += (text.empty() ? "" : ", ") +
                    unbroken(piece_name(*ring, piece) + " " + drafting.length(piece.cut_length));
    for (const Straight* straight : part.straights)
        add(straight->tubes);
    return text;
}

} // namespace

std::vector<Sheet> cut_list_pages(const Drafting& drafting) {
    bool first = true;
    Flow flow(
        drafting,
        [&] {
            const std::string title = first ? "Cut list" : "Cut list, continued";
            first = false;
            return titled_page(drafting, title, "");
        },
        3.5);
    flow.paragraph(
        "Cut lengths, both ends included. Cut and mark the tubes of a few courses ahead, no "
        "more: a course that comes out off the rod changes those above it.");
    std::vector<Flow::Item> items;
    for (const Course& course : drafting.schedule().courses)
        for (const CoursePart& part : parts_of(drafting.schedule(), course))
            if (barred_from(drafting.plan, part) > 0)
                items.push_back({sheet_title(drafting, part) + ": DO NOT LAY", true});
            else if (const std::string tubes = tubes_text(drafting, part); !tubes.empty())
                items.push_back({sheet_title(drafting, part) + ": " + tubes});
    flow.list(items, Flow::Mark::tick);
    return flow.finish();
}

} // namespace coilwright
