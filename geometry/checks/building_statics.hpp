// All that limit analysis works out of a building: what the findings and the engineer's report say.
#pragma once

#include "geometry/plan/plan_building.hpp"
#include "geometry/statics/corbel.hpp"
#include "geometry/statics/dome_statics.hpp"
#include "geometry/statics/least_pressure.hpp"
#include "geometry/statics/membrane.hpp"

#include <map>
#include <string>
#include <vector>

namespace coilwright {

struct DomeAnalysis {
    DomeStatics statics;
    // By strip, at the friction of the joints; as much as they want where no line stands so.
    std::vector<LeastPressure> pressures;
    std::vector<LeastPressure> ground_pressures; // under course 1 alone
    ThrustLine springline; // of least thrust there, clear of openings; empty where there is none
    int springline_course = 1;            // the course over that joint
    std::vector<CourseMembrane> membrane; // ring courses above the springline
    // By id of an opening or tunnel: the course after which its form may be struck.
    std::map<std::string, int> forms_until;
    std::vector<double> levers; // of a free cantilever while it is built, by ring course, m
    double sway = 0; // g that the slice of parallel sides without rings bears, friction left out
    double wind = 0; // Pa, the same
};

/// springline_thrust with joints that carry shear up to [joint] friction; as much as they want
/// where no line stands so.
ThrustLine thrust_at_friction(const Design& design, const std::vector<WallCourse>& courses,
                              const DomeForm& dome, DomeSlice what = {});

struct TunnelAnalysis {
    std::string tunnel;
    std::vector<WallCourse> courses;
    CentredThrust centred; // of the finished vault with its walls, as much friction as it wants
    LeastFriction friction;
    ThrustLine least, greatest; // by the thrust on the ground, as much friction as it wants
    std::vector<double> levers; // while it is built, without a form
    double sway = 0;            // g that vault and walls bear as one arch, friction left out
    double wind = 0;            // Pa on one side, the same
    bool laid = false;          // false: a course finds nothing to lie on; all else is empty
};

struct BuildingStatics {
    std::vector<DomeAnalysis> domes; // as in the schedule's building
    std::vector<TunnelAnalysis> tunnels;
};

/// Other domes that take wall out of the rings of one above the floor. Its broken rings lean on
/// theirs, which is not reckoned: such a dome holds a check where it does so without that help, and
/// is else not judged.
std::vector<std::string> joined_domes(const std::vector<WallCourse>& courses);
/// Turns a verdict that does not hold into `not judged` in a joined dome, and says why.
void leave_joined(Finding& finding, const std::vector<std::string>& joined);

/// What of a dome is worked out.
struct AnalysisParts {
    StripParts strips;
    bool pressures = true, ground_pressures = true, springline = true;
    bool membrane = true, levers = true, sideways = true;
};
/// What findings ask for: no lines or forces that the report draws.
AnalysisParts parts_of_findings();

/// Under its own weight with plaster, and a bank where the design says enough of it. About 30 ms a
/// dome with four openings. Precondition: plan.sound().
BuildingStatics building_statics(const BuildingPlan& plan);
/// `parts`: what is asked for; the rest stays empty.
DomeAnalysis analyse_dome(const Design& design, const BuildingForm& building, const DomeForm& dome,
                          const AnalysisParts& parts = {});
TunnelAnalysis analyse_tunnel(const Design& design, const TunnelForm& tunnel);

} // namespace coilwright
