#include "cli/commands.hpp"

#include "cli/design_source.hpp"
#include "cli/package.hpp"
#include "geometry/base/length.hpp"
#include "geometry/base/nearest_word.hpp"
#include "geometry/checks/check_building.hpp"
#include "geometry/drawing/crew_book.hpp"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <filesystem>
#include <future>
#include <iterator>
#include <memory>
#include <optional>
#include <ostream>
#include <system_error>

namespace coilwright {

namespace {

constexpr const char* footer =
    "Examples:\n"
    "  coilwright build models/grain-store.toml --out package/grain-store\n"
    "  coilwright build models/cabin-metric.toml --out package/cabin --paper a4\n"
    "  coilwright build models/workshop.toml --out package/workshop --only models,schedule\n"
    "\nParts for --only:\n"
    "  crew-book  crew-book.pdf, compass-strip.pdf\n"
    "  drawings   drawings.pdf, drawings.dxf, pictures/\n"
    "  models     shell and courses, each in every format; building.ifc\n"
    "  schedule   schedule.json, schedule.csv, schedule.xlsx\n"
    "  checks     checks.json, engineer.pdf\n"
    "  take-off   take-off.pdf, .xlsx, .json, .csv: materials, money and days by the works\n"
    "             file; site-log.pdf\n"
    "  templates  forms.dxf, forms.pdf: arch forms, frames and boards at full size\n"
    "\nFormats for --formats:\n"
    "  glb, obj (with mtl), stl, ply, dae, 3mf, ifc (building.ifc). GLB, 3MF and IFC keep\n"
    "  their axes, GLB and IFC their unit.\n"
    "\nA run that fails or is stopped leaves earlier files as they were.";

constexpr double least_tolerance = 0.0001;
constexpr double greatest_tolerance = 0.05;
constexpr double greatest_kerf = 0.010;

struct Options {
    std::string file;
    std::string out;
    std::vector<std::string> only;
    std::string works;
    std::string paper;
    std::string sheet;
    std::string plan_height;
    std::optional<double> section_bearing;
    std::optional<double> view_bearing;
    std::string tile;
    std::string kerf;
    std::string tolerance = "2 mm";
    std::vector<std::string> formats;
    std::string unit;
    bool y_up = false;
    bool ifc2x3 = false;
    bool remedies = false;
};

/// What is wrong with a list of words, or nothing.
std::string unknown_word(const std::string& option, const std::string& what,
                         const std::vector<std::string>& words,
                         const std::vector<std::string>& known) {
    for (const std::string& word : words) {
        if (std::find(known.begin(), known.end(), word) != known.end()) {
            continue;
        }
        std::string text = option + ": there is no " + what + " \"" + word + "\" (";
        for (const std::string& one : known) {
            text += (one == known.front() ? "" : ", ") + one;
        }
        const auto near = nearest_word(word, known);
        return text + ")" + (near ? "; did you mean " + *near + "?" : "");
    }
    return {};
}

/// The words asked for, each once, in the order of the known ones.
std::vector<std::string> without_repeats(const std::vector<std::string>& words,
                                         const std::vector<std::string>& known) {
    std::vector<std::string> kept;
    std::copy_if(known.begin(), known.end(), std::back_inserter(kept), [&](const auto& word) {
        return std::find(words.begin(), words.end(), word) != words.end();
    });
    return kept;
}

/// What is wrong with the values of the options; empty: nothing. Fills `package`.
std::string read_options(const Options& options, PackageOptions& package) {
    if (options.out.empty()) { // an unset variable of a script, not the current folder
        return "--out: the directory has no name; write . for the current one";
    }
    const std::vector<std::string>& formats = model_words();
    std::string fault = unknown_word("--only", "part", options.only, package_parts());
    if (fault.empty()) {
        fault = unknown_word("--formats", "format", options.formats, formats);
    }
    if (!fault.empty()) {
        return fault;
    }
    package.formats = options.formats.empty() ? formats : without_repeats(options.formats, formats);
    package.models.y_up = options.y_up;
    package.ifc = options.ifc2x3 ? IfcSchema::ifc2x3 : IfcSchema::ifc4;
    for (const FileUnit unit : file_units()) {
        if (unit_word(unit) == options.unit) {
            package.models.unit = unit;
        }
    }
    package.parts = options.only.empty() ? package_parts() : options.only;

    const bool has_unit =
        options.tolerance.find_first_not_of("0123456789.,+- ") != std::string::npos;
    const LengthReading tolerance = read_length(options.tolerance, DisplayUnit::metres);
    if (!has_unit || !tolerance.fault.empty() || !(tolerance.value >= least_tolerance) ||
        !(tolerance.value <= greatest_tolerance)) {
        return "--tolerance: \"" + options.tolerance +
               "\" is not a length from 0.1 mm to 50 mm with its unit; write \"2 mm\" or \"1/16 "
               "in\"";
    }
    package.tolerance = tolerance.value;
    if (!options.kerf.empty()) {
        const LengthReading kerf = read_length(options.kerf, DisplayUnit::metres);
        const bool bare = options.kerf.find_first_not_of("0123456789.,+- ") == std::string::npos;
        if (bare || !kerf.fault.empty() || !(kerf.value >= 0) || !(kerf.value <= greatest_kerf)) {
            return "--kerf: \"" + options.kerf +
                   "\" is not a length from 0 mm to 10 mm with its unit; write \"3 mm\" or \"1/8 "
                   "in\"";
        }
        package.kerf = kerf.value;
    }
    if (options.section_bearing) {
        package.drawings.section_bearing = Bearing{turned_into_circle(*options.section_bearing)};
    }
    if (options.view_bearing) {
        package.view_bearing = Bearing{turned_into_circle(*options.view_bearing)};
    }
    return {};
}

PaperSize paper_for(const std::string& word, DisplayUnit unit) {
    const bool letter = word.empty() ? unit == DisplayUnit::feet : word == "letter";
    return letter ? letter_paper() : a4_paper();
}

/// The sheets of the drawings; without a word, twice as large as the crew's paper.
PaperSize sheet_for(const std::string& word, DisplayUnit unit) {
    const std::string name = !word.empty() ? word : unit == DisplayUnit::feet ? "tabloid" : "a3";
    return drawing_paper(name).value();
}

/// Sets the height of the floor plan's cut; what is wrong with it, or nothing.
std::string read_plan_height(const std::string& text, const Schedule& schedule, double& height) {
    if (text.empty()) {
        height = schedule.unit == DisplayUnit::feet ? usual_plan_height : usual_metric_plan_height;
        return {};
    }
    double top = 0;
    for (const DomeForm& dome : schedule.building.domes) {
        top = std::max(top, dome.top());
    }
    const LengthReading reading = read_length(text, schedule.unit);
    if (!reading.fault.empty() || !(reading.value > 0) || !(reading.value < top)) {
        return "--plan-height: \"" + text + "\" is no height between the floor and the top, " +
               length_text(top, schedule.unit);
    }
    height = reading.value;
    return {};
}

/// Sets the scale that drawings are tiled at; what is wrong with it, or nothing.
std::string read_tile_scale(const std::string& text, DisplayUnit unit,
                            std::optional<Scale>& tiled_at) {
    if (text.empty()) {
        return {};
    }
    const std::string number = text.rfind("1:", 0) == 0 ? text.substr(2) : text;
    std::string known;
    for (const Scale& scale : standard_scales(unit)) {
        if (number == std::to_string(scale.per)) {
            tiled_at = scale;
            return {};
        }
        known += (known.empty() ? "1:" : ", 1:") + std::to_string(scale.per);
    }
    return "--tile: \"" + text + "\" is no standard scale for this design (" + known + ")";
}

void print_failing_checks(const std::vector<Finding>& findings, const std::string& file,
                          Console& console) {
    const auto count = std::count_if(findings.begin(), findings.end(), [](const Finding& finding) {
        return finding.verdict == Verdict::fails;
    });
    if (count > 0) {
        console.err << painted("Warning:", Colour::red, console.colour_err) << ' ' << count
                    << (count == 1 ? " check of this design fails" : " checks of this design fail")
                    << ". See: coilwright check " << printable(file) << '\n';
    }
}

ExitCode run(const Options& options, Console& console) {
    PackageOptions asked;
    const std::string fault = read_options(options, asked);
    if (!fault.empty()) {
        print_error(console, fault);
        return ExitCode::wrong_input;
    }
    const PlannedFile planned = plan_file(options.file, FaultsAs::text, console);
    if (!planned.plan) {
        return planned.code;
    }
    PackageOptions wanted = std::move(asked); // ends before the plan that its work reads
    std::error_code error;
    if (std::filesystem::exists(options.out, error) &&
        !std::filesystem::is_directory(options.out, error)) {
        print_error(console, "--out: \"" + options.out + "\" is not a directory");
        return ExitCode::no_access;
    }
    if (std::find(wanted.parts.begin(), wanted.parts.end(), "take-off") != wanted.parts.end()) {
        const WorksFile file = read_works_file(options.works, options.file, console);
        if (!file.works) {
            return file.code;
        }
        wanted.worked_out = work_out(*planned.plan, file, options.file, console);
        if (!wanted.worked_out) {
            return ExitCode::wrong_input;
        }
    }
    wanted.context = planned.context;
    // Worked out while models and drawings are made.
    wanted.checked = std::async(std::launch::async, [&planned, seek = options.remedies] {
                         CheckedBuilding checked = checked_building(*planned.plan);
                         if (seek) {
                             checked.changes = seek_changes(*planned.plan, checked.findings);
                         }
                         return checked;
                     }).share();
    wanted.paper = paper_for(options.paper, planned.plan->schedule.unit);

    wanted.sheet = sheet_for(options.sheet, planned.plan->schedule.unit);
    const std::string height_fault =
        read_plan_height(options.plan_height, planned.plan->schedule, wanted.drawings.plan_height);
    const std::string tile_fault =
        read_tile_scale(options.tile, planned.plan->schedule.unit, wanted.tiled_at);
    if (!tile_fault.empty()) {
        print_error(console, tile_fault);
        return ExitCode::wrong_input;
    }
    if (!height_fault.empty()) {
        print_error(console, height_fault);
        return ExitCode::wrong_input;
    }

    Package package;
    {
        Progress progress(console);
        package =
            make_package(*planned.plan, wanted, [&](int done, int of, const std::string& what) {
                progress.show(done, of, what);
            });
    }
    if (!package.faults.empty()) {
        for (const SolidFault& solid : package.faults) {
            print_error(console, "cannot mesh " + solid.first +
                                     (solid.second.empty() ? "" : " with " + solid.second) + ": " +
                                     solid.message);
        }
        console.err << "Nothing is written.\n";
        return ExitCode::wrong_input;
    }
    const WriteResult result = write_files(options.out, package.files);
    if (!result.ok()) {
        print_error(console, result.fault);
        return ExitCode::no_access;
    }
    for (const Fitted& fitted : planned.plan->schedule.fitted) {
        console.out << wrapped("Fitted: " + fitted.text, "");
    }
    console.out << "Written into " << printable(options.out) << ":\n";
    for (const OutputFile& file : package.files) {
        console.out << "  " << file.path << '\n';
    }
    print_failing_checks(wanted.checked.get().findings, options.file, console);
    return ExitCode::done;
}

} // namespace

void add_build_command(CLI::App& program, Action& chosen) {
    const auto options = std::make_shared<Options>();
    CLI::App* command = program.add_subcommand(
        "build",
        "Write the package: crew book, drawings, models, schedule, checks, take-off, templates");
    command->footer(footer);
    command->add_option("FILE", options->file, "Design file, or - for standard input")
        ->required()
        ->type_name("");
    command->add_option("--out", options->out, "Directory to write into, made if missing")
        ->required()
        ->type_name("DIR");
    command->add_option("--only", options->only, "Write these parts only (see below)")
        ->delimiter(',')
        ->allow_extra_args(false)
        ->type_name("NAME,...");
    command
        ->add_option("--works", options->works,
                     "Works file of the take-off; NAME.works beside FILE if not given")
        ->type_name("FILE");
    command
        ->add_option("--paper", options->paper,
                     "letter or a4; if not given, letter for designs in feet, else a4")
        ->transform(CLI::IsMember({"letter", "a4"}, CLI::ignore_case).description(""))
        ->type_name("SIZE");
    std::vector<std::string> sheets;
    for (const PaperSize& size : drawing_papers()) {
        sheets.push_back(size.name);
    }
    command
        ->add_option("--sheet", options->sheet,
                     "Of drawings and forms: a4 to a1, letter, tabloid, arch-a to arch-d")
        ->transform(CLI::IsMember(sheets, CLI::ignore_case).description(""))
        ->type_name("SIZE");
    command
        ->add_option("--plan-height", options->plan_height,
                     "Where the floor plan is cut; if not given, 4 ft above the floor")
        ->type_name("LENGTH");
    command
        ->add_option("--section-bearing", options->section_bearing,
                     "Bearing of section A; if not given, that of the main door")
        ->check(CLI::Range(-360.0, 360.0).description(""))
        ->type_name("DEGREES");
    command
        ->add_option("--tile", options->tile,
                     "Draw plans, sections and elevations at this scale, as tiles to be joined")
        ->type_name("1:N");
    command
        ->add_option("--view-bearing", options->view_bearing,
                     "Bearing that pictures/view.png is seen from; else from beside the door")
        ->check(CLI::Range(-360.0, 360.0).description(""))
        ->type_name("DEGREES");
    command
        ->add_option("--kerf", options->kerf,
                     "Width of the cut that forms.dxf is for: its outlines lie half of it outside")
        ->type_name("LENGTH");
    command
        ->add_option("--tolerance", options->tolerance,
                     "Greatest distance of the models' facets from the true surface")
        ->capture_default_str()
        ->type_name("LENGTH");
    command->add_option("--formats", options->formats, "Formats of the models (see below)")
        ->delimiter(',')
        ->allow_extra_args(false)
        ->type_name("NAME,...");
    command
        ->add_option("--unit", options->unit,
                     "m, cm, mm, ft or in: unit of the models whose format leaves it open")
        ->check(CLI::IsMember({"m", "cm", "mm", "ft", "in"}).description(""))
        ->type_name("UNIT");
    command->add_flag("--y-up", options->y_up, "Turn the models whose format leaves it open +Y up");
    command->add_flag("--ifc2x3", options->ifc2x3, "IFC2x3 for older readers, not IFC4");
    command->add_flag("--remedies", options->remedies,
                      "Tell in part checks the smallest change that mends what does not hold");
    command->callback([options, &chosen] {
        chosen = [options](Console& console) { return run(*options, console); };
    });
}

} // namespace coilwright
