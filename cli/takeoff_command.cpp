#include "cli/commands.hpp"

#include "cli/design_source.hpp"
#include "cli/works_source.hpp"
#include "exporters/take_off_json.hpp"

#include <CLI/CLI.hpp>

#include <memory>
#include <ostream>

namespace coilwright {

namespace {

constexpr const char* footer =
    "Examples:\n"
    "  coilwright takeoff models/grain-store.toml\n"
    "  coilwright takeoff models/workshop.toml --works models/grain-store.works\n"
    "  coilwright takeoff models/workshop.toml --json\n"
    "\nPrices, mixes, coats and the crew stand in a works file: NAME.works beside NAME.toml, or\n"
    "the one that --works names. The table is in the design's unit; JSON and CSV are in metres.";

struct Options {
    std::string file;
    std::string works;
    bool json = false;
    bool csv = false;
};

ExitCode run(const Options& options, Console& console) {
    const PlannedFile planned = plan_file(options.file, FaultsAs::text, console);
    if (!planned.plan) {
        return planned.code;
    }
    const WorksFile file = read_works_file(options.works, options.file, console);
    if (!file.works) {
        return file.code;
    }
    const auto out = work_out(*planned.plan, file, options.file, console);
    if (!out) {
        return ExitCode::wrong_input;
    }
    if (options.json) {
        console.out << take_off_json(out->take, out->costs, out->days);
    } else if (options.csv) {
        console.out << take_off_csv(out->take, out->costs);
    } else {
        console.out << take_off_table(out->take, out->costs, out->days);
    }
    return ExitCode::done;
}

} // namespace

void add_takeoff_command(CLI::App& program, Action& chosen) {
    const auto options = std::make_shared<Options>();
    CLI::App* command =
        program.add_subcommand("takeoff", "Print what it takes: materials, money and days");
    command->footer(footer);
    command->add_option("FILE", options->file, "Design file, or - for standard input")
        ->required()
        ->type_name("");
    command
        ->add_option("--works", options->works, "Works file; NAME.works beside FILE if not given")
        ->type_name("FILE");
    CLI::Option* json = command->add_flag("--json", options->json, "Print all of it as JSON");
    command->add_flag("--csv", options->csv, "Print lines and purchases as CSV")->excludes(json);
    command->callback([options, &chosen] {
        chosen = [options](Console& console) { return run(*options, console); };
    });
}

} // namespace coilwright
