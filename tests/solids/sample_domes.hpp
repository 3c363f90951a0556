// Domes and openings for the solids' tests, made by hand.
#pragma once

#include "geometry/plan/building_form.hpp"

#include <optional>
#include <string>
#include <vector>

namespace coilwright {

/// A dome of 2.7 m on a stem of 0.5 m: courses of 0.127 m, tubes 0.381 m wide, three courses below
/// the floor. The rise is left out for a round profile.
struct SampleDome {
    ProfileKind profile = ProfileKind::pointed;
    double diameter = 2.7432, springline = 0.508, rise = 2.7432;
    double course_height = 0.127, width = 0.381;
    int foundation = 3;
    double skylight = 0;                           // its diameter; 0: closed by a cap
    double datum = 0;                              // bearing
    std::vector<std::pair<double, double>> points; // of a drawn profile
    std::vector<Opening> openings;
};

/// `rise` is of the head, where it has one of its own.
Opening sample_opening(const std::string& id, HeadKind head, double bearing, double width,
                       double sill, double height, std::optional<double> rise = {});

/// The five heads about the sample dome, one a window each, with a door that has the datum.
std::vector<Opening> one_of_each_head();

Design design_of(const SampleDome& sample);
DomeForm form_of(const SampleDome& sample);
std::vector<OpeningForm> openings_of(const SampleDome& sample);
/// The whole in the dome's own frame: pole at the origin, x along the datum.
BuildingForm building_of(const SampleDome& sample);

} // namespace coilwright
