// Writes, as JSON on standard output, buildings as rows of Booleans on closed meshes, with the time
// that their shell takes without Booleans and the time of CGAL's corefinement. compare.mjs reads
// it.
#include "geometry/design/read_design.hpp"
#include "geometry/plan/plan_building.hpp"
#include "geometry/solids/building_shell.hpp"
#include "tests/solids/boolean_oracle.hpp"
#include "tests/support/home.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <chrono>
#include <fstream>
#include <iostream>
#include <sstream>
#include <vector>

namespace {

using namespace coilwright;
using Json = nlohmann::json;

BuildingForm grain_store() {
    std::ostringstream text;
    text << std::ifstream(COILWRIGHT_SOURCE_DIR "/models/grain-store.toml").rdbuf();
    DesignReading reading = read_design(text.str());
    return plan_building(std::move(reading.design), std::move(reading.diagnostics))
        .schedule.building;
}

/// The middle one of five runs, ms.
template <typename Work>
double middle_time(const Work& work) {
    std::vector<double> times;
    for (int run = 0; run < 5; ++run) {
        const auto start = std::chrono::steady_clock::now();
        work();
        times.push_back(
            std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start)
                .count());
    }
    std::nth_element(times.begin(), times.begin() + 2, times.end());
    return times[2];
}

Json as_json(const Mesh& mesh) {
    Json vertices = Json::array(), triangles = Json::array();
    for (const Vec3& v : mesh.vertices)
        for (int k = 0; k < 3; ++k)
            vertices.push_back(v[k]);
    for (const auto& corners : mesh.triangles)
        for (const std::uint32_t corner : corners)
            triangles.push_back(corner);
    return {{"vertices", std::move(vertices)}, {"triangles", std::move(triangles)}};
}

Json scene(const char* name, const BuildingForm& building) {
    constexpr double tolerance = 0.002;
    constexpr int around = 80; // a sag of 2 mm on circles of 2.4 m
    const std::vector<BooleanStep> steps = building_steps(building, around);
    BuildingShell shell;
    const double shell_time =
        middle_time([&] { shell = mesh_building_shell(building, tolerance); });
    Mesh united;
    const double cgal_time = middle_time([&] { united = by_booleans(steps); });
    Json row = Json::array();
    for (const BooleanStep& step : steps) {
        Json less = Json::array();
        for (const Mesh& mesh : step.less)
            less.push_back(as_json(mesh));
        row.push_back({{"adds", step.adds}, {"body", as_json(step.body)}, {"less", less}});
    }
    return {{"name", name},
            {"shell", {{"ms", shell_time}, {"volume", volume(shell.mesh)}}},
            {"cgal", {{"ms", cgal_time}, {"volume", volume(united)}}},
            {"steps", std::move(row)}};
}

} // namespace

int main() {
    Json scenes = Json::array();
    scenes.push_back(scene("grain store", grain_store()));
    scenes.push_back(scene("home", make_building_form(testing::home_for_booleans())));
    std::cout << scenes;
}
