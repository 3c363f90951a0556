// Courses that step in as cantilevers: does what is laid stand without a ring or a form?
#pragma once

#include "geometry/statics/dome_slice.hpp"

#include <vector>

namespace coilwright {

/// One course of a corbelled wall. Distances from the room's middle, m.
struct CorbelCourse {
    double weight = 0;
    double centre = 0; // of its mass
    double edge = 0;   // inner end of the joint under it, about which all above would tip in
};

/// For each course, bottom up: how far the centre of mass of it and of all courses above it lies
/// outside the edge under it, m. Negative: they fall in unless a ring or a form holds them
/// (Benvenuto and Corradi 1987-90; Rovero and Tonietti 2012-14; from memory). Four blocks of 1 m
/// stacked to the harmonic limit: 0 under each. Precondition: weights > 0.
std::vector<double> corbel_levers(const std::vector<CorbelCourse>& courses);

/// The courses of a dome or a tunnel that are laid up to `last` (0: all), bottom up; edges are
/// those of the flats.
std::vector<CorbelCourse> corbel_courses(const std::vector<WallCourse>& courses, int last = 0);

/// The courses of a tunnel's side up to its last as they are laid: course n's lever with nothing
/// yet above it but what is laid, the worst over all heights reached. Negative: FORM CARRIES THIS
/// COURSE. Without rings a vault has nothing else (see docs/concepts/statics.md).
std::vector<double> levers_while_building(const std::vector<WallCourse>& courses);

} // namespace coilwright
