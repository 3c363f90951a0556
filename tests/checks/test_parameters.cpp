// What is tried of a design's values: nothing that its file could not say.
#include "geometry/checks/parameters.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = 0.0254;

/// The one parameter of the door of the tests' store, 40 in wide and 70 in high, with this head.
Parameter of_door(const std::string& word, const HeadSpec& head) {
    Design design = store_design();
    design.openings[0].head = head;
    design.openings[0].width = 40 * inch;
    design.openings[0].height = 70 * inch;
    const BuildingPlan plan = plan_building(design, {});
    const Elements elements = elements_of("opening." + design.openings[0].id, plan);
    const std::vector<Parameter> all = parameters(word, elements, plan);
    REQUIRE(all.size() == 1);
    return all.front();
}

HeadSpec head_of(HeadKind kind, std::optional<double> rise = {}) {
    HeadSpec head;
    head.kind = kind;
    head.rise = rise;
    return head;
}

} // namespace

TEST_CASE("an opening is tried no lower than its head rises") {
    const double equilateral = 20 * std::sqrt(3.0); // a pointed head without a rise is this
    CHECK(of_door("opening.height", head_of(HeadKind::round)).least == Approx(20 * inch));
    CHECK(of_door("opening.height", head_of(HeadKind::pointed)).least ==
          Approx(equilateral * inch));
    CHECK(of_door("opening.height", head_of(HeadKind::pointed, 30 * inch)).least ==
          Approx(30 * inch));
    CHECK(of_door("opening.height", head_of(HeadKind::segmental, 5 * inch)).least ==
          Approx(5 * inch));
    CHECK(of_door("opening.height", head_of(HeadKind::square)).least == Approx(0.01));
}

TEST_CASE("an opening is tried only as wide as its head can be drawn") {
    // A round head rises half the width; a pointed one at least that; a segmental one at most.
    const Parameter round = of_door("opening.width", head_of(HeadKind::round));
    CHECK(round.least == Approx(10 * inch));
    CHECK(round.most == Approx(120 * inch)); // three times its own, under twice the height
    CHECK(of_door("opening.width", head_of(HeadKind::pointed, 30 * inch)).most ==
          Approx(60 * inch));
    CHECK(of_door("opening.width", head_of(HeadKind::pointed)).most ==
          Approx(140 / std::sqrt(3.0) * inch));
    CHECK(of_door("opening.width", head_of(HeadKind::segmental, 15 * inch)).least ==
          Approx(30 * inch));
    CHECK(of_door("opening.width", head_of(HeadKind::square)).most == Approx(120 * inch));
}
