#include "cli/commands.hpp"

#include "cli/first_design.hpp"
#include "exporters/files.hpp"
#include "geometry/base/utf8.hpp"
#include "geometry/checks/check_building.hpp"
#include "geometry/design/read_design.hpp"
#include "geometry/exact/exact_region.hpp"
#include "geometry/plan/plan_building.hpp"

#include <CLI/CLI.hpp>

#include <filesystem>
#include <memory>
#include <ostream>
#include <system_error>

namespace coilwright {

namespace {

constexpr const char* footer =
    "Examples:\n"
    "  coilwright new --name \"Seed store\" --diameter \"9 ft\" --out seed-store.toml\n"
    "  coilwright new --use shower --diameter \"6 ft\" --windows 1 --out washroom.toml\n"
    "  coilwright new --unit m --diameter \"3.6 m\" --profile catenary --out shed.toml\n"
    "\nThe design is laid once before it is written: what does not fit is told.";

struct Options {
    std::string name = "First dome";
    std::string unit = "ft";
    std::string use = "store";
    std::string diameter;
    std::string profile = "pointed";
    std::string door = "pointed";
    int windows = -1; // not given
    std::string out = "design.toml";
    bool force = false;
};

/// The first of the values whose word in the design file is `text`. The parser has checked it.
template <typename Value>
Value value_of(const std::string& text, std::initializer_list<Value> values) {
    for (const Value value : values) {
        if (word(value) == text) {
            return value;
        }
    }
    return *values.begin();
}

/// What is wrong with the values of the options; empty: nothing. Fills `wish`.
std::string read_options(const Options& options, FirstDesign& wish) {
    wish.name = options.name;
    wish.unit = options.unit == "m" ? DisplayUnit::metres : DisplayUnit::feet;
    wish.use = value_of(options.use,
                        {Use::store, Use::habitable, Use::bath, Use::shower, Use::tiny_house});
    wish.profile = value_of(options.profile, {ProfileKind::pointed, ProfileKind::round,
                                              ProfileKind::catenary, ProfileKind::parabola});
    wish.door.reset();
    if (options.door != "none") {
        wish.door = value_of(options.door, {HeadKind::pointed, HeadKind::round, HeadKind::segmental,
                                            HeadKind::square});
    }
    if (options.windows >= 0) {
        wish.windows = options.windows;
    }
    if (first_invalid_utf8(options.name) != std::string_view::npos) {
        return "--name: the text is not UTF-8";
    }
    constexpr std::size_t longest_name = 80; // of a design's `name`
    if (options.name.find_first_not_of(" \t\r\n") == std::string::npos ||
        character_count(options.name) > longest_name) {
        return "--name: \"" + shown_text(options.name) + "\" is not a text of 1 to " +
               std::to_string(longest_name) + " characters; write \"Seed store\"";
    }
    const std::string diameter = !options.diameter.empty()          ? options.diameter
                                 : wish.unit == DisplayUnit::metres ? "2.75 m"
                                                                    : "9 ft";
    const LengthReading reading = read_length(diameter, wish.unit);
    if (!reading.fault.empty()) {
        return "--diameter: \"" + diameter + "\": " + reading.fault +
               "; write \"9 ft\" or \"2.75 m\"";
    }
    if (!(reading.value >= least_first_diameter) || !(reading.value <= greatest_first_diameter)) {
        return "--diameter: " + diameter + " is not from " +
               length_text(least_first_diameter, wish.unit) + " to " +
               length_text(greatest_first_diameter, wish.unit) +
               "; for a wider dome take a wider tube, in a design of your own";
    }
    wish.diameter = reading.value;
    return {};
}

BuildingPlan planned(const std::string& text) {
    DesignReading reading = read_design(text);
    return plan_building(std::move(reading.design), std::move(reading.diagnostics), exact_region);
}

/// Why the design cannot be laid, one line a fault; empty: it can.
std::string fault_of(const BuildingPlan& plan) {
    std::string faults;
    for (const Diagnostic& diagnostic : plan.diagnostics) {
        faults += "\n  " + diagnostic.subject + ": " + diagnostic.message;
    }
    return faults;
}

/// Which checks the design fails as it stands; empty: none.
std::string failing_checks(const BuildingPlan& plan) {
    std::string codes;
    for (const Finding& finding : all_findings(plan)) {
        if (finding.verdict == Verdict::fails && codes.find(finding.code) == std::string::npos) {
            codes += (codes.empty() ? "" : ", ") + finding.code;
        }
    }
    return codes;
}

ExitCode run(const Options& options, Console& console) {
    FirstDesign wish;
    std::string fault = read_options(options, wish);
    if (!fault.empty()) {
        print_error(console, fault);
        return ExitCode::wrong_input;
    }
    const std::string text = first_design(wish);
    const BuildingPlan plan = planned(text);
    fault = fault_of(plan);
    if (!fault.empty()) {
        print_error(console, "such a dome cannot be laid; take fewer windows, another profile or a "
                             "larger diameter:" +
                                 fault);
        return ExitCode::wrong_input;
    }
    if (options.out == "-") {
        console.out << text;
        return ExitCode::done;
    }
    const std::filesystem::path out(options.out);
    std::error_code error;
    if (std::filesystem::is_directory(out, error)) {
        print_error(console, "\"" + options.out + "\" is a directory; name a file in it");
        return ExitCode::no_access;
    }
    if (!options.force && std::filesystem::exists(std::filesystem::symlink_status(out, error))) {
        print_error(console, "\"" + options.out + "\" is there already; --force writes over it");
        return ExitCode::no_access;
    }
    const std::filesystem::path folder = out.has_parent_path() ? out.parent_path() : ".";
    const WriteResult result = write_files(folder, {{out.filename().string(), text}});
    if (!result.ok()) {
        print_error(console, result.fault);
        return ExitCode::no_access;
    }
    const std::string shown = printable(options.out), failing = failing_checks(plan);
    console.out << "Written: " << shown << '\n';
    if (!failing.empty()) {
        console.out << wrapped(
            "As it stands it fails these checks, which tell what to change: " + failing + ".", "");
    }
    console.out << "Next: coilwright check " << shown << '\n';
    return ExitCode::done;
}

} // namespace

void add_new_command(CLI::App& program, Action& chosen) {
    const auto options = std::make_shared<Options>();
    CLI::App* command = program.add_subcommand("new", "Write a commented design to start from");
    command->footer(footer);
    command->add_option("--name", options->name, "Of the building")->capture_default_str();
    command->add_option("--unit", options->unit, "ft or m")
        ->capture_default_str()
        ->transform(CLI::IsMember({"ft", "m"}, CLI::ignore_case).description(""))
        ->type_name("UNIT");
    command->add_option("--use", options->use, "store, habitable, bath, shower or tiny-house")
        ->capture_default_str()
        ->transform(
            CLI::IsMember({"store", "habitable", "bath", "shower", "tiny-house"}, CLI::ignore_case)
                .description(""))
        ->type_name("USE");
    command->add_option("--diameter", options->diameter, "Inside; 9 ft or 2.75 m if not given")
        ->type_name("LENGTH");
    command->add_option("--profile", options->profile, "pointed, round, catenary or parabola")
        ->capture_default_str()
        ->transform(CLI::IsMember({"pointed", "round", "catenary", "parabola"}, CLI::ignore_case)
                        .description(""))
        ->type_name("KIND");
    command
        ->add_option("--door", options->door, "Its head: pointed, round, segmental, square or none")
        ->capture_default_str()
        ->transform(
            CLI::IsMember({"pointed", "round", "segmental", "square", "none"}, CLI::ignore_case)
                .description(""))
        ->type_name("KIND");
    command
        ->add_option("--windows", options->windows,
                     "How many, 0 to 6; if not given 2, or those that a room to live in needs")
        ->check(CLI::Range(0, most_first_windows).description(""))
        ->type_name("COUNT");
    command->add_option("--out", options->out, "File to write, or - to print it")
        ->capture_default_str()
        ->type_name("FILE");
    command->add_flag("--force", options->force, "Write over a file that is there");
    command->callback([options, &chosen] {
        chosen = [options](Console& console) { return run(*options, console); };
    });
}

} // namespace coilwright
