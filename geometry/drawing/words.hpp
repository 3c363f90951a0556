// The sentences that stand on every sheet, or on every sheet of a kind.
#pragma once

#include "geometry/drawing/course_part.hpp"

#include <string>
#include <vector>

namespace coilwright::words {

std::string caution();
std::string print_at_full_size();
/// Rules for a ring above the springline, a curb or a cap: what must be true before the crew stops.
std::vector<std::string> hold_points(const Ring& ring);
/// Of a tunnel whose form carries the course, or whose crown is laid; none where its walls are
/// plumb.
std::vector<std::string> tunnel_hold_points(const CoursePart& part);
/// What the plan of a tunnel shows and from where its table counts.
std::string tunnel_legend(const BuildingPlan& plan, const TunnelForm& tunnel,
                          const std::string& scale);
/// What the datum line and the datum mark are, and what left and right mean.
std::vector<std::string> datum(const BuildingPlan& plan, const DomeForm& dome);
/// How to set the compass: tamped face, tamping gap, what a course that comes out high asks for.
std::vector<std::string> compass(const BuildingPlan& plan, const DomeForm& dome);
/// Where heights are measured from.
std::vector<std::string> bench_mark(const BuildingPlan& plan);
/// The pole: set, guyed, checked, taken out.
std::vector<std::string> pole(const BuildingPlan& plan, const DomeForm& dome);
/// How tubes are cut and laid in bond.
std::vector<std::string> tubes(const BuildingPlan& plan);
/// One sentence: what the dome is.
std::string dome_in_a_sentence(const BuildingPlan& plan, const DomeForm& dome);

} // namespace coilwright::words
