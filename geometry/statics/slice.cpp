#include "geometry/statics/slice.hpp"

#include "geometry/statics/slice_program.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

// A flat arch between abutments that do not give, or a ring on a base that does not slide, could be
// pressed without end: stop at this many times the load.
constexpr double hardest_press = 1000;

void limit_press(SliceProgram& built) {
    for (const auto* columns : {&built.normal, &built.hoop_low, &built.hoop_high})
        for (const int column : *columns)
            if (column >= 0) {
                double& high = built.program.columns[static_cast<std::size_t>(column)].high;
                high = std::min(high, hardest_press);
            }
}

ThrustLine extreme_thrust(const Slice& slice, int joint, double share, double sign) {
    SliceProgram built = equilibrium_program(slice);
    keep_within(built, share);
    limit_press(built);
    const auto j = static_cast<std::size_t>(joint);
    // thrust = -force.x
    const auto cost = [&](int column, double per_unit) {
        if (column >= 0)
            built.program.columns[static_cast<std::size_t>(column)].cost = -sign * per_unit;
    };
    cost(built.normal[j], square_to(slice.joints[j]).x());
    cost(built.shear[j], along(slice.joints[j]).x());
    const LinearSolution solution = minimise(built.program);
    if (solution.outcome == LinearOutcome::optimal)
        return read_thrust(slice, built, solution.x);
    ThrustLine none;
    none.undecided = solution.outcome != LinearOutcome::infeasible;
    return none;
}

/// Least over all states of the greatest |part| / normal, part being the moment or the shear of
/// each joint: a fractional program, solved by the method of Dinkelbach as widened by Crouzeix,
/// Ferland and Schaible 1985. One step is enough where the normals are fixed by equilibrium, as on
/// level joints.
struct LeastRatio {
    double ratio = 0;
    ThrustLine line;
};

constexpr double widest = 1024; // ratios above are as good as none
/// One step: the state that undercuts a ratio by most, in units of `scale` for each joint.
LinearSolution undercut(const SliceProgram& built, const std::vector<int>& parts, double ratio,
                        const std::vector<double>& scale) {
    LinearProgram program = built.program;
    const int over = program.add_column(-unlimited, unlimited, 1);
    for (std::size_t j = 0; j < parts.size(); ++j) {
        if (parts[j] < 0)
            continue;
        for (const double sign : {1.0, -1.0}) {
            const int row = program.add_row(-unlimited, 0);
            program.add(row, parts[j], sign);
            program.add(row, built.normal[j], -ratio);
            program.add(row, over, -scale[j]);
        }
    }
    return minimise(program);
}

/// The normals of a wall with a free top and level joints are the weights above, whatever the
/// thrust. In units of the whole load; empty where the slice is another.
std::vector<double> fixed_normals(const Slice& slice, double force) {
    std::vector<double> normals{1.0};
    if (!slice.free_start)
        return {};
    double above = 0;
    for (std::size_t i = 0; i < slice.blocks.size(); ++i) {
        if (slice.joints[i + 1].inner.y() != slice.joints[i + 1].outer.y())
            return {};
        above += slice.blocks[i].weight;
        normals.push_back(above / force);
    }
    return normals;
}

LeastRatio least_ratio(const Slice& slice, const SliceProgram& built,
                       const std::vector<int>& parts) {
    LeastRatio best;
    const std::vector<double> fixed = fixed_normals(slice, built.force);
    if (!fixed.empty() && fixed[1] > 0) { // no fraction: one step tells
        const LinearSolution solution = undercut(built, parts, 0, fixed);
        best.ratio = widest;
        best.line.undecided = solution.outcome == LinearOutcome::undecided;
        if (solution.outcome != LinearOutcome::optimal)
            return best;
        best.ratio = std::max(0.0, solution.value);
        best.line = read_thrust(slice, built, solution.x);
        return best;
    }
    best.ratio = 1;
    std::vector<double> scale(parts.size(), 1.0);
    for (int step = 0; step < 60; ++step) {
        const LinearSolution solution = undercut(built, parts, best.ratio, scale);
        if (solution.outcome != LinearOutcome::optimal || solution.value > 1e-9) {
            if (!best.line.stands)
                best.line.undecided = solution.outcome == LinearOutcome::undecided;
            if (best.line.stands || best.ratio == widest)
                break;
            best.ratio = widest; // nothing within 1: start from further out
            continue;
        }
        double ratio = 0;
        for (std::size_t j = 0; j < parts.size(); ++j) {
            if (parts[j] < 0)
                continue;
            const double part = std::abs(solution.x[static_cast<std::size_t>(parts[j])]);
            const double normal = solution.x[static_cast<std::size_t>(built.normal[j])];
            if (part > 1e-9)
                ratio = std::max(ratio, part / normal);
            scale[j] = std::max(normal, 1e-6);
        }
        if (best.line.stands && ratio >= best.ratio)
            break;
        const bool settled = best.line.stands && best.ratio - ratio < 1e-10;
        best.ratio = ratio;
        best.line = read_thrust(slice, built, solution.x);
        if (settled)
            break;
    }
    return best;
}

/// Of the states that keep to a ratio, the one whose rings and ties carry least: what the ratio
/// leaves open the solver would settle by chance.
void spare_the_rings(const Slice& slice, SliceProgram built, const std::vector<int>& parts,
                     LeastRatio& least) {
    LinearProgram& program = built.program;
    bool rings = false;
    for (const auto* columns : {&built.hoop_low, &built.hoop_high, &built.tie})
        for (const int column : *columns)
            if (column >= 0) {
                program.columns[static_cast<std::size_t>(column)].cost = 1;
                rings = true;
            }
    if (!rings || !least.line.stands)
        return;
    const double ratio = least.ratio * (1 + 1e-7) + 1e-9; // room for the solver's tolerance
    for (std::size_t j = 0; j < parts.size(); ++j) {
        if (parts[j] < 0)
            continue;
        for (const double sign : {1.0, -1.0}) {
            const int row = program.add_row(-unlimited, 0);
            program.add(row, parts[j], sign);
            program.add(row, built.normal[j], -ratio);
        }
    }
    const LinearSolution solution = minimise(program);
    if (solution.outcome == LinearOutcome::optimal)
        least.line = read_thrust(slice, built, solution.x);
}

double virtual_work(const Slice& slice, const std::vector<BlockMotion>& motions) {
    double work = 0;
    for (std::size_t i = 0; i < motions.size(); ++i) {
        const SliceBlock& block = slice.blocks[i];
        const double lever = block.push_height - block.centre.y();
        work += -block.weight * motions[i].shift.y() +
                block.push * (motions[i].shift.x() - lever * motions[i].turn);
        // Hoops and ties give way at their limits.
        const auto out = [&](double height) {
            return motions[i].shift.x() - (height - block.centre.y()) * motions[i].turn;
        };
        const double hoop = std::min({0.0, out(block.hoop_bottom), out(block.hoop_top)});
        if (block.hoop_limit > 0 && std::isfinite(block.hoop_limit))
            work += block.hoop_limit * hoop;
        if (block.tie_limit > 0 && std::isfinite(block.tie_limit))
            work -= block.tie_limit * std::max(0.0, out(block.tie_height));
    }
    return work;
}

} // namespace

ThrustLine least_thrust(const Slice& slice, int joint, double share) {
    return extreme_thrust(slice, joint, share, 1);
}

ThrustLine greatest_thrust(const Slice& slice, int joint, double share) {
    return extreme_thrust(slice, joint, share, -1);
}

namespace {

CentredThrust centred(const Slice& slice, bool sparing) {
    SliceProgram base = equilibrium_program(slice);
    limit_press(base);
    LeastRatio least = least_ratio(slice, base, base.moment);
    if (sparing)
        spare_the_rings(slice, base, base.moment, least);
    return {std::move(least.line), least.ratio};
}

LeastFriction with_least_friction(const Slice& slice, bool sparing) {
    SliceProgram base = equilibrium_program(slice, false);
    keep_within(base, 1);
    limit_press(base);
    LeastRatio least = least_ratio(slice, base, base.shear);
    if (sparing)
        spare_the_rings(slice, base, base.shear, least);
    return {std::move(least.line), least.ratio};
}

} // namespace

CentredThrust centred_thrust(const Slice& slice) {
    return centred(slice, true);
}

CentredThrust centred_share(const Slice& slice) {
    return centred(slice, false);
}

LeastFriction least_friction(const Slice& slice) {
    return with_least_friction(slice, true);
}

LeastFriction friction_needed(const Slice& slice) {
    return with_least_friction(slice, false);
}

ThrustLine greatest_sway(const Slice& slice) {
    SliceProgram built = equilibrium_program(slice);
    keep_within(built, 1);
    LinearProgram::Column& factor =
        built.program.columns[static_cast<std::size_t>(built.load_factor)];
    factor = {0, unlimited, -1};
    const LinearSolution solution = minimise(built.program);
    ThrustLine line;
    if (solution.outcome == LinearOutcome::optimal)
        return read_thrust(slice, built, solution.x);
    if (solution.outcome == LinearOutcome::unbounded) {
        line.stands = true;
        line.load_factor = unlimited;
    }
    line.undecided = solution.outcome == LinearOutcome::undecided;
    return line;
}

Mechanism collapse_mechanism(const Slice& slice) {
    SliceProgram built = equilibrium_program(slice);
    keep_within(built, 1);
    const LinearSolution solution = minimise(built.program);
    Mechanism mechanism;
    if (solution.outcome != LinearOutcome::infeasible)
        return mechanism;
    // The certificate weighs the equations of equilibrium: virtual motions, up to their sign.
    const auto motion = [&](int row) {
        return -solution.certificate[static_cast<std::size_t>(row)];
    };
    double greatest = 0;
    for (std::size_t i = 0; i < slice.blocks.size(); ++i) {
        BlockMotion block;
        block.shift = {motion(built.balance_x[i]), motion(built.balance_z[i])};
        block.turn = motion(built.balance_turn[i]) / built.length;
        greatest = std::max(greatest, block.shift.norm());
        mechanism.blocks.push_back(block);
    }
    for (BlockMotion& block : mechanism.blocks) {
        block.shift /= greatest;
        block.turn /= greatest;
    }
    mechanism.work = virtual_work(slice, mechanism.blocks);
    return mechanism;
}

} // namespace coilwright
