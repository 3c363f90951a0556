#include "cli/commands.hpp"

#include "cli/design_source.hpp"
#include "cli/findings_text.hpp"
#include "exporters/schedule_json.hpp"
#include "exporters/schedule_table.hpp"
#include "geometry/base/length.hpp"
#include "geometry/checks/check_building.hpp"
#include "geometry/checks/find_changes.hpp"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <memory>
#include <ostream>

namespace coilwright {

namespace {

constexpr const char* footer = "Examples:\n"
                               "  coilwright check models/grain-store.toml\n"
                               "  coilwright check models/grain-store.toml --long\n"
                               "  coilwright check models/grain-store.toml --json\n"
                               "  coilwright check models/retreat.toml --remedies\n"
                               "  cat models/washroom.toml | coilwright check -\n"
                               "\nEnds with 1 when a check fails, with 2 when the design is wrong.";

struct Options {
    std::string file;
    bool json = false;
    bool remedies = false;
    bool is_long = false;
};

void print_headroom(const Headroom& room, DisplayUnit unit, Console& console) {
    console.out << "  " << room.dome << ": " << length_text(room.at_pole, unit)
                << " beside the pole, clear floor " << area_text(room.floor_area, unit) << '\n';
    for (const HeadroomRow& row : room.rows) {
        console.out << "    " << length_text(row.height, unit) << " clear over "
                    << area_text(row.area, unit) << ", to " << length_text(row.radius, unit)
                    << " from the pole, over a square of " << length_text(row.square, unit) << '\n';
    }
}

void print_headroom(const TunnelHeadroom& room, DisplayUnit unit, Console& console) {
    console.out << "  " << room.tunnel << ": " << length_text(room.at_middle, unit)
                << " over its middle, " << length_text(room.width, unit) << " wide and "
                << length_text(room.length, unit) << " long, clear floor "
                << area_text(room.floor_area, unit) << '\n';
    for (const TunnelHeadroomRow& row : room.rows) {
        console.out << "    " << length_text(row.height, unit) << " clear over "
                    << area_text(row.area, unit) << ", a width of " << length_text(row.width, unit)
                    << '\n';
    }
}

void print_plan(const BuildingPlan& plan, const std::vector<Finding>& findings,
                const std::vector<SoughtChanges>& changes, bool is_long, Console& console) {
    const Schedule& schedule = plan.schedule;
    console.out << printable(schedule.name) << ": " << schedule.totals.courses << " courses of "
                << length_text(schedule.course_height, schedule.unit) << '\n';
    for (const Fitted& fitted : schedule.fitted) {
        console.out << wrapped("Fitted: " + fitted.text, "  ");
    }
    console.out << "\nHeadroom after plaster\n";
    for (const Headroom& room : plan.headroom) {
        print_headroom(room, schedule.unit, console);
    }
    for (const TunnelHeadroom& room : plan.tunnel_headroom) {
        print_headroom(room, schedule.unit, console);
    }
    console.out << "\nOn the ground\n" << ground_text(schedule, "  ");
    console.out << "\nFindings, worst first\n";
    if (is_long) {
        print_findings(findings, changes, schedule.unit, console);
    } else {
        print_short_findings(findings, changes, schedule.unit, console);
    }
    const auto count = [&](Verdict verdict) {
        return std::count_if(findings.begin(), findings.end(),
                             [&](const Finding& f) { return f.verdict == verdict; });
    };
    console.out << "\nChecks: " << count(Verdict::fails) << " fail, " << count(Verdict::holds)
                << " hold, " << count(Verdict::not_judged) << " not judged; "
                << count(Verdict::advice) << " advice.\n"
                << wrapped(checks_caution(), "");
}

ExitCode run(const Options& options, Console& console) {
    const PlannedFile planned =
        plan_file(options.file, options.json ? FaultsAs::json : FaultsAs::text, console);
    if (!planned.plan) {
        return planned.code;
    }
    const std::vector<Finding> findings = all_findings(*planned.plan);
    const std::vector<SoughtChanges> changes =
        options.remedies ? seek_changes(*planned.plan, findings) : std::vector<SoughtChanges>{};
    if (options.json) {
        console.out << findings_json(*planned.plan, findings, changes);
    } else {
        print_plan(*planned.plan, findings, changes, options.is_long, console);
    }
    const bool failing = std::any_of(findings.begin(), findings.end(), [](const Finding& finding) {
        return finding.verdict == Verdict::fails;
    });
    return failing ? ExitCode::checks_failed : ExitCode::done;
}

} // namespace

void add_check_command(CLI::App& program, Action& chosen) {
    const auto options = std::make_shared<Options>();
    CLI::App* command =
        program.add_subcommand("check", "Find faults of a design, check it, show its headroom");
    command->footer(footer);
    command->add_option("FILE", options->file, "Design file, or - for standard input")
        ->required()
        ->type_name("");
    command->add_flag("--json", options->json, "Print faults or findings as JSON");
    command->add_flag("--long", options->is_long, "Print every finding whole, with its source");
    command->add_flag("--remedies", options->remedies,
                      "Find for each check that does not hold the smallest change that mends it");
    command->callback([options, &chosen] {
        chosen = [options](Console& console) { return run(*options, console); };
    });
}

} // namespace coilwright
