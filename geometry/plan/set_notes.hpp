// What is set, propped and struck between the courses: forms, plates, hoops, hold points.
#pragma once

#include "geometry/plan/schedule.hpp"

namespace coilwright {

/// An opening as it is built: courses it cuts, clear size after frame and plaster, how deep its
/// form must be (from the innermost corner of its courses to the outermost, plus 50 mm), the band
/// along its bearing in which a plumb frame lies inside the wall at every course, and the course
/// after which its form may be struck: the third that runs unbroken over its head.
OpeningPlan plan_opening(const Design& design, const Opening& opening, const OpeningForm& form,
                         const BuildingForm& building);

/// Of the forms in each dome the one that may be struck last (of several the one with the highest
/// head, then by id) stays until the dome is closed: until its last cap course, or the first course
/// of the curb, which ties its eye.
void keep_last_forms(std::vector<OpeningPlan>& openings, const BuildingForm& building);

/// The course that holds a sleeve's centre, and the joint that a small one lies on.
SleevePlan plan_sleeve(const SleeveForm& sleeve, const BuildingForm& building);

/// From the first course whose middle lies at the springline or above it to the crown: a vault has
/// no rings to hold it; and until three courses of each dome that it opens run unbroken over the
/// hole, whose ends lean on it.
VaultForm plan_vault_form(const TunnelForm& tunnel, const BuildingForm& building);

/// Fills Course::before and Course::after: forms to set, anchor plates on the joints nearest to
/// 1/8, 3/8, 5/8 and 7/8 of each jamb and never more than 4 courses apart, forms that must stay and
/// when they may be struck, the hoop under a skylight's curb, the pole.
void write_set_notes(Schedule& schedule, const Design& design);

} // namespace coilwright
