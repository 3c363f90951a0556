// The same design gives the same bytes in every language setting, time zone and folder.
#include "tests/cli/running.hpp"
#include "tests/exporters/scratch.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;

namespace {

/// A folder with locales that write numbers with commas (de_DE) and upper-case i with a dot
/// (tr_TR).
std::string locales_in(const std::filesystem::path& folder) {
    for (const std::string name : {"de_DE", "tr_TR"}) {
        const Outcome made =
            shell(folder, "localedef -i " + name + " -f UTF-8 ./" + name + ".UTF-8");
        INFO(made.err);
        REQUIRE(std::filesystem::exists(folder / (name + ".UTF-8") / "LC_NUMERIC"));
    }
    return "LOCPATH='" + folder.string() + "' ";
}

/// Everything that the program writes and prints for a demo, in one text.
std::string made_under(const std::string& environment, const std::string& demo,
                       const std::filesystem::path& folder) {
    std::filesystem::create_directories(folder);
    std::string all;
    for (const std::string& arguments :
         std::vector<std::string>{"build '" + demo + "' --out package", "check '" + demo + "'",
                                  "courses '" + demo + "' --csv", "new --unit m --out -"}) {
        const Outcome outcome = shell(folder, environment + program() + " " + arguments);
        CAPTURE(environment, arguments);
        INFO(outcome.err);
        REQUIRE(outcome.code == 0);
        all += outcome.out + outcome.err;
    }
    for (const std::string& file : all_below(folder)) {
        if (!std::filesystem::is_directory(folder / file)) {
            all += file + "\n" + bytes_of(folder / file);
        }
    }
    return all;
}

} // namespace

TEST_CASE("the test's locales do write numbers otherwise") {
    const ScratchDirectory scratch;
    const std::string locales = locales_in(scratch.path());
    CHECK(shell(".", locales + "LC_ALL=de_DE.UTF-8 /usr/bin/printf '%.1f' 1,5").out == "1,5");
}

TEST_CASE("the package is the same in any locale, time zone and folder") {
    const ScratchDirectory scratch;
    const std::string locales = locales_in(scratch.path());
    for (const std::string name : {"models/grain-store.toml", "models/cabin-metric.toml"}) {
        CAPTURE(name);
        const std::string demo = in_project(name);
        const std::string plain = made_under("LC_ALL=C TZ=UTC ", demo, scratch.path() / "a");
        CHECK(plain.size() > 100000);
        const std::string german =
            made_under(locales + "LC_ALL=de_DE.UTF-8 LANGUAGE=de TZ=Asia/Kathmandu ", demo,
                       scratch.path() / "b" / "deeper");
        const std::string turkish =
            made_under(locales + "LC_ALL=tr_TR.UTF-8 TZ=Pacific/Auckland COLUMNS=40 ", demo,
                       scratch.path() / "c and d");
        CHECK((german == plain));
        CHECK((turkish == plain));
        std::filesystem::remove_all(scratch.path() / "a");
        std::filesystem::remove_all(scratch.path() / "b");
        std::filesystem::remove_all(scratch.path() / "c and d");
    }
}

TEST_CASE("the package is the same on one core as on several") {
    const ScratchDirectory scratch;
    const std::string demo = in_project("models/workshop.toml");
    const std::string several = made_under("", demo, scratch.path() / "a");
    const std::string one = made_under("taskset -c 0 ", demo, scratch.path() / "b");
    CHECK((several == one));
}
