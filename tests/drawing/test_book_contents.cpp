// What the crew book tells before the first sheet of a course, and in which order its sheets come.
#include "exporters/pdf.hpp"
#include "geometry/drawing/course_part.hpp"
#include "geometry/drawing/crew_book.hpp"
#include "geometry/drawing/figures.hpp"
#include "geometry/plan/lay.hpp"
#include "tests/drawing/plans.hpp"
#include "tests/drawing/sheet_checks.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <map>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

std::string text_of(const std::vector<Sheet>& book, const std::string& title) {
    std::string all;
    for (const Sheet& sheet : book)
        if (sheet.title.rfind(title, 0) == 0)
            all += all_text(sheet);
    for (std::size_t at; (at = all.find("\u00a0")) != std::string::npos;)
        all.replace(at, 2, " ");
    return all;
}

} // namespace

TEST_CASE("The cover says how many sheets there are and where each dome's start") {
    for (const char* name : {"home", "retreat", "grain-store"}) {
        CAPTURE(name);
        const BuildingPlan plan = whole_plan(name);
        const std::vector<Sheet> book = crew_book(plan, letter_paper(), pango_measure());
        const std::string cover = text_of(book, "Crew book");
        CHECK(has(cover, "This book has " + std::to_string(book.size()) + " sheets."));
        for (const char* chapter : {"Before you start", "Cut list", "Story rod"}) {
            const auto first = std::find_if(book.begin(), book.end(), [&](const Sheet& sheet) {
                return sheet.title.rfind(chapter, 0) == 0;
            });
            REQUIRE(first != book.end());
            CHECK(has(cover, std::string(chapter) + ": sheet " +
                                 std::to_string(first - book.begin() + 1) + "."));
        }
        if (!several_parts(plan.schedule))
            continue;
        std::map<std::string, std::pair<std::size_t, std::size_t>> of_part; // first, how many
        for (const Course& course : plan.schedule.courses) {
            std::size_t first = book.size();
            for (const CoursePart& part : parts_of(plan.schedule, course)) {
                const CourseSheets sheets = sheets_of_course(book, course.number, part.id());
                auto& [start, count] =
                    of_part.emplace(part.id(), std::pair{sheets.places.front() + 1, 0u})
                        .first->second;
                count += sheets.places.size();
                first = std::min(first, sheets.places.front());
            }
            CHECK(has(cover, std::to_string(course.number) + ": " + std::to_string(first + 1)));
        }
        for (const auto& [id, place] : of_part)
            CHECK(has(cover, id + " " + std::to_string(place.first) + " " +
                                 std::to_string(place.second) + " 1–"));
    }
}

TEST_CASE("A course's sheets come in laying order: who is stopped comes after who stops it") {
    Design kept = whole_plan("home").design;
    for (Join& join : kept.joins)
        join.keep = "hall";
    std::vector<Schedule> schedules{whole_plan("home").schedule, whole_plan("retreat").schedule,
                                    lay(kept)};
    int told = 0;
    for (const Schedule& schedule : schedules)
        for (const Course& course : schedule.courses) {
            const std::vector<CoursePart> parts = parts_of(schedule, course);
            const auto place = [&](const std::string& id) {
                return std::find_if(parts.begin(), parts.end(),
                                    [&](const CoursePart& part) { return part.id() == id; }) -
                       parts.begin();
            };
            const auto cuts = [&](const CoursePart& part, const std::string& by) {
                for (const Ring* ring : part.rings)
                    for (const Cut& cut : ring->cuts)
                        if (cut.by == by)
                            return true;
                return false;
            };
            for (const CoursePart& part : parts) {
                if (!part.dome)
                    continue;
                for (const CoursePart& other : parts)
                    // Of two rings of which one alone is cut by the other, that one is laid later.
                    if (other.dome && cuts(part, other.id()) && !cuts(other, part.id())) {
                        CAPTURE(course.number, part.id(), other.id());
                        CHECK(place(part.id()) > place(other.id()));
                        ++told;
                    }
                // A tunnel whose tubes start at the ring's inside face runs in and is laid first;
                // one that starts at its outside face butts on it.
                for (const Straight& straight : course.straights)
                    if (straight.start_by == part.id() && straight.part != StraightPart::crown &&
                        straight.part != StraightPart::pier) {
                        const Ring& ring = *part.rings.front();
                        const double from = (straight.start - part.dome->at).norm();
                        CAPTURE(course.number, part.id(), straight.of);
                        CHECK((place(straight.of) < place(part.id())) ==
                              (from < ring.centre_radius));
                        ++told;
                    }
            }
        }
    CHECK(told > 100);
}

TEST_CASE("Tube to order stands first, by dome, tunnel and buttress, with the rolls") {
    const BuildingPlan plan = whole_plan("home");
    const std::vector<Sheet> book = crew_book(plan, letter_paper(), pango_measure());
    const std::string start = text_of(book, "Before you start");
    CHECK(has(start, "Tube to order"));
    for (const TubeOrder& line : plan.schedule.totals.order) {
        const std::string row = word(line.kind) + " '" + line.element + "' " + line.tube;
        CAPTURE(row);
        const std::size_t at = start.find(row);
        REQUIRE(at != std::string::npos);
        CHECK(start.find(supply_text(line.cut_length, DisplayUnit::feet), at) != std::string::npos);
    }
}

TEST_CASE("Each bag of a fan, each wedge and back is on its sheet and in the cut list") {
    int bags = 0;
    for (const char* name : {"home", "retreat", "square-door"}) {
        const BuildingPlan plan = whole_plan(name);
        const std::vector<Sheet> book = crew_book(plan, letter_paper(), pango_measure());
        const std::string list = text_of(book, "Cut list");
        for (const Course& course : plan.schedule.courses)
            for (const CoursePart& part : parts_of(plan.schedule, course)) {
                std::string text;
                for (const Sheet* sheet :
                     sheets_of_course(book, course.number,
                                      several_parts(plan.schedule) ? part.id() : "")
                         .sheets)
                    text += all_text(*sheet);
                for (const Ring* ring : part.rings)
                    for (const Piece& piece : ring->pieces) {
                        CAPTURE(name, course.number, piece.id, piece.of);
                        const bool wedge = piece.kind == PieceKind::wedge;
                        const std::string row = piece.id + (wedge ? "" : " " + piece.of) + " ";
                        const std::string cut = length_text(piece.cut_length, plan.schedule.unit);
                        CHECK(has(text,
                                  row + length_text(piece.length, plan.schedule.unit) + " " + cut));
                        CHECK(has(list, row + cut));
                        if (piece.kind == PieceKind::keystone)
                            CHECK(has(text, "the keystone FK last"));
                        ++bags;
                    }
            }
    }
    CHECK(bags > 40);
}

TEST_CASE("A rod on several strips says where they are joined; one on a single sheet does not") {
    const BuildingPlan home = whole_plan("home");
    int strips = 0;
    std::string before;
    for (const Sheet& sheet : crew_book(home, letter_paper(), pango_measure())) {
        if (sheet.title.rfind("Story rod", 0) != 0)
            continue;
        const std::string text = all_text(sheet);
        ++strips;
        CHECK(has(text, "Strip " + std::to_string(strips) + " of "));
        if (strips > 1) {
            const std::string joint = "JOINT with strip " + std::to_string(strips - 1) + " at ";
            const std::size_t at = text.find(joint);
            REQUIRE(at != std::string::npos);
            const std::string height =
                text.substr(at + joint.size(), text.find('.', at) - at - joint.size());
            // Both strips bear the mark: in the sentence and beside the rod.
            for (const std::string& one : {before, text}) {
                const std::size_t first = one.find(height);
                REQUIRE(first != std::string::npos);
                CHECK(one.find(height, first + 1) != std::string::npos);
            }
        }
        before = text;
    }
    CHECK(strips >= 2);
    const std::string store =
        text_of(crew_book(demo_plan("grain-store"), letter_paper(), pango_measure()), "Story rod");
    CHECK_FALSE(has(store, "JOINT"));
    CHECK(has(store, "Height"));
    CHECK(has(store, "What lies there"));
}

TEST_CASE("Tops that were measured are named on the rod") {
    Design design = demo_plan("grain-store").design;
    design.as_laid_tops = {{9, demo_plan("grain-store").schedule.courses[8].top + 0.006}};
    const BuildingPlan plan = plan_building(design, {});
    REQUIRE(plan.sound());
    const std::string rod = text_of(crew_book(plan, letter_paper(), pango_measure()), "Story rod");
    CHECK(has(rod, "Top of course 9, as measured"));
    CHECK_FALSE(has(rod, "Top of course 10, as measured"));
    CHECK(has(rod, "Heights as measured"));
}

TEST_CASE("A lintel in a tunnel's wall is drawn and named in the plan of its courses") {
    const BuildingPlan plan = whole_plan("home");
    const std::vector<Sheet> book = crew_book(plan, letter_paper(), pango_measure());
    int drawn = 0;
    for (const Lintel& lintel : plan.schedule.lintels) {
        const auto opening =
            std::find_if(plan.schedule.openings.begin(), plan.schedule.openings.end(),
                         [&](const OpeningPlan& one) { return one.form.id == lintel.opening; });
        REQUIRE(opening != plan.schedule.openings.end());
        for (int n = lintel.first_course - 1; n <= lintel.last_course; ++n) {
            int named = 0;
            for (const Sheet* sheet : sheets_of_course(book, n, opening->form.in).sheets)
                named += count_of(*sheet, "lintel");
            CAPTURE(lintel.opening, n);
            CHECK(named == (n >= lintel.first_course ? 1 : 0));
            drawn += named;
        }
    }
    CHECK(drawn > 0);
}

TEST_CASE("Small parts of a course share a sheet, which saves some") {
    const BuildingPlan plan = whole_plan("home");
    const std::vector<Sheet> book = crew_book(plan, letter_paper(), pango_measure());
    std::size_t shared = 0, parts = 0;
    for (const Sheet& sheet : book)
        shared += sheet.title.rfind("Course ", 0) == 0 && has(sheet.title, " and ");
    for (const Course& course : plan.schedule.courses)
        parts += parts_of(plan.schedule, course).size();
    CHECK(shared > 5);
    CHECK(book.size() < parts + 90); // some parts go on on a second sheet; the pages before them
}
