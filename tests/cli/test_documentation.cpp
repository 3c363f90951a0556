// What the documentation says about the program is what the program does.
#include "tests/cli/running.hpp"
#include "tests/exporters/scratch.hpp"

#include <catch2/catch.hpp>

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

/// The commands of a page: lines of blocks fenced ```sh that call the program.
std::vector<std::string> commands_of(const std::string& text) {
    std::vector<std::string> commands;
    std::istringstream lines(text);
    std::string line;
    bool in_block = false;
    while (std::getline(lines, line)) {
        if (line.rfind("```", 0) == 0) {
            in_block = !in_block && line == "```sh";
        } else if (in_block && line.find("build/coilwright ") != std::string::npos) {
            commands.push_back(line);
        }
    }
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
        for (const std::string& command : commands_of(bytes_of(page))) {
            CAPTURE(page.string(), command);
            const Outcome outcome = shell(folder, command);
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
    CHECK(completed("coilwright check --") == "--json|--remedies|--help");
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
