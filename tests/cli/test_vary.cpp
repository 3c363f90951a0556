// Variants on the command line: tables, charts, journals that a stopped run goes on from.
#include "tests/cli/running.hpp"
#include "tests/exporters/scratch.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <sstream>

using namespace coilwright;
using Catch::Matchers::Contains;

namespace {

std::string washroom() {
    return in_project("models/washroom.toml");
}

std::vector<std::string> with(std::vector<std::string> words,
                              const std::vector<std::string>& more) {
    words.insert(words.end(), more.begin(), more.end());
    return words;
}

const std::vector<std::string> choices{"--set", "diameter=5 ft 6 in to 7 ft by 6 in", "--set",
                                       "rise=5 ft 6 in,6 ft", "--csv"};

std::string csv_of(const std::vector<std::string>& more) {
    const Outcome outcome = run(with(with({"vary", washroom()}, choices), more));
    CAPTURE(outcome.err);
    CHECK(outcome.code == 0);
    return outcome.out;
}

std::size_t line_count(const std::string& text) {
    return static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n'));
}

} // namespace

TEST_CASE("vary prints a row a variant, the same on any number of threads") {
    const std::string one = csv_of({"--threads", "1"});
    CHECK(line_count(one) == 1 + 4 * 2);
    CHECK_THAT(one, Contains("variant,diameter,rise,laid,floor_area"));
    CHECK_THAT(one, Contains("\r\n4,6 ft 0 in,6 ft,yes,"));
    CHECK(csv_of({"--threads", "7"}) == one);
    CHECK(csv_of({}) == one);
    const Outcome table = run({"vary", washroom(), "--set", "diameter=6 ft,7 ft"});
    CHECK(table.code == 0);
    CHECK_THAT(table.out,
               Contains("sq ft") && Contains("shells") && Contains("No variant is thereby safe"));
}

TEST_CASE("a journal of a stopped run goes on where it was, to the same bytes") {
    const std::string whole = csv_of({});
    const ScratchDirectory scratch;
    const std::string journal = (scratch.path() / "kept").string();
    CHECK(csv_of({"--journal", journal}) == whole);
    const std::string lines = bytes_of(journal);
    CHECK(line_count(lines) == 1 + 8);
    // Stopped after five variants, in the middle of writing the sixth.
    std::size_t at = 0;
    for (int i = 0; i < 6; ++i)
        at = lines.find('\n', at) + 1;
    put_bytes(journal, lines.substr(0, at + 7));
    CHECK(csv_of({"--journal", journal, "--threads", "3"}) == whole);
    CHECK(line_count(bytes_of(journal)) == 1 + 8);
    // What it holds is taken as it stands, not worked out again.
    std::string changed = bytes_of(journal);
    const std::size_t laid = changed.find("\tlaid\t\t") + 7;
    changed.replace(laid, changed.find('\t', laid) - laid, "123.5");
    put_bytes(journal, changed);
    CHECK_THAT(csv_of({"--journal", journal}), Contains(",123.500000,"));
}

TEST_CASE("a run that is killed leaves a journal to go on from") {
    const ScratchDirectory scratch;
    const std::string command = program() + " vary '" + washroom() +
                                "' --set 'diameter=5 ft to 7 ft by 1/4 in' --csv --journal kept";
    for (const std::string time : {"0.02", "0.05", "0.1", "0.2"})
        shell(scratch.path(), "timeout -s KILL " + time + " " + command);
    const Outcome resumed = shell(scratch.path(), command);
    CHECK(resumed.code == 0);
    const Outcome straight = shell(scratch.path(), command.substr(0, command.find(" --journal")));
    CHECK((resumed.out == straight.out));
    CHECK(line_count(straight.out) == 1 + 97);
}

TEST_CASE("a journal of something else is refused, and stays as it was") {
    const ScratchDirectory scratch;
    const std::string journal = (scratch.path() / "kept").string();
    csv_of({"--journal", journal});
    const std::string before = bytes_of(journal);
    const Outcome other = run({"vary", washroom(), "--set", "diameter=6 ft", "--journal", journal});
    CHECK(other.code == 3);
    CHECK_THAT(other.err, Contains("another design"));
    CHECK(bytes_of(journal) == before);
    put_bytes(journal, "notes of mine\n");
    CHECK(run(with(with({"vary", washroom()}, choices), {"--journal", journal})).code == 3);
    CHECK(bytes_of(journal) == "notes of mine\n");
    CHECK(run(with(with({"vary", washroom()}, choices), {"--journal", "/dev/null/x"})).code == 3);
}

TEST_CASE("vary draws its figures as SVG and PNG") {
    const ScratchDirectory scratch;
    const auto svg = scratch.path() / "c.svg", png = scratch.path() / "c.png";
    csv_of({"--chart", svg.string()});
    csv_of({"--chart", png.string()});
    CHECK_THAT(bytes_of(svg), Contains("<svg") && Contains("Floor between the bags") &&
                                  Contains("CAUTION") && Contains("rise 5 ft 6 in"));
    CHECK(bytes_of(png).substr(1, 3) == "PNG");
    CHECK_THAT(run({"vary", washroom(), "--set", "diameter=6 ft", "--chart", "c.gif"}).err,
               Contains("neither .svg nor .png"));
}

TEST_CASE("vary says what it does not know") {
    const auto refused = [&](const std::vector<std::string>& more) {
        const Outcome outcome = run(with({"vary", washroom()}, more));
        CHECK(outcome.code == 2);
        CHECK(outcome.out == "");
        return outcome.err;
    };
    CHECK_THAT(refused({}), Contains("--set"));
    CHECK_THAT(refused({"--set", "diametre=6 ft"}), Contains("did you mean diameter?"));
    CHECK_THAT(refused({"--set", "dome.wash.diamter=6 ft"}),
               Contains("no variant can be laid") && Contains("diamter"));
    CHECK_THAT(refused({"--set", "diameter=6 ft", "--set", "dome.wash.inside_diameter=7 ft"}),
               Contains("both change dome.wash.inside_diameter"));
    CHECK_THAT(refused({"--set", "diameter=6 ft", "--set", "diameter=7 ft"}),
               Contains("stands twice"));
    CHECK_THAT(refused({"--set", "diameter=1 ft to 9 ft by 1/64 in", "--set",
                        "rise=1 ft to 9 ft by 1/64 in"}),
               Contains("100,000"));
    CHECK_THAT(refused({"--set", "diameter=6 ft", "--threads", "0"}), Contains("--threads"));
    CHECK(run({"vary", "-", "--set", "diameter=6 ft"}, "").code == 2);
    // One that cannot be laid among others that can is told, and is no fault.
    const Outcome some = run({"vary", washroom(), "--set", "diameter=6 ft,2 in"});
    CHECK(some.code == 0);
    CHECK_THAT(some.out, Contains("2 in cannot be laid"));
}

TEST_CASE("vary shows how far it is on a terminal") {
    const Outcome outcome = run_on_terminal(with({"vary", washroom()}, choices));
    CHECK_THAT(outcome.err, Contains("[8/8] variants"));
    CHECK(run(with({"vary", washroom()}, choices)).err == "");
}

TEST_CASE(
    "a journal cut in its first line starts afresh, and lines that no run writes are left out") {
    const ScratchDirectory scratch;
    const std::string journal = (scratch.path() / "kept").string();
    const std::string whole = csv_of({"--journal", journal});
    const std::string lines = bytes_of(journal);
    put_bytes(journal, lines.substr(0, 20));
    CHECK(csv_of({"--journal", journal}) == whole);
    CHECK(bytes_of(journal).size() == lines.size());
    for (const std::string value : {"nan", "inf", "-1"}) {
        std::string changed = lines;
        const std::size_t from = changed.find("\t\t") + 2;
        REQUIRE(from > 2);
        changed.replace(from, changed.find('\t', from) - from, value);
        put_bytes(journal, changed);
        CHECK(csv_of({"--journal", journal}) == whole);
    }
}

TEST_CASE("a journal on a pipe or device is refused at once") {
    const ScratchDirectory scratch;
    REQUIRE(shell(scratch.path(), "mkfifo pipe").code == 0);
    for (const std::string& path : {(scratch.path() / "pipe").string(), std::string("/dev/zero")}) {
        const Outcome outcome =
            run({"vary", washroom(), "--set", "diameter=6 ft", "--journal", path});
        CHECK(outcome.code == 3);
        CHECK_THAT(outcome.err, Contains("is no file of a journal's size"));
    }
}

TEST_CASE("choices that change one key are refused in any order, and so are tiny steps") {
    const std::string tube = "tube.main.tamped_width=13 in,14 in", flat = "lay-flat=15 in,16 in";
    for (const auto& [one, other] : {std::pair(tube, flat), std::pair(flat, tube)}) {
        const Outcome outcome = run({"vary", washroom(), "--set", one, "--set", other});
        CHECK(outcome.code == 2);
        CHECK_THAT(outcome.err, Contains("both change tube.main.tamped_width"));
    }
    const Outcome tiny =
        run({"vary", washroom(), "--set", "diameter=6 ft to 6 ft by 0.00000000000000000001 m"});
    CHECK(tiny.code == 2);
    CHECK_THAT(tiny.err, Contains("step"));
}

TEST_CASE("vary tells a price of a tube that the design does not have, and plans that do not end") {
    const ScratchDirectory scratch;
    const std::string works = (scratch.path() / "w.works").string();
    put_bytes(works, "works = 1\nunit = \"ft\"\ncurrency = \"shells\"\n"
                     "[price.tube-mian]\nper = \"pack\"\nlikely = 3\n");
    const std::vector<std::string> vary{"vary",          washroom(), "--set",
                                        "diameter=7 ft", "--works",  works};
    const Outcome outcome = run(vary);
    CHECK(outcome.code == 2);
    CHECK_THAT(outcome.err, Contains("tube 'mian'"));
    put_bytes(
        works,
        "works = 1\nunit = \"ft\"\n[crew]\nsize = 1\nplaster_rate = 0.01\nfill_rate = 0.01\n");
    CHECK_THAT(run(vary).out, Contains("does not end within ten years"));
    CHECK_THAT(run(with(vary, {"--csv"})).out, Contains(",days_ended,"));
    CHECK_THAT(run(with(vary, {"--csv"})).out, Contains(",no,,"));
}
