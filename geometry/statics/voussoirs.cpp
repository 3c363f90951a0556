#include "geometry/statics/voussoirs.hpp"

#include <cassert>
#include <cmath>

namespace coilwright {

namespace {

struct Mass {
    double area = 0;
    Vec2 moment{0, 0};
    void add(double more, const Vec2& centre) {
        area += more;
        moment += more * centre;
    }
};

double cube(double x) {
    return x * x * x;
}

/// Between two radii about the origin, from angle a to b off the upright.
Mass sector(double inner, double outer, double a, double b) {
    Mass mass;
    const double half = (b - a) / 2, middle = (a + b) / 2;
    const double area = (outer * outer - inner * inner) * half;
    const double radius = 2.0 / 3 * (cube(outer) - cube(inner)) / (outer * outer - inner * inner) *
                          std::sin(half) / half;
    mass.add(area, radius * Vec2(std::sin(middle), std::cos(middle)));
    return mass;
}

SliceJoint radial_joint(const Vec2& centre, double inner, double outer, double angle,
                        double friction) {
    const Vec2 out(std::sin(angle), std::cos(angle));
    return {centre + inner * out, centre + outer * out, friction};
}

SliceBlock block_of(const Mass& mass, const Vec2& origin, double unit_weight) {
    SliceBlock block;
    block.centre = origin + mass.moment / mass.area;
    block.weight = block.sway = mass.area * unit_weight;
    return block;
}

} // namespace

Slice circular_arch(const CircularArch& arch) {
    assert(arch.voussoirs > 0 && arch.to > arch.from);
    const double inner = arch.radius - arch.thickness / 2, outer = arch.radius + arch.thickness / 2;
    const double step = (arch.to - arch.from) / arch.voussoirs;
    Slice slice;
    for (int j = 0; j <= arch.voussoirs; ++j) {
        const double angle = arch.from + j * step;
        slice.joints.push_back(radial_joint({0, 0}, inner, outer, angle, arch.friction));
        if (j < arch.voussoirs)
            slice.blocks.push_back(
                block_of(sector(inner, outer, angle, angle + step), {0, 0}, arch.unit_weight));
    }
    return slice;
}

Slice half_pointed_arch(const PointedArch& arch) {
    assert(arch.voussoirs >= 2 && arch.arc_radius >= arch.half_span);
    const double inner = arch.arc_radius, outer = inner + arch.thickness;
    const double off = arch.arc_radius - arch.half_span; // of the arc's centre, left of the axis
    const Vec2 centre(-off, 0);
    // Angles off the upright at which the curves meet the axis.
    const double crown_inner = std::asin(off / inner), crown_outer = std::asin(off / outer);
    const double springing = std::acos(0.0);
    const double step = (springing - crown_inner) / arch.voussoirs;
    const double apex_inner = inner * std::cos(crown_inner);
    const double apex_outer = outer * std::cos(crown_outer);

    Slice slice;
    slice.joints.push_back({{0, apex_inner}, {0, apex_outer}, 0});
    for (int i = 0; i < arch.voussoirs; ++i) {
        const double a = crown_inner + i * step, b = a + step;
        Mass mass = sector(inner, outer, a, b);
        if (i == 0 && crown_outer < crown_inner) {
            // The piece between the axis and the first radial line: a thin sector of the outer
            // circle less the triangle under it.
            const Mass fan = sector(0, outer, crown_outer, crown_inner);
            mass.add(fan.area, fan.moment / fan.area);
            const Vec2 foot(off, apex_inner), top(off, apex_outer);
            const double under = std::abs(foot.x() * top.y() - foot.y() * top.x()) / 2;
            mass.add(-under, (foot + top) / 3);
        }
        slice.blocks.push_back(block_of(mass, centre, arch.unit_weight));
        slice.joints.push_back(radial_joint(centre, inner, outer, b, arch.friction));
    }
    return slice;
}

} // namespace coilwright
