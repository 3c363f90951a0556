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
