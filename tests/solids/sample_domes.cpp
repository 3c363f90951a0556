#include "tests/solids/sample_domes.hpp"

#include "geometry/solids/building_parts.hpp"

namespace coilwright {

Opening sample_opening(const std::string& id, HeadKind head, double bearing, double width,
                       double sill, double height, std::optional<double> rise) {
    Opening opening;
    opening.id = id;
    opening.in = "vault";
    opening.bearing = {bearing};
    opening.width = width;
    opening.sill = sill;
    opening.height = height;
    opening.head.kind = head;
    opening.head.rise = rise;
    return opening;
}

std::vector<Opening> one_of_each_head() {
    return {sample_opening("door", HeadKind::pointed, 0, 0.8, 0, 2.0, 0.6),
            sample_opening("round", HeadKind::round, 72, 0.6, 0.9, 0.9),
            sample_opening("segment", HeadKind::segmental, 144, 0.6, 0.9, 0.6, 0.15),
            sample_opening("square", HeadKind::square, 216, 0.5, 0.7, 0.6),
            sample_opening("vent", HeadKind::circle, 288, 0.3, 1.4, 0.3)};
}

Design design_of(const SampleDome& sample) {
    Design design;
    design.name = "Sample";
    design.course.height = sample.course_height;
    design.course.foundation = sample.foundation;
    TubeType tube;
    tube.id = "main";
    tube.lay_flat = sample.width + 0.05;
    tube.tamped_width = sample.width;
    design.tubes = {tube};
    Dome dome;
    dome.id = "vault";
    dome.tube = "main";
    dome.inside_diameter = sample.diameter;
    dome.springline = sample.springline;
    dome.profile.kind = sample.profile;
    if (sample.profile != ProfileKind::round && sample.profile != ProfileKind::drawn)
        dome.profile.rise = sample.rise;
    dome.profile.points = sample.points;
    if (sample.skylight > 0) {
        dome.top.kind = TopKind::skylight;
        dome.top.diameter = sample.skylight;
    }
    design.domes = {dome};
    design.openings = sample.openings;
    // The datum is an opening's bearing: a sample with none has it at 0.
    for (Opening& opening : design.openings)
        opening.bearing.degrees += sample.datum;
    if (!design.openings.empty())
        design.domes.front().datum = design.openings.front().id;
    return design;
}

DomeForm form_of(const SampleDome& sample) {
    const Design design = design_of(sample);
    return make_dome_form(design, design.domes.front());
}

std::vector<OpeningForm> openings_of(const SampleDome& sample) {
    std::vector<OpeningForm> forms;
    for (const Opening& opening : design_of(sample).openings)
        forms.push_back(make_opening_form(opening));
    return forms;
}

BuildingForm building_of(const SampleDome& sample) {
    return building_parts(make_building_form(design_of(sample))).front().building;
}

} // namespace coilwright
