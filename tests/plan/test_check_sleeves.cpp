// Sleeves that do not fit.
#include "geometry/plan/check_layout.hpp"
#include "tests/plan/layout_codes.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;

} // namespace

TEST_CASE("sleeves keep a tube's width from jambs, tunnels and each other, and lie in the rings") {
    const auto with = [](std::vector<Sleeve> sleeves) {
        Design design = store_with_porch();
        design.sleeves = std::move(sleeves);
        return codes(design);
    };
    CHECK(with({sleeve("a", 100, 10 * inch, 4 * inch)}).empty());
    CHECK(with({sleeve("a", 100, 200 * inch, 4 * inch)}) == Codes{"sleeve-off-wall"});
    CHECK(with({sleeve("a", 100, -20 * inch, 4 * inch)}) == Codes{"sleeve-off-wall"});
    CHECK(with({sleeve("a", 150, -10 * inch, 4 * inch)}).empty()); // under the door's threshold
    // Door: asin(16/54) = 17.2 degrees; 15 in and 2 in on r 54: 18.0 degrees more.
    CHECK(with({sleeve("a", 150 + 35, 12 * inch, 4 * inch)}) == Codes{"sleeve-by-opening"});
    CHECK(with({sleeve("a", 150 + 36, 12 * inch, 4 * inch)}).empty());
    CHECK(with({sleeve("a", 330 + 50, 12 * inch, 4 * inch)}) ==
          Codes{"sleeve-by-opening"}); // porch
    CHECK(with({sleeve("a", 300, 12 * inch, 4 * inch)}) == Codes{"sleeve-by-opening"});
    CHECK(with({sleeve("a", 100, 12 * inch, 4 * inch), sleeve("b", 110, 12 * inch, 4 * inch)}) ==
          Codes{"sleeves-too-close", "sleeves-too-close"});
    CHECK(with({sleeve("a", 100, 12 * inch, 4 * inch), sleeve("b", 110, 17 * inch, 4 * inch)})
              .empty());
    CHECK(with({sleeve("a", 100, 12 * inch, 2 * inch), sleeve("b", 102, 12 * inch, 2 * inch)})
              .empty());
}

TEST_CASE("a sleeve is held to every course that it reaches, and to piers") {
    Design design = store_with_porch(); // west: a window on 238, its sill at 38 in
    design.openings.resize(1);
    design.openings.push_back(
        opening("west", 240, 20 * inch, 35 * inch, 20 * inch, HeadKind::square));
    design.buttresses.clear();
    const auto with = [&](const Sleeve& added) {
        Design other = design;
        other.sleeves = {added};
        return codes(other);
    };
    // Its centre lies in the course under the sill, its upper edge in the one over it.
    CHECK(with(sleeve("a", 240, 33 * inch, 8 * inch)) == Codes{"sleeve-by-opening"});
    CHECK(with(sleeve("a", 240, 27 * inch, 8 * inch)).empty());
    // A thin one is moved to the joint nearest to it: the sill.
    CHECK(with(sleeve("a", 240, 34 * inch, 1 * inch)) == Codes{"sleeve-by-opening"});
    CHECK(with(sleeve("a", 240, 31 * inch, 1 * inch)).empty());
    design.openings.resize(1);
    design.buttresses = {flank()}; // on 60 and 240, 30 in wide, to 40 in
    CHECK(with(sleeve("a", 60, 12 * inch, 4 * inch)) == Codes{"sleeve-by-opening"});
    CHECK(with(sleeve("a", 60, 12 * inch, 1 * inch)) == Codes{"sleeve-by-opening"});
    CHECK(with(sleeve("a", 60, 45 * inch, 4 * inch)).empty()); // over its top
    // asin(15 / 54) = 16.13 degrees of pier; 15 in and 2 in on r 54: 18.04 degrees more.
    CHECK(with(sleeve("a", 60 + 34, 12 * inch, 4 * inch)) == Codes{"sleeve-by-opening"});
    CHECK(with(sleeve("a", 60 + 35, 12 * inch, 4 * inch)).empty());
}

TEST_CASE("a sleeve may lie under a built-out jamb, and not in it") {
    Design design = store_design();
    design.openings.resize(1);
    design.openings.push_back(
        opening("east", 50, 20 * inch, 35 * inch, 30 * inch, HeadKind::round));
    design.openings[1].reveal_plumb = true;
    const ButtressForm* reveal = nullptr;
    const BuildingForm building = make_building_form(design);
    for (const ButtressForm& pier : building.buttresses)
        if (pier.reveal)
            reveal = &pier;
    REQUIRE(reveal);
    const double bearing = reveal->bearing.degrees;
    const auto with = [&](double height) {
        Design other = design;
        other.sleeves = {sleeve("a", bearing, height, 4 * inch)};
        return codes(other);
    };
    CHECK(with(reveal->bottom - 3 * inch).empty());
    CHECK(with(reveal->bottom + 3 * inch) == Codes{"sleeve-by-opening"});
}

TEST_CASE("the bearing offered for a sleeve is free") {
    for (double bearing = 0; bearing < 360; bearing += 3) {
        CAPTURE(bearing);
        Design design = store_with_porch();
        design.sleeves = {sleeve("a", bearing, 12 * inch, 4 * inch)};
        const auto faults = check_layout(design);
        if (faults.empty())
            continue;
        REQUIRE(faults.size() == 1);
        design.sleeves[0].bearing = {
            std::stod(faults[0].example.substr(faults[0].example.find('=') + 1))};
        CHECK(check_layout(design).empty());
    }
}

TEST_CASE("sleeves and lintels in a tunnel's walls are held to its free wall") {
    Design design = store_with_porch();
    design.tunnels[0].reach = 170 * inch;
    Sleeve pipe = sleeve("pipe", 240, 12 * inch, 4 * inch);
    pipe.in = "porch";
    pipe.side = TunnelSide::left;
    const auto at = [&](double along, double height) {
        Design other = design;
        pipe.along = along * inch;
        pipe.height = height * inch;
        other.sleeves = {pipe};
        return codes(other);
    };
    CHECK(at(115, 12).empty());
    CHECK(at(80, 12) == Codes{"sleeve-off-wall"});  // the wall is free from 69 + 15 in
    CHECK(at(160, 12) == Codes{"sleeve-off-wall"}); // to 170 - 15
    CHECK(at(115, 90) == Codes{"sleeve-off-wall"}); // the sides end at 80 in
    design.openings.push_back(in_porch("slit", TunnelSide::left, 115 * inch, 16 * inch, 10 * inch,
                                       20 * inch, HeadKind::square));
    CHECK(at(115 + 8 + 2 + 14, 12) == Codes{"sleeve-by-opening"});
    CHECK(at(115 + 8 + 2 + 16, 12).empty());
    CHECK(at(115 + 8 + 2 + 14, 40).empty());

    Design lintel = design;
    lintel.openings.back().head.lintel = LintelSpec{};
    CHECK(codes(lintel).empty());
    lintel.openings.back().head.lintel->bearing = 40 * inch; // 48 in each way; free are 31 + 15
    CHECK(codes(lintel) == Codes{"lintel-too-long"});
    Design gate = store_with_porch();
    gate.tunnels[0].end_wall = true;
    gate.openings.push_back(
        in_porch("gate", TunnelSide::end, 0, 16 * inch, 0, 40 * inch, HeadKind::square));
    gate.openings.back().head.lintel = LintelSpec{};
    gate.openings.back().head.lintel->bearing = 10 * inch; // 18 in each way, as wide as the tunnel
    CHECK(codes(gate).empty());
    gate.openings.back().head.lintel->bearing = 11 * inch;
    CHECK(codes(gate) == Codes{"lintel-too-long"});
    gate.openings.back().head.lintel->bearing = 6 * inch;
    gate.openings.back().height = 60 * inch;
    gate.openings.back().width = 6 * inch;
    CHECK(codes(gate).empty());
    gate.openings.back().head.lintel->depth = 22 * inch; // its courses end above the walls' 80 in
    CHECK(codes(gate) == Codes{"opening-too-high"});
}
