// What stands in an opening and over it, as bodies: its form, its frame, a fan's bags, a lintel.
// Frame of them all: x along the opening's axis from its origin, y to the left, z up from the
// floor.
#pragma once

#include "geometry/plan/schedule.hpp"
#include "geometry/solids/mesh.hpp"

#include <optional>
#include <vector>

namespace coilwright {

/// The stretch of an opening's outline between two distances inside it, carried along its axis.
struct LiningBody {
    double outer_inset = 0, inner_inset = 0;
    bool with_sill = true; // else it stands open on its two feet
    double from = 0, to = 0;
};

/// The frame of a door, window or vent, where one has room in the wall.
std::optional<LiningBody> frame_body(const OpeningPlan& opening);

/// A form or a frame: boards along the jambs, the head and the sill. Square opening 0.8 wide and 2
/// high, insets 0 to 0.02, all round, 0.1 deep: 0.0110 m3. Empty where the inner inset leaves no
/// hole or the head is no arc of a circle. Precondition: 0 <= outer_inset < inner_inset, from < to.
Mesh mesh_lining(const OpeningForm& opening, const LiningBody& body, double tolerance);

/// Bags of a fan from the right springing to the left one; the middle one is the keystone. Each
/// reaches from face to face of the wall at its own middle: the fan follows the lean.
std::vector<Mesh> mesh_fan(const OpeningForm& opening, const Fan& fan, const DomeForm& dome,
                           double tolerance);

/// A straight beam across the axis: its length times depth times width.
Mesh mesh_lintel(const Lintel& lintel);

} // namespace coilwright
