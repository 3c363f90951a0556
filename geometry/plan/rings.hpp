// What a dome lays in one course: a ring cut by what meets it, a curb, or a cap disc.
#pragma once

#include "geometry/plan/ring_gaps.hpp"
#include "geometry/plan/schedule.hpp"

#include <span>
#include <vector>

namespace coilwright {

/// The rings of a dome, by its place in the building, in course n with radii, steps, cuts, runs and
/// tubes: one, or two where a second wythe stands outside it; none above its top. A ring that
/// another dome's wall takes up whole has no runs. `below`: what the dome laid in course n - 1.
std::vector<Ring> lay_rings(const Design& design, const BuildingForm& building,
                            const WallRelations& relations, int dome, int n,
                            std::span<const Ring> below);

/// A disc of radius R and height t with a rounded rim, by Pappus: R 0.5, t 0.12 -> 0.089523.
double rounded_disc_volume(double radius, double height);

} // namespace coilwright
