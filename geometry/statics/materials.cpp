#include "geometry/statics/materials.hpp"

#include "geometry/base/bearing.hpp"
#include "geometry/plan/wire.hpp"

#include <cmath>

namespace coilwright {

const Fill* fill_of_course(const Design& design, int n) {
    const Fill* rest = nullptr;
    for (const Fill& fill : design.fills) {
        if (!fill.courses)
            rest = rest ? rest : &fill;
        else if (fill.courses->first <= n && n <= fill.courses->second)
            return &fill;
    }
    return rest;
}

MaterialValue fill_density(const Design& design, int n) {
    if (const Fill* fill = fill_of_course(design, n)) {
        if (fill->density)
            return {*fill->density, true, "the design's density"};
        if (fill->dry_density)
            return {*fill->dry_density, true, "the design's dry density"};
    }
    return {1762, false, "110 pcf, a judgement without source"};
}

MaterialValue fill_strength(const Design& design, int n) {
    const Fill* fill = fill_of_course(design, n);
    if (fill && fill->strength)
        return {*fill->strength, true, "the design's strength"};
    return {0.297e6, false, "prism of sand-filled bags, the weakest of Dunbar and Wipplinger 2006"};
}

MaterialValue plaster_density() {
    return {1700, false, "a judgement without source"};
}

bool bank_against_wall(const Design& design) {
    return design.ground.level > design.course.height;
}

bool bank_known(const Design& design) {
    return design.ground.unit_weight && design.ground.friction_angle;
}

double bank_pressure(const Design& design, double depth) {
    const double angle = design.ground.friction_angle.value_or(0.0) * radians_per_degree;
    return (1 - std::sin(angle)) * design.ground.unit_weight.value_or(0.0) * depth;
}

double wire_tension(const Design& design, const TubeType& tube) {
    if (!design.wire.hoop_tension)
        return 0;
    return wire_strands(design, tube.id) * design.wire.breaking * design.wire.joint_factor;
}

} // namespace coilwright
