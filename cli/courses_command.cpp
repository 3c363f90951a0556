#include "cli/commands.hpp"

#include "cli/design_source.hpp"
#include "exporters/schedule_csv.hpp"
#include "exporters/schedule_json.hpp"
#include "exporters/schedule_table.hpp"

#include <CLI/CLI.hpp>

#include <memory>
#include <ostream>

namespace coilwright {

namespace {

constexpr const char* footer = "Examples:\n"
                               "  coilwright courses models/grain-store.toml\n"
                               "  coilwright courses models/workshop.toml --json\n"
                               "  coilwright courses models/workshop.toml --csv\n"
                               "\nThe table is in the design's unit; JSON and CSV are in metres.";

struct Options {
    std::string file;
    bool json = false;
    bool csv = false;
};

ExitCode run(const Options& options, Console& console) {
    const PlannedFile planned =
        plan_file(options.file, options.json ? FaultsAs::json : FaultsAs::text, console);
    if (!planned.plan) {
        return planned.code;
    }
    if (options.json) {
        console.out << schedule_json(*planned.plan);
    } else if (options.csv) {
        console.out << schedule_csv(*planned.plan);
    } else {
        console.out << schedule_table(*planned.plan);
    }
    return ExitCode::done;
}

} // namespace

void add_courses_command(CLI::App& program, Action& chosen) {
    const auto options = std::make_shared<Options>();
    CLI::App* command = program.add_subcommand(
        "courses", "Print every course: compass setting, runs, tubes and cuts");
    command->footer(footer);
    command->add_option("FILE", options->file, "Design file, or - for standard input")
        ->required()
        ->type_name("");
    CLI::Option* json = command->add_flag("--json", options->json, "Print the schedule as JSON");
    command->add_flag("--csv", options->csv, "Print it as CSV, one row a tube")->excludes(json);
    command->callback([options, &chosen] {
        chosen = [options](Console& console) { return run(*options, console); };
    });
}

} // namespace coilwright
