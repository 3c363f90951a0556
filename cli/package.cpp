#include "cli/package.hpp"

#include "cli/drawn_parts.hpp"
#include "exporters/context_obj.hpp"
#include "exporters/model_tree.hpp"
#include "exporters/pdf.hpp"
#include "exporters/schedule_csv.hpp"
#include "exporters/schedule_json.hpp"
#include "exporters/schedule_xlsx.hpp"
#include "exporters/statics_json.hpp"
#include "exporters/take_off_json.hpp"
#include "exporters/take_off_xlsx.hpp"
#include "geometry/drawing/crew_book.hpp"
#include "geometry/report/engineer_report.hpp"
#include "geometry/report/owner_report.hpp"
#include "geometry/report/site_log.hpp"
#include "geometry/threads/side_by_side.hpp"
#include "geometry/views/drawing_set.hpp"

#include <algorithm>
#include <future>
#include <iterator>
#include <optional>
#include <utility>

namespace coilwright {

namespace {

/// One piece of work; pieces do not share anything that changes.
struct WorkPiece {
    std::string what; // for the progress line
    std::function<Package()> make;
};

Package crew_sheets(const BuildingPlan& plan, const PackageOptions& options) {
    const AskFindings ask = [&]() -> const std::vector<Finding>& {
        return options.checked.get().findings;
    };
    const MeasureText measure = pango_measure();
    const std::string& name = plan.schedule.name;
    return {{{"crew-book.pdf", pdf_bytes(crew_book(plan, options.paper, measure, ask), name)},
             {"compass-strip.pdf", pdf_bytes(compass_strip(plan, options.paper, measure), name)}},
            {}};
}

/// A model once it is made: what each format takes of it.
struct ReadyModel {
    SolidModel bare;                     // the building alone
    std::optional<SolidModel> furnished; // with what stands about, if anything does
    SolidModel printed;                  // solids alone
    std::vector<SolidFault> faults;      // then there is no model

    const SolidModel& whole() const { return furnished ? *furnished : bare; }
};

ReadyModel ready(SolidResult result, const PackageOptions& options) {
    ReadyModel model{std::move(result.model), std::nullopt, {}, std::move(result.faults)};
    if (!options.context.empty()) {
        model.furnished = model.bare;
        for (const ContextPart& part : options.context) {
            add_context(*model.furnished, part.object, part.mesh);
        }
    }
    model.printed = printed_model(model.whole());
    return model;
}

using Model = std::shared_future<ReadyModel>;

/// A piece of work for each format, and one that tells the faults of the model.
void add_model(std::vector<WorkPiece>& work, const Model& model, const std::string& stem,
               const PackageOptions& options) {
    work.push_back({stem + " model", [model] { return Package{{}, model.get().faults}; }});
    for (const std::string& name : options.formats) {
        const ModelFormat* format = find_model_format(name);
        if (!format) {
            continue; // IFC is no format of a model alone
        }
        work.push_back({stem + " model as " + name, [model, format, stem, &options]() -> Package {
                            if (!model.get().faults.empty()) {
                                return {};
                            }
                            return {format->write(format->solids_only ? model.get().printed
                                                                      : model.get().whole(),
                                                  stem, options.models),
                                    {}};
                        }});
    }
}

Package ifc_file(const BuildingPlan& plan, const Model& courses, const PackageOptions& options) {
    if (!courses.get().faults.empty()) {
        return {};
    }
    return {one_file("building.ifc", ifc_text(plan, courses.get().bare, options.ifc)), {}};
}

Package take_off_files(const BuildingPlan& plan, const WorkedOut& out, const PaperSize& paper) {
    return {{{"take-off.pdf",
              pdf_bytes(owner_report(plan, out, paper, pango_measure()), plan.schedule.name)},
             {"site-log.pdf",
              pdf_bytes(site_log(plan, out, paper, pango_measure()), plan.schedule.name)},
             {"take-off.json", take_off_json(out.take, out.costs, out.days)},
             {"take-off.csv", take_off_csv(out.take, out.costs)},
             {"take-off.xlsx", take_off_xlsx(out.take, out.costs, out.days)}},
            {}};
}

/// All work for the parts asked for. `plan` and `options` must outlive it.
std::vector<WorkPiece> pieces(const BuildingPlan& plan, const PackageOptions& options) {
    const auto wants = [&](const char* part) {
        return std::find(options.parts.begin(), options.parts.end(), part) != options.parts.end();
    };
    std::vector<WorkPiece> work;
    if (wants("crew-book")) {
        work.push_back({"crew book", [&] { return crew_sheets(plan, options); }});
    }
    // The model of the shell has the walls that the drawings show: they are meshed once.
    Model shell, courses;
    if (wants("models") || wants("drawings")) {
        shell =
            std::async(std::launch::async, [&] {
                return ready(finished_shell_model(plan.schedule, plan.design, options.tolerance),
                             options);
            }).share();
    }
    if (wants("models")) {
        courses = std::async(std::launch::async, [&] {
                      return ready(courses_model(plan.schedule, options.tolerance), options);
                  }).share();
    }
    if (wants("drawings")) {
        const bool told_by_models = wants("models");
        work.push_back({"drawings", [&, shell, told_by_models]() -> Package {
                            const ReadyModel& model = shell.get();
                            if (!model.faults.empty()) {
                                return told_by_models ? Package{} : Package{{}, model.faults};
                            }
                            return drawing_files(plan, options,
                                                 whole_shell(printed_model(model.bare)));
                        }});
        work.push_back({"picture", [&, shell]() -> Package {
                            const ReadyModel& model = shell.get();
                            if (!model.faults.empty()) {
                                return {}; // the drawings tell them
                            }
                            return shaded_files(plan, model.bare, options);
                        }});
    }
    if (wants("models")) {
        add_model(work, shell, "shell", options);
        add_model(work, courses, "courses", options);
        if (std::find(options.formats.begin(), options.formats.end(), "ifc") !=
            options.formats.end()) {
            work.push_back({"IFC", [&, courses] { return ifc_file(plan, courses, options); }});
        }
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
        work.push_back(
            {"checks", [&]() -> Package {
                 const CheckedBuilding& checked = options.checked.get();
                 return {{{"engineer.pdf",
                           pdf_bytes(engineer_report(plan, checked, options.paper, pango_measure()),
                                     plan.schedule.name)},
                          {"checks.json", checks_json(plan, checked)}},
                         {}};
             }});
    }
    if (wants("take-off")) {
        work.push_back(
            {"take-off", [&] { return take_off_files(plan, *options.worked_out, options.paper); }});
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
    std::vector<std::packaged_task<Package()>> tasks;
    std::vector<std::future<Package>> made;
    for (const WorkPiece& piece : work) {
        tasks.emplace_back(piece.make);
        made.push_back(tasks.back().get_future());
    }
    // As many at a time as there are processors: what is in work takes memory.
    const std::future<void> all = std::async(std::launch::async, [&] {
        side_by_side(tasks.size(), [&](std::size_t i) { tasks[i](); });
    });
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
