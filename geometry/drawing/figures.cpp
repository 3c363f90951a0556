#include "geometry/drawing/figures.hpp"

#include "geometry/plan/section.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

std::vector<CompassReading> compass_readings(const Ring& ring, const DomeForm& dome,
                                             const Design& design) {
    if (ring.kind == RingKind::cap)
        return {};
    const bool face = design.compass.pole_diameter > 0;
    if (design.compass.arm == CompassArm::chain) {
        const std::string chain = "CHAIN, fixed at " + rod_text(dome.chain_height, design.unit);
        if (!face)
            return {{chain, ring.chain}, {"level from the pole's axis", ring.inside_radius}};
        return {{chain + ", from the pole's face", ring.chain_face},
                {"from its axis", ring.chain},
                {"level from there", ring.inside_radius}};
    }
    if (!face)
        return {{"COMPASS, from the pole's axis", ring.inside_radius}};
    return {{"COMPASS, from the pole's face", ring.pole_face},
            {"from the pole's axis", ring.inside_radius}};
}

double compass_change(const Ring& ring, const Course& course, const DomeForm& dome,
                      const Design& design, double off) {
    if (ring.kind == RingKind::cap)
        return 0;
    const auto reading = [&](double z) {
        const double radius = ring.curb ? ring.inside_radius // plumb
                                        : half_width(dome.profile, z - dome.springline);
        return design.compass.arm == CompassArm::chain
                   ? std::hypot(radius - design.compass.pole_diameter / 2, z - dome.chain_height)
                   : radius;
    };
    return reading(course.middle + off) - reading(course.middle);
}

double ring_length(const Ring& ring) {
    double length = 0;
    for (const Run& run : ring.runs)
        length += run.length;
    return length;
}

std::string step_text(double step, DisplayUnit unit) {
    if (std::abs(step) < 5e-5)
        return "none, plumb";
    const std::string text = length_text(step, unit);
    if (text != length_text(0, unit))
        return text;
    return unit == DisplayUnit::feet ? "under 1/8 in" : "under 1 mm";
}

double part_fill(const CoursePart& part, double course_height) {
    double fill = 0;
    for (const Ring* ring : part.rings)
        fill += ring->fill_volume;
    for (const Straight* straight : part.straights)
        fill += stadium_area(straight->width, course_height) * straight->length;
    return fill;
}

double pieces_fill(const CoursePart& part) {
    double fill = 0;
    for (const Ring* ring : part.rings)
        for (const Piece& piece : ring->pieces)
            fill += piece.fill_volume;
    return fill;
}

double part_wire(const CoursePart& part) {
    double wire = 0;
    for (const Ring* ring : part.rings)
        wire += ring->wire_length;
    for (const Straight* straight : part.straights)
        wire += straight->wire_length;
    return wire;
}

std::string buckets_text(double cubic_metres, DisplayUnit unit) {
    return fixed_text(
        cubic_metres / (unit == DisplayUnit::feet ? bucket_volume : metric_bucket_volume), 1);
}

std::string bucket_name(DisplayUnit unit) {
    return unit == DisplayUnit::feet ? "5 gal" : "10 L";
}

std::string fill_text(double cubic_metres, DisplayUnit unit) {
    const std::string buckets = buckets_text(cubic_metres, unit);
    const std::string litres = litres_text(cubic_metres) + " L";
    return unit == DisplayUnit::feet ? buckets + " (" + litres + ")"
                                     : litres + " (" + buckets + ")";
}

std::string litres_text(double cubic_metres) {
    return fixed_text(cubic_metres * 1000, 0);
}

std::string fine_length_text(double metres, DisplayUnit unit) {
    return unit == DisplayUnit::feet ? feet_and_inches(metres, 16) : millimetres(metres, 1);
}

std::string supply_text(double metres, DisplayUnit unit) {
    constexpr double hair = 1e-9; // a length that is whole stays so
    if (unit == DisplayUnit::feet)
        return fixed_text(std::ceil(metres / metres_per_foot - hair), 0) + " ft";
    return fixed_text(std::ceil(metres * 10 - hair) / 10, 1) + " m";
}

std::string degrees_text(double degrees) {
    return fixed_text(degrees, 2) + "°";
}

std::string rod_text(double metres, DisplayUnit unit) {
    if (metres < -1e-6)
        return length_text(-metres, unit) + " below 0";
    return length_text(metres, unit);
}

std::string count_text(int count, const std::string& one, const std::string& many) {
    return std::to_string(count) + " " + (count == 1 ? one : many);
}

std::vector<const OpeningPlan*> openings_of(const Schedule& schedule, const std::string& dome) {
    std::vector<const OpeningPlan*> openings;
    for (const OpeningPlan& opening : schedule.openings)
        if (opening.form.in == dome)
            openings.push_back(&opening);
    return openings;
}

std::string datum_element(const BuildingPlan& plan, const DomeForm& dome) {
    if (const Dome* written = find_dome(plan.design, dome.id); written && !written->datum.empty())
        return written->datum;
    const auto lies_on = [&](Bearing bearing) {
        const double off = clockwise_degrees(dome.datum, bearing);
        return std::min(off, 360 - off) < 1e-9;
    };
    for (const OpeningPlan& opening : plan.schedule.openings)
        if (opening.form.in == dome.id && lies_on(opening.form.bearing))
            return opening.form.id;
    for (const Tunnel& tunnel : plan.design.tunnels)
        if (const auto bearing = bearing_from(tunnel, dome.id); bearing && lies_on(*bearing))
            return tunnel.id;
    return {};
}

} // namespace coilwright
