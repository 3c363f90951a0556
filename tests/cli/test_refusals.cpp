#include "tests/cli/running.hpp"
#include "tests/exporters/scratch.hpp"

#include <catch2/catch.hpp>

#include <sys/stat.h>

using namespace coilwright;
using Catch::Matchers::Contains;

namespace {

const std::vector<std::string> readers{"check", "courses", "build"};

Outcome read_by(const std::string& command, const std::string& file, const std::string& out,
                const std::string& input = {}) {
    return command == "build" ? run({command, file, "--out", out}, input)
                              : run({command, file}, input);
}

} // namespace

TEST_CASE("a file that cannot be read is told in a sentence, with exit code 3") {
    const ScratchDirectory scratch;
    const auto& folder = scratch.path();
    const std::string out = folder / "out";
    put_bytes(folder / "huge.toml", std::string((1 << 20) + 1, '#'));
    REQUIRE(::mkfifo((folder / "fifo").c_str(), 0600) == 0);
    std::filesystem::create_symlink("loop", folder / "loop");

    for (const std::string& command : readers) {
        CAPTURE(command);
        const auto refused = [&](const std::string& file) {
            const Outcome outcome = read_by(command, file, out);
            CHECK(outcome.code == 3);
            CHECK(outcome.out == "");
            return outcome.err;
        };
        CHECK_THAT(refused(folder / "missing.toml"), Contains("there is no file"));
        CHECK_THAT(refused(""), Contains("there is no file"));
        CHECK_THAT(refused(folder), Contains("is a directory"));
        CHECK_THAT(refused(folder / "fifo"), Contains("not a regular file")); // and does not wait
        CHECK_THAT(refused("/dev/zero"), Contains("not a regular file"));
        CHECK_THAT(refused(folder / "huge.toml"), Contains("more than 1 MiB"));
        CHECK_THAT(refused(folder / "huge.toml" / "x"), Contains("there is no file"));
        CHECK_THAT(refused(folder / "loop"), Contains("too many links in the path"));
        CHECK_THAT(refused(std::string(100000, 'x')), Contains("the name is too long"));
    }
    CHECK(!std::filesystem::exists(out));
}

TEST_CASE("endless standard input is refused, not read on") {
    const Outcome outcome = shell(".", "yes '# comment' | " + program() + " check -");
    CHECK(outcome.code == 3);
    CHECK_THAT(outcome.err, Contains("more than 1 MiB"));
}

TEST_CASE("a file of exactly 1 MiB is read") {
    std::string text = bytes_of(in_project("models/grain-store.toml"));
    text.append((1 << 20) - text.size(), '#');
    CHECK(run({"check", "-"}, text).code == 0);
    CHECK(run({"check", "-"}, text + "#").code == 3);
}

TEST_CASE("what is not a design gives diagnostics, with exit code 2") {
    const ScratchDirectory scratch;
    const std::string out = scratch.path() / "out";
    const std::string binary("\x7f"
                             "ELF\0\1\2\xff\xfe",
                             9);
    const std::vector<std::string> texts{"",
                                         binary,
                                         std::string(1000, '\0'),
                                         "just words",
                                         "[[[[[[",
                                         std::string(100000, '['),
                                         "a = " + std::string(50000, '[') + std::string(50000, ']'),
                                         "name = \"\xff\"\n",
                                         "coilwright = 99999999999999999999\n",
                                         "\xef\xbb\xbf"};
    for (const std::string& command : readers) {
        for (const std::string& text : texts) {
            CAPTURE(command, text.substr(0, 40));
            const Outcome outcome = read_by(command, "-", out, text);
            CHECK(outcome.code == 2);
            CHECK(outcome.out == "");
            CHECK(outcome.err.size() > 20);
            CHECK(outcome.err.size() < 20000);
        }
    }
    CHECK(!std::filesystem::exists(out));
}

TEST_CASE("a design cannot steer the terminal") {
    const Outcome outcome =
        run({"check", "-"}, "coilwright = 1\n\"\\u001b[2J\" = \"\x1b]0;x\x07\"\n");
    CHECK(outcome.code == 2);
    CHECK(outcome.err.find('\x1b') == std::string::npos);
    CHECK(outcome.err.find('\x07') == std::string::npos);
    const Outcome file = run({"check", "no\x1b[2Jfile"});
    CHECK(file.err.find('\x1b') == std::string::npos);
}

TEST_CASE("a wrong command line is told with exit code 2 and where to find help") {
    const std::string store = in_project("models/grain-store.toml");
    const std::vector<std::vector<std::string>> wrong{{},
                                                      {"--bogus"},
                                                      {"check"},
                                                      {"check", store, "extra"},
                                                      {"check", store, "--jsn"},
                                                      {"courses", "--json"},
                                                      {"build"},
                                                      {"build", store, "--out"},
                                                      {"new", "--windows"},
                                                      {"check", store, "check", store},
                                                      {"check", store, "courses", store}};
    for (const auto& arguments : wrong) {
        CAPTURE(arguments);
        const Outcome outcome = run(arguments);
        CHECK(outcome.code == 2);
        CHECK(outcome.out == "");
        CHECK_THAT(outcome.err, Contains("--help"));
    }
    CHECK_THAT(run({"biuld", store}).err, Contains("did you mean build?"));
    CHECK(run({"biuld", store}).code == 2);
    CHECK(run({std::string(100000, 'x')}).err.size() < 500);
    for (const std::vector<std::string>& none : {std::vector<std::string>{}, {"help"}}) {
        CHECK_THAT(run(none).err, Contains("new, check, courses, takeoff, vary, build"));
    }
}

TEST_CASE("standard output that cannot be written to is told with exit code 3") {
    const std::string store = in_project("models/grain-store.toml");
    for (const std::string& arguments : {"courses '" + store + "'", std::string("--help")}) {
        const Outcome outcome = shell(".", program() + " " + arguments + " >/dev/full");
        CHECK(outcome.code == 3);
        CHECK_THAT(outcome.err, Contains("could not write to standard output"));
    }
}
