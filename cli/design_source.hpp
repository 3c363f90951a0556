// From the FILE of a command line to a planned building, with everything that can go wrong told.
#pragma once

#include "cli/console.hpp"
#include "cli/exit_code.hpp"
#include "geometry/base/design_change.hpp"
#include "geometry/plan/plan_building.hpp"
#include "geometry/solids/mesh.hpp"

#include <iosfwd>
#include <optional>
#include <string>
#include <vector>

namespace coilwright {

/// A design file is text that a person wrote; larger is a mistake.
inline constexpr std::size_t most_design_bytes = std::size_t{1} << 20;

/// The text of a design, or why it could not be read (one sentence; empty: it was read).
struct DesignSource {
    std::string name; // as diagnostics show it: the path, or "standard input"
    std::string text;
    std::string fault;
};

/// Reads FILE, or `in` for "-". Refuses what is not a regular file, and more than
/// most_design_bytes, without reading further.
DesignSource read_source(const std::string& file, std::istream& in);

/// An object of [context.NAME] where it stands.
struct ContextPart {
    ContextObject object;
    Mesh mesh;
};

/// A planned building, or the exit code of a command that has said why there is none.
struct PlannedFile {
    std::optional<BuildingPlan> plan;
    std::vector<ContextPart> context; // of its [context.NAME], in that order
    ExitCode code = ExitCode::done;
};

/// Where the faults of a design are told: as text on `err`, or as JSON on `out`.
enum class FaultsAs { text, json };

/// Reads, validates, fits and lays the design of FILE. Every fault of it is printed at once. Files
/// of [context.NAME] are read from beside FILE (from the current folder for "-"); how they fit
/// stands among the findings.
PlannedFile plan_file(const std::string& file, FaultsAs faults, Console& console);

/// The changes that mend what does not hold, on all cores (find_changes()).
std::vector<SoughtChanges> seek_changes(const BuildingPlan& plan,
                                        const std::vector<Finding>& findings);

} // namespace coilwright
