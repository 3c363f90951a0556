// What the details share.
#pragma once

#include "geometry/views/plan_parts.hpp"

namespace coilwright {

View start_detail(const std::string& id, const std::string& title);

/// The ring of a dome in course n that is not of a second wythe; nullptr where there is none.
const Ring* first_ring(const Schedule& schedule, const std::string& dome, int n);

/// A tamped tube cut across: a stadium between two radii, hatched.
void add_tube(View& view, double inner, double outer, double bottom, double top);
/// The rings of courses `first` to `last` of a dome, and the plaster on both sides of them where
/// the design gives a thickness. Returns how many there are.
int add_rings(View& view, const BuildingPlan& plan, const DomeForm& dome, int first, int last);

/// Strands of wire on a joint, as crosses, spread over what two rings share.
void add_wire(View& view, const BuildingPlan& plan, const Ring& below, const Ring& above, double z);
/// A cross of two strokes.
void add_cross(View& view, Vec2 at, double arm);

/// Above a view: a chain of widths from left to right.
void add_widths_above(View& view, const std::vector<double>& places, double y, int row,
                      DisplayUnit unit, const std::string& of);
/// Left of a view: a chain of heights.
void add_heights_left(View& view, const std::vector<double>& places, double x, int row,
                      DisplayUnit unit, const std::string& of);

// The details themselves; nothing where the building has none.
std::vector<View> joint_detail(const BuildingPlan& plan, const DomeForm& dome);
std::vector<View> sill_detail(const BuildingPlan& plan);
std::vector<View> lintel_detail(const BuildingPlan& plan);
std::vector<View> top_detail(const BuildingPlan& plan, const DomeForm& dome);

} // namespace coilwright
