// What the documentation says about the program is what the program does.
#include "tests/cli/running.hpp"
#include "tests/exporters/scratch.hpp"

#include <catch2/catch.hpp>

#include <fstream>
#include <regex>
#include <set>
#include <sstream>

using namespace coilwright;
using Catch::Matchers::Contains;

namespace {

std::vector<std::filesystem::path> pages() {
    std::vector<std::filesystem::path> files{in_project("README.md"), in_project("DEVELOPERS.md")};
    for (const auto& entry : std::filesystem::recursive_directory_iterator(in_project("docs"))) {
        if (entry.path().extension() == ".md") {
            files.push_back(entry.path());
        }
    }
    return files;
}

/// A step of a page: a command, or lines to be added to a file.
struct Step {
    std::string command, file, lines;
};

/// Of blocks fenced ```sh the lines that call the program; of blocks fenced ```toml those whose
/// first line names a file, "# NAME.works", written in the order of the page.
std::vector<Step> steps_of(const std::string& text) {
    std::vector<Step> steps;
    std::istringstream lines(text);
    std::string line, block;
    while (std::getline(lines, line)) {
        if (line.rfind("```", 0) == 0) {
            block = block.empty() ? line : "";
        } else if (block == "```sh" && line.find("build/coilwright ") != std::string::npos) {
            steps.push_back({line, "", ""});
        } else if (block == "```toml" && line.rfind("# ", 0) == 0 &&
                   line.find(".works") == line.size() - 6) {
            steps.push_back({"", line.substr(2), ""});
            block = "into the file";
        } else if (block == "into the file") {
            steps.back().lines += line + "\n";
        }
    }
    return steps;
}

/// The commands of a page.
std::vector<std::string> commands_of(const std::string& text) {
    std::vector<std::string> commands;
    for (const Step& step : steps_of(text))
        if (!step.command.empty())
            commands.push_back(step.command);
    return commands;
}

std::set<std::string> all_matches(const std::string& text, const std::string& pattern) {
    std::set<std::string> found;
    const std::regex expression(pattern);
    for (std::sregex_iterator at(text.begin(), text.end(), expression), end; at != end; ++at) {
        found.insert(at->str());
    }
    return found;
}

/// Whether a check that was printed, as text or as JSON, fails.
bool tells_a_failure(const std::string& out) {
    return out.find("\n  fails  ") != std::string::npos ||
           out.find("\"verdict\": \"fails\"") != std::string::npos;
}

const std::vector<std::string> command_names{"new", "check", "courses", "takeoff", "vary", "build"};

} // namespace

TEST_CASE("every command that the documentation shows runs") {
    int count = 0;
    for (const auto& page : pages()) {
        // Each page from the start, in a folder like the project's, where files may be written.
        const ScratchDirectory scratch;
        const auto& folder = scratch.path();
        std::filesystem::copy(in_project("models"), folder / "models");
        std::filesystem::create_directory(folder / "build");
        std::filesystem::create_symlink(COILWRIGHT_PROGRAM, folder / "build" / "coilwright");
        for (const Step& step : steps_of(bytes_of(page))) {
            if (!step.file.empty()) {
                std::ofstream(folder / step.file, std::ios::app) << step.lines;
                continue;
            }
            CAPTURE(page.string(), step.command);
            const Outcome outcome = shell(folder, step.command);
            INFO(outcome.err);
            CHECK(outcome.code == (tells_a_failure(outcome.out) ? 1 : 0));
            ++count;
        }
    }
    CHECK(count > 10);
}

TEST_CASE("the tutorial that grows a home has a whole building at each of its steps") {
    std::istringstream lines(bytes_of(in_project("docs/tutorials/grow-a-home.md")));
    const ScratchDirectory scratch;
    std::string design, line;
    bool in_block = false;
    int steps = 0;
    while (std::getline(lines, line)) {
        if (in_block && line == "```") {
            CAPTURE(++steps);
            put_bytes(scratch.path() / "home.toml", design);
            const Outcome outcome = run({"check", (scratch.path() / "home.toml").string()});
            CHECK(outcome.err == "");
            // Without its doors and windows people cannot live in it yet; at the last step they
            // can.
            CHECK(outcome.code == (tells_a_failure(outcome.out) ? 1 : 0));
            CHECK(outcome.code == (steps < 6 ? 1 : 0));
            in_block = false;
        } else if (in_block) {
            design += line + "\n";
        } else {
            in_block = line == "```toml";
        }
    }
    CHECK(steps == 6);
    const Outcome built = run({"build", (scratch.path() / "home.toml").string(), "--out",
                               (scratch.path() / "home").string(), "--only", "models,schedule"});
    CHECK(built.code == 0);
}

TEST_CASE("what the first tutorial writes in place of a line of the design can stand there") {
    std::string design = run({"new", "--diameter", "9 ft", "--out", "-"}).out;
    std::istringstream lines(bytes_of(in_project("docs/tutorials/first-dome.md")));
    std::string snippet;
    for (std::string line; std::getline(lines, line);) {
        if (line.rfind("    springline = \"fit\"", 0) == 0 || !snippet.empty()) {
            if (line.rfind("    ", 0) != 0) {
                break;
            }
            snippet += line.substr(4) + "\n";
        }
    }
    const std::size_t from = design.find("springline = ");
    design.replace(from, design.find('\n', from) + 1 - from, snippet);
    const Outcome outcome = run({"check", "-"}, design);
    CAPTURE(snippet, outcome.err);
    CHECK(outcome.code == 0);
    CHECK_THAT(outcome.out, Contains("Fitted: Springline of 'main'"));
}

TEST_CASE("the tutorial of costs and days comes to a cost and to dates") {
    const ScratchDirectory scratch;
    std::filesystem::create_directory(scratch.path() / "build");
    std::filesystem::create_symlink(COILWRIGHT_PROGRAM, scratch.path() / "build" / "coilwright");
    std::vector<std::string> told; // by each takeoff in turn
    std::string varied;
    for (const Step& step : steps_of(bytes_of(in_project("docs/tutorials/costs-and-days.md")))) {
        if (!step.file.empty()) {
            std::ofstream(scratch.path() / step.file, std::ios::app) << step.lines;
            continue;
        }
        const Outcome outcome = shell(scratch.path(), step.command);
        CAPTURE(step.command);
        INFO(outcome.err);
        CHECK(outcome.code == 0);
        if (step.command.find(" takeoff ") != std::string::npos)
            told.push_back(outcome.out);
        if (step.command.find(" vary ") != std::string::npos)
            varied = outcome.out;
    }
    REQUIRE(told.size() == 3);
    CHECK(told[0].find("shells") == std::string::npos);
    CHECK_THAT(told[1],
               Contains("shells") && Contains("nine times in ten under") && Contains("to 2027-"));
    // A rate of the crew's own changes the days and what labour costs, not what is bought.
    const auto line_of = [](const std::string& text, const std::string& start) {
        const std::size_t at = text.find("\n" + start);
        REQUIRE(at != std::string::npos);
        return text.substr(at + 1, text.find('\n', at + 1) - at - 1);
    };
    CHECK(line_of(told[1], "Days: ") != line_of(told[2], "Days: "));
    CHECK(line_of(told[1], "labour") != line_of(told[2], "labour"));
    CHECK(line_of(told[1], "tube-wall").substr(0, 60) ==
          line_of(told[2], "tube-wall").substr(0, 60));
    CHECK_THAT(varied, Contains("9 ft") && Contains("10 ft"));
}

TEST_CASE("every link between the pages leads somewhere") {
    for (const auto& page : pages()) {
        for (const std::string& link : all_matches(bytes_of(page), R"(\]\((?!https?:)[^)#\s]+)")) {
            const auto target = page.parent_path() / link.substr(2);
            CAPTURE(page.string(), target.string());
            CHECK(std::filesystem::exists(target));
        }
    }
}

TEST_CASE("help has examples, and they run") {
    for (const std::string& name : command_names) {
        const Outcome help = run({name, "--help"});
        CHECK(help.code == 0);
        CHECK(help.err == "");
        CHECK_THAT(help.out, Contains("Examples:"));
        const ScratchDirectory scratch;
        std::filesystem::copy(in_project("models"), scratch.path() / "models");
        std::istringstream lines(help.out);
        std::string line;
        int count = 0;
        while (std::getline(lines, line)) {
            const std::size_t at = line.find("coilwright " + name + " ");
            if (line.rfind("  ", 0) != 0 || at == std::string::npos) {
                continue;
            }
            CAPTURE(line);
            line.replace(at, std::string("coilwright").size(), program());
            const Outcome outcome = shell(scratch.path(), line);
            CHECK(outcome.code == (tells_a_failure(outcome.out) ? 1 : 0));
            ++count;
        }
        CHECK(count >= 3);
    }
    const Outcome all = run({"--help"});
    CHECK(all.code == 0);
    for (const std::string& name : command_names) {
        CHECK_THAT(all.out, Contains("coilwright " + name));
    }
    CHECK_THAT(all.out, Contains("Exit codes"));
}

TEST_CASE("every design that the documentation has written keeps its own checks") {
    int count = 0;
    const auto holds = [&](const std::string& line) {
        const std::size_t at = line.find("coilwright new ");
        if (at == std::string::npos || line.find("--") == std::string::npos)
            return;
        CAPTURE(line);
        std::string arguments = line.substr(at + std::string("coilwright").size());
        arguments = std::regex_replace(arguments, std::regex(" --out [^ ]+"), "");
        const ScratchDirectory scratch;
        const Outcome outcome =
            shell(scratch.path(), program() + arguments + " --out - | " + program() + " check -");
        INFO(outcome.out << outcome.err);
        CHECK(outcome.code == 0);
        ++count;
    };
    for (const auto& page : pages())
        for (const std::string& command : commands_of(bytes_of(page)))
            holds(command);
    for (const std::vector<std::string>& help :
         std::vector<std::vector<std::string>>{{"--help"}, {"new", "--help"}}) {
        std::istringstream lines(run(help).out);
        for (std::string line; std::getline(lines, line);)
            if (line.rfind("  ", 0) == 0)
                holds(line);
    }
    CHECK(count >= 8);
}

TEST_CASE("help keeps within 100 columns") {
    for (const std::string& name : command_names) {
        std::istringstream lines(run({name, "--help"}).out);
        for (std::string line; std::getline(lines, line);) {
            CAPTURE(line);
            CHECK(line.size() <= 100);
        }
    }
}

TEST_CASE("the manual page and the reference tell every option of every command") {
    const std::string manual = std::regex_replace(
        bytes_of(in_project("docs/reference/coilwright.1")), std::regex(R"(\\-)"), "-");
    const std::string reference = bytes_of(in_project("docs/reference/command-line.md"));
    const std::string completion = bytes_of(in_project("cli/coilwright.bash"));
    for (const std::string& name : command_names) {
        const auto options = all_matches(run({name, "--help"}).out, R"(--[a-z]+[a-z-]*)");
        CHECK(options.size() >= 2);
        for (const std::string& option : options) {
            CAPTURE(name, option);
            CHECK_THAT(manual, Contains(option));
            CHECK_THAT(reference, Contains(option));
            CHECK_THAT(completion, Contains(option));
        }
    }
    // And none that the program does not have.
    std::string every_help = run({"--help"}).out;
    for (const std::string& name : command_names) {
        every_help += run({name, "--help"}).out;
    }
    for (const std::string& option : all_matches(manual, R"(--[a-z]+[a-z-]*)")) {
        if (option != "--warnings") { // of man, in the page's first comment
            CAPTURE(option);
            CHECK_THAT(every_help, Contains(option));
        }
    }
}

TEST_CASE("the version is told") {
    const Outcome outcome = run({"--version"});
    CHECK(outcome.code == 0);
    CHECK(std::regex_match(outcome.out, std::regex("coilwright [0-9]+\\.[0-9]+\\.[0-9]+\n")));
}

TEST_CASE("bash completes commands, options, values and design files") {
    const ScratchDirectory scratch;
    std::filesystem::create_directory(scratch.path() / "models");
    put_bytes(scratch.path() / "models" / "a.toml", "");
    put_bytes(scratch.path() / "models" / "b c.toml", "");
    put_bytes(scratch.path() / "models" / "notes.txt", "");
    const auto completed = [&](const std::string& words) {
        const Outcome outcome = shell(
            scratch.path(), "bash --norc -c 'set -u; source \"" +
                                in_project("cli/coilwright.bash") + "\"; COMP_WORDS=(" + words +
                                "); COMP_CWORD=$((${#COMP_WORDS[@]} - 1)); _coilwright; "
                                "IFS=\"|\"; echo \"${COMPREPLY[*]-}\"; complete -p coilwright'");
        CHECK(outcome.err == "");
        CHECK_THAT(outcome.out, Contains("complete -F _coilwright coilwright"));
        return outcome.out.substr(0, outcome.out.find('\n'));
    };
    CHECK(completed("coilwright \"\"") == "new|check|courses|takeoff|vary|build|--help|--version");
    CHECK(completed("coilwright c") == "check|courses");
    CHECK(completed("coilwright check --") == "--json|--long|--remedies|--help");
    CHECK(completed("coilwright courses --") == "--json|--csv|--help");
    CHECK(completed("coilwright vary --") ==
          "--set|--works|--csv|--chart|--journal|--threads|--help");
    CHECK(completed("coilwright takeoff --") == "--works|--json|--csv|--help");
    CHECK(completed("coilwright new --use s") == "store|shower");
    CHECK(completed("coilwright build models/a.toml --paper \"\"") == "letter|a4");
    CHECK(completed("coilwright build x --only crew-book,m") == "crew-book,models");
    CHECK(completed("coilwright build m") == "models");
    CHECK(completed("coilwright build models/") == "models/a.toml|models/b c.toml");
    CHECK(completed("coilwright build --out mod") == "models");
    CHECK(completed("coilwright check zzz") == "");
}
