#include "tests/cli/running.hpp"
#include "tests/exporters/scratch.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <fstream>
#include <sstream>

using namespace coilwright;
using Catch::Matchers::Contains;
using nlohmann::json;

namespace {

const std::vector<std::string> whole_package{"building.ifc",
                                             "checks.json",
                                             "compass-strip.pdf",
                                             "courses.3mf",
                                             "courses.dae",
                                             "courses.glb",
                                             "courses.mtl",
                                             "courses.obj",
                                             "courses.ply",
                                             "courses.stl",
                                             "crew-book.pdf",
                                             "drawings.dxf",
                                             "drawings.pdf",
                                             "engineer.pdf",
                                             "forms.dxf",
                                             "forms.pdf",
                                             "pictures",
                                             "pictures/plan.png",
                                             "pictures/plan.svg",
                                             "pictures/section.png",
                                             "pictures/section.svg",
                                             "pictures/view.png",
                                             "pictures/view.svg",
                                             "schedule.csv",
                                             "schedule.json",
                                             "schedule.xlsx",
                                             "shell.3mf",
                                             "shell.dae",
                                             "shell.glb",
                                             "shell.mtl",
                                             "shell.obj",
                                             "shell.ply",
                                             "shell.stl",
                                             "site-log.pdf",
                                             "take-off.csv",
                                             "take-off.json",
                                             "take-off.pdf",
                                             "take-off.xlsx"};

std::string store() {
    return in_project("models/grain-store.toml");
}

/// The whole-numbered page size that poppler reads, in points.
std::string page_size(const std::filesystem::path& file) {
    std::istringstream lines(output_of({"pdfinfo", file}));
    std::string line;
    while (std::getline(lines, line)) {
        if (line.rfind("Page size:", 0) == 0) {
            return line;
        }
    }
    return "none";
}

/// A design with five faults, each in a line of its own: the word after "FAULT" tells what is
/// wrong.
const char* const five_faults = R"(coilwright = 1
name = "Faulty"
unit = "ft"
[course]
heigth = "5 in"
height = "5 in"
[tube.main]
lay_flat = "17 bananas"
[dome.store]
use = "castle"
inside_diameter = "9 ft"
springline = "20 in"
profile = { kind = "pointed", rise = "9 ft" }
tube = "mian"
[opening.door]
in = "store"
use = "door"
bearing = 150
width = "-32 in"
sill = "0 in"
height = "80 in"
head = { kind = "pointed" }
)";

} // namespace

TEST_CASE("build writes the whole package of every demo design") {
    for (const std::string& demo : demos()) {
        CAPTURE(demo);
        const ScratchDirectory scratch;
        const auto out = scratch.path() / "deep" / "package";
        const Outcome outcome = run({"build", demo, "--out", out});
        REQUIRE(outcome.code == 0);
        CHECK(all_below(out) == whole_package);
        for (const std::string& file : whole_package) {
            CHECK_THAT(outcome.out, Contains(file));
            if (std::filesystem::is_directory(out / file)) {
                continue;
            }
            CHECK(std::filesystem::file_size(out / file) > 100);
        }
        CHECK_NOTHROW(output_of({"qpdf", "--check", out / "crew-book.pdf"}));
        CHECK_NOTHROW(output_of({"qpdf", "--check", out / "drawings.pdf"}));
        CHECK_NOTHROW(output_of({"qpdf", "--check", out / "take-off.pdf"}));
        CHECK_NOTHROW(output_of({"qpdf", "--check", out / "site-log.pdf"}));
        CHECK(json::parse(bytes_of(out / "schedule.json")) ==
              json::parse(run({"courses", demo, "--json"}).out));
    }
}

TEST_CASE("build writes only the parts asked for") {
    const auto written = [](const std::vector<std::string>& flags) {
        const ScratchDirectory scratch;
        std::vector<std::string> arguments{"build", store(), "--out", scratch.path()};
        arguments.insert(arguments.end(), flags.begin(), flags.end());
        REQUIRE(run(arguments).code == 0);
        return all_below(scratch.path());
    };
    using Files = std::vector<std::string>;
    CHECK(written({"--only", "schedule"}) ==
          Files{"schedule.csv", "schedule.json", "schedule.xlsx"});
    CHECK(written({"--only", "checks"}) == Files{"checks.json", "engineer.pdf"});
    CHECK(written({"--only", "crew-book"}) == Files{"compass-strip.pdf", "crew-book.pdf"});
    CHECK(written({"--only", "drawings"}) == Files{"drawings.dxf", "drawings.pdf", "pictures",
                                                   "pictures/plan.png", "pictures/plan.svg",
                                                   "pictures/section.png", "pictures/section.svg",
                                                   "pictures/view.png", "pictures/view.svg"});
    CHECK(written({"--only", "templates"}) == Files{"forms.dxf", "forms.pdf"});
    CHECK(written({"--only", "take-off"}) ==
          Files{"site-log.pdf", "take-off.csv", "take-off.json", "take-off.pdf", "take-off.xlsx"});
    CHECK(written({"--only", "models"}).size() == 15);
    CHECK(written({"--only", "schedule,models"}).size() == 18);
    CHECK(written({"--only", "schedule", "--only", "models"}).size() == 18);
    CHECK(written({"--only", "models", "--formats", "stl,glb,stl"}) ==
          std::vector<std::string>{"courses.glb", "courses.stl", "shell.glb", "shell.stl"});

    // The list ends with its word: FILE may follow it.
    const ScratchDirectory scratch;
    CHECK(run({"build", "--out", scratch.path(), "--only", "schedule", store()}).code == 0);
}

TEST_CASE("build takes the paper that it is told, else that of the design's unit") {
    const auto size = [](const std::string& demo, const std::vector<std::string>& flags) {
        const ScratchDirectory scratch;
        std::vector<std::string> arguments{"build",        in_project(demo), "--out",
                                           scratch.path(), "--only",         "crew-book"};
        arguments.insert(arguments.end(), flags.begin(), flags.end());
        REQUIRE(run(arguments).code == 0);
        return page_size(scratch.path() / "crew-book.pdf");
    };
    // poppler names the sizes that it knows: Letter is 612 x 792, A4 595.28 x 841.89.
    CHECK_THAT(size("models/grain-store.toml", {}), Contains("612 x 792"));
    CHECK_THAT(size("models/grain-store.toml", {"--paper", "a4"}), Contains("A4"));
    CHECK_THAT(size("models/cabin-metric.toml", {}), Contains("A4"));
    CHECK_THAT(size("models/cabin-metric.toml", {"--paper", "letter"}), Contains("612 x 792"));
    CHECK_THAT(size("models/grain-store.toml", {"--paper", "A4"}), Contains("A4"));
    CHECK_THAT(size("models/cabin-metric.toml", {"--paper", "Letter"}), Contains("612 x 792"));
}

TEST_CASE("drawings are cut and laid as they are told") {
    const ScratchDirectory scratch;
    const auto build = [&](const std::vector<std::string>& flags) {
        std::vector<std::string> arguments{"build",        store(),  "--out",
                                           scratch.path(), "--only", "drawings"};
        arguments.insert(arguments.end(), flags.begin(), flags.end());
        return run(arguments);
    };
    REQUIRE(build({}).code == 0);
    CHECK_THAT(page_size(scratch.path() / "drawings.pdf"), Contains("1224 x 792")); // 17 x 11 in
    REQUIRE(build({"--sheet", "A1", "--plan-height", "2 ft", "--section-bearing", "30"}).code == 0);
    CHECK_THAT(page_size(scratch.path() / "drawings.pdf"), Contains("2383.94 x 1683.78"));
    const std::string text =
        output_of({"pdftotext", "-layout", scratch.path() / "drawings.pdf", "-"});
    CHECK_THAT(text, Contains("cut 2 ft 0 in above the floor"));
    CHECK_THAT(text, Contains("along 30.00°"));
    CHECK_THAT(build({"--sheet", "a9"}).err, Contains("--sheet"));
    CHECK_THAT(build({"--plan-height", "99 ft"}).err, Contains("--plan-height"));
    CHECK_THAT(build({"--plan-height", "high"}).err, Contains("--plan-height"));
    CHECK_THAT(build({"--section-bearing", "400"}).err, Contains("--section-bearing"));
    const std::string south = bytes_of(scratch.path() / "pictures" / "view.png");
    REQUIRE(build({"--view-bearing", "20", "--tile", "1:24"}).code == 0);
    CHECK((bytes_of(scratch.path() / "pictures" / "view.png") != south));
    const std::string tiled =
        output_of({"pdftotext", "-layout", scratch.path() / "drawings.pdf", "-"});
    CHECK_THAT(tiled, Contains("Tile A1 of Floor plan"));
    CHECK_THAT(build({"--view-bearing", "400"}).err, Contains("--view-bearing"));
    CHECK_THAT(build({"--tile", "1:25"}).err, Contains("1:24")); // a design in feet
    CHECK_THAT(build({"--tile", "x"}).err, Contains("--tile"));
}

TEST_CASE("templates are cut for the kerf that they are told") {
    const ScratchDirectory scratch;
    const auto build = [&](const std::vector<std::string>& flags) {
        std::vector<std::string> arguments{"build",        store(),  "--out",
                                           scratch.path(), "--only", "templates"};
        arguments.insert(arguments.end(), flags.begin(), flags.end());
        return run(arguments);
    };
    REQUIRE(build({}).code == 0);
    const std::string exact = bytes_of(scratch.path() / "forms.dxf");
    REQUIRE(build({"--kerf", "0 mm"}).code == 0);
    CHECK((bytes_of(scratch.path() / "forms.dxf") == exact));
    REQUIRE(build({"--kerf", "1/8 in", "--sheet", "letter"}).code == 0);
    CHECK((bytes_of(scratch.path() / "forms.dxf") != exact));
    CHECK_THAT(page_size(scratch.path() / "forms.pdf"), Contains("792 x 612"));
    for (const char* const kerf : {"3", "11 mm", "-1 mm", "wide"})
        CHECK_THAT(build({"--kerf", kerf}).err, Contains("--kerf"));
}

TEST_CASE("build meshes more coarsely with a larger tolerance") {
    const auto size = [](const std::string& tolerance) {
        const ScratchDirectory scratch;
        REQUIRE(run({"build", store(), "--out", scratch.path(), "--only", "models", "--tolerance",
                     tolerance})
                    .code == 0);
        return std::filesystem::file_size(scratch.path() / "shell.stl");
    };
    const auto fine = size("1mm");
    const auto coarse = size("1/4 in");
    CHECK(coarse < fine / 2);
    CHECK(size("0.1 cm") == fine);
}

TEST_CASE("build of a design with five faults names each with its line and writes nothing") {
    const ScratchDirectory scratch;
    put_bytes(scratch.path() / "faulty.toml", five_faults);
    const std::string file = scratch.path() / "faulty.toml";
    for (const std::string command : {"build", "check", "courses"}) {
        std::vector<std::string> arguments{command, file};
        if (command == "build") {
            arguments.insert(arguments.end(), {"--out", scratch.path() / "package"});
        }
        const Outcome outcome = run(arguments);
        CHECK(outcome.code == 2);
        CHECK(outcome.out == "");
        for (const int line : {5, 8, 10, 14, 19}) {
            CAPTURE(line, outcome.err);
            CHECK_THAT(outcome.err, Contains(file + ":" + std::to_string(line) + ":"));
        }
        CHECK_THAT(outcome.err, Contains("did you mean `height`"));
        CHECK_THAT(outcome.err, Contains("did you mean `main`"));
        CHECK_THAT(outcome.err, Contains("5 faults in the design"));
        CHECK(all_below(scratch.path()) == std::vector<std::string>{"faulty.toml"});
    }
}

TEST_CASE("build leaves earlier files as they were when it fails") {
    const ScratchDirectory scratch;
    const auto out = scratch.path() / "package";
    REQUIRE(run({"build", store(), "--out", out, "--only", "schedule"}).code == 0);
    const std::string before = bytes_of(out / "schedule.json");
    CHECK(run({"build", "-", "--out", out}, five_faults).code == 2);
    // A directory in the place of the last file: the rename of one fails, so none may stay.
    std::filesystem::remove(out / "schedule.csv");
    std::filesystem::create_directories(out / "schedule.csv" / "x");
    std::string other = bytes_of(store());
    other.replace(other.find("Grain store"), 11, "Other store");
    CHECK(run({"build", "-", "--out", out, "--only", "schedule"}, other).code == 3);
    CHECK(bytes_of(out / "schedule.json") == before);
    CHECK(all_below(out) == std::vector<std::string>{"schedule.csv", "schedule.csv/x",
                                                     "schedule.json", "schedule.xlsx"});
}

TEST_CASE("build says where it cannot write") {
    const ScratchDirectory scratch;
    put_bytes(scratch.path() / "file", "");
    for (const std::string out : {"file", "file/below", "/dev/null/x"}) {
        CAPTURE(out);
        const Outcome outcome =
            run({"build", store(), "--only", "schedule", "--out", scratch.path() / out});
        CHECK(outcome.code == 3);
        CHECK_THAT(outcome.err, Contains("coilwright:"));
        CHECK(outcome.out == "");
    }
    CHECK(all_below(scratch.path()) == std::vector<std::string>{"file"});
}

TEST_CASE("build refuses values that it does not know") {
    const ScratchDirectory scratch;
    const auto refused = [&](const std::string& option, const std::string& value) {
        const Outcome outcome = run({"build", store(), "--out", scratch.path(), option, value});
        CHECK(outcome.code == 2);
        CHECK(all_below(scratch.path()).empty());
        return outcome.err;
    };
    CHECK_THAT(refused("--formats", "glb,dea"),
               Contains("no format \"dea\"") && Contains("did you mean dae?"));
    CHECK_THAT(refused("--unit", "yd"), Contains("--unit"));
    CHECK_THAT(refused("--only", "model"), Contains("did you mean models?"));
    CHECK_THAT(refused("--only", "pictures"), Contains("crew-book, drawings, models, schedule"));
    CHECK_THAT(refused("--paper", "a5"), Contains("--paper"));
    for (const std::string tolerance :
         {"2", "0.09 mm", "51 mm", "1 m", "-1 mm", "nan mm", "inf", "", "mm"}) {
        CAPTURE(tolerance);
        CHECK_THAT(refused("--tolerance", tolerance), Contains("--tolerance"));
    }
    CHECK(run({"build", store()}).code == 2); // --out is required
    const Outcome nameless = shell(scratch.path(), program() + " build '" + store() + "' --out ''");
    CHECK(nameless.code == 2);
    CHECK_THAT(nameless.err, Contains("--out"));
    CHECK(all_below(scratch.path()).empty());
}

TEST_CASE("build warns of failing checks and writes all the same") {
    const ScratchDirectory scratch;
    // A habitable room has 70 sq ft (IRC R304.1); one of 8 ft has 50 less its plaster.
    const Outcome made = run({"new", "--use", "habitable", "--diameter", "8 ft", "--out", "-"});
    const Outcome outcome =
        run({"build", "-", "--out", scratch.path(), "--only", "schedule"}, made.out);
    CHECK(outcome.code == 0);
    CHECK_THAT(outcome.err, Contains("Warning:"));
    CHECK(all_below(scratch.path()).size() == 3);
}

TEST_CASE("build that is stopped leaves a whole package or none, and nothing beside it") {
    const ScratchDirectory scratch;
    const auto out = scratch.path() / "package";
    int stopped = 0;
    for (const std::string signal : {"TERM", "INT", "HUP"}) {
        for (int hundredths = 2; hundredths < 60; hundredths += 6) {
            std::filesystem::remove_all(out);
            const Outcome outcome = shell(
                scratch.path(), "timeout -s " + signal + " 0." + (hundredths < 10 ? "0" : "") +
                                    std::to_string(hundredths) + " " + program() + " build '" +
                                    store() + "' --out package");
            stopped += outcome.code != 0;
            const bool all = std::filesystem::exists(out) && all_below(out) == whole_package;
            CAPTURE(signal, hundredths, outcome.code);
            CHECK((all || !std::filesystem::exists(out)));
        }
    }
    CHECK(stopped > 0);
}

TEST_CASE("build takes back what grows over the system's limit on files") {
    const ScratchDirectory scratch;
    const Outcome outcome =
        shell(scratch.path(), "ulimit -f 100; " + program() + " build '" + store() + "' --out p");
    CHECK(outcome.code == 3);
    CHECK_THAT(outcome.err, Contains("larger than the system allows"));
    CHECK(all_below(scratch.path()).empty());
}

TEST_CASE("build without its font says what to install") {
    const ScratchDirectory scratch;
    put_bytes(scratch.path() / "fonts.conf", "<?xml version=\"1.0\"?><fontconfig></fontconfig>");
    const std::string command =
        "FONTCONFIG_FILE=\"$PWD/fonts.conf\" " + program() + " build '" + store() + "' --out p";
    const Outcome outcome = shell(scratch.path(), command);
    CHECK(outcome.code == 3);
    CHECK_THAT(outcome.err, Contains("fonts-dejavu-core") && !Contains("report"));
    CHECK(all_below(scratch.path()) == std::vector<std::string>{"fonts.conf"});
    CHECK(shell(scratch.path(), command + " --only models,schedule").code == 0);
}

TEST_CASE("build writes the models in the unit and with the axis asked for") {
    const ScratchDirectory scratch;
    REQUIRE(run({"build", store(), "--out", scratch.path(), "--only", "models", "--formats",
                 "obj,glb", "--unit", "in", "--y-up"})
                .code == 0);
    CHECK_THAT(bytes_of(scratch.path() / "shell.obj"),
               Contains("# Unit: inch. Axes: x east, y up, -z north"));
    const ScratchDirectory plain;
    REQUIRE(run({"build", store(), "--out", plain.path(), "--only", "models", "--formats", "glb"})
                .code == 0);
    CHECK(bytes_of(plain.path() / "shell.glb") == bytes_of(scratch.path() / "shell.glb"));
}

TEST_CASE("what stands about comes from beside the design file, into models and findings") {
    const ScratchDirectory scratch;
    const auto design = scratch.path() / "store.toml";
    const std::string shelf = "[context.shelf]\nfile = \"things/shelf.obj\"\nunit = \"cm\"\n";
    put_bytes(design, bytes_of(store()) + "\n" + shelf + "at = [\"1 ft\", \"1 ft\"]\n");
    const Outcome missing = run({"check", design});
    CHECK(missing.code == 3);
    CHECK_THAT(missing.err, Contains("context.shelf") && Contains("there is no file"));
    std::filesystem::create_directory(scratch.path() / "things");
    const auto obj = scratch.path() / "things" / "shelf.obj";
    put_bytes(obj, "v 0 0 0\nv 40 0 0\nv 0 30 0\nv 0 0 100\nf 1 2 3\nf 1 2 9\n");
    const Outcome broken = run({"check", design});
    CHECK(broken.code == 2);
    CHECK_THAT(broken.err, Contains("shelf.obj:6: a corner names no vertex above it"));
    put_bytes(obj, "v 0 0 0\nv 40 0 0\nv 0 30 0\nv 0 0 100\nf 1 3 2\nf 1 2 4\nf 2 3 4\nf 3 1 4\n");
    const Outcome good = run({"check", design, "--long"});
    CHECK_THAT(good.out,
               Contains("context.shelf  (context-fit)") && Contains("clear of the plaster"));
    REQUIRE(run({"build", design, "--out", scratch.path() / "p", "--only", "models", "--formats",
                 "obj,stl"})
                .code == 0);
    CHECK_THAT(bytes_of(scratch.path() / "p" / "shell.obj"),
               Contains("o CONTEXT_SHELF\n") && Contains("v 0.304800 0.304800 1.000000\n"));
    // For printers it is no solid of the building.
    REQUIRE(run({"build", store(), "--out", scratch.path() / "q", "--only", "models", "--formats",
                 "stl"})
                .code == 0);
    CHECK(bytes_of(scratch.path() / "p" / "shell.stl") ==
          bytes_of(scratch.path() / "q" / "shell.stl"));
    // Moved into the wall the check fails.
    put_bytes(design, bytes_of(store()) + "\n" + shelf + "at = [\"4 ft\", \"0 ft\"]\n");
    const Outcome hits = run({"check", design});
    CHECK(hits.code == 1);
    CHECK_THAT(hits.out, Contains("into the plaster of store"));
}
