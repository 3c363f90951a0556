#include "geometry/statics/corbel.hpp"

#include <algorithm>

namespace coilwright {

std::vector<double> corbel_levers(const std::vector<CorbelCourse>& courses) {
    std::vector<double> levers(courses.size(), 0.0);
    double weight = 0, moment = 0;
    for (std::size_t i = courses.size(); i-- > 0;) {
        weight += courses[i].weight;
        moment += courses[i].weight * courses[i].centre;
        levers[i] = moment / weight - courses[i].edge;
    }
    return levers;
}

std::vector<CorbelCourse> corbel_courses(const std::vector<WallCourse>& courses, int last) {
    std::vector<CorbelCourse> result;
    for (const WallCourse& course : courses)
        if (last == 0 || course.number <= last)
            result.push_back({course.weight, course.mass_radius, course.contact_inner});
    return result;
}

std::vector<double> levers_while_building(const std::vector<WallCourse>& courses) {
    std::vector<double> worst;
    for (const WallCourse& course : courses) {
        if (course.cap)
            break;
        const std::vector<double> levers = corbel_levers(corbel_courses(courses, course.number));
        worst.push_back(levers.back());
        for (std::size_t i = 0; i < levers.size(); ++i)
            worst[i] = std::min(worst[i], levers[i]);
    }
    return worst;
}

} // namespace coilwright
