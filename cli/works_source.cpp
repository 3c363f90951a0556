#include "cli/works_source.hpp"

#include "cli/design_source.hpp"
#include "geometry/design/read_works.hpp"
#include "geometry/exact/exact_region.hpp"

#include <filesystem>
#include <ostream>

namespace coilwright {

namespace {

void print_all(const std::vector<Diagnostic>& diagnostics, const std::string& name,
               const std::string& text, Console& console) {
    for (const Diagnostic& diagnostic : diagnostics) {
        console.err << printable(diagnostic_text(diagnostic, name, text)) << "\n\n";
    }
    console.err << diagnostics.size() << (diagnostics.size() == 1 ? " fault" : " faults") << " in "
                << printable(name) << "; nothing is written.\n";
}

} // namespace

WorksFile read_works_file(const std::string& works, const std::string& design, Console& console) {
    std::string path = works;
    if (path.empty()) {
        if (design == "-") {
            return {default_works(), {}, {}, ExitCode::done};
        }
        path = std::filesystem::path(design).replace_extension(".works").string();
        std::error_code error;
        if (!std::filesystem::exists(path, error)) {
            return {default_works(), {}, {}, ExitCode::done};
        }
    }
    const DesignSource source = read_source(path, console.in);
    if (!source.fault.empty()) {
        print_error(console, source.fault);
        return {std::nullopt, {}, {}, ExitCode::no_access};
    }
    WorksReading reading = read_works(source.text);
    if (!reading.diagnostics.empty()) {
        print_all(reading.diagnostics, source.name, source.text, console);
        return {std::nullopt, {}, {}, ExitCode::wrong_input};
    }
    return {std::move(reading.works), source.name, source.text, ExitCode::done};
}

bool prices_fit(const Design& design, const WorksFile& file, Console& console) {
    const std::vector<Diagnostic> faults = faults_of_tube_prices(design, *file.works);
    if (!faults.empty()) {
        print_all(faults, file.name, file.text, console);
    }
    return faults.empty();
}

std::optional<WorkedOut> work_out(const BuildingPlan& plan, const WorksFile& file,
                                  const std::string& design, Console& console) {
    WorkedOut out = work_everything_out(plan, *file.works, exact_region);
    if (!out.take.diagnostics.empty()) {
        // The place is one in the design, which may have been standard input.
        const DesignSource source = design == "-" ? DesignSource{"standard input", {}, {}}
                                                  : read_source(design, console.in);
        print_all(out.take.diagnostics, source.name, source.text, console);
        return std::nullopt;
    }
    if (!out.costs.diagnostics.empty()) {
        print_all(out.costs.diagnostics, file.name, file.text, console);
        return std::nullopt;
    }
    return out;
}

} // namespace coilwright
