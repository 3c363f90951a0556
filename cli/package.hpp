// The package of a building: its files by part.
#pragma once

#include "cli/design_source.hpp"
#include "cli/works_source.hpp"
#include "exporters/files.hpp"
#include "exporters/ifc.hpp"
#include "exporters/model_formats.hpp"
#include "geometry/checks/check_building.hpp"
#include "geometry/drawing/paper.hpp"
#include "geometry/plan/plan_building.hpp"
#include "geometry/solids/solid_model.hpp"
#include "geometry/views/drawing_set.hpp"

#include <functional>
#include <future>
#include <string>
#include <vector>

namespace coilwright {

struct PackageOptions {
    std::vector<std::string> parts; // words of package_parts()
    PaperSize paper;
    PaperSize sheet; // of the drawings
    DrawingOptions drawings;
    std::optional<Scale> tiled_at;       // drawings at this scale, on as many sheets as it takes
    std::optional<Bearing> view_bearing; // of the shaded picture; default: beside the main door
    double kerf = 0;                     // of the cutter that forms.dxf is for, metres
    double tolerance = default_tolerance;
    std::vector<std::string> formats; // words of model_words()
    ModelOptions models;
    IfcSchema ifc = IfcSchema::ifc4;
    // What the parts "crew-book" and "checks" tell; must be there for them, may still be worked
    // out.
    std::shared_future<CheckedBuilding> checked;
    std::vector<ContextPart> context;    // what stands about, read and placed
    std::optional<WorkedOut> worked_out; // must be there for the part "take-off"
};

/// Every word that `--only` takes, in the order in which parts are told.
const std::vector<std::string>& package_parts();

/// Every word that `--formats` takes: the names of model_formats(), and "ifc".
const std::vector<std::string>& model_words();

struct Package {
    std::vector<OutputFile> files;  // by part, in the order of package_parts()
    std::vector<SolidFault> faults; // what could not be meshed; then nothing must be written
};

/// Told on the calling thread as pieces of work are done: how many, and what is waited for.
using TellProgress = std::function<void(int done, int of, const std::string& what)>;

/// Makes the files of a package in memory, parts side by side on as many threads as serve.
/// The bytes do not depend on the threads. Precondition: plan.sound().
Package make_package(const BuildingPlan& plan, const PackageOptions& options,
                     const TellProgress& tell);

} // namespace coilwright
