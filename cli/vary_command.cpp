#include "cli/commands.hpp"

#include "cli/design_source.hpp"
#include "cli/variant_journal.hpp"
#include "cli/works_source.hpp"
#include "exporters/files.hpp"
#include "exporters/pdf.hpp"
#include "exporters/svg.hpp"
#include "exporters/variant_tables.hpp"
#include "geometry/base/utf8.hpp"
#include "geometry/report/variant_chart.hpp"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <filesystem>
#include <memory>
#include <optional>
#include <ostream>

namespace coilwright {

namespace {

constexpr const char* footer =
    "Examples:\n"
    "  coilwright vary models/grain-store.toml --set \"diameter=8 ft,9 ft,10 ft\"\n"
    "  coilwright vary models/washroom.toml --set \"rise=5 ft to 7 ft by 6 in\" --csv\n"
    "  coilwright vary models/grain-store.toml --set \"diameter=8 ft to 10 ft by 1 ft\"\n"
    "      --set \"lay-flat=15 in,17 in,19 in\" --chart choices.svg --journal choices.journal\n"
    "\nKEY is a path of the design file (dome.store.profile.kind) or, in a design of one dome and\n"
    "one tube, diameter, springline, rise, lay-flat or course. With several --set every "
    "combination\n"
    "is worked out. Values that the design states stay as they are: heights of openings too; but\n"
    "another lay-flat than the design's leaves out a tamped_width, which was measured.\n"
    "A run with --journal may be stopped at any time; the same command goes on where it was.";

constexpr std::size_t most_variants = 100000;

struct Options {
    std::string file;
    std::vector<std::string> choices;
    std::string works;
    std::string chart;
    std::string journal;
    unsigned threads = 0;
    bool csv = false;
};

bool ends_with(const std::string& text, const std::string& end) {
    return text.size() > end.size() && text.substr(text.size() - end.size()) == end;
}

std::string joined(const std::vector<std::string>& names) {
    std::string text;
    for (const std::string& name : names) {
        text += (text.empty() ? "" : ", ") + shown_text(name);
    }
    return text;
}

/// A key that two choices change, or that the change of one holds within it; empty: none.
std::string path_of_both(const Choice& one, const Choice& other) {
    const auto within = [](const std::string& path, const std::string& table) {
        return path == table || path.rfind(table + ".", 0) == 0;
    };
    // The value that the design itself has may leave a key alone that all others take out.
    for (const ChoiceValue* of_one : {&one.values.front(), &one.values.back()}) {
        for (const ChoiceValue* of_other : {&other.values.front(), &other.values.back()}) {
            for (const KeyChange& a : of_one->changes) {
                for (const KeyChange& b : of_other->changes) {
                    if (within(a.path, b.path) || within(b.path, a.path)) {
                        return a.path.size() < b.path.size() ? b.path : a.path;
                    }
                }
            }
        }
    }
    return {};
}

/// Reads the choices; what is wrong with them, or nothing.
std::string read_choices(const Options& options, const Design& design, VariantStudy& study) {
    for (const std::string& text : options.choices) {
        ChoiceReading reading = read_choice(text, design);
        if (!reading.fault.empty()) {
            return "--set: " + reading.fault;
        }
        for (const Choice& had : study.choices) {
            const std::string path = path_of_both(had, reading.choice);
            if (!path.empty()) {
                return had.name == reading.choice.name
                           ? "--set: \"" + had.name +
                                 "\" stands twice; write its values in one list"
                           : "--set: \"" + had.name + "\" and \"" + reading.choice.name +
                                 "\" both change " + path + "; leave one of them out";
            }
        }
        study.choices.push_back(std::move(reading.choice));
        if (variant_count(study) > most_variants) {
            return "--set: more than 100,000 variants; take fewer values or larger steps";
        }
    }
    if (!options.chart.empty() && !ends_with(options.chart, ".svg") &&
        !ends_with(options.chart, ".png")) {
        return "--chart: \"" + options.chart + "\" ends in neither .svg nor .png";
    }
    return {};
}

/// All results in the order of the variants, or the exit code of a run that has said why not.
struct Worked {
    std::vector<VariantResult> results;
    ExitCode code = ExitCode::done;
};

Worked work_out_all(const VariantStudy& study, const Options& options,
                    const std::string& works_text, Console& console) {
    Worked worked;
    const std::size_t count = variant_count(study);
    std::optional<VariantJournal> journal;
    std::vector<bool> wanted;
    std::size_t done = 0;
    worked.results.resize(count);
    if (!options.journal.empty()) {
        journal.emplace(options.journal, study, works_text);
        if (!journal->fault().empty()) {
            print_error(console, journal->fault());
            worked.code = ExitCode::no_access;
            return worked;
        }
        worked.results = std::move(journal->results());
        wanted = journal->held();
        wanted.flip();
        done = count - static_cast<std::size_t>(std::count(wanted.begin(), wanted.end(), true));
    }
    std::atomic<bool> stop{false};
    bool kept = true;
    {
        Progress progress(console);
        run_variants(study, wanted, options.threads, stop,
                     [&](std::size_t index, VariantResult result) {
                         if (journal && !journal->add(index, result)) {
                             kept = false;
                             stop = true;
                         }
                         worked.results[index] = std::move(result);
                         ++done;
                         progress.show(static_cast<int>(done), static_cast<int>(count), "variants");
                     });
    }
    if (!kept) {
        print_error(console, "--journal: could not write \"" + options.journal + "\"");
        worked.code = ExitCode::no_access;
    }
    return worked;
}

ExitCode write_chart(const VariantStudy& study, const std::vector<VariantResult>& results,
                     const BuildingPlan& plan, const std::string& path, Console& console) {
    const Sheet sheet =
        variant_chart(study, results, plan.schedule.name, plan.schedule.unit, pango_measure());
    const std::filesystem::path file(path);
    const WriteResult written = write_files(
        file.parent_path(), {{file.filename().string(),
                              ends_with(path, ".svg") ? svg_text(sheet) : png_bytes(sheet, 150)}});
    if (!written.ok()) {
        print_error(console, written.fault);
        return ExitCode::no_access;
    }
    return ExitCode::done;
}

ExitCode run(const Options& options, Console& console) {
    if (options.file == "-") {
        print_error(console, "vary: the design must be a file");
        return ExitCode::wrong_input;
    }
    const PlannedFile planned = plan_file(options.file, FaultsAs::text, console);
    if (!planned.plan) {
        return planned.code;
    }
    const WorksFile works = read_works_file(options.works, options.file, console);
    if (!works.works) {
        return works.code;
    }
    if (!prices_fit(planned.plan->design, works, console)) {
        return ExitCode::wrong_input;
    }
    const DesignSource source = read_source(options.file, console.in);
    if (!source.fault.empty()) {
        print_error(console, source.fault);
        return ExitCode::no_access;
    }
    if (!works.works->prices.empty()) {
        const std::optional<WorkedOut> out = work_out(*planned.plan, works, options.file, console);
        if (!out) {
            return ExitCode::wrong_input;
        }
        if (!out->costs.unpriced.empty()) {
            console.err << painted("Warning:", Colour::red, console.colour_err)
                        << " no cost counts " << joined(out->costs.unpriced)
                        << ": without a price.\n";
        }
    }
    VariantStudy study{source.text, *works.works, {}};
    const std::string fault = read_choices(options, planned.plan->design, study);
    if (!fault.empty()) {
        print_error(console, fault);
        return ExitCode::wrong_input;
    }
    const Worked worked = work_out_all(study, options, works.text, console);
    if (worked.code != ExitCode::done) {
        return worked.code;
    }
    const auto laid = [](const VariantResult& result) { return result.laid; };
    if (std::none_of(worked.results.begin(), worked.results.end(), laid)) {
        print_error(console, "no variant can be laid. The first: " + worked.results.front().fault);
        return ExitCode::wrong_input;
    }
    if (!options.chart.empty()) {
        const ExitCode code =
            write_chart(study, worked.results, *planned.plan, options.chart, console);
        if (code != ExitCode::done) {
            return code;
        }
    }
    console.out << (options.csv
                        ? variants_csv(study, worked.results)
                        : variants_table(study, worked.results, planned.plan->schedule.unit));
    return ExitCode::done;
}

} // namespace

void add_vary_command(CLI::App& program, Action& chosen) {
    const auto options = std::make_shared<Options>();
    CLI::App* command = program.add_subcommand(
        "vary", "Compare variants of one design: floor, headroom, materials, cost, days, safety");
    command->footer(footer);
    command->add_option("FILE", options->file, "Design file")->required()->type_name("");
    command
        ->add_option("--set", options->choices,
                     "A key and its values: a list, or FIRST to LAST by STEP; may be repeated")
        ->required()
        ->allow_extra_args(false)
        ->type_name("KEY=VALUES");
    command
        ->add_option("--works", options->works, "Works file; NAME.works beside FILE if not given")
        ->type_name("FILE");
    command->add_flag("--csv", options->csv, "Print CSV in metres instead of a table");
    command
        ->add_option("--chart", options->chart, "Write a chart of all figures: a .svg or .png file")
        ->type_name("FILE");
    command
        ->add_option("--journal", options->journal,
                     "Keep each variant in this file as it is done, and go on from it")
        ->type_name("FILE");
    command
        ->add_option("--threads", options->threads,
                     "How many work side by side; if not given, all cores")
        ->check(CLI::Range(1, 1024).description(""))
        ->type_name("COUNT");
    command->callback([options, &chosen] {
        chosen = [options](Console& console) { return run(*options, console); };
    });
}

} // namespace coilwright
