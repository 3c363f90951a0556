// What statics finds of tunnels, buttresses, lintels and the heads of openings.
#pragma once

#include "geometry/checks/building_statics.hpp"
#include "geometry/statics/lintel_beam.hpp"

#include <vector>

namespace coilwright {

/// `tunnel-safety`, `tunnel-corbel` (the form carries the courses), `tunnel-sliding` (in the joints
/// of vault and walls) and `tunnel-abutment` (of the walls on the ground).
std::vector<Finding> tunnel_findings(const Design& design, const TunnelForm& tunnel,
                                     const TunnelAnalysis& analysis);

/// The joint under a course of a tunnel along its most centred line of thrust: N/m and Pa.
struct TunnelPressure {
    int course = 0;
    double normal = 0, pressure = 0;
    double strength = 0; // of the weaker of the two fills; under course 1 of its own
};
/// Of the courses of one side up to the first of the crown, from the bottom up; empty where there
/// is no line. By the safe theorem no wall needs more than the worst of them. 30 kN/m on a flat of
/// 0.25 m, 0.05 m off its middle: 200 kPa (Meyerhof 1953).
std::vector<TunnelPressure> tunnel_pressures(const TunnelAnalysis& analysis);

/// `tunnel-crushing` and `tunnel-ground`; none where the line leaves a joint.
std::vector<Finding> tunnel_pressure_findings(const Design& design, const TunnelForm& tunnel,
                                              const TunnelAnalysis& analysis);

/// A wall that stands free, per metre of its length: its lowest flat, its height and its weight.
struct FreeWall {
    double contact = 0, height = 0, weight = 0; // m, m, N/m
};
/// The end wall of a tunnel from the lowest course that lies on or over the ground, whole as if it
/// had no opening and as wide as the tunnel's tube. Of a tunnel 2 m high over the ground, tubes of
/// 0.38 m in courses of 0.125 m at 1762 kg/m3: 0.255 m, 2 m, 13.1 kN/m less the round sides.
FreeWall end_wall_of(const Design& design, const TunnelForm& tunnel);

/// `tunnel-earthquake` and `tunnel-wind` of the vault with its walls; `end-wall-earthquake` and
/// `end-wall-wind` of an end wall, as if it stood free. Precondition: analysis.laid.
std::vector<Finding> tunnel_sideways_findings(const Design& design, const TunnelForm& tunnel,
                                              const TunnelAnalysis& analysis);

/// `buttress-sliding` and `buttress-overturning` of each pier under the thrust of its part of the
/// circle: its own width, and half of an opening or tunnel that starts within a tube's width of it.
std::vector<Finding> buttress_findings(const Design& design, const BuildingForm& building,
                                       const DomeForm& dome, const DomeAnalysis& analysis);

/// A lintel as it is laid, as a beam.
struct LaidLintel {
    Lintel lintel;
    LintelBeam beam;
    LintelForces forces;
};
/// All whose beam has a span, a section and something to bear on, in the schedule's order.
std::vector<LaidLintel> laid_lintels(const BuildingPlan& plan);

/// `lintel-bending` and `lintel-bearing` of each lintel, `fan-head` of each head laid as a fan.
std::vector<Finding> opening_findings(const BuildingPlan& plan);

/// `open-plan-rings` of each join that keeps no wall: never judged, with what is missing of both
/// domes' rings.
std::vector<Finding> open_plan_findings(const BuildingPlan& plan);

} // namespace coilwright
