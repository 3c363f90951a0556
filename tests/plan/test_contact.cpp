#include "geometry/plan/contact.hpp"

#include "geometry/plan/lay.hpp"
#include "geometry/plan/practice.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <regex>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;

/// The store without openings, its profile, rise and skylight as stated, in inches; 0: none.
Design store_with(ProfileKind kind, double rise, double skylight = 0) {
    Design design = store_design();
    design.openings.clear();
    design.domes[0].datum.clear();
    design.domes[0].profile = {};
    design.domes[0].profile.kind = kind;
    if (rise > 0)
        design.domes[0].profile.rise = rise * inch;
    if (skylight > 0) {
        design.domes[0].top.kind = TopKind::skylight;
        design.domes[0].top.diameter = skylight * inch;
    }
    return design;
}

DomeForm form_of(const Design& design) {
    return make_dome_form(design, design.domes[0]);
}

/// The contact by laying a ruler: where two stadiums' flats, or a disc's, lie over each other,
/// counted in slices of a thousandth of the width.
double contact_by_ruler(const Ring& below, const Ring& above, double t, bool square) {
    const double slice = 0.001 * above.width, round = square ? 0 : t / 2;
    const auto is_flat = [&](const Ring& ring, double r) {
        const double inner = ring.inside_radius > 0 ? ring.inside_radius + round : 0;
        return r >= inner && r <= ring.outside_radius - round;
    };
    int count = 0;
    for (double r = slice / 2; r < below.outside_radius; r += slice)
        count += is_flat(below, r) && is_flat(above, r) ? 1 : 0;
    return count * slice;
}

std::vector<Finding> steps_of(const Design& design) {
    return step_findings(design, form_of(design));
}

const Finding* without_bearing(const std::vector<Finding>& findings) {
    const auto found = std::find_if(findings.begin(), findings.end(), [](const Finding& finding) {
        return finding.code == "course-without-bearing";
    });
    return found == findings.end() ? nullptr : &*found;
}

/// The lengths that a remedy names: "with a rise of 11 ft 8 in, with a tube of 20 in lying flat, 18
/// in tamped, or with a skylight of 3 ft 2 in."; 0 for what it does not name.
struct Ways {
    double rise = 0, lay_flat = 0, tamped = 0, skylight = 0;
    bool pointed = false;
};
Ways ways_in(const std::string& remedy, DisplayUnit unit) {
    const auto length_after = [&](const std::string& words) {
        std::smatch match;
        if (!std::regex_search(remedy, match, std::regex(words + "((?:[0-9/-]+ (?:ft|in|mm) ?)+)")))
            return 0.0;
        const LengthReading reading = read_length(match[1].str(), unit);
        CHECK(reading.fault == "");
        return reading.value;
    };
    return {length_after("rise of "), length_after("tube of "), length_after("lying flat, "),
            length_after("skylight of "), remedy.find("pointed profile") != std::string::npos};
}

} // namespace

TEST_CASE("contact is the overlap of the flats, laid against a ruler") {
    for (const bool square : {false, true})
        for (Design design :
             {store_with(ProfileKind::pointed, 108), store_with(ProfileKind::catenary, 168, 48),
              store_with(ProfileKind::pointed, 150, 24)}) {
            design.course.edge = square ? TubeEdge::square : TubeEdge::round;
            const Schedule schedule = lay(design);
            const DomeForm form = form_of(design);
            for (std::size_t i = 1; i < schedule.courses.size(); ++i) {
                CAPTURE(square, i);
                const Ring& below = schedule.courses[i - 1].rings[0];
                const Ring& ring = schedule.courses[i].rings[0];
                const double by_ruler = contact_by_ruler(below, ring, 5 * inch, square);
                CHECK(ring.contact_width == Approx(by_ruler).margin(0.002 * ring.width));
                CHECK(contact_overlap(form, static_cast<int>(i) + 1, design.course.edge) ==
                      Approx(by_ruler).margin(0.002 * ring.width));
            }
        }
}

TEST_CASE("contact of rings, cap on ring and cap on cap, reckoned") {
    // w 15 in, t 5 in. Course 27 of the store is its last ring, 28 and on are discs.
    Design design = store_with(ProfileKind::pointed, 108);
    const Schedule schedule = lay(design);
    const DomeForm form = form_of(design);
    REQUIRE(form.last_ring == 27);
    REQUIRE(form.cap_courses >= 2);
    const Ring& last = schedule.courses[26].rings[0];
    const Ring& first_cap = schedule.courses[27].rings[0];
    const Ring& second_cap = schedule.courses[28].rings[0];
    // A disc lies on the last ring from that ring's hole to its own rim, and loses t / 2 at both.
    CHECK(first_cap.bearing_width == Approx(first_cap.outside_radius - last.inside_radius));
    CHECK(first_cap.contact_width ==
          Approx(first_cap.outside_radius - last.inside_radius - 5 * inch));
    // Disc on disc has no hole: only the upper one's rim loses t / 2.
    CHECK(second_cap.bearing_width == Approx(second_cap.outside_radius));
    CHECK(second_cap.contact_width == Approx(second_cap.outside_radius - 2.5 * inch));
    CHECK(schedule.courses[0].rings[0].contact_width == Approx(10 * inch));
    design.course.edge = TubeEdge::square;
    const Schedule square = lay(design);
    CHECK(square.courses[0].rings[0].contact_width == Approx(15 * inch));
    CHECK(square.courses[27].rings[0].contact_width ==
          Approx(first_cap.outside_radius - last.inside_radius));
    CHECK(square.courses[28].rings[0].contact_width == Approx(second_cap.outside_radius));
}

TEST_CASE("a wider tube below and a second wythe bear what lies on them") {
    Design design = store_with(ProfileKind::pointed, 108);
    TubeType wide;
    wide.id = "wide";
    wide.lay_flat = 22 * inch;
    wide.tamped_width = 20 * inch;
    design.tubes.push_back(wide);
    design.domes[0].lower_tube = "wide";
    design.domes[0].lower_height = 20 * inch;
    const DomeForm form = form_of(design);
    // Course 8 is the first of the narrower tube, plumb on the wider: all its flat bears.
    CHECK(form.course_bottom(8) == Approx(20 * inch));
    CHECK(contact_overlap(form, 7, TubeEdge::round) == Approx(15 * inch));
    CHECK(bearing_overlap(form, 8) == Approx((15 - 0.023152) * inch).margin(1e-5));
}

TEST_CASE("a course that does not rest on the one below fails, and every remedy named mends it") {
    struct Case {
        Design design;
        const char* why;
    };
    std::vector<Case> cases{{store_with(ProfileKind::parabola, 30), "parabola"},
                            {store_with(ProfileKind::catenary, 30), "catenary"},
                            {store_with(ProfileKind::round, 0), "round"},
                            {store_with(ProfileKind::catenary, 30, 12), "eye too small"},
                            {store_with(ProfileKind::pointed, 56), "nearly round"}};
    Design drawn = store_with(ProfileKind::drawn, 0);
    drawn.domes[0].profile.points = {{0, 54 * inch}, {10 * inch, 20 * inch}, {40 * inch, 0}};
    cases.push_back({drawn, "drawn"});
    Design square = store_with(ProfileKind::parabola, 30);
    square.tubes[0].lay_flat = 11 * inch;
    square.tubes[0].tamped_width = 9 * inch;
    square.course.edge = TubeEdge::square;
    cases.push_back({square, "square edge"});
    Design metric = store_with(ProfileKind::parabola, 30);
    metric.unit = DisplayUnit::metres;
    metric.tubes[0].tamped_width.reset();
    cases.push_back({metric, "metric, width reckoned"});

    int rises = 0, tubes = 0, skylights = 0;
    for (const Case& one : cases) {
        CAPTURE(one.why);
        const Design& design = one.design;
        const auto findings = steps_of(design);
        const Finding* found = without_bearing(findings);
        REQUIRE(found);
        CHECK(found->verdict == Verdict::fails);
        REQUIRE(found->value);
        CHECK(*found->value <= 0);
        CHECK(*found->limit == 0);
        // The first such course, from the laid rings.
        const Schedule schedule = lay(design);
        int first = 0;
        double overlap = 0;
        for (std::size_t i = 1; i < schedule.courses.size() && first == 0; ++i) {
            const Ring& below = schedule.courses[i - 1].rings[0];
            const Ring& ring = schedule.courses[i].rings[0];
            const double round = design.course.edge == TubeEdge::square ? 0 : 2.5 * inch;
            const double from = std::max(ring.inside_radius, below.inside_radius);
            overlap = std::min(ring.outside_radius, below.outside_radius) - from -
                      (from > 0 ? 2 : 1) * round;
            if (overlap <= 0)
                first = schedule.courses[i].number;
        }
        CHECK(found->subject == "dome.store course " + std::to_string(first));
        CHECK(*found->value == Approx(overlap));
        CAPTURE(found->message, found->remedy);
        CHECK_THAT(found->message, Catch::Contains("Course " + std::to_string(first) + " of"));

        const Ways ways = ways_in(found->remedy, design.unit);
        CHECK(ways.rise + ways.lay_flat + ways.skylight > 0);
        if (ways.rise > 0) {
            ++rises;
            Design mended = design;
            mended.domes[0].profile.rise = ways.rise;
            if (ways.pointed) {
                mended.domes[0].profile.kind = ProfileKind::pointed;
                mended.domes[0].profile.points.clear();
            }
            CHECK_FALSE(without_bearing(steps_of(mended)));
            CHECK(first_without_contact(form_of(mended), mended.course.edge) == 0);
        }
        if (ways.lay_flat > 0) {
            ++tubes;
            Design mended = design;
            mended.tubes[0].lay_flat = ways.lay_flat;
            CHECK((ways.tamped > 0) == design.tubes[0].tamped_width.has_value());
            if (ways.tamped > 0)
                mended.tubes[0].tamped_width = ways.tamped;
            CHECK_FALSE(without_bearing(steps_of(mended)));
        }
        if (ways.skylight > 0) {
            ++skylights;
            Design mended = design;
            mended.domes[0].top.kind = TopKind::skylight;
            mended.domes[0].top.diameter = ways.skylight;
            CHECK_FALSE(without_bearing(steps_of(mended)));
        }
    }
    CHECK(rises == static_cast<int>(cases.size()));
    CHECK(tubes > 0);
    CHECK(skylights > 2);
}

TEST_CASE("the store rests on itself, and tells no course without bearing") {
    CHECK_FALSE(without_bearing(steps_of(store_design())));
    CHECK(first_without_contact(form_of(store_design()), TubeEdge::round) == 0);
}

TEST_CASE("chain and arm are read from the pole's axis and from its face") {
    Design design = store_with(ProfileKind::pointed, 108);
    design.compass.pole_diameter = 3 * inch;
    design.compass.chain_height = 10 * inch;
    design.domes[0].second_wythe = 20 * inch;
    const Schedule schedule = lay(design);
    for (const Course& course : schedule.courses)
        for (const Ring& ring : course.rings) {
            if (ring.kind == RingKind::cap)
                continue;
            CAPTURE(course.number, ring.wythe);
            const double rise = course.middle - 10 * inch;
            CHECK(ring.chain * ring.chain ==
                  Approx(ring.inside_radius * ring.inside_radius + rise * rise));
            CHECK(ring.pole_face == Approx(ring.inside_radius - 1.5 * inch));
            CHECK(ring.chain_face * ring.chain_face ==
                  Approx(ring.pole_face * ring.pole_face + rise * rise));
        }
    // Course 1, at -12.5 in: 54 in level; 58.5 in along the chain, 57.118 in from the face.
    const Ring& base = schedule.courses[0].rings[0];
    CHECK(base.chain == Approx(std::hypot(54.0, 22.5) * inch));
    CHECK(base.chain_face == Approx(57.1182983 * inch).epsilon(1e-8));
    REQUIRE(schedule.courses[0].rings.size() == 2);
    CHECK(schedule.courses[0].rings[1].pole_face == Approx(67.5 * inch));
    // No pole stated: all readings are from the axis.
    design.compass.pole_diameter = 0;
    const Schedule axis = lay(design);
    CHECK(axis.courses[9].rings[0].pole_face == axis.courses[9].rings[0].inside_radius);
    CHECK(axis.courses[9].rings[0].chain_face == axis.courses[9].rings[0].chain);
}
