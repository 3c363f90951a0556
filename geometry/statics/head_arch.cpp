#include "geometry/statics/head_arch.hpp"

#include "geometry/base/bearing.hpp"
#include "geometry/statics/voussoirs.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

/// Puts the column of wall between two plumb lines on a block, from a circle about `centre` up to
/// `top`.
void add_column(SliceBlock& block, double from, double to, const Vec2& centre, double radius,
                double top, double unit_weight) {
    constexpr int strips = 64; // error under 1e-3 of a bag's column
    double area = 0, moment = 0;
    for (int i = 0; i < strips; ++i) {
        const double x = from + (i + 0.5) * (to - from) / strips, off = x - centre.x();
        const double curve = centre.y() + std::sqrt(std::max(0.0, radius * radius - off * off));
        const double strip = std::max(0.0, top - curve) * (to - from) / strips;
        area += strip;
        moment += strip * x;
    }
    const double weight = unit_weight * area;
    if (weight <= 0)
        return;
    // Plumb loads move along their line: only where the sum lies across counts.
    block.centre.x() =
        (block.weight * block.centre.x() + unit_weight * moment) / (block.weight + weight);
    block.weight += weight;
    block.sway = block.weight;
}

} // namespace

std::optional<Slice> head_arch(const OpeningForm& opening, const HeadLoad& load) {
    const std::optional<Fan> fan = make_fan(opening, load.wall_thickness, 0);
    if (!fan)
        return std::nullopt;
    const Profile& head = *opening.head;
    const double line = load.unit_weight * load.wall_thickness; // N per m2 of the arch's face
    const double outer = head.radius + fan->depth;
    Slice slice;
    Vec2 centre(0, 0);
    if (head.kind == ProfileKind::pointed && head.radius > head.half_span) {
        PointedArch arch;
        arch.half_span = head.half_span;
        arch.arc_radius = head.radius;
        arch.thickness = fan->depth;
        arch.voussoirs = std::max(2, (fan->count + 1) / 2);
        arch.unit_weight = line;
        arch.friction = load.friction;
        slice = half_pointed_arch(arch);
        centre.x() = head.half_span - head.radius;
    } else {
        const double half =
            head.kind == ProfileKind::segmental ? std::asin(head.half_span / head.radius) : pi / 2;
        CircularArch arch;
        arch.radius = head.radius + fan->depth / 2;
        arch.thickness = fan->depth;
        arch.from = -half;
        arch.to = half;
        arch.voussoirs = fan->count;
        arch.unit_weight = line;
        arch.friction = load.friction;
        slice = circular_arch(arch);
    }
    const double crown = std::sqrt(outer * outer - centre.x() * centre.x());
    for (std::size_t i = 0; i < slice.blocks.size(); ++i)
        add_column(slice.blocks[i], slice.joints[i].outer.x(), slice.joints[i + 1].outer.x(),
                   centre, outer, crown + load.cover, line);
    return slice;
}

} // namespace coilwright
