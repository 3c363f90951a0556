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

TEST_CASE("a sill that is rained on is sloped when its form is out, which stands level") {
    const Schedule schedule = lay(store_design());
    int sills = 0;
    for (const Course& course : schedule.courses)
        for (const SetNote& note : course.after) {
            if (note.what != "sill")
                continue;
            ++sills;
            CHECK(std::any_of(course.after.begin(), course.after.end(), [&](const SetNote& other) {
                return other.what == "strike rule" && other.element == note.element;
            }));
            // Common practice, no source; water bars of handbooks fall as much (from memory).
            CHECK(note.text.find("1:10 (common practice)") != std::string::npos);
        }
    CHECK(sills > 0);
}

TEST_CASE("a drip comes after the last bag of a fan") {
    Design design = store_design();
    design.openings.resize(1);
    design.openings[0] =
        opening("eye", 150, 26 * inch, 25 * inch, 23 * inch, HeadKind::round); // springs at 35
    design.openings[0].head.laid = HeadLaid::fan;
    design.domes[0].datum = "eye";
    const Schedule schedule = lay(design);
    int keystone = 0, drip = 0;
    for (const Course& course : schedule.courses) {
        for (const Ring& ring : course.rings)
            for (const Piece& piece : ring.pieces)
                if (piece.kind == PieceKind::keystone)
                    keystone = course.number;
        if (!note_in(course.after, "drip", "eye").empty())
            drip = course.number;
    }
    // The fan ends at 35 + 13 + 15 = 63 in, in course 16 (60 to 65 in; 3 courses below the floor).
    CHECK(keystone == 16);
    CHECK(drip == 16);
}

TEST_CASE("plates lie where the trade's eighths fall, halfway between joints on the upper one") {
    Design design = store_design();
    design.openings.resize(1);
    design.openings[0] = opening("sq", 150, 20 * inch, 30 * inch, 20 * inch, HeadKind::square);
    design.domes[0].datum = "sq";
    std::vector<int> plates;
    for (const Course& course : lay(design).courses)
        if (!note_in(course.after, "anchor plates", "sq").empty())
            plates.push_back(course.number);
    // 32.5, 37.5, 42.5 and 47.5 in: the joints at 35, 40 and 45; that at 50 is the head.
    CHECK(plates == std::vector<int>{10, 11, 12});
}

TEST_CASE("the sheets of both domes tell when the vault between them may be let go") {
    for (const char* second : {"annex", "zone"}) { // laid before the other, or after it
        CAPTURE(second);
        Design design = store_design();
        Dome dome = design.domes[0];
        dome.id = second;
        dome.at = {5.2, 0};
        dome.inside_diameter = 84 * inch;
        dome.datum.clear();
        design.domes.push_back(dome);
        Tunnel link = porch();
        link.to = second;
        link.reach.reset();
        link.bearing = {90};
        design.tunnels = {link};
        design.openings.resize(1); // the door, on 150
        const Schedule schedule = lay(design);
        const int strike = schedule.vault_forms.at(0).strike_after_course;
        int rules = 0;
        for (const Course& course : schedule.courses)
            for (const SetNote& note : course.after) {
                if (note.what != "strike rule" ||
                    note.text.find("vault's form") == std::string::npos)
                    continue;
                ++rules;
                CHECK(course.number == strike);
                for (const std::string& dome_id : {std::string("store"), std::string(second)})
                    CHECK(note.text.find("to " + std::to_string(strike) + " of '" + dome_id +
                                         "'") != std::string::npos);
            }
        CHECK(rules == 2);
    }
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
