#include "cli/console.hpp"
#include "tests/cli/running.hpp"
#include "tests/exporters/scratch.hpp"

#include <catch2/catch.hpp>

#include <regex>

using namespace coilwright;
using Catch::Matchers::Contains;

namespace {

std::string store() {
    return in_project("models/grain-store.toml");
}

std::string without_escapes(const std::string& text) {
    return std::regex_replace(text, std::regex("\x1b\\[[0-9;]*[mK]"), "");
}

/// Runs a command line on a terminal of its own and returns all that it shows there.
std::string shown(const std::string& environment, const std::string& arguments) {
    // util-linux's script(1) gives the program a terminal.
    return shell(".",
                 environment + " script -qefc \"" + program() + " " + arguments + "\" /dev/null")
        .out;
}

} // namespace

TEST_CASE("colour says nothing that the text does not") {
    for (const std::vector<std::string>& arguments :
         {std::vector<std::string>{"check", store()}, {"check", "nowhere"}, {"courses", store()}}) {
        const Outcome plain = run(arguments);
        const Outcome coloured = run_on_terminal(arguments);
        CHECK(without_escapes(coloured.out) == plain.out);
        CHECK(without_escapes(coloured.err) == plain.err);
        CHECK(plain.out.find('\x1b') == std::string::npos);
        CHECK(plain.err.find('\x1b') == std::string::npos);
    }
    CHECK(run_on_terminal({"check", store()}).out.find('\x1b') != std::string::npos);
}

TEST_CASE("data is never coloured") {
    for (const std::string form : {"--json", "--csv"}) {
        CHECK(run_on_terminal({"courses", store(), form}).out ==
              run({"courses", store(), form}).out);
    }
    CHECK(run_on_terminal({"check", store(), "--json"}).out ==
          run({"check", store(), "--json"}).out);
}

TEST_CASE("the progress line is for terminals, and leaves nothing behind") {
    const ScratchDirectory scratch;
    const std::vector<std::string> arguments{"build", store(), "--out", scratch.path()};
    const std::string err = run_on_terminal(arguments).err;
    CHECK_THAT(err, Contains("[0/22] crew book") && Contains("shell model"));
    CHECK(err.substr(err.size() - 4) == "\r\x1b[K");
    CHECK(run(arguments).err == "");
}

TEST_CASE("the program finds out whether it has a terminal") {
    const std::string arguments = "check '" + store() + "'";
    CHECK(shown("TERM=xterm", arguments).find("\x1b[") != std::string::npos);
    CHECK(shown("TERM=xterm NO_COLOR=1", arguments).find("\x1b[") == std::string::npos);
    CHECK(shown("TERM=xterm NO_COLOR=", arguments).find("\x1b[") != std::string::npos);
    CHECK(shown("TERM=dumb", arguments).find("\x1b[") == std::string::npos);
    const Outcome piped = shell(".", "TERM=xterm " + program() + " " + arguments + " | cat");
    CHECK(piped.out.size() > 100);
    CHECK(piped.out.find('\x1b') == std::string::npos);
}

TEST_CASE("texts are broken at spaces only") {
    CHECK(wrapped("one two three", "  ", 9) == "  one two\n  three\n");
    CHECK(wrapped("anextremelylongword b", "  ", 9) == "  anextremelylongword\n  b\n");
    CHECK(wrapped("", "  ") == "");
    CHECK(wrapped("\xC2\xBD \xC2\xBD \xC2\xBD", "", 3) == "\xC2\xBD \xC2\xBD\n\xC2\xBD\n");
    CHECK(wrapped("a\nb  c", "") == "a b c\n");
}

TEST_CASE("printable keeps texts and replaces what steers a terminal") {
    CHECK(printable("a\tb\n\xC2\xBD") == "a\tb\n\xC2\xBD");
    CHECK(printable("\x1b[2J") == "\xEF\xBF\xBD[2J");
    CHECK(printable("\xC2\x9B") == "\xEF\xBF\xBD");     // the one-character form of ESC [
    CHECK(printable("\xE2\x80\xAE") == "\xEF\xBF\xBD"); // turns the direction of text
    CHECK(printable("\xFF") == "\xEF\xBF\xBD");
}
