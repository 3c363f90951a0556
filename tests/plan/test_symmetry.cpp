// A building that is turned, moved, mirrored, written in another unit or in another order is the
// same building: every length, area and volume of its schedule is.
#include "geometry/design/read_design.hpp"
#include "geometry/plan/check_layout.hpp"
#include "geometry/plan/fit.hpp"
#include "geometry/plan/lay.hpp"
#include "tests/support/designs.hpp"
#include "tests/support/files.hpp"
#include "tests/support/moved_designs.hpp"
#include "tests/support/random_buildings.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <regex>
#include <sstream>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double tolerance = 1e-9; // metres, square metres, cubic metres

std::vector<double> sorted_lengths(const Course& course) {
    std::vector<double> lengths;
    const auto add = [&](const std::vector<LaidTube>& tubes) {
        for (const LaidTube& tube : tubes)
            lengths.push_back(tube.length);
    };
    for (const Ring& ring : course.rings)
        for (const Run& run : ring.runs)
            add(run.tubes);
    for (const Straight& straight : course.straights)
        add(straight.tubes);
    std::sort(lengths.begin(), lengths.end());
    return lengths;
}

std::vector<double> numbers_of(const OpeningPlan& plan) {
    return {plan.clear_width,      plan.clear_height,       plan.least_form_depth,
            plan.frame_band_start, plan.frame_band_end,     plan.innermost,
            plan.rained_on,        1.0 * plan.first_course, 1.0 * plan.last_course};
}

std::vector<double> numbers_of(const Fan& fan) {
    return {1.0 * fan.count, fan.depth,     fan.outer_arc,      fan.inner_arc,
            fan.outer_width, fan.face_area, fan.keystone_outer, fan.fill_volume};
}

std::vector<double> numbers_of(const Lintel& lintel) {
    return {lintel.bottom,          lintel.length,      lintel.bearing_area, lintel.shows_inside,
            lintel.centre_distance, lintel.open_behind, lintel.packing,      lintel.carried_share};
}

std::vector<double> numbers_of(const GroundPlan& ground) {
    std::vector<double> numbers;
    for (const Region* region : {&ground.floor, &ground.footprint, &ground.ground_course})
        numbers.insert(numbers.end(),
                       {region->area, outer_perimeter(*region), hole_perimeter(*region)});
    return numbers;
}

void check_same_ring(const Ring& p, const Ring& q) {
    const std::vector<double> a{p.inside_radius, p.centre_radius, p.outside_radius, p.chain,
                                p.pole_face,     p.chain_face,    p.step_in,        p.bearing_width,
                                p.contact_width, p.fill_volume};
    const std::vector<double> b{q.inside_radius, q.centre_radius, q.outside_radius, q.chain,
                                q.pole_face,     q.chain_face,    q.step_in,        q.bearing_width,
                                q.contact_width, q.fill_volume};
    CAPTURE(p.dome);
    CHECK_THAT(a, Catch::Approx(b).margin(tolerance));
    REQUIRE(p.cuts.size() == q.cuts.size());
    CHECK(std::abs(p.wire_length - q.wire_length) <= tolerance * 10);
    const auto pieces = [](const Ring& ring) {
        std::vector<double> lengths;
        for (const Piece& piece : ring.pieces)
            lengths.insert(lengths.end(), {piece.length, piece.longest, piece.fill_volume});
        std::sort(lengths.begin(), lengths.end());
        return lengths;
    };
    CHECK_THAT(pieces(p), Catch::Approx(pieces(q)).margin(10 * tolerance));
}

/// Joints are staggered clockwise in every building, so that a mirror image has other single tubes.
enum class Tubes { same, of_same_sum };

void check_same(const Schedule& a, const Schedule& b, Tubes tubes = Tubes::same) {
    const auto same = [](double x, double y) { return std::abs(x - y) <= tolerance; };
    REQUIRE(a.courses.size() == b.courses.size());
    for (std::size_t i = 0; i < a.courses.size(); ++i) {
        const Course& p = a.courses[i];
        const Course& q = b.courses[i];
        CAPTURE(p.number);
        if (p.wall.decided && q.wall.decided) {
            CHECK(std::abs(p.wall_area - q.wall_area) <= tolerance);
            CHECK(std::abs(perimeter(p.wall) - perimeter(q.wall)) <= tolerance * 100);
        }
        CHECK(std::abs(p.tube_length - q.tube_length) <= tolerance * 10);
        CHECK(std::abs(p.fill_volume - q.fill_volume) <= tolerance);
        CHECK(std::abs(p.wire_length - q.wire_length) <= tolerance * 10);
        CHECK(std::abs(p.cut_length - q.cut_length) <= tolerance * 10);
        const auto lengths_p = sorted_lengths(p), lengths_q = sorted_lengths(q);
        REQUIRE(lengths_p.size() == lengths_q.size());
        for (std::size_t k = 0; tubes == Tubes::same && k < lengths_p.size(); ++k)
            REQUIRE(same(lengths_p[k], lengths_q[k]));
        REQUIRE(p.rings.size() == q.rings.size());
        for (std::size_t k = 0; k < p.rings.size(); ++k)
            check_same_ring(p.rings[k], q.rings[k]);
    }
    REQUIRE(a.openings.size() == b.openings.size());
    for (std::size_t i = 0; i < a.openings.size(); ++i) {
        const OpeningPlan& p = a.openings[i];
        const OpeningPlan& q = b.openings[i];
        CAPTURE(p.form.id);
        CHECK_THAT(numbers_of(p), Catch::Approx(numbers_of(q)).margin(tolerance));
        REQUIRE(p.strike_after_course == q.strike_after_course);
    }
    REQUIRE(a.fans.size() == b.fans.size());
    for (std::size_t i = 0; i < a.fans.size(); ++i)
        CHECK_THAT(numbers_of(a.fans[i]), Catch::Approx(numbers_of(b.fans[i])).margin(tolerance));
    REQUIRE(a.lintels.size() == b.lintels.size());
    for (std::size_t i = 0; i < a.lintels.size(); ++i)
        CHECK_THAT(numbers_of(a.lintels[i]),
                   Catch::Approx(numbers_of(b.lintels[i])).margin(tolerance));
    REQUIRE(a.sleeves.size() == b.sleeves.size());
    for (std::size_t i = 0; i < a.sleeves.size(); ++i) {
        CHECK(a.sleeves[i].set_before_course == b.sleeves[i].set_before_course);
        CHECK(same(a.sleeves[i].mark(), b.sleeves[i].mark()));
    }
    CHECK_THAT(numbers_of(a.ground), Catch::Approx(numbers_of(b.ground)).margin(100 * tolerance));
    REQUIRE(a.totals.order.size() == b.totals.order.size());
    for (std::size_t i = 0; i < a.totals.order.size(); ++i) {
        CHECK(a.totals.order[i].tubes == b.totals.order[i].tubes);
        CHECK(a.totals.order[i].bags == b.totals.order[i].bags);
        CHECK(std::abs(a.totals.order[i].cut_length - b.totals.order[i].cut_length) <=
              1000 * tolerance); // a sum of hundreds
    }
}

} // namespace

TEST_CASE("a building that is turned, moved or mirrored keeps every length, area and volume") {
    int laid = 0, refused = 0;
    std::size_t fans = 0, lintels = 0, sleeves = 0;
    for (std::uint64_t seed = 1; seed <= 150; ++seed) {
        CAPTURE(seed);
        Design design = random_building(seed, 4);
        if (seed % 2 == 0)
            design = with_fans_lintels_and_sleeves(std::move(design), seed);
        if (!name_datums(design))
            continue;
        Dice dice(seed);
        const Design turned = turned_and_moved(design, dice.between(0, 360),
                                               {dice.between(-50, 50), dice.between(-50, 50)});
        const Design mirror = mirrored(design);
        const bool sound = check_layout(design).empty();
        REQUIRE(check_layout(turned).empty() == sound);
        REQUIRE(check_layout(mirror).empty() == sound);
        if (!sound) {
            ++refused;
            continue;
        }
        ++laid;
        const Schedule schedule = lay(design);
        fans += schedule.fans.size();
        lintels += schedule.lintels.size();
        sleeves += schedule.sleeves.size();
        {
            INFO("turned");
            check_same(schedule, lay(turned));
        }
        {
            INFO("mirrored");
            check_same(schedule, lay(mirror), Tubes::of_same_sum);
        }
    }
    CAPTURE(laid, refused, fans, lintels, sleeves);
    CHECK(laid > 40);
    CHECK(fans > 10);
    CHECK(lintels > 5);
    CHECK(sleeves > 10);
}

namespace {

/// The text with every length in feet and inches written in metres, and no bare lengths left.
std::string in_metres(const std::string& text) {
    static const std::regex length(
        R"re("((-?\d+(-\d+/\d+)?( \d+/\d+)?) (ft|in)( \d+(-\d+/\d+)? in)?)")re");
    std::string result;
    auto from = text.cbegin();
    for (std::sregex_iterator i(text.begin(), text.end(), length), end; i != end; ++i) {
        result.append(from, (*i)[0].first);
        const LengthReading reading = read_length((*i)[1].str(), DisplayUnit::feet);
        REQUIRE(reading.fault == "");
        result += '"' + fixed_text(reading.value, 12) + " m\"";
        from = (*i)[0].second;
    }
    result.append(from, text.cend());
    return result.replace(result.find("unit = \"ft\""), 11, "unit = \"m\"");
}

/// The other way: lengths in metres, bare ones too, written in inches.
std::string in_feet(std::string text) {
    static const std::regex bare(
        R"re(\b(inside_diameter|springline|sill|height|rise|width) = (\d+(\.\d+)?)(?=[\s}]))re");
    text = std::regex_replace(text, bare, "$1 = \"$2 m\"");
    static const std::regex length(R"re("(-?\d+(\.\d+)? (m|cm|mm))")re");
    std::string result;
    auto from = text.cbegin();
    for (std::sregex_iterator i(text.begin(), text.end(), length), end; i != end; ++i) {
        result.append(from, (*i)[0].first);
        const LengthReading reading = read_length((*i)[1].str(), DisplayUnit::metres);
        REQUIRE(reading.fault == "");
        result += '"' + fixed_text(reading.value / metres_per_inch, 12) + " in\"";
        from = (*i)[0].second;
    }
    result.append(from, text.cend());
    return result.replace(result.find("unit = \"m\""), 10, "unit = \"ft\"");
}

Design design_of(const std::string& text) {
    const DesignReading reading = read_design(text);
    for (const Diagnostic& fault : reading.diagnostics)
        FAIL(diagnostic_text(fault, "design", text));
    return fit(reading.design).design;
}

Schedule laid_of(const std::string& text) {
    return lay(design_of(text));
}

const char* const demos[] = {"cabin-metric", "grain-store", "home",     "retreat",
                             "seed-house",   "square-door", "washroom", "workshop"};

/// The tables of a file after its head, in another order, and the lines of each.
std::string shuffled(const std::string& text, std::uint64_t seed) {
    std::vector<std::vector<std::string>> tables(1);
    std::istringstream stream(text);
    for (std::string line; std::getline(stream, line);) {
        if (!line.empty() && line.front() == '[')
            tables.emplace_back();
        tables.back().push_back(line);
    }
    Dice dice(seed);
    const auto shuffle = [&](auto& list, std::size_t first) {
        for (std::size_t i = list.size(); i > first + 1; --i)
            std::swap(list[i - 1], list[static_cast<std::size_t>(dice.whole(
                                       static_cast<int>(first), static_cast<int>(i) - 1))]);
    };
    shuffle(tables, 1);
    std::string result;
    for (std::size_t i = 0; i < tables.size(); ++i) {
        if (i > 0)
            shuffle(tables[i], 1);
        for (const std::string& line : tables[i])
            result += line + "\n";
    }
    return result;
}

} // namespace

TEST_CASE("a demo written in metres is the one written in feet") {
    for (const std::string name : demos) {
        CAPTURE(name);
        const std::string text = whole_building_text(name);
        const bool feet = text.find("unit = \"ft\"") != std::string::npos;
        const std::string other = feet ? in_metres(text) : in_feet(text);
        for (const char* unit : {"ft", "in", "m", "cm", "mm"})
            if (feet == (unit == std::string("ft") || unit == std::string("in")))
                CHECK(other.find(std::string(" ") + unit + '"') == std::string::npos);
        check_same(laid_of(text), laid_of(other));
    }
}

TEST_CASE("a demo that is turned, moved or mirrored keeps every length, area and volume") {
    for (const std::string name : demos) {
        CAPTURE(name);
        Design design = design_of(whole_building_text(name));
        // The joints of a dome whose datum is north start elsewhere when it is turned.
        const Tubes tubes = name_datums(design) ? Tubes::same : Tubes::of_same_sum;
        REQUIRE(check_layout(design).empty());
        const Schedule schedule = lay(design);
        for (const double degrees : {17.3, 90.0, 203.71}) {
            CAPTURE(degrees);
            check_same(schedule, lay(turned_and_moved(design, degrees, {-31.4, 15.9})), tubes);
        }
        check_same(schedule, lay(mirrored(design)), Tubes::of_same_sum);
    }
}

TEST_CASE("the order of tables and keys in the file changes no number") {
    for (const std::string name : demos) {
        CAPTURE(name);
        const std::string text = whole_building_text(name);
        const Schedule schedule = laid_of(text);
        for (std::uint64_t seed = 1; seed <= 10; ++seed) {
            CAPTURE(seed);
            const Schedule other = laid_of(shuffled(text, seed));
            check_same(schedule, other);
            for (std::size_t i = 0; i < schedule.courses.size(); ++i) {
                const Course& p = schedule.courses[i];
                const Course& q = other.courses[i];
                REQUIRE(p.wall_area == q.wall_area); // to the last bit
                REQUIRE(p.wire_length == q.wire_length);
                for (std::size_t k = 0; k < p.rings.size(); ++k) {
                    REQUIRE(p.rings[k].dome == q.rings[k].dome);
                    for (std::size_t c = 0; c < p.rings[k].cuts.size(); ++c)
                        REQUIRE(p.rings[k].cuts[c].inside_bearing ==
                                q.rings[k].cuts[c].inside_bearing);
                }
                for (std::size_t k = 0; k < p.straights.size(); ++k)
                    REQUIRE(p.straights[k].start == q.straights[k].start);
                REQUIRE(p.before.size() == q.before.size());
                for (std::size_t k = 0; k < p.before.size(); ++k)
                    REQUIRE(p.before[k].text == q.before[k].text);
            }
        }
    }
}
