#include "cli/package.hpp"

#include "cli/drawn_parts.hpp"
#include "exporters/context_obj.hpp"
#include "exporters/model_tree.hpp"
#include "exporters/pdf.hpp"
#include "exporters/schedule_csv.hpp"
#include "exporters/schedule_json.hpp"
#include "exporters/schedule_xlsx.hpp"
#include "exporters/take_off_json.hpp"
#include "exporters/take_off_xlsx.hpp"
#include "geometry/drawing/crew_book.hpp"
#include "geometry/report/engineer_report.hpp"
#include "geometry/report/owner_report.hpp"
#include "geometry/report/site_log.hpp"
#include "geometry/views/drawing_set.hpp"

#include <algorithm>
#include <future>
#include <iterator>

namespace coilwright {

namespace {

/// One piece of work; pieces do not share anything that changes.
struct WorkPiece {
    std::string what; // for the progress line
    std::function<Package()> make;
};

Package crew_sheets(const BuildingPlan& plan, const PaperSize& paper,
                    const std::vector<Finding>& findings) {
    const MeasureText measure = pango_measure();
    const std::string& name = plan.schedule.name;
    return {{{"crew-book.pdf", pdf_bytes(crew_book(plan, paper, measure, findings), name)},
             {"compass-strip.pdf", pdf_bytes(compass_strip(plan, paper, measure), name)}},
            {}};
}

Package model_files(const SolidResult& result, const std::string& stem,
                    const PackageOptions& options) {
    Package files{{}, result.faults};
    if (!files.faults.empty()) {
        return files;
    }
    SolidModel whole = result.model;
    for (const ContextPart& part : options.context) {
        add_context(whole, part.object, part.mesh);
    }
    const SolidModel printed = printed_model(whole);
    for (const std::string& name : options.formats) {
        const ModelFormat* format = find_model_format(name);
        if (!format) {
            continue; // IFC is no format of a model alone
        }
        std::vector<OutputFile> written =
            format->write(format->solids_only ? printed : whole, stem, options.models);
        std::move(written.begin(), written.end(), std::back_inserter(files.files));
    }
    return files;
}

Package course_files(const BuildingPlan& plan, const PackageOptions& options) {
    const SolidResult courses = courses_model(plan.schedule, options.tolerance);
    Package files = model_files(courses, "courses", options);
    const bool wants_ifc =
        std::find(options.formats.begin(), options.formats.end(), "ifc") != options.formats.end();
    if (wants_ifc && files.faults.empty()) {
        files.files.push_back({"building.ifc", ifc_text(plan, courses.model, options.ifc)});
    }
    return files;
}

Package take_off_files(const BuildingPlan& plan, const WorkedOut& out, const PaperSize& paper) {
    return {{{"take-off.pdf", pdf_bytes(owner_report(plan, out, paper, pango_measure()),
                                        plan.schedule.name)},
             {"site-log.pdf",
              pdf_bytes(site_log(plan, out, paper, pango_measure()), plan.schedule.name)},
             {"take-off.json", take_off_json(out.take, out.costs, out.days)},
             {"take-off.csv", take_off_csv(out.take, out.costs)},
             {"take-off.xlsx", take_off_xlsx(out.take, out.costs, out.days)}},
            {}};
}

/// The walls alone, as the drawings show them.
Package drawings_of_shell(const BuildingPlan& plan, const PackageOptions& options) {
    const SolidResult shell = shell_model(plan.schedule, options.tolerance);
    if (!shell.faults.empty()) {
        return {{}, shell.faults};
    }
    return drawing_files(plan, options, whole_shell(shell.model));
}

/// All work for the parts asked for. `plan` and `options` must outlive it.
std::vector<WorkPiece> pieces(const BuildingPlan& plan, const PackageOptions& options) {
    const auto wants = [&](const char* part) {
        return std::find(options.parts.begin(), options.parts.end(), part) != options.parts.end();
    };
    std::vector<WorkPiece> work;
    if (wants("crew-book")) {
        work.push_back(
            {"crew book", [&] { return crew_sheets(plan, options.paper, options.findings); }});
    }
    if (wants("drawings")) {
        work.push_back({"drawings", [&] { return drawings_of_shell(plan, options); }});
        work.push_back({"picture", [&] { return shaded_files(plan, options); }});
    }
    if (wants("models")) {
        work.push_back({"shell model", [&] {
                            return model_files(
                                finished_shell_model(plan.schedule, plan.design, options.tolerance),
                                "shell", options);
                        }});
        work.push_back({"courses model", [&] { return course_files(plan, options); }});
    }
    if (wants("schedule")) {
        work.push_back({"schedule", [&]() -> Package {
                            return {{{"schedule.json", schedule_json(plan)},
                                     {"schedule.csv", schedule_csv(plan)},
                                     {"schedule.xlsx", schedule_xlsx(plan)}},
                                    {}};
                        }});
    }
    if (wants("checks")) {
        work.push_back({"checks", [&]() -> Package {
                            return {{{"engineer.pdf",
                                      pdf_bytes(engineer_report(plan, options.findings,
                                                                options.paper, pango_measure()),
                                                plan.schedule.name)},
                                     {"checks.json", findings_json(plan, options.findings)}},
                                    {}};
                        }});
    }
    if (wants("take-off")) {
        work.push_back({"take-off", [&] { return take_off_files(plan, *options.worked_out, options.paper); }});
    }
    if (wants("templates")) {
        work.push_back({"templates", [&] { return template_files(plan, options); }});
    }
    return work;
}

} // namespace

const std::vector<std::string>& package_parts() {
    static const std::vector<std::string> parts{"crew-book", "drawings", "models",   "schedule",
                                                "checks",    "take-off", "templates"};
    return parts;
}

const std::vector<std::string>& model_words() {
    static const std::vector<std::string> words = [] {
        std::vector<std::string> names;
        for (const ModelFormat& format : model_formats()) {
            names.push_back(format.name);
        }
        names.emplace_back("ifc");
        return names;
    }();
    return words;
}

Package make_package(const BuildingPlan& plan, const PackageOptions& options,
                     const TellProgress& tell) {
    const std::vector<WorkPiece> work = pieces(plan, options);
    std::vector<std::future<Package>> made;
    made.reserve(work.size());
    for (const WorkPiece& piece : work) {
        made.push_back(std::async(std::launch::async, piece.make));
    }
    Package package;
    for (std::size_t i = 0; i < work.size(); ++i) {
        tell(static_cast<int>(i), static_cast<int>(work.size()), work[i].what);
        Package part = made[i].get();
        std::move(part.files.begin(), part.files.end(), std::back_inserter(package.files));
        std::move(part.faults.begin(), part.faults.end(), std::back_inserter(package.faults));
    }
    return package;
}

} // namespace coilwright
