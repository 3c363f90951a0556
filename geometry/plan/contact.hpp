// How much of a course lies on the one below it.
#pragma once

#include "geometry/plan/wall_form.hpp"

namespace coilwright {

/// Width, in metres, by which course n of a dome (a ring, a curb ring or a cap disc; of two wythes
/// the first) covers the course below it in plan: least outside less greatest inside radius;
/// negative where they miss each other, by the gap between them. Course 1 lies on the ground with
/// all its width. Precondition: 1 <= n <= dome.courses(). w 15 in, step-in 4 in -> 11 in.
double bearing_overlap(const DomeForm& dome, int n);

/// The same for the flats that carry: a tube is a stadium whose flat is w - t wide, so that t / 2
/// is lost at either edge of the bearing (of two cap discs, which have no inner edge, at the outer
/// one alone); nothing where a test bag measured square. 0 or less: nothing carries. w 15 in, t 5
/// in, step-in 4 in, round edges -> 6 in.
double contact_overlap(const DomeForm& dome, int n, TubeEdge edge);

/// The lowest course that finds no flat below to rest on; 0 where each rests.
int first_without_contact(const DomeForm& dome, TubeEdge edge);

} // namespace coilwright
