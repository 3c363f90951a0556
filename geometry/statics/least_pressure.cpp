#include "geometry/statics/least_pressure.hpp"

#include "geometry/statics/slice_program.hpp"

#include <algorithm>

namespace coilwright {

namespace {

/// Strength over pressure in the worst of the joints.
double least_spare(const std::vector<JointCheck>& joints, std::optional<int> only) {
    double least = unlimited;
    for (const JointCheck& joint : joints)
        if (joint.pressure > 0 && (!only || *only == joint.course))
            least = std::min(least, joint.strength / joint.pressure);
    return least;
}

} // namespace

LeastPressure least_pressure(const std::vector<WallCourse>& courses, const DomeSlice& what,
                             std::optional<int> only) {
    const Slice slice = dome_slice(courses, what);
    const std::vector<double> kept =
        what.beside ? kept_beside(courses, *what.beside) : std::vector<double>(courses.size(), 1.0);
    SliceProgram built = equilibrium_program(slice);
    LinearProgram& program = built.program;
    const int k = program.add_column(0, unlimited, -1);
    const int last = what.last.value_or(static_cast<int>(courses.size()));
    std::vector<double> weight_above{0};
    for (const SliceBlock& block : slice.blocks)
        weight_above.push_back(weight_above.back() + block.weight);
    for (int n = what.first; n <= last; ++n) {
        const auto i = static_cast<std::size_t>(n - 1);
        const WallCourse& course = courses[i];
        const WallCourse* below = n > 1 ? &courses[i - 1] : nullptr;
        if (course.cap && below && below->cap)
            break;
        const auto j = static_cast<std::size_t>(joint_under(courses, what, n));
        const double share = below ? std::min(kept[i], kept[i - 1]) : kept[i];
        const double strength =
            below ? std::min(course.strength, below->strength) : course.strength;
        const double radius = (course.contact_inner + course.contact_outer) / 2;
        const double normal = weight_above[j]; // N per radian
        // |moment| <= normal - k normal^2 / (contact x radius x share x strength), in halves.
        const double loss = normal * normal / (course.contact_width() * radius * share * strength);
        for (const double sign : {1.0, -1.0}) {
            const int row = program.add_row(-unlimited, 0);
            program.add(row, built.moment[j], sign);
            program.add(row, built.normal[j], -1);
            if (!only || *only == n)
                program.add(row, k, loss / built.force);
        }
    }
    LeastPressure result;
    LinearSolution solution = minimise(program);
    if (solution.outcome != LinearOutcome::optimal)
        return result;
    const double most = solution.x[static_cast<std::size_t>(k)];
    program.columns[static_cast<std::size_t>(k)] = {most * (1 - 1e-6), most, 0};
    for (const std::vector<int>* hoops : {&built.hoop_low, &built.hoop_high, &built.tie})
        for (const int column : *hoops)
            if (column >= 0)
                program.columns[static_cast<std::size_t>(column)].cost = 1;
    if (LinearSolution spared = minimise(program); spared.outcome == LinearOutcome::optimal)
        solution = std::move(spared);
    result.line = read_thrust(slice, built, solution.x);
    result.joints = check_joints(courses, what, result.line);
    result.factor = least_spare(result.joints, only);
    return result;
}

} // namespace coilwright
