#include "cli/program.hpp"

#include "cli/commands.hpp"
#include "cli/exit_code.hpp"
#include "exporters/pdf.hpp"
#include "geometry/base/nearest_word.hpp"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <exception>
#include <filesystem>
#include <new>
#include <ostream>
#include <system_error>

namespace coilwright {

namespace {

constexpr const char* version_text = "coilwright " COILWRIGHT_VERSION;

constexpr const char* program_text =
    "Plans domes of coiled earthbag: from one design file to the crew's sheets, the models\n"
    "and the schedule. A drawing aid, not engineering: follow the local code and have every\n"
    "design reviewed by a licensed professional.";

constexpr const char* program_footer =
    "Examples:\n"
    "  coilwright new --name \"Seed store\" --diameter \"9 ft\" --out seed-store.toml\n"
    "  coilwright check seed-store.toml\n"
    "  coilwright courses seed-store.toml\n"
    "  coilwright takeoff seed-store.toml\n"
    "  coilwright vary seed-store.toml --set \"diameter=8 ft,9 ft,10 ft\"\n"
    "  coilwright build seed-store.toml --out package\n"
    "\nExit codes:\n"
    "  0  done\n"
    "  1  a check of the design fails\n"
    "  2  the design or the command line is wrong; nothing is written\n"
    "  3  could not read or write\n"
    "\nColour is used on terminals only, and not at all where NO_COLOR is set.";

/// What is wrong with the word where a command should stand; empty: nothing.
std::string command_fault(const CLI::App& program, const std::vector<std::string>& arguments) {
    std::vector<std::string> known;
    std::string list;
    for (const CLI::App* command : program.get_subcommands({})) {
        known.push_back(command->get_name());
        list += (list.empty() ? "" : ", ") + command->get_name();
    }
    if (arguments.empty()) {
        return "name a command: " + list;
    }
    if (arguments.front().substr(0, 1) == "-") {
        return {};
    }
    if (std::find(known.begin(), known.end(), arguments.front()) != known.end()) {
        return {};
    }
    const auto near = nearest_word(arguments.front(), known);
    return "there is no command \"" + arguments.front().substr(0, 60) + "\" (" + list + ")" +
           (near ? "; did you mean " + *near + "?" : "");
}

ExitCode print_usage_error(const CLI::App& program, const std::string& message, Console& console) {
    print_error(console, message);
    std::string called = "coilwright";
    for (const CLI::App* command : program.get_subcommands()) {
        called += " " + command->get_name();
    }
    console.err << "See: " << called << " --help\n";
    return ExitCode::wrong_input;
}

/// Reads the command line and runs what it asks for.
ExitCode run(const std::vector<std::string>& arguments, Console& console) {
    CLI::App program(program_text, "coilwright");
    program.set_version_flag("--version", version_text, "Print the version and end");
    program.set_help_flag("-h,--help", "Print this help and end");
    program.get_formatter()->column_width(24);
    program.get_formatter()->label("SUBCOMMAND", "COMMAND");
    program.get_formatter()->label("REQUIRED", "(must be given)");
    program.footer(program_footer);
    program.require_subcommand(1);

    Action chosen;
    add_new_command(program, chosen);
    add_check_command(program, chosen);
    add_courses_command(program, chosen);
    add_takeoff_command(program, chosen);
    add_vary_command(program, chosen);
    add_build_command(program, chosen);
    for (CLI::App* command : program.get_subcommands({})) {
        command->group("Commands");
    }

    const std::string fault = command_fault(program, arguments);
    if (!fault.empty()) {
        return print_usage_error(program, fault, console);
    }
    try {
        // The parser takes them from the back.
        program.parse(std::vector<std::string>(arguments.rbegin(), arguments.rend()));
    } catch (const CLI::CallForHelp&) {
        console.out << program.help();
        return ExitCode::done;
    } catch (const CLI::CallForVersion&) {
        console.out << version_text << '\n';
        return ExitCode::done;
    } catch (const CLI::ParseError& error) {
        return print_usage_error(program, error.what(), console);
    }
    return chosen(console);
}

/// Says what broke. Called within a handler.
ExitCode print_exception(Console& console) {
    try {
        throw;
    } catch (const std::bad_alloc&) {
        print_error(console, "out of memory");
    } catch (const std::system_error& error) { // of files, threads, streams
        print_error(console, error.what());
    } catch (const MissingFont& error) {
        print_error(console, error.what());
    } catch (const std::exception& error) {
        print_error(console,
                    std::string("a fault in this program, please report it: ") + error.what());
    } catch (...) {
        print_error(console, "a fault in this program, please report it");
    }
    return ExitCode::no_access;
}

} // namespace

int run_program(const std::vector<std::string>& arguments, Console& console) noexcept {
    ExitCode code = ExitCode::no_access;
    try {
        try {
            code = run(arguments, console);
        } catch (...) {
            code = print_exception(console);
        }
        console.out.flush();
        if (!console.out) {
            print_error(console, "could not write to standard output");
            code = ExitCode::no_access;
        }
        console.err.flush();
    } catch (...) { // not even the message could be printed
        code = ExitCode::no_access;
    }
    return static_cast<int>(code);
}

} // namespace coilwright
