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

/// A line of thrust and the friction of the joints that it was found with: the design's; the least
/// with which one stands, where that is more; unlimited (and no line) where none stands with any.
struct LineAtFriction {
    ThrustLine line;
    double friction = unlimited;
};

struct DomeAnalysis {
    DomeStatics statics;
    // By strip, at the friction of the joints; where no line stands so, at the least with which one
    // does.
    std::vector<LeastPressure> pressures;
    std::vector<LeastPressure> ground_pressures; // under course 1 alone
    std::vector<double> frictions; // by strip: of these; unlimited where no line stands with any
    LineAtFriction springline;     // of least thrust there, clear of openings
    int springline_course = 1;     // the course over that joint
    std::vector<CourseMembrane> membrane; // ring courses above the springline
    // By id of an opening or tunnel: the course after which its form may be struck.
    std::map<std::string, int> forms_until;
    std::vector<double> levers; // of a free cantilever while it is built, by ring course, m
    double sway = 0; // g that the slice of parallel sides without rings bears, friction left out
    double wind = 0; // Pa, the same
};

/// springline_thrust with joints that carry shear up to [joint] friction; where no line stands so,
/// up to the least with which one does.
LineAtFriction thrust_at_friction(const Design& design, const std::vector<WallCourse>& courses,
                                  const DomeForm& dome, DomeSlice what = {});

struct TunnelAnalysis {
    std::string tunnel;
    std::vector<WallCourse> courses;
    CentredThrust centred; // of the finished vault with its walls, as much friction as it wants
    LeastFriction friction;
    // By the thrust on the ground, at the friction of the joints; where no line stands so, at the
    // least with which one does.
    ThrustLine least, greatest;
    double line_friction = unlimited; // of these two
    std::vector<double> levers;       // while it is built, without a form
    double sway = 0;                  // g that vault and walls bear as one arch, friction left out
    double wind = 0;                  // Pa on one side, the same
    bool laid = false;                // false: a course finds nothing to lie on; all else is empty
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

/// A strip in which no line of thrust stands at the friction of the joints.
struct SlidingStrip {
    std::string where;           // "beside 'door'"; empty: of the whole
    double friction = unlimited; // the least with which one does; unlimited: with none
};
/// Less friction makes no verdict better: where a strip slides a check that holds is not judged,
/// and says why. `worst`: whether the value told is of one of these strips and rests on the
/// friction of the joints alone.
void leave_sliding(Finding& finding, const Design& design, const std::vector<SlidingStrip>& strips,
                   bool worst = true);
/// Leaves out of a finding the pressure in a strip that slides: the only line that its least
/// friction allows runs along the edges of joints, and the pressure there tells nothing. `by`: "The
/// ground under 'hall' beside 'door'". Before leave_sliding().
void leave_edge_pressure(Finding& finding, const std::string& by);
/// "clear of all openings", "beside 'door'".
std::string strip_words(const std::string& beside);

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
                          const AnalysisParts& parts = {}, const DomeLoads& loads = {});
TunnelAnalysis analyse_tunnel(const Design& design, const TunnelForm& tunnel,
                              const DomeLoads& loads = {});

} // namespace coilwright
