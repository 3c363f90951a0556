#include "geometry/plan/short_pieces.hpp"

#include "geometry/plan/lay.hpp"
#include "tests/support/demos.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;

/// The store with a window whose near jamb stands `gap` inches from the door's on the centreline of
/// course 12, all plumb there.
Design store_with_window(double gap) {
    Design design = store_design();
    design.domes[0].springline = 120 * inch;
    design.openings.resize(1);
    Opening& door = design.openings[0];
    door.width = 32 * inch;
    // On the centreline, r 54 + 7.5 in: both jambs and the gap between them.
    const double r = 61.5;
    const double turn = std::asin(16 / r) + std::asin(10 / r) + gap / r;
    Opening window = opening("window", door.bearing.degrees + turn * 180 / pi, 20 * inch, 30 * inch,
                             40 * inch, HeadKind::pointed);
    window.in = door.in;
    design.openings.push_back(window);
    return design;
}

} // namespace

TEST_CASE("short pieces: a run shorter than its tube is wide is named with its course") {
    const auto found = [](double gap) {
        std::set<double> lengths;
        for (const ShortPiece& piece : short_pieces(lay(store_with_window(gap)))) {
            CHECK(piece.element == "store");
            CHECK(piece.width == Approx(15 * inch));
            CHECK(piece.start_by == "door");
            CHECK(piece.end_by == "window");
            if (piece.course == 12)
                lengths.insert(piece.length / inch);
        }
        return lengths;
    };
    REQUIRE(found(14.9).size() == 1); // a run
    CHECK(*found(14.9).begin() == Approx(14.9));
    REQUIRE(found(7.4).size() == 1); // a wedge
    CHECK(*found(7.4).begin() == Approx(7.4));
    CHECK(found(15.1).empty());
}

TEST_CASE("short pieces: the advice names courses, pieces, what stops them and what to do") {
    const Design design = store_with_window(7.4);
    const Schedule schedule = lay(design);
    const std::vector<ShortPiece> pieces = short_pieces(schedule);
    const std::vector<Finding> findings = short_piece_findings(design, schedule);
    REQUIRE(findings.size() == 1);
    const Finding& finding = findings[0];
    CHECK(finding.code == "short-pieces");
    CHECK(finding.subject == "dome.store");
    CHECK(finding.verdict == Verdict::advice);
    CHECK(finding.message.find(std::to_string(pieces.size()) + " pieces") == 0);
    CHECK(finding.message.find("course " + std::to_string(pieces[0].course) + " " + pieces[0].id) !=
          std::string::npos);
    CHECK(finding.message.find("between 'door' and 'window'") != std::string::npos);
    CHECK(*finding.limit == Approx(15 * inch));
    CHECK(*finding.value < *finding.limit);
    CHECK(finding.remedy.find("Fold each into one bag") == 0);
    // Its remedy holds: as much farther apart as it says, and the course of the shortest has room.
    const double apart = *finding.limit - *finding.value;
    const Design wider = store_with_window(7.4 + apart / inch + 1e-6);
    CHECK(short_piece_findings(wider, lay(wider)).empty());
    CHECK(short_piece_findings(store_design(), lay(store_design())).empty());
}

TEST_CASE("short pieces: none of the demos' runs is left out") {
    int all = 0;
    for (const char* name : {"grain-store.toml", "home.toml", "retreat.toml", "workshop.toml"}) {
        const BuildingPlan plan = demo_plan(name);
        const std::vector<ShortPiece> named = short_pieces(plan.schedule);
        std::size_t count = 0;
        for (const Course& course : plan.schedule.courses) {
            for (const Ring& ring : course.rings)
                if (ring.kind == RingKind::ring) {
                    for (const Run& run : ring.runs)
                        count += !run.closed && run.length < ring.width - 1e-6;
                    count += static_cast<std::size_t>(
                        std::count_if(ring.pieces.begin(), ring.pieces.end(), [](const Piece& one) {
                            return one.kind == PieceKind::wedge;
                        }));
                }
            for (const Straight& straight : course.straights)
                count +=
                    straight.part != StraightPart::pier && straight.length < straight.width - 1e-6;
        }
        CAPTURE(name);
        CHECK(named.size() == count);
        all += static_cast<int>(count);
        std::set<std::string> told;
        for (const Finding& finding : plan.findings)
            if (finding.code == "short-pieces")
                told.insert(finding.subject.substr(finding.subject.find('.') + 1));
        for (const ShortPiece& piece : named)
            CHECK(told.count(piece.element) == 1);
    }
    CHECK(all > 0);
}

TEST_CASE("short pieces: those of a built-out jamb are advised too, beside the form") {
    const BuildingPlan plan = demo_plan("seed-house.toml");
    std::set<std::string> openings;
    for (const ShortPiece& piece : short_pieces(plan.schedule))
        if (piece.end_by.empty()) {
            openings.insert(piece.element);
            CHECK(piece.length < piece.width);
        }
    REQUIRE_FALSE(openings.empty());
    for (const std::string& id : openings) {
        const auto found =
            std::find_if(plan.findings.begin(), plan.findings.end(), [&](const Finding& finding) {
                return finding.code == "short-pieces" && finding.subject == "opening." + id;
            });
        CAPTURE(id);
        REQUIRE(found != plan.findings.end());
        CHECK(found->message.find("between ring and form") != std::string::npos);
        CHECK(found->remedy.find("ram damp fill") != std::string::npos);
    }
}
