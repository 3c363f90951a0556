#include "geometry/statics/joint_checks.hpp"

#include "geometry/plan/section.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace coilwright {

double contact_pressure(double normal, double contact, double offset) {
    if (normal <= 0)
        return 0;
    const double carries = contact - 2 * std::abs(offset);
    return carries > 0 ? normal / carries : unlimited;
}

std::vector<JointCheck> check_joints(const std::vector<WallCourse>& courses, const DomeSlice& what,
                                     const ThrustLine& line) {
    std::vector<double> kept(courses.size(), 1.0);
    if (what.beside)
        kept = kept_beside(courses, *what.beside);
    const int last = what.last.value_or(static_cast<int>(courses.size()));
    std::vector<JointCheck> checks;
    for (int n = what.first; n <= last; ++n) {
        const auto i = static_cast<std::size_t>(n - 1);
        const WallCourse& course = courses[i];
        const WallCourse* below = n > 1 ? &courses[i - 1] : nullptr;
        if (course.cap && below && below->cap)
            break;
        const auto j = static_cast<std::size_t>(joint_under(courses, what, n));
        const JointThrust& joint = line.joints[j];
        const double share = below ? std::min(kept[i], kept[i - 1]) : kept[i];
        JointCheck check;
        check.course = n;
        check.normal = joint.normal / joint.point.x() / share;
        check.thrust = joint.thrust() / joint.point.x() / share;
        check.reach = std::abs(joint.reach);
        check.pressure = contact_pressure(check.normal, course.contact_width(), joint.offset);
        check.strength = below ? std::min(course.strength, below->strength) : course.strength;
        check.friction_needed = joint.normal > 0 ? std::abs(joint.shear) / joint.normal : 0;
        check.hoop = line.hoops[j - 1] - line.ties[j - 1];
        if (line.hoops[j - 1] > 0 && !course.cap)
            check.hoop_pressure = line.hoops[j - 1] / stadium_area(course.outside - course.inside,
                                                                   course.top - course.bottom);
        checks.push_back(check);
    }
    return checks;
}

std::vector<PierCheck> check_piers(const std::vector<WallCourse>& courses) {
    std::map<std::pair<std::string, std::string>, PierCheck> worst;
    double load = 0; // N per radian of the whole dome, less what the gaps leave out
    for (std::size_t i = courses.size(); i-- > 0;) {
        const WallCourse& course = courses[i];
        load += course.weight * (1 - course.open_share);
        if (course.gaps.empty())
            continue;
        const double r = (course.inside + course.outside) / 2;
        const std::vector<KeptArc> arcs = kept_arcs(course.gaps, r);
        for (std::size_t k = 0; k < arcs.size(); ++k) {
            const KeptArc &arc = arcs[k], &next = arcs[(k + 1) % arcs.size()];
            const KeptArc& before = arcs[(k + arcs.size() - 1) % arcs.size()];
            if (!arc.starts_at || !arc.ends_at)
                continue;
            const auto gap = [](double from, double to) {
                const double apart = std::fmod(to - from, 360);
                return apart < 0 ? apart + 360 : apart;
            };
            const double carried = (arc.end - arc.start) + gap(before.end, arc.start) / 2 +
                                   gap(arc.end, next.start) / 2;
            PierCheck pier;
            pier.course = course.number;
            pier.from = arc.starts_at->by;
            pier.to = arc.ends_at->by;
            pier.length = r * (arc.end - arc.start) * radians_per_degree;
            pier.pressure =
                load * carried * radians_per_degree / (pier.length * course.contact_width());
            pier.strength = course.strength;
            PierCheck& so_far = worst[{pier.from, pier.to}];
            if (pier.pressure > so_far.pressure)
                so_far = pier;
        }
    }
    std::vector<PierCheck> checks;
    for (const auto& [ids, pier] : worst)
        checks.push_back(pier);
    std::sort(checks.begin(), checks.end(), [](const PierCheck& a, const PierCheck& b) {
        return std::tie(a.course, a.from, a.to) < std::tie(b.course, b.from, b.to);
    });
    return checks;
}

} // namespace coilwright
