// Reads a design, lays it, meshes it and looks for its thrust line with nothing but the installed
// package. Prints the count of its courses and the inside radius of the first, in millimetres.
#include <geometry/design/read_design.hpp>
#include <geometry/plan/plan_building.hpp>
#include <geometry/solids/solid_model.hpp>
#include <geometry/statics/dome_slice.hpp>

#include <cmath>
#include <fstream>
#include <iostream>
#include <iterator>

int main(int count, char** values) {
    if (count != 2) {
        return 2;
    }
    std::ifstream file(values[1], std::ios::binary);
    const std::string text{std::istreambuf_iterator<char>(file), {}};
    auto reading = coilwright::read_design(text);
    const auto plan = coilwright::plan_building(std::move(reading.design), reading.diagnostics);
    if (!plan.sound() || !coilwright::shell_model(plan.schedule).faults.empty()) {
        return 1;
    }
    const auto& building = plan.schedule.building;
    const auto courses = coilwright::dome_courses(plan.design, building, building.domes.front());
    if (!coilwright::centred_thrust(coilwright::dome_slice(courses)).line.stands) {
        return 1;
    }
    std::cout << plan.schedule.totals.courses << ' '
              << std::lround(1000 * plan.schedule.courses.front().rings.front().inside_radius)
              << '\n';
}
