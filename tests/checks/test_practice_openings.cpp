// IS 13827:1993 and IAEE 2013, from memory: openings at most 1.20 m, piers at least 1.20 m, a third
// of the wall, lintels on 0.50 m. Doors 1.25 m apart, one a quadrant; lintels on 12 in: common
// practice.
#include "geometry/checks/trade_findings.hpp"
#include "tests/checks/laid.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

const std::string earthquake = "[site]\nseismic_acceleration = \"0.2 g\"\n";

Finding seismic(const std::string& design, const std::string& code) {
    return the(seismic_practice_findings(laid(design + earthquake)), code);
}
Finding openings(const std::string& design, const std::string& code) {
    return the(opening_practice_findings(laid(design)), code);
}
std::string metres(double value) {
    return "\"" + std::to_string(value) + " m\"";
}
std::string window_of(const std::string& width, const std::string& bearing = "90") {
    return with(with(room_design, "width = \"36 in\"", "width = " + width), "bearing = 90",
                "bearing = " + bearing);
}

} // namespace

TEST_CASE("in a seismic zone no opening is wider than 1.20 m") {
    CHECK(seismic(window_of("\"1.2 m\""), "opening-width").verdict == Verdict::holds);
    CHECK(seismic(window_of("\"1.199 m\""), "opening-width").verdict == Verdict::holds);
    const Finding wide = seismic(window_of("\"1.201 m\""), "opening-width");
    CHECK(wide.verdict == Verdict::fails);
    CHECK_THAT(wide.message, Catch::Contains("seismic zones"));
    CHECK(seismic(window_of("\"" + taken(wide, "Make it (.*) wide") + "\""), "opening-width")
              .verdict == Verdict::holds);
    // Elsewhere it is told, and not judged.
    const Finding quiet =
        the(seismic_practice_findings(laid(window_of("\"1.201 m\""))), "opening-width");
    CHECK(quiet.verdict == Verdict::not_judged);
    CHECK(quiet.value.value() == Approx(1.201));
    CHECK_THAT(quiet.message, Catch::Contains("for seismic zones"));
    CHECK(the(seismic_practice_findings(laid(room_design)), "opening-width").verdict ==
          Verdict::holds);
}

TEST_CASE("in a seismic zone the pier between two openings is 1.20 m along the wall") {
    const Finding far = seismic(room_design, "opening-pier");
    CHECK(far.verdict == Verdict::holds);
    // Both cut the stem up to 50 in and the leaning courses up to 75 in; the narrowest pier is in
    // the highest of those. Reckoned from the profile's own circle at that height.
    const double z = 72.5 * inch, rho = 7 * foot * 2.5,
                 a = 7 * foot; // (a^2 + h^2) / (2 a), h = 2 a
    const double inside = std::sqrt(rho * rho - (z - 50 * inch) * (z - 50 * inch)) - (rho - a);
    const double r = inside + stadium_width(20 * inch, 5 * inch) / 2;
    const double taken_by = std::asin(19 * inch / r) + std::asin(18 * inch / r);
    CHECK(far.value.value() == Approx((pi / 2 - taken_by) * r));
    const double degrees = (1.2 / r + taken_by) * 180 / pi; // between the middles, for 1.20 m
    const auto turned = [&](double more) {
        return window_of("\"36 in\"", std::to_string(180 - degrees - more));
    };
    CHECK(seismic(turned(0.001), "opening-pier").verdict == Verdict::holds);
    CHECK(seismic(turned(0.5), "opening-pier").verdict == Verdict::holds);
    const Finding near = seismic(turned(-0.5), "opening-pier");
    CHECK(near.verdict == Verdict::fails);
    const std::string moved = taken(near, "Move 'door' ([0-9]+) degrees");
    CHECK(seismic(with(turned(-0.5), "bearing = 180",
                       "bearing = " + std::to_string(180 + std::stoi(moved))),
                  "opening-pier")
              .verdict == Verdict::holds);
}

TEST_CASE("in a seismic zone a third of a course may be open") {
    // Two openings alike in the stem: each takes 2 asin(a / r) of the circle.
    const double r = 7 * foot + stadium_width(20 * inch, 5 * inch) / 2;
    const auto pair = [](double width) {
        return with(with(with(room_design, "\"38 in\"", metres(width)), "\"36 in\"", metres(width)),
                    "bearing = 90", "bearing = 0");
    };
    const auto low = [&](double width) { // heads below the springline, so that the stem governs
        return with(with(pair(width), "height = \"85 in\"", "height = \"50 in\""),
                    "height = \"40 in\"", "height = \"15 in\"");
    };
    const double at = 2 * r * std::sin(pi / 6); // 2 openings x 60 degrees of 360
    CHECK(seismic(low(at * 0.99), "opening-sum").value.value() < 1.0 / 3);
    CHECK(seismic(low(at * 0.9999), "opening-sum").verdict == Verdict::holds);
    const Finding over = seismic(low(at * 1.01), "opening-sum");
    CHECK(over.verdict == Verdict::fails);
    CHECK(over.value.value() == Approx(2 * 2 * std::asin(at * 1.01 / 2 / r) / (2 * pi)));
    const double share = std::stod(taken(over, "openings ([0-9]+) %")) / 100;
    CHECK(seismic(low(at * 1.01 * share), "opening-sum").verdict == Verdict::holds);
    CHECK(share > 0.95);
}

TEST_CASE("a lintel lies on 12 in each side, in a seismic zone on 0.50 m") {
    const auto beam = [](const std::string& bearing) {
        return with(room_design, "head = { kind = \"square\" }\n[opening.win]",
                    "head = { kind = \"square\", lintel = { bearing = \"" + bearing +
                        "\" } }\n[opening.win]");
    };
    CHECK(openings(beam("12 in"), "lintel-rest").verdict == Verdict::holds);
    CHECK(openings(beam("12.1 in"), "lintel-rest").verdict == Verdict::holds);
    const Finding less = openings(beam("11.9 in"), "lintel-rest");
    CHECK(less.verdict == Verdict::advice);
    CHECK(openings(beam(taken(less, "bearing = (.*) in its")), "lintel-rest").verdict ==
          Verdict::holds);
    CHECK(openings(beam("0.5 m") + earthquake, "lintel-rest").verdict == Verdict::holds);
    CHECK(openings(beam("0.49 m") + earthquake, "lintel-rest").verdict == Verdict::fails);
}

TEST_CASE(
    "half of the course over a lintel lies on it, or the design is told how wide it must be") {
    // By hand: of a course between r and R at mid-span what lies between the lintel's faces.
    const auto beam = [](const std::string& width) {
        return with(room_design, "head = { kind = \"square\" }\n[opening.win]",
                    "head = { kind = \"square\", lintel = { bearing = \"12 in\", width = \"" +
                        width + "\" } }\n[opening.win]");
    };
    const BuildingPlan plan = laid(beam("6 in"));
    REQUIRE(plan.schedule.lintels.size() == 1);
    const Lintel& lintel = plan.schedule.lintels[0];
    const Ring& over =
        plan.schedule.courses.at(static_cast<std::size_t>(lintel.last_course)).rings[0];
    const double in = std::max(over.inside_radius, lintel.centre_distance - lintel.width / 2);
    const double out = std::min(over.outside_radius, lintel.centre_distance + lintel.width / 2);
    CHECK(lintel.carried_share == Approx(std::max(0.0, out - in) / over.width));
    const Finding narrow = openings(beam("6 in"), "lintel-width");
    CHECK(narrow.verdict == Verdict::advice);
    CHECK(narrow.value == Approx(lintel.carried_share));
    CHECK(openings(beam(taken(narrow, "width = (.*) in its")), "lintel-width").verdict ==
          Verdict::holds);
}

TEST_CASE("doorways stand a quadrant and 1.25 m apart") {
    const auto two = [](const std::string& bearing, const std::string& across = "14 ft") {
        return with(with(room_design, "\"14 ft\"", "\"" + across + "\""),
                    "in = \"room\"\nbearing = 90",
                    "in = \"room\"\nuse = \"door\"\nbearing = " + bearing);
    };
    CHECK(openings(two("90"), "door-spacing").verdict == Verdict::holds);
    CHECK(openings(two("89.9"), "door-spacing").verdict == Verdict::holds); // 90.1 apart
    const Finding near = openings(two("90.1"), "door-spacing");
    CHECK(near.verdict == Verdict::advice);
    CHECK(near.unit == FindingUnit::degree);
    CHECK(near.value.value() == Approx(89.9));
    CHECK(taken(near, "Set 'win' ([0-9]+) degrees") == "90");
    // In a dome of 9 ft a quadrant is less than 1.25 m of wall between doors so wide.
    const Finding tight = openings(two("90", "9 ft"), "door-spacing");
    CHECK(tight.verdict == Verdict::advice);
    CHECK(tight.unit == FindingUnit::metre);
    const int apart = std::stoi(taken(tight, "Set 'win' ([0-9]+) degrees"));
    CHECK(openings(two(std::to_string(180 - apart), "9 ft"), "door-spacing").verdict ==
          Verdict::holds);
    CHECK(openings(two(std::to_string(180 - apart + 1), "9 ft"), "door-spacing").verdict ==
          Verdict::advice);
    CHECK_FALSE(has(opening_practice_findings(laid(room_design)), "door-spacing"));
}

TEST_CASE("three courses over a head before that of a near neighbour springs") {
    const auto pair = [](const std::string& sill) { // its square head springs at sill + 20 in
        return with(room_design, "height = \"85 in\"", "height = \"40 in\"") +
               "[opening.high]\nin = \"room\"\nbearing = 215\nsill = \"" + sill +
               "\"\nheight = \"20 in\"\nwidth = \"20 in\"\n";
    };
    CHECK(openings(pair("35 in"), "head-cover").verdict == Verdict::holds); // 55 less 40: three
    CHECK(openings(pair("36 in"), "head-cover").verdict == Verdict::holds);
    const Finding thin = openings(pair("34 in"), "head-cover");
    CHECK(thin.verdict == Verdict::advice);
    CHECK(thin.value.value() == Approx(2.8));
    CHECK(openings(pair(taken(thin, "'high' to (.*), or")), "head-cover").verdict ==
          Verdict::holds);
    // Heads that close side by side, and openings far apart, have nothing to say to each other.
    CHECK_FALSE(has(opening_practice_findings(laid(room_design)), "head-cover"));
}
