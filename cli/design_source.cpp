#include "cli/design_source.hpp"

#include "exporters/context_obj.hpp"
#include "exporters/fault_text.hpp"
#include "exporters/schedule_json.hpp"
#include "geometry/checks/find_changes.hpp"
#include "geometry/design/read_design.hpp"
#include "geometry/exact/exact_region.hpp"
#include "geometry/plan/context_fit.hpp"

#include <algorithm>
#include <cerrno>
#include <filesystem>
#include <fstream>
#include <istream>
#include <ostream>
#include <system_error>
#include <thread>

namespace coilwright {

namespace {

/// Appends at most one block more than a file may have.
void read_bounded(std::istream& in, std::string& text, std::size_t most = most_design_bytes) {
    char block[1 << 14];
    while (text.size() <= most && in) {
        in.read(block, sizeof block);
        text.append(block, static_cast<std::size_t>(in.gcount()));
    }
}

/// Why a path cannot be read as a design; empty where it can.
std::string fault_of_path(const std::string& file) {
    std::error_code error;
    const std::filesystem::file_status status = std::filesystem::status(file, error);
    if (status.type() == std::filesystem::file_type::not_found) {
        return "there is no file \"" + file + "\"";
    }
    if (error) {
        return cannot("read \"" + file + "\"", error.value());
    }
    if (status.type() == std::filesystem::file_type::directory) {
        return "\"" + file + "\" is a directory; name a design file in it";
    }
    if (status.type() != std::filesystem::file_type::regular) {
        return "\"" + file + "\" is not a regular file; pipe it in and give - as FILE";
    }
    return {};
}

void print_diagnostics(const BuildingPlan& plan, const DesignSource& source, Console& console) {
    for (const Diagnostic& diagnostic : plan.diagnostics) {
        const std::string text = printable(diagnostic_text(diagnostic, source.name, source.text));
        const std::size_t first = std::min(text.find('\n'), text.size());
        console.err << painted(text.substr(0, first), Colour::bold, console.colour_err)
                    << text.substr(first) << "\n\n";
    }
    const std::size_t count = plan.diagnostics.size();
    console.err << count << (count == 1 ? " fault" : " faults")
                << " in the design; nothing is written.\n";
}

/// The text of an OBJ file; `fault` says why there is none.
std::string context_text(const std::filesystem::path& path, std::string& fault) {
    fault = fault_of_path(path.string());
    if (!fault.empty()) {
        return {};
    }
    std::ifstream stream(path, std::ios::binary);
    if (!stream) {
        fault = cannot("read \"" + path.string() + "\"", errno);
        return {};
    }
    std::string text;
    read_bounded(stream, text, most_context_bytes);
    if (text.size() > most_context_bytes) {
        fault = "\"" + path.string() + "\" holds more than 64 MiB";
    }
    return text;
}

/// Reads what [context.NAME] names; every file that cannot be read is told, and then there is no
/// plan.
void read_context(const std::string& file, PlannedFile& planned, Console& console) {
    const std::filesystem::path folder =
        file == "-" ? std::filesystem::path() : std::filesystem::path(file).parent_path();
    std::vector<PlacedObject> placed;
    for (const ContextObject& object : planned.plan->design.context) {
        const std::filesystem::path path = folder / object.file;
        std::string fault;
        const std::string text = context_text(path, fault);
        if (!fault.empty()) {
            print_error(console, "context." + object.id + ": " + fault);
            planned.code = ExitCode::no_access;
            continue;
        }
        const ContextShape shape = read_context_obj(text);
        if (!shape.ok()) {
            print_error(console,
                        path.string() +
                            (shape.line > 0 ? ":" + std::to_string(shape.line) : std::string()) +
                            ": " + shape.fault + " (context." + object.id + ")");
            if (planned.code == ExitCode::done) {
                planned.code = ExitCode::wrong_input;
            }
            continue;
        }
        planned.context.push_back({object, placed_mesh(shape.mesh, object)});
        placed.push_back({object.id, object.place, planned.context.back().mesh.vertices});
    }
    if (planned.code != ExitCode::done) {
        planned.plan.reset();
        return;
    }
    std::vector<Finding>& findings = planned.plan->findings;
    for (Finding& finding : context_findings(placed, planned.plan->schedule,
                                             planned.plan->design.finish.inside_plaster)) {
        findings.push_back(std::move(finding));
    }
    put_worst_first(findings);
}

} // namespace

DesignSource read_source(const std::string& file, std::istream& in) {
    DesignSource source;
    if (file == "-") {
        source.name = "standard input";
        read_bounded(in, source.text);
        if (in.bad()) {
            source.fault = "cannot read standard input";
        }
    } else {
        source.name = file;
        source.fault = fault_of_path(file);
        if (!source.fault.empty()) {
            return source;
        }
        std::ifstream stream(file, std::ios::binary);
        if (!stream) {
            source.fault = cannot("read \"" + file + "\"", errno);
            return source;
        }
        read_bounded(stream, source.text);
        if (stream.bad()) {
            source.fault = "cannot read \"" + file + "\"";
        }
    }
    if (source.text.size() > most_design_bytes) {
        source.text.clear();
        source.fault = source.name + " holds more than 1 MiB; a design is a few kilobytes of text";
    }
    return source;
}

PlannedFile plan_file(const std::string& file, FaultsAs faults, Console& console) {
    const DesignSource source = read_source(file, console.in);
    if (!source.fault.empty()) {
        print_error(console, source.fault);
        return {std::nullopt, {}, ExitCode::no_access};
    }
    DesignReading reading = read_design(source.text);
    BuildingPlan plan =
        plan_building(std::move(reading.design), std::move(reading.diagnostics), exact_region);
    if (!plan.sound()) {
        if (faults == FaultsAs::json) {
            console.out << diagnostics_json(plan.diagnostics, source.name);
        } else {
            print_diagnostics(plan, source, console);
        }
        return {std::nullopt, {}, ExitCode::wrong_input};
    }
    PlannedFile planned{std::move(plan), {}, ExitCode::done};
    read_context(file, planned, console);
    return planned;
}

std::vector<SoughtChanges> seek_changes(const BuildingPlan& plan,
                                        const std::vector<Finding>& findings) {
    return find_changes(plan, findings, exact_region,
                        std::max(1U, std::thread::hardware_concurrency()));
}

} // namespace coilwright
