#include "geometry/plan/set_notes.hpp"

#include "geometry/plan/lay.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;

/// The store on a stem of 50 in with a niche 24 in wide and 8 in deep.
Design store_with_niche(double sill) {
    Design design = store_design();
    design.domes[0].springline = 50 * inch;
    design.openings.clear();
    design.domes[0].datum.clear();
    design.openings.push_back(
        opening("shelf", 90, 24 * inch, sill * inch, 20 * inch, HeadKind::square));
    design.openings[0].use = OpeningUse::niche;
    design.openings[0].niche_depth = 8 * inch;
    return design;
}

std::string note_in(const std::vector<SetNote>& notes, const std::string& what,
                    const std::string& element = {}) {
    for (const SetNote& note : notes)
        if (note.what == what && (element.empty() || note.element == element))
            return note.text;
    return {};
}

} // namespace

TEST_CASE("the form of a niche ends at its flat back, and no frame goes through the wall") {
    // In the plumb stem: 8 in and what the wall curves away over half its width, reckoned.
    const Schedule schedule = lay(store_with_niche(20));
    const OpeningPlan& shelf = schedule.openings.at(0);
    const double curve = 54 - std::sqrt(54.0 * 54 - 12 * 12);
    CHECK(curve == Approx(1.35).margin(0.005));
    CHECK(shelf.least_form_depth == Approx((8 + curve) * inch + 0.05));
    CHECK(shelf.innermost + shelf.least_form_depth == Approx((54 + 8) * inch)); // nothing behind it
    CHECK(shelf.frame_band_end == shelf.frame_band_start);
    bool told = false;
    for (const SetNote& note : schedule.courses[7].before)
        told = told ||
               (note.what == "form" &&
                note.text.find("at least " + length_text((8 + curve) * inch + 0.05,
                                                         DisplayUnit::feet)) != std::string::npos);
    CHECK(told);

    // In the leaning wall from its lowest course's back to its highest course's inside corner.
    const OpeningPlan high = lay(store_with_niche(60)).openings.at(0);
    const auto inside = [](double z) { return std::sqrt(135.0 * 135 - (z - 50) * (z - 50)) - 81; };
    const double corner = std::sqrt(std::pow(inside(77.5), 2) - 12 * 12);
    CHECK(high.least_form_depth == Approx((inside(62.5) + 8 - corner) * inch + 0.05));
}

TEST_CASE("a cap lies on boards and a prop, and its discs' seams cross") {
    const Schedule schedule = lay(store_design());
    const DomeForm& dome = schedule.building.domes[0];
    REQUIRE(dome.cap_courses >= 2);
    const int first = dome.last_ring + 1;
    const auto course = [&](int n) { return schedule.courses.at(static_cast<std::size_t>(n) - 1); };
    for (int n = 1; n <= dome.courses(); ++n) {
        CHECK(note_in(course(n).before, "cap boards").empty() == (n != first));
        CHECK(note_in(course(n).after, "cap boards stay").empty() == (n != dome.courses()));
    }
    const std::string hole =
        length_text(2 * course(first - 1).rings[0].inside_radius, DisplayUnit::feet);
    CHECK(note_in(course(first).before, "cap boards").find(hole + " wide") != std::string::npos);
    CHECK(note_in(course(dome.courses()).after, "cap boards stay").find("7 days") !=
          std::string::npos);
    for (int n = first; n < dome.courses(); ++n) {
        const double turn = clockwise_degrees({course(n).rings[0].runs[0].start_bearing},
                                              {course(n + 1).rings[0].runs[0].start_bearing});
        CHECK(std::min(turn, 360 - turn) == Approx(90));
    }
}

TEST_CASE("what a straight lintel leaves open behind it is to be filled, with its depths") {
    Design design = store_design();
    design.openings = {opening("door", 150, 32 * inch, 0, 40 * inch, HeadKind::square)};
    design.openings[0].use = OpeningUse::door;
    LintelSpec lintel;
    lintel.bearing = 12 * inch;
    lintel.depth = 5 * inch;
    lintel.width = 8 * inch;
    design.openings[0].head.lintel = lintel;
    const Schedule schedule = lay(design);
    REQUIRE(schedule.lintels.size() == 1);
    const Lintel& laid = schedule.lintels[0];
    const Course& course = schedule.courses.at(static_cast<std::size_t>(laid.first_course) - 1);
    std::string text;
    for (const SetNote& note : course.after)
        if (note.what == "lintel pocket")
            text = note.text;
    // By the circle of the ring's outside, R: R - f in the middle, sqrt(R^2 - 28^2) - f at the ends
    // of 56 in of lintel, f its outer face.
    const double outside = course.rings[0].outside_radius / inch;
    const double face = (laid.centre_distance + laid.width / 2) / inch;
    CAPTURE(text);
    REQUIRE(outside - face > 1);
    CHECK(laid.open_behind / inch == Approx(outside - face));
    CHECK(laid.open_behind_ends / inch ==
          Approx(std::max(0.0, std::sqrt(outside * outside - 28 * 28) - face)));
    CHECK(text.find("Fill the pocket behind the lintel") != std::string::npos);
    // The ring stops at its ends, 28 in off the axis, with its inside face before the lintel's.
    std::string before;
    for (const SetNote& note : course.after)
        if (note.text.find("on the room's side") != std::string::npos)
            before = note.text;
    const double r = course.rings[0].inside_radius / inch;
    const double deep = face - laid.width / inch - std::sqrt(r * r - 28 * 28);
    REQUIRE(deep > 1);
    CHECK(before.find("up to " + length_text(deep * inch, DisplayUnit::feet)) != std::string::npos);
}

TEST_CASE(
    "under a skylight the pole stays to the end, and the frame has plates and the hole's width") {
    // Common practice, no source.
    for (const int curb : {0, 2}) {
        CAPTURE(curb);
        Design design = store_design();
        design.domes[0].top.kind = TopKind::skylight;
        design.domes[0].top.diameter = 36 * inch;
        design.domes[0].top.curb = curb;
        const Schedule schedule = lay(design);
        const DomeForm& dome = schedule.building.domes[0];
        REQUIRE(dome.courses() == dome.last_ring + curb);
        for (const Course& course : schedule.courses) {
            const bool top = course.number == dome.courses();
            CHECK(note_in(course.after, "pole").empty() == !top);
            CHECK(note_in(course.before, "skylight plates").empty() == !top);
            CHECK(note_in(course.after, "skylight frame").empty() == !top);
        }
        const Course& top = schedule.courses.back();
        CHECK(note_in(top.after, "skylight frame")
                  .find(length_text(2 * top.rings[0].inside_radius, DisplayUnit::feet) + " wide") !=
              std::string::npos);
    }
}

TEST_CASE("a sill that is rained on is sloped before the form stands on it") {
    const Schedule schedule = lay(store_design());
    int sills = 0;
    for (const Course& course : schedule.courses)
        for (std::size_t i = 0; i < course.before.size(); ++i) {
            if (course.before[i].what != "sill")
                continue;
            ++sills;
            std::size_t form = i;
            while (form < course.before.size() &&
                   (course.before[form].what != "form" ||
                    course.before[form].element != course.before[i].element))
                ++form;
            CHECK(form < course.before.size());
            // Common practice, no source; water bars of handbooks fall as much (from memory).
            CHECK(course.before[i].text.find("1:10 (common practice)") != std::string::npos);
        }
    CHECK(sills > 0);
}

TEST_CASE("one wording tells when a form is struck, and the last of a wall by what holds it") {
    const Schedule schedule = lay(store_design());
    int last = 0;
    for (const OpeningPlan& opening : schedule.openings) {
        CAPTURE(opening.form.id);
        const Course& course =
            schedule.courses.at(static_cast<std::size_t>(opening.strike_after_course) - 1);
        const std::string text = note_in(course.after, "strike rule", opening.form.id);
        CHECK(text.find("may be STRUCK when this course and the two below it are 7 days old") !=
              std::string::npos);
        CHECK((text.find("the last form of") != std::string::npos) == opening.last_form);
        last += opening.last_form;
        for (int n = opening.last_course; n < opening.strike_after_course; ++n)
            CHECK(note_in(schedule.courses.at(static_cast<std::size_t>(n) - 1).after, "form stays",
                          opening.form.id)
                      .rfind("DO NOT STRIKE", 0) == 0);
    }
    CHECK(last == 1);
}
