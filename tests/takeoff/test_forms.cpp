// The boards of forms in the take-off against those that the templates draw, and by hand.
#include "geometry/takeoff/take_off.hpp"
#include "geometry/templates/forms.hpp"
#include "tests/support/demos.hpp"
#include "tests/takeoff/planned.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

const PieceTake* piece_of(const TakeOff& take, const std::string& element,
                          const std::string& what) {
    const auto found =
        std::find_if(take.pieces.begin(), take.pieces.end(), [&](const PieceTake& piece) {
            return piece.element == element && piece.what == what;
        });
    return found == take.pieces.end() ? nullptr : &*found;
}

} // namespace

TEST_CASE("boards of a form by hand") {
    // Edge 2 m, 0.5 m deep: faces at most 0.6 m apart, so two; 2 / 0.06 = 33 battens; stiffeners at
    // most 0.6 m apart along 2 m, ends counted: 5; between the boards of the faces 0.5 - 2 x 0.018.
    const FormBoards boards = form_boards(2, 0.5, false, form_stock(DisplayUnit::metres));
    CHECK(boards.faces == 2);
    CHECK(boards.battens == 33);
    CHECK(boards.stiffeners == 5);
    CHECK(boards.stiffener_length == Approx(0.464));
    CHECK(form_boards(2, 0.7, false, form_stock(DisplayUnit::metres)).faces == 3);
    CHECK(form_boards(2, 0.5, true, form_stock(DisplayUnit::metres)).stiffeners == 4);
}

TEST_CASE("the take-off buys the boards of the forms that the templates draw") {
    for (const char* const demo : {"grain-store", "home", "square-door", "cabin-metric"}) {
        CAPTURE(demo);
        const BuildingPlan plan = demo_plan(std::string(demo) + ".toml");
        const TakeOff take = take_off(plan, plastered_works());
        const FormStock stock = form_stock(plan.schedule.unit);
        double skin = 0;
        for (const OpeningPlan& opening : plan.schedule.openings) {
            CAPTURE(opening.form.id);
            const auto drawn = arch_form(opening, stock);
            REQUIRE(drawn);
            const PieceTake* batten = piece_of(take, opening.form.id, "batten of the form");
            const PieceTake* stiffener = piece_of(take, opening.form.id, "stiffener of the form");
            REQUIRE(batten);
            REQUIRE(stiffener);
            // The edge under battens is shorter than the hole's by their thickness all round, and
            // by the wedges under its feet.
            CHECK(batten->count >= drawn->battens);
            CHECK(batten->count <= drawn->battens + 3);
            CHECK(batten->length == Approx(drawn->depth));
            CHECK(std::abs(stiffener->count - drawn->stiffeners * (drawn->faces - 1)) <=
                  drawn->faces - 1);
            CHECK(stiffener->length == Approx(drawn->stiffener_length));
        }
        for (const PieceTake& piece : take.pieces)
            if (piece.what == "batten of the form")
                skin += piece.count * piece.length * piece.width;
        const auto item =
            std::find_if(take.items.begin(), take.items.end(),
                         [](const TakeOffItem& one) { return one.code == "form-timber"; });
        REQUIRE(item != take.items.end());
        // Laid close: what gaps there are add up to less than a batten a form.
        CHECK(item->amount >= skin);
        CHECK(item->amount == Approx(skin).epsilon(0.03));
    }
}
