// The values of a design that can be changed, one at a time, to make a check hold.
#pragma once

#include "geometry/plan/plan_building.hpp"

#include <functional>
#include <string>
#include <vector>

namespace coilwright {

/// One value of a design, and the steps in which a person would change it.
struct Parameter {
    std::string table, key; // as in the design file: "dome.store", "profile.rise"
    std::string replaces;   // keys of that table that the value stands in place of, "a, b"
    FindingUnit unit = FindingUnit::metre;
    double now = 0;
    double step = 0, origin = 0; // values tried are origin and whole steps more or less
    double least = 0, most = 0;  // what is tried
    double scale = 1;            // what a change is measured by, to say which is the smallest
    std::function<void(Design&, double)> set;

    /// The nth value above `now` (below, where n < 0), as a text of the design's unit shows it.
    double value_at(int n, DisplayUnit shown) const;
};

/// What a list of levers speaks of: the elements of a subject.
struct Elements {
    std::vector<std::string> domes, openings, tunnels, buttresses, tubes;
};

/// The elements that belong to a finding's subject: of "dome.a + dome.b" both domes, their
/// openings, those of their tunnels, their tunnels and buttresses; of "opening.door" the opening,
/// its dome or tunnel.
Elements elements_of(const std::string& subject, const BuildingPlan& plan);

/// The parameters that a word names of these elements; none where they have none: a round dome has
/// no rise. Words: rise, springline, diameter, skylight, tube, lower_tube (of the domes);
/// opening.width, .height, .sill, .bearing, .frame, .fan, .lintel_depth, .lintel_bearing,
/// .lintel_width, and the same with own. in place of opening. for those in domes alone, not in
/// their tunnels; tunnel.width, .springline, .rise, .tube; buttress.width, .height, .projection,
/// .top; tube.tamped; foundation, ground_level, gravel, least_radius, longest_tube, strands.
/// Precondition: nothing is left to fit in plan.design.
std::vector<Parameter> parameters(const std::string& word, const Elements& elements,
                                  const BuildingPlan& plan);

} // namespace coilwright
