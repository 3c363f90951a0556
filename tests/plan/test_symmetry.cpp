// A building that is turned, moved, mirrored, written in another unit or in another order is the
// same building: every length, area and volume of its schedule is.
#include "geometry/design/read_design.hpp"
#include "geometry/plan/check_layout.hpp"
#include "geometry/plan/fit.hpp"
#include "geometry/plan/lay.hpp"
#include "tests/support/designs.hpp"
#include "tests/support/files.hpp"
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

Vec2 turned_about_origin(const Vec2& at, double degrees) {
    const double angle = -degrees * radians_per_degree; // bearings run clockwise
    return {std::cos(angle) * at.x() - std::sin(angle) * at.y(),
            std::sin(angle) * at.x() + std::cos(angle) * at.y()};
}

/// Every bearing by a function, every dome's place by another. A dome that names no datum has it
/// where the smallest bearing is: that is another element after a turn, so it is named before.
template <typename Turn, typename Move>
Design moved(Design design, Turn turn, Move move) {
    for (Dome& dome : design.domes)
        dome.at = move(dome.at);
    for (Opening& opening : design.openings)
        opening.bearing.degrees = turned_into_circle(turn(opening.bearing.degrees));
    for (Tunnel& tunnel : design.tunnels)
        tunnel.bearing.degrees = turned_into_circle(turn(tunnel.bearing.degrees));
    for (Sleeve& sleeve : design.sleeves)
        sleeve.bearing.degrees = turned_into_circle(turn(sleeve.bearing.degrees));
    for (Buttress& buttress : design.buttresses)
        for (double& bearing : buttress.bearings)
            bearing = turned_into_circle(turn(bearing));
    return design;
}

Design turned_and_moved(const Design& design, double degrees, const Vec2& by) {
    return moved(
        design, [&](double bearing) { return bearing + degrees; },
        [&](const Vec2& at) -> Vec2 { return turned_about_origin(at, degrees) + by; });
}

Design mirrored(const Design& design) {
    Design other = moved(
        design, [](double bearing) { return -bearing; },
        [](const Vec2& at) { return Vec2(-at.x(), at.y()); });
    const auto swap = [](TunnelSide& side) {
        if (side != TunnelSide::end)
            side = side == TunnelSide::left ? TunnelSide::right : TunnelSide::left;
    };
    for (Opening& opening : other.openings)
        swap(opening.side);
    for (Sleeve& sleeve : other.sleeves)
        swap(sleeve.side);
    return other;
}

/// Names a datum in every dome that has an opening or a tunnel; false where one has neither: its
/// datum is north, which does not turn with the building.
bool name_datums(Design& design) {
    for (Dome& dome : design.domes) {
        if (!dome.datum.empty())
            continue;
        for (const Opening& opening : design.openings)
            if (opening.in == dome.id)
                dome.datum = opening.id;
        for (const Tunnel& tunnel : design.tunnels)
            if (tunnel.from == dome.id)
                dome.datum = tunnel.id;
        if (dome.datum.empty())
            return false;
    }
    return true;
}

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
        for (std::size_t k = 0; k < p.rings.size(); ++k) {
            REQUIRE(same(p.rings[k].inside_radius, q.rings[k].inside_radius));
            REQUIRE(p.rings[k].cuts.size() == q.rings[k].cuts.size());
        }
    }
    REQUIRE(a.openings.size() == b.openings.size());
    for (std::size_t i = 0; i < a.openings.size(); ++i) {
        REQUIRE(same(a.openings[i].least_form_depth, b.openings[i].least_form_depth));
        REQUIRE(same(a.openings[i].clear_width, b.openings[i].clear_width));
        REQUIRE(a.openings[i].strike_after_course == b.openings[i].strike_after_course);
    }
    REQUIRE(a.lintels.size() == b.lintels.size());
    for (std::size_t i = 0; i < a.lintels.size(); ++i)
        REQUIRE(same(a.lintels[i].bearing_area, b.lintels[i].bearing_area));
}

} // namespace

TEST_CASE("a building that is turned, moved or mirrored keeps every length, area and volume") {
    int laid = 0, refused = 0;
    for (std::uint64_t seed = 1; seed <= 150; ++seed) {
        CAPTURE(seed);
        Design design = random_building(seed, 4);
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
        {
            INFO("turned");
            check_same(schedule, lay(turned));
        }
        {
            INFO("mirrored");
            check_same(schedule, lay(mirror), Tubes::of_same_sum);
        }
    }
    CAPTURE(laid, refused);
    CHECK(laid > 40);
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
