// A changed design, laid, and what single checks say of it: no more is worked out than is asked.
#pragma once

#include "geometry/plan/plan_building.hpp"
#include "geometry/statics/dome_slice.hpp"

#include <map>
#include <memory>
#include <mutex>
#include <string>
#include <utility>
#include <vector>

namespace coilwright {

/// The statics of a building, kept to be told again of what a change leaves as it was.
struct CheckedElement {
    std::vector<WallCourse> courses;
    double springline = 0;
    std::vector<Finding> findings;
};
struct CheckedElements {
    std::map<std::string, CheckedElement> domes, tunnels;
};
CheckedElements checked_elements(const BuildingPlan& plan);

/// What works a finding out.
enum class Judge {
    plan, // geometry/plan: shape, joints, headroom
    rooms,
    ways_out,
    passages,
    permit,
    shape,
    ground,
    seismic,
    wall_openings,
    doorways,
    work,
    dome_safety, // of one dome each
    dome_friction,
    dome_corbel,
    dome_crushing,
    dome_stem,
    dome_ground,
    dome_piers, // between openings
    dome_sideways,
    dome_stages,
    piers,  // buttresses
    tunnel, // of one tunnel
    heads
};

/// Thread-safe: what is asked twice is worked out once.
class Trial {
public:
    /// `table`: where the design was changed, "opening.door"; `before`: of the design as it was;
    /// must outlive the trial.
    Trial(Design design, DecideRegion decide, std::string table, const CheckedElements& before);
    ~Trial();

    /// Whether the changed design can be laid; the layout checks alone.
    bool can_be_laid();
    /// All findings of a judge; `element`: the dome or tunnel of those that look at one. None of a
    /// design that cannot be laid.
    const std::vector<Finding>& findings(Judge judge, const std::string& element);
    /// All findings of all checks.
    const std::vector<Finding>& all();

private:
    std::mutex mutex_;
    Design design_;
    DecideRegion decide_;
    std::string table_;
    const CheckedElements& before_;
    std::unique_ptr<bool> lies_;
    std::unique_ptr<BuildingPlan> plan_;
    std::map<std::pair<Judge, std::string>, std::vector<Finding>> found_;
    std::unique_ptr<std::vector<Finding>> all_;

    bool lies();
    const BuildingPlan& plan();
    bool is_local() const;
    std::vector<Finding> checked_dome(const DomeForm& dome);
    std::vector<Finding> checked_tunnel(const TunnelForm& tunnel);
    std::vector<Finding> judged(Judge judge, const std::string& element);
    std::vector<Finding> judged_dome(Judge judge, const DomeForm& dome, const DomeLoads& loads);
};

} // namespace coilwright
