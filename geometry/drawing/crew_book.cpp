#include "geometry/drawing/crew_book.hpp"

#include "geometry/drawing/course_head.hpp"
#include "geometry/drawing/crew_pages.hpp"
#include "geometry/threads/side_by_side.hpp"

namespace coilwright {
namespace {

void append(std::vector<Sheet>& all, std::vector<Sheet> more) {
    for (Sheet& sheet : more)
        all.push_back(std::move(sheet));
}

} // namespace

PaperSize letter_paper() {
    return {"letter", 215.9, 279.4};
}
PaperSize a4_paper() {
    return {"a4", 210, 297};
}

namespace {

/// The sheets of a course, in laying order.
struct CourseSheets {
    struct Own {
        std::vector<CoursePart> parts; // two where they share a sheet
        std::vector<Sheet> sheets;
    };
    std::vector<Own> of_parts;
};

/// The book without its cover, and where things stand in it, sheets counted from 1.
struct Inside {
    std::vector<Sheet> sheets;
    BookIndex index;

    int next() const { return static_cast<int>(sheets.size()) + 1; }

    void add_chapter(const std::string& name, std::vector<Sheet> more) {
        index.chapters.push_back({name, next()});
        append(sheets, std::move(more));
    }

    void add_course(CourseSheets course) {
        index.courses.push_back(next());
        for (CourseSheets::Own& own : course.of_parts) {
            for (const CoursePart& part : own.parts)
                note_part(part, own.sheets.size());
            append(sheets, std::move(own.sheets));
        }
    }

    /// The sheets of a part start at the one that is added next.
    void note_part(const CoursePart& part, std::size_t count) {
        BookIndex::Part* own = nullptr;
        for (BookIndex::Part& known : index.parts)
            if (known.id == part.id())
                own = &known;
        if (!own)
            own = &index.parts.emplace_back(
                BookIndex::Part{part.id(), next(), 0, part.course->number, 0});
        own->sheets += static_cast<int>(count);
        own->last_course = part.course->number;
    }
};

std::optional<Sheet> half_of(const Drafting& drafting, const CoursePart& part) {
    return part.dome ? dome_course_half(drafting, part) : tunnel_course_half(drafting, part);
}

/// Two parts that follow each other share a sheet where each fits on half of it.
CourseSheets set_course(const Drafting& drafting, const Course& course) {
    CourseSheets set;
    const std::vector<CoursePart> parts = parts_of(drafting.schedule(), course);
    std::vector<std::optional<Sheet>> halves;
    for (const CoursePart& part : parts)
        halves.push_back(parts.size() > 1 ? half_of(drafting, part) : std::nullopt);
    for (std::size_t i = 0; i < parts.size(); ++i) {
        if (halves[i] && i + 1 < parts.size() && halves[i + 1]) {
            set.of_parts.push_back(
                {{parts[i], parts[i + 1]},
                 {join_halves(drafting, joint_title(drafting, parts[i], parts[i + 1]), *halves[i],
                              *halves[i + 1])}});
            ++i;
            continue;
        }
        set.of_parts.push_back({{parts[i]},
                                parts[i].dome ? dome_course_pages(drafting, parts[i])
                                              : tunnel_course_pages(drafting, parts[i])});
    }
    return set;
}

void move_on(BookIndex& index, int by) {
    index.sheets += by;
    for (BookIndex::Chapter& chapter : index.chapters)
        chapter.first += by;
    for (BookIndex::Part& part : index.parts)
        part.first += by;
    for (int& first : index.courses)
        first += by;
}

} // namespace

std::vector<Sheet> crew_book(const BuildingPlan& plan, const PaperSize& paper,
                             const MeasureText& measure, const AskFindings& ask) {
    const Drafting drafting{plan, paper, measure};
    const std::vector<Course>& courses = plan.schedule.courses;
    std::vector<CourseSheets> of_courses(courses.size());
    side_by_side(courses.size(),
                 [&](std::size_t i) { of_courses[i] = set_course(drafting, courses[i]); });
    const std::vector<Finding>& findings = ask();
    Inside inside;
    inside.add_chapter("Before you start", before_start_pages(drafting, findings));
    inside.add_chapter("Cut list", cut_list_pages(drafting));
    inside.add_chapter("Compass and gauge tables", compass_table_pages(drafting));
    inside.add_chapter("Story rod", story_rod_pages(drafting));
    for (CourseSheets& course : of_courses)
        inside.add_course(std::move(course));
    inside.index.sheets = inside.next() - 1;
    // The cover stands before them and moves all that it tells: until both agree.
    std::vector<Sheet> sheets;
    for (int tries = 0, cover = 0; tries < 4; ++tries) {
        BookIndex index = inside.index;
        move_on(index, cover);
        sheets = cover_pages(drafting, index, findings);
        if (static_cast<int>(sheets.size()) == cover)
            break;
        cover = static_cast<int>(sheets.size());
    }
    append(sheets, std::move(inside.sheets));
    number_sheets(sheets);
    return sheets;
}

std::vector<Sheet> crew_book(const BuildingPlan& plan, const PaperSize& paper,
                             const MeasureText& measure, const std::vector<Finding>& findings) {
    return crew_book(plan, paper, measure,
                     [&]() -> const std::vector<Finding>& { return findings; });
}

std::vector<Sheet> compass_strip(const BuildingPlan& plan, const PaperSize& paper,
                                 const MeasureText& measure) {
    const Drafting drafting{plan, paper, measure};
    std::vector<Sheet> sheets;
    for (const DomeForm& dome : plan.schedule.building.domes)
        append(sheets, strip_pages(drafting, dome));
    for (const TunnelForm& tunnel : plan.schedule.building.tunnels)
        append(sheets, gauge_pages(drafting, tunnel));
    number_sheets(sheets);
    return sheets;
}

} // namespace coilwright
