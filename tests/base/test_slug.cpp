#include "geometry/base/slug.hpp"
#include "tests/support/seeded.hpp"

#include <catch2/catch.hpp>

#include <regex>
#include <set>

using namespace coilwright;

namespace {

bool is_slug(const std::string& text) {
    static const std::regex form("[A-Z][A-Z0-9_]{0,30}");
    return std::regex_match(text, form);
}

} // namespace

TEST_CASE("a slug is upper case, led by a letter and at most 31 characters") {
    CHECK(slug("vault") == "VAULT");
    CHECK(slug("porch-2") == "PORCH_2");
    CHECK(slug("2nd dome") == "X2ND_DOME");
    CHECK(slug("") == "X");
    CHECK(slug("\u00E9t\u00E9") == "X_T_");
    CHECK(slug(std::string(50, 'a')) == std::string(31, 'A'));
}

TEST_CASE("a course's slug keeps the course and the part") {
    CHECK(course_slug("vault", 7, "T2") == "VAULT_C07_T2");
    CHECK(course_slug("vault", 123, "left") == "VAULT_C123_LEFT");
    CHECK(course_slug(std::string(40, 'a'), 7, "T2") == std::string(24, 'A') + "_C07_T2");
}

TEST_CASE("a table gives each part a name of its own") {
    SlugTable table;
    CHECK(table.unique("door") == "DOOR");
    CHECK(table.unique("door") == "DOOR_2");
    CHECK(table.unique("door-2") == "DOOR_2_2");
    CHECK(table.unique("door") == "DOOR_3");
    const std::string longest(31, 'A');
    CHECK(table.unique(longest) == longest);
    CHECK(table.unique(longest + "B") == longest.substr(0, 29) + "_2");
}

TEST_CASE("names of a table are slugs and never repeat") {
    constexpr std::uint64_t seed = 11;
    CAPTURE(seed);
    Seeded random(seed);
    const std::string letters = "ab-2_ \xC3\xA9";
    SlugTable table;
    std::set<std::string> given;
    for (int i = 0; i < 5000; ++i) {
        std::string wanted;
        for (int n = random.whole(0, random.coin() ? 3 : 40); n > 0; --n)
            wanted += random.one_of(letters);
        const std::string name = table.unique(wanted);
        CAPTURE(wanted, name);
        REQUIRE(is_slug(name));
        REQUIRE(given.insert(name).second);
    }
}
