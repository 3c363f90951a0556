// Where the parts of a take-off write their lines.
#pragma once

#include "geometry/takeoff/take_off.hpp"

namespace coilwright {

struct Ledger {
    const BuildingPlan& plan;
    const Works& works;
    TakeOff& take;

    const Schedule& schedule() const { return plan.schedule; }
    /// Adds a line; amounts of 0 are left out.
    void add(TakeOffLine line) const;
};

/// Tube, wire, fill, stabiliser and water of every course with its short bags; the rolls
/// (take_walls.cpp).
void take_walls(const Ledger& ledger);
/// Gravel, drain, damp-proofing and floor (take_ground.cpp).
void take_ground(const Ledger& ledger, const DecideRegion& decide);
/// Forms, lintels, frames, glass, leaves, anchors, sleeves (take_openings.cpp).
void take_openings(const Ledger& ledger);
/// Plaster and paint (take_plaster.cpp).
void take_plaster(const Ledger& ledger, const DecideRegion& decide);
/// Adds what a mix takes as lines of its materials.
void take_mix(const Ledger& ledger, const Mix& mix, double wet, const TakeOffLine& like);

/// The coats of a side in their order: as the works file says, else one of the design's thickness.
std::vector<Coat> coats_of(const Design& design, const Works& works, WallSide side);
/// Width of the hollows between round-edged bags, as thickness over the whole face:
/// t (4 - pi) / 8. t 5 in -> 0.54 in.
double hollow_thickness(const Design& design);
/// Whether a course belongs to the base: its top lies below ground + 150 mm.
bool is_base_course(const Design& design, const Course& course);
/// The stage of the first course before or after which the crew sets something of an element, a
/// thing `what` of it if one is named (as in SetNote); walls where none does. It is to be on site
/// by then.
Phase stage_of_setting(const Ledger& ledger, const std::string& element,
                       const std::string& what = {});
/// The fill of a course, or nullptr.
const Fill* fill_of(const Design& design, int course);

} // namespace coilwright
