#include "geometry/statics/slice_program.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace coilwright {

namespace {

double cross(const Vec2& a, const Vec2& b) {
    return a.x() * b.y() - a.y() * b.x();
}

double total_load(const Slice& slice) {
    double sum = 0;
    for (const SliceBlock& block : slice.blocks)
        sum += block.weight + std::abs(block.push);
    return sum;
}

double extent(const Slice& slice) {
    Vec2 low = slice.blocks.front().centre, high = low;
    const auto take = [&](const Vec2& point) {
        low = low.cwiseMin(point);
        high = high.cwiseMax(point);
    };
    for (std::size_t j = slice.free_start ? 1 : 0; j < slice.joints.size(); ++j) {
        take(slice.joints[j].inner);
        take(slice.joints[j].outer);
    }
    return (high - low).maxCoeff();
}

void add_joint(SliceProgram& built, const SliceJoint& joint, bool there, bool with_friction) {
    LinearProgram& program = built.program;
    built.normal.push_back(there ? program.add_column(0, unlimited) : -1);
    const double shear_limit = joint.friction == 0 ? 0 : unlimited;
    built.shear.push_back(there ? program.add_column(-shear_limit, shear_limit) : -1);
    built.moment.push_back(there ? program.add_column(-unlimited, unlimited) : -1);
    if (!there || !with_friction || joint.friction == 0 || !std::isfinite(joint.friction))
        return;
    for (const double sign : {1.0, -1.0}) {
        const int row = program.add_row(-unlimited, 0);
        program.add(row, built.shear.back(), sign);
        program.add(row, built.normal.back(), -joint.friction);
    }
}

double limit_in(const SliceProgram& built, double newtons) {
    return std::isfinite(newtons) ? newtons / built.force : unlimited;
}

void add_block(SliceProgram& built, const SliceBlock& block) {
    LinearProgram& program = built.program;
    const double load_x = block.push / built.force, load_z = -block.weight / built.force;
    const double lever = (block.push_height - block.centre.y()) / built.length;
    built.balance_x.push_back(program.add_row(-load_x, -load_x));
    built.balance_z.push_back(program.add_row(-load_z, -load_z));
    built.balance_turn.push_back(program.add_row(lever * load_x, lever * load_x));
    if (block.sway != 0)
        program.add(built.balance_x.back(), built.load_factor, block.sway / built.force);
    if (block.sway != 0 && block.sway_height)
        program.add(built.balance_turn.back(), built.load_factor,
                    -(*block.sway_height - block.centre.y()) / built.length * block.sway /
                        built.force);
    const auto radial_force = [&](double limit, double height, double sign) {
        if (limit <= 0)
            return -1;
        const int column = program.add_column(0, limit);
        program.add(built.balance_x.back(), column, sign);
        program.add(built.balance_turn.back(), column,
                    -sign * (height - block.centre.y()) / built.length);
        return column;
    };
    const double compression = limit_in(built, block.hoop_limit);
    built.hoop_low.push_back(radial_force(compression, block.hoop_bottom, 1));
    built.hoop_high.push_back(radial_force(compression, block.hoop_top, 1));
    if (built.hoop_low.back() >= 0 && std::isfinite(compression)) {
        const int row = program.add_row(-unlimited, compression);
        program.add(row, built.hoop_low.back(), 1);
        program.add(row, built.hoop_high.back(), 1);
    }
    built.tie.push_back(radial_force(limit_in(built, block.tie_limit), block.tie_height, -1));
}

/// The force in joint j on the block before it (sign +1) or the block after it (-1).
void press(SliceProgram& built, const Slice& slice, std::size_t j, std::size_t block, double sign) {
    if (built.normal[j] < 0)
        return;
    const SliceJoint& joint = slice.joints[j];
    const Vec2 arm = (middle(joint) - slice.blocks[block].centre) / built.length;
    LinearProgram& program = built.program;
    const auto force = [&](int column, const Vec2& direction) {
        program.add(built.balance_x[block], column, sign * direction.x());
        program.add(built.balance_z[block], column, sign * direction.y());
        program.add(built.balance_turn[block], column, sign * cross(arm, direction));
    };
    force(built.normal[j], square_to(joint));
    force(built.shear[j], along(joint));
    program.add(built.balance_turn[block], built.moment[j],
                sign * half_contact(joint) / built.length);
}

} // namespace

double half_contact(const SliceJoint& joint) {
    return (joint.outer - joint.inner).norm() / 2;
}

Vec2 middle(const SliceJoint& joint) {
    return (joint.inner + joint.outer) / 2;
}

Vec2 along(const SliceJoint& joint) {
    return (joint.outer - joint.inner).normalized();
}

Vec2 square_to(const SliceJoint& joint) {
    const Vec2 direction = along(joint);
    return {-direction.y(), direction.x()};
}

SliceProgram equilibrium_program(const Slice& slice, bool with_friction) {
    assert(!slice.blocks.empty() && slice.joints.size() == slice.blocks.size() + 1);
    SliceProgram built;
    built.force = total_load(slice);
    built.length = extent(slice);
    assert(built.force > 0 && built.length > 0);
    built.load_factor = built.program.add_column(0, 0);
    for (std::size_t j = 0; j < slice.joints.size(); ++j) {
        const bool there = j > 0 || !slice.free_start;
        assert(!there || half_contact(slice.joints[j]) > 0);
        add_joint(built, slice.joints[j], there, with_friction);
    }
    for (std::size_t i = 0; i < slice.blocks.size(); ++i) {
        add_block(built, slice.blocks[i]);
        press(built, slice, i + 1, i, 1);
        press(built, slice, i, i, -1);
    }
    return built;
}

void keep_within(SliceProgram& built, double share) {
    for (std::size_t j = 0; j < built.normal.size(); ++j) {
        if (built.normal[j] < 0)
            continue;
        for (const double sign : {1.0, -1.0}) {
            const int row = built.program.add_row(-unlimited, 0);
            built.program.add(row, built.moment[j], sign);
            built.program.add(row, built.normal[j], -share);
        }
    }
}

ThrustLine read_thrust(const Slice& slice, const SliceProgram& built,
                       const std::vector<double>& x) {
    const auto value = [&](int column) {
        return column < 0 ? 0.0 : x[static_cast<std::size_t>(column)];
    };
    ThrustLine line;
    line.stands = true;
    for (std::size_t j = 0; j < slice.joints.size(); ++j) {
        JointThrust thrust;
        if (built.normal[j] >= 0) {
            const SliceJoint& joint = slice.joints[j];
            const double normal = value(built.normal[j]), moment = value(built.moment[j]);
            thrust.normal = normal * built.force;
            thrust.shear = value(built.shear[j]) * built.force;
            // A joint without force has no point of action: what the solver leaves over is noise.
            thrust.reach = std::abs(moment) > 1e-9 ? moment / normal : 0;
            thrust.offset = thrust.reach * half_contact(joint);
            thrust.force = thrust.normal * square_to(joint) + thrust.shear * along(joint);
            thrust.point = middle(joint) + thrust.offset * along(joint);
        }
        line.joints.push_back(thrust);
    }
    for (std::size_t i = 0; i < slice.blocks.size(); ++i) {
        line.hoops.push_back((value(built.hoop_low[i]) + value(built.hoop_high[i])) * built.force);
        line.ties.push_back(value(built.tie[i]) * built.force);
    }
    line.load_factor = value(built.load_factor);
    return line;
}

} // namespace coilwright
