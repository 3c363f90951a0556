#include "geometry/base/nearest_word.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;

TEST_CASE("edit distances of textbook pairs") {
    // Levenshtein 1966: kitten to sitting takes 3. Damerau 1964: a swap of neighbours takes 1.
    CHECK(edit_distance("kitten", "sitting") == 3);
    CHECK(edit_distance("saturday", "sunday") == 3);
    CHECK(edit_distance("heigth", "height") == 1);
    CHECK(edit_distance("", "abc") == 3);
    CHECK(edit_distance("abc", "") == 3);
    CHECK(edit_distance("same", "same") == 0);
}

TEST_CASE("the nearest known word is offered only where it is near") {
    const std::vector<std::string> keys{"bearing", "height", "inside_diameter", "sill", "width"};
    CHECK(nearest_word("widht", keys) == "width");
    CHECK(nearest_word("Height", keys) == "height");
    CHECK(nearest_word("inside-diameter", keys) == "inside_diameter");
    CHECK(nearest_word("inside_diamter", keys) == "inside_diameter");
    CHECK_FALSE(nearest_word("colour", keys).has_value());
    // Within a third of the longer word: 2 of 6, not 2 of 5.
    CHECK(nearest_word("hexgkt", keys) == "height");
    CHECK_FALSE(nearest_word("wixyh", keys).has_value());
    CHECK_FALSE(nearest_word("", keys).has_value());
    CHECK_FALSE(nearest_word(std::string(100000, 'w'), keys).has_value());
}
