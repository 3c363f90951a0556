#include "geometry/plan/plan_bounds.hpp"

#include "tests/support/seeded.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;

TEST_CASE("the pairs of rectangles that meet are those that a full comparison finds", "[region]") {
    for (std::uint64_t seed = 1; seed <= 30; ++seed) {
        CAPTURE(seed);
        Seeded dice(seed);
        std::vector<PlanBounds> bounds(static_cast<std::size_t>(dice.whole(0, 200)));
        for (PlanBounds& one : bounds) {
            if (dice.whole(0, 9) == 0)
                continue; // stays empty
            // Whole numbers, so that some only touch; now and then a long one.
            one.low = {dice.whole(0, 60), dice.whole(0, 60)};
            one.high = one.low + Vec2(dice.whole(0, dice.coin() ? 3 : 30), dice.whole(0, 5));
        }
        std::vector<std::pair<int, int>> expected;
        for (int i = 0; i < static_cast<int>(bounds.size()); ++i)
            for (int j = i + 1; j < static_cast<int>(bounds.size()); ++j)
                if (bounds[static_cast<std::size_t>(i)].meets(bounds[static_cast<std::size_t>(j)]))
                    expected.emplace_back(i, j);
        CHECK(meeting_pairs(bounds) == expected);
    }
    CHECK(PlanBounds{}.empty());
    CHECK_FALSE(PlanBounds{}.meets({{-9, -9}, {9, 9}}));
}
