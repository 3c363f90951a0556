// What the crew book says: a sheet for each course, every cut lettered once where it is, the
// warnings where they belong, and figures against values from outside.
#include "exporters/pdf.hpp"
#include "geometry/drawing/crew_book.hpp"
#include "geometry/drawing/figures.hpp"
#include "tests/drawing/plans.hpp"
#include "tests/drawing/sheet_checks.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;

std::vector<const Sheet*> sheets_of(const std::vector<Sheet>& book, const BuildingPlan& plan,
                                    const Course& course, const Ring& ring) {
    return sheets_of_course(book, course.number,
                            plan.schedule.building.domes.size() > 1 ? ring.dome : "")
        .sheets;
}

std::string text_of_all(const std::vector<const Sheet*>& sheets) {
    std::string all;
    for (const Sheet* sheet : sheets)
        all += all_text(*sheet);
    return all;
}

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

} // namespace

TEST_CASE("Every course of every dome has its sheet, in the order of work") {
    const MeasureText measure = pango_measure();
    for (const BuildingPlan& plan : several_plans()) {
        CAPTURE(plan.schedule.name);
        const std::vector<Sheet> book = crew_book(plan, letter_paper(), measure);
        std::size_t last = 0;
        for (const Course& course : plan.schedule.courses)
            for (const Ring& ring : course.rings) {
                CAPTURE(course.number, ring.dome);
                const CourseSheets sheets = sheets_of_course(
                    book, course.number, plan.schedule.building.domes.size() > 1 ? ring.dome : "");
                REQUIRE(sheets.places.size() >= 1);
                CHECK(sheets.places.size() <= 2); // the front and the back of a leaf
                CHECK((sheets.places.front() > last ||
                       (sheets.shared && sheets.places.front() == last)));
                last = sheets.places.back();
            }
        CHECK(last == book.size() - 1);
    }
}

TEST_CASE("The cut list has every tube of every course, to be ticked") {
    const MeasureText measure = pango_measure();
    std::vector<BuildingPlan> plans = several_plans();
    plans.push_back(demo_plan("retreat"));
    for (const BuildingPlan& plan : plans) {
        CAPTURE(plan.schedule.name);
        std::string list;
        for (const Sheet& sheet : crew_book(plan, letter_paper(), measure))
            if (sheet.title.rfind("Cut list", 0) == 0)
                list += all_text(sheet);
        for (std::size_t at; (at = list.find("\u00a0")) != std::string::npos;)
            list.replace(at, 2, " ");
        const auto check_tubes = [&](std::size_t from, std::size_t to,
                                     const std::vector<LaidTube>& tubes) {
            for (const LaidTube& tube : tubes) {
                const std::string wanted =
                    tube.id + " " + length_text(tube.cut_length, plan.schedule.unit);
                CAPTURE(wanted);
                CHECK(list.find(wanted, from) < to);
            }
        };
        for (const Course& course : plan.schedule.courses) {
            CAPTURE(course.number);
            const std::size_t from = list.find("Course " + std::to_string(course.number));
            REQUIRE(from != std::string::npos);
            const std::size_t to = // the end of the list after the last course
                std::min(list.find("Course " + std::to_string(course.number + 1)), list.size());
            for (const Ring& ring : course.rings)
                for (const Run& run : ring.runs)
                    check_tubes(from, to, run.tubes);
            for (const Straight& straight : course.straights)
                check_tubes(from, to, straight.tubes);
        }
    }
}

TEST_CASE("The course's number and its setting are the largest type on its sheet") {
    const MeasureText measure = pango_measure();
    for (const BuildingPlan& plan : several_plans()) {
        const std::vector<Sheet> book = crew_book(plan, a4_paper(), measure);
        for (const Course& course : plan.schedule.courses)
            for (const Ring& ring : course.rings)
                for (const Sheet* sheet : sheets_of(book, plan, course, ring)) {
                    CAPTURE(sheet->title);
                    std::vector<const TextItem*> items = text_items(*sheet);
                    std::sort(items.begin(), items.end(), [](const TextItem* a, const TextItem* b) {
                        return a->size > b->size;
                    });
                    CHECK(items[0]->text == std::to_string(course.number));
                    const bool whole = sheet->title.find(" and ") == std::string::npos;
                    CHECK(measure(items[0]->text, items[0]->size, true).ascent >
                          (whole ? 18 : 15)); // mm
                    const bool chain = plan.design.compass.arm == CompassArm::chain;
                    const double setting = ring.kind == RingKind::cap ? 2 * ring.outside_radius
                                           : chain                    ? ring.chain_face
                                                                      : ring.inside_radius;
                    CHECK(items[1]->text == length_text(setting, plan.schedule.unit));
                    CHECK(items[1]->size >= 10);
                    CHECK(items[2]->size < items[1]->size / 1.5);
                }
    }
}

TEST_CASE("Each cut has its letter once in the plan, at its place, and once in the table") {
    const MeasureText measure = pango_measure();
    for (const BuildingPlan& plan : several_plans()) {
        const std::vector<Sheet> book = crew_book(plan, letter_paper(), measure);
        for (const Course& course : plan.schedule.courses)
            for (const Ring& ring : course.rings) {
                const auto sheets = sheets_of(book, plan, course, ring);
                CAPTURE(sheets.front()->title);
                // The pole: the only circle of 1.2 mm; the scale by the arcs of the inside face.
                Vec2 pole(0, 0);
                double inner = 1e9;
                for (const PaperItem& item : sheets.front()->items)
                    if (const auto* arc = std::get_if<ArcItem>(&item)) {
                        if (std::abs(arc->radius - 1.2) < 1e-9)
                            pole = arc->centre;
                        else if (arc->radius > 4 && arc->stroke.width > 0.4)
                            inner = std::min(inner, arc->radius);
                    }
                for (const Cut& cut : ring.cuts) {
                    CAPTURE(cut.letter);
                    int count = 0;
                    for (const Sheet* sheet : sheets)
                        count += count_of(*sheet, cut.letter);
                    CHECK(count == (cut.letter == "N" ? 3 : 2)); // north has an N too
                    // A dot at the cut: east is right and north is up.
                    const double bearing = cut.inside_bearing * radians_per_degree;
                    const Vec2 place = pole + inner * Vec2(std::sin(bearing), std::cos(bearing));
                    int dots = 0;
                    for (const PaperItem& item : sheets.front()->items)
                        if (const auto* fill = std::get_if<FillItem>(&item)) {
                            const PaperBox box = bounds(item, measure);
                            if (fill->ink.grey == 0 && std::abs(box.width() - 1.2) < 1e-6 &&
                                (box.centre() - place).norm() < 0.01)
                                ++dots;
                        }
                    CHECK(dots == 1);
                    const std::string text = text_of_all(sheets);
                    CHECK(has(text, length_text(cut.short_arc, plan.schedule.unit)));
                    CHECK(has(text, length_text(cut.chord, plan.schedule.unit)));
                    CHECK(has(text, cut.by));
                }
                for (const Run& run : ring.runs)
                    for (const LaidTube& tube : run.tubes) {
                        const std::string text = text_of_all(sheets);
                        CHECK(has(text, " " + tube.id));
                        CHECK(has(text, length_text(tube.length, plan.schedule.unit)));
                        CHECK(has(text, length_text(tube.cut_length, plan.schedule.unit)));
                    }
            }
    }
}

TEST_CASE("Every tube is named in the plan of a common dome") {
    const BuildingPlan plan = demo_plan("grain-store");
    const std::vector<Sheet> book = crew_book(plan, letter_paper(), pango_measure());
    for (const Course& course : plan.schedule.courses)
        for (const Run& run : course.rings.front().runs)
            for (const LaidTube& tube : run.tubes) {
                const auto sheets = sheets_of(book, plan, course, course.rings.front());
                CAPTURE(sheets.front()->title, tube.id);
                int count = 0; // in the plan and in the table, there with "*" where a lap is short
                for (const std::string& text : texts_of(*sheets.front()))
                    count += text == tube.id || text == tube.id + "*";
                CHECK(count == 2);
            }
}

TEST_CASE("Every sheet carries the caution, the ruler's word, its place in the book") {
    for (const BuildingPlan& plan : several_plans())
        for (const auto& sheets : {crew_book(plan, letter_paper(), pango_measure()),
                                   compass_strip(plan, a4_paper(), pango_measure())})
            for (std::size_t i = 0; i < sheets.size(); ++i) {
                const std::string text = all_text(sheets[i]);
                CAPTURE(sheets[i].title);
                CHECK(has(text, "CAUTION"));
                CHECK(has(text, "not engineering"));
                CHECK(has(text, "local"));
                CHECK(has(text, "licensed"));
                CHECK(has(text, "Print at 100 %"));
                CHECK(has(text, "Sheet " + std::to_string(i + 1) + " of " +
                                    std::to_string(sheets.size())));
            }
}

TEST_CASE("Above the springline the sheet says what must be true before the crew stops") {
    const BuildingPlan plan = demo_plan("grain-store");
    const std::vector<Sheet> book = crew_book(plan, letter_paper(), pango_measure());
    for (const Course& course : plan.schedule.courses) {
        const Ring& ring = course.rings.front();
        const std::string text = text_of_all(sheets_of(book, plan, course, ring));
        CAPTURE(course.number);
        const bool above = course.top > plan.schedule.building.domes.front().springline + 1e-6;
        CHECK(has(text, "Close this ring before you stop") ==
              (above && ring.kind == RingKind::ring));
        CHECK(has(text, "Nobody under") == above);
        CHECK(has(text, "below the bench mark") == (course.top < -1e-6));
        CHECK(has(text, "Height reached"));
        CHECK(has(text, "Signed"));
        for (const auto& notes : {course.before, course.after})
            for (const SetNote& note : notes) {
                // Wrapped over lines: its first words, and its own words all.
                CHECK(has(text, note.text.substr(0, 24)));
            }
        if (course.number == plan.schedule.building.domes.front().last_ring)
            CHECK(has(text, "take the pole out"));
    }
}

TEST_CASE("A course off the rod changes the arm as the curve asks") {
    // Per 1/2 in: 0.16 in at 60 in above the floor, 0.25 at 80, 0.37 at 100, 0.55 at 120, reckoned
    // from rho = 135 in: dr/dz = y / sqrt(rho^2 - y^2), y above the springline at 20 in.
    const BuildingPlan plan = demo_plan("grain-store");
    const DomeForm& dome = plan.schedule.building.domes.front();
    REQUIRE(dome.profile.half_span == Approx(54 * inch));
    REQUIRE(dome.profile.rise == Approx(108 * inch));
    Ring ring;
    Course course;
    const double expected[][2] = {{60, 0.16}, {80, 0.25}, {100, 0.37}, {120, 0.55}};
    for (const auto& [height, change] : expected) {
        course.middle = height * inch;
        const double high = compass_change(ring, course, dome, plan.design, 0.5 * inch) / inch;
        const double low = compass_change(ring, course, dome, plan.design, -0.5 * inch) / inch;
        CHECK(std::abs(high + change) < 0.011);
        CHECK(std::abs(low - change) < 0.011);
    }
    ring.kind = RingKind::cap;
    CHECK(compass_change(ring, course, dome, plan.design, 0.01) == 0);
}

TEST_CASE("A bucket holds 5 US gallons of 231 cubic inches") {
    // By definition of the gallon; 0.66840 cu ft.
    CHECK(bucket_volume / (0.3048 * 0.3048 * 0.3048) == Approx(0.66840).epsilon(1e-5));
    CHECK(buckets_text(10 * bucket_volume, DisplayUnit::feet) == "10.0");
    CHECK(fill_text(2 * bucket_volume, DisplayUnit::feet) == "2.0 (38 L)");
    // Where metres are the measure litres come first, and a pail of ten.
    CHECK(fill_text(0.123, DisplayUnit::metres) == "123 L (12.3)");
    CHECK(bucket_name(DisplayUnit::metres) == "10 L");
    CHECK(litres_text(1.5) == "1500");
}

TEST_CASE("A metric book has no inch, foot or gallon") {
    const BuildingPlan plan = demo_plan("cabin-metric");
    for (const Sheet& sheet : crew_book(plan, a4_paper(), pango_measure()))
        for (const std::string& text : texts_of(sheet)) {
            if (text == "4 in" || has(text, "This bar must measure")) // the check ruler has both
                continue;
            CAPTURE(sheet.title, text);
            CHECK_FALSE(has(text, " gal"));
            for (const char* unit : {" in", " ft"}) {
                const std::size_t at = text.find(unit);
                const bool number = at != std::string::npos && at > 0 && std::isdigit(text[at - 1]);
                CHECK_FALSE((number && (at + 3 == text.size() || !std::isalpha(text[at + 3]))));
            }
        }
    // Defaults are round: both ends of a tube.
    CHECK(std::abs(std::remainder(plan.design.course.end_allowance, 0.005)) < 1e-9);
}

TEST_CASE("Fill on the sheets adds up to the schedule's") {
    std::vector<BuildingPlan> plans = several_plans();
    plans.push_back(demo_plan("home")); // straights too
    for (const BuildingPlan& plan : plans) {
        double sum = 0;
        for (const Course& course : plan.schedule.courses)
            for (const CoursePart& part : parts_of(plan.schedule, course))
                sum += part_fill(part, plan.schedule.course_height);
        CHECK(sum == Approx(plan.schedule.totals.fill_volume).epsilon(1e-9));
    }
}

TEST_CASE("A book does not depend on its name's length or script") {
    BuildingPlan plan = demo_plan("washroom");
    const std::size_t sheets = crew_book(plan, letter_paper(), pango_measure()).size();
    for (const std::string& name :
         {std::string(), std::string(80, 'W'), std::string("穀倉"), std::string(100000, 'x')}) {
        plan.schedule.name = plan.design.name = name;
        const std::vector<Sheet> book = crew_book(plan, letter_paper(), pango_measure());
        CHECK(book.size() <= sheets + 1);
        for (const Sheet& sheet : book)
            CHECK(sheet_faults(sheet, 10, pango_measure()).empty());
    }
}

TEST_CASE("The first joint of a ring without cuts is told from the datum mark") {
    const BuildingPlan plan = demo_plan("grain-store");
    const std::vector<Sheet> book = crew_book(plan, letter_paper(), pango_measure());
    int told = 0;
    for (const Course& course : plan.schedule.courses) {
        const Ring& ring = course.rings[0];
        const bool whole = ring.kind == RingKind::ring && ring.cuts.empty();
        const std::string text = text_of_all(sheets_of(book, plan, course, ring));
        CAPTURE(course.number);
        CHECK(has(text, "T1 starts, arc") == whole);
        if (!whole)
            continue;
        ++told;
        // Clockwise from the door's 150 degrees; over half the circle it is nearer to the left.
        double turn = std::fmod(ring.runs[0].start_bearing - 150 + 720, 360);
        const bool left = turn > 180;
        turn = left ? 360 - turn : turn;
        const std::string arc =
            length_text(ring.inside_radius * turn * 3.14159265358979 / 180, DisplayUnit::feet);
        CHECK((has(text, arc + (left ? " left" : " right")) || has(text, "at the datum mark")));
    }
    CHECK(told >= 5);
}

TEST_CASE(
    "Under a head that closes in the clear width is told with the height up to which it holds") {
    const BuildingPlan plan = demo_plan("grain-store");
    const std::string start = all_text(crew_book(plan, letter_paper(), pango_measure())[1]);
    // The door: its head springs at 80 - 30 = 50 in over the floor. The west window: 35 to 65 in,
    // springing at 45, so 10 in over the rough sill, less plaster 1-1/2 and frame 1-1/2 in: 7.
    CHECK(has(start, "Full width"));
    CHECK(has(start, "4 ft 2 in"));
    CHECK(has(start, " 7 in "));
}

TEST_CASE(
    "A second ring is told of, its letters where it has any, and no chord runs through a wall") {
    const BuildingPlan plan = demo_plan("square-door");
    const std::vector<Sheet> book = crew_book(plan, letter_paper(), pango_measure());
    int cut = 0, whole = 0;
    for (const Course& course : plan.schedule.courses) {
        if (course.rings.size() < 2 || course.rings[0].kind == RingKind::cap)
            continue;
        CAPTURE(course.number);
        const std::string text = text_of_all(sheets_of(book, plan, course, course.rings[0]));
        CHECK(has(text, "Two rings"));
        CHECK(has(text, "Letters with a 2") == !course.rings[1].cuts.empty());
        (course.rings[1].cuts.empty() ? whole : cut) += 1;
    }
    CHECK(cut > 3);
    CHECK(whole > 0);
    std::string strip;
    for (const Sheet& sheet : compass_strip(plan, letter_paper(), pango_measure()))
        strip += all_text(sheet) + "\n";
    CHECK(has(strip, "outer"));
    CHECK(
        !has(all_text(compass_strip(demo_plan("grain-store"), letter_paper(), pango_measure())[0]),
             "outer"));
}
