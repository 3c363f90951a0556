#include "geometry/threads/side_by_side.hpp"

#include <catch2/catch.hpp>

#include <atomic>
#include <stdexcept>
#include <string>
#include <vector>

using namespace coilwright;

TEST_CASE("every piece is done once, by any number of hands") {
    for (const unsigned hands : {0U, 1U, 2U, 7U, 40U})
        for (const std::size_t count : {std::size_t{0}, std::size_t{1}, std::size_t{30}}) {
            CAPTURE(hands, count);
            std::vector<int> done(count, 0);
            side_by_side(
                count, [&](std::size_t i) { done[i] += 1 + static_cast<int>(i); }, hands);
            for (std::size_t i = 0; i < count; ++i)
                CHECK(done[i] == 1 + static_cast<int>(i));
        }
}

TEST_CASE("what a piece throws comes out, and no more is begun") {
    std::atomic<int> begun{0};
    const auto broken = [&](std::size_t i) {
        ++begun;
        if (i >= 3)
            throw std::runtime_error("piece " + std::to_string(i));
    };
    CHECK_THROWS_WITH(side_by_side(1000, broken, 1), "piece 3");
    CHECK(begun == 4);
    CHECK_THROWS_AS(side_by_side(1000, broken, 4), std::runtime_error);
    CHECK(begun <= 4 + 3 + 4); // each hand breaks once at the most
}
