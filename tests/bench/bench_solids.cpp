// The two models of the grain store: meshing, proof, and how both grow as the tolerance shrinks.
#include "geometry/design/read_design.hpp"
#include "geometry/plan/lay.hpp"
#include "geometry/plan/plan_building.hpp"
#include "geometry/solids/building_shell.hpp"
#include "geometry/solids/mesh_check.hpp"
#include "geometry/solids/solid_model.hpp"
#include "tests/support/home.hpp"

#include <benchmark/benchmark.h>

#include <fstream>
#include <sstream>
#include <string>

namespace {

using namespace coilwright;

Schedule grain_store() {
    std::ostringstream text;
    text << std::ifstream(COILWRIGHT_SOURCE_DIR "/models/grain-store.toml").rdbuf();
    DesignReading reading = read_design(text.str());
    return plan_building(std::move(reading.design), std::move(reading.diagnostics)).schedule;
}

double tolerance_of(const benchmark::State& state) {
    return state.range(0) * 1e-6;
}

/// Tolerances in micrometres.
void tolerances(benchmark::internal::Benchmark* bench) {
    bench->Arg(8000)->Arg(2000)->Arg(500)->Unit(benchmark::kMillisecond);
}

void shell_at_tolerance(benchmark::State& state) {
    const Schedule schedule = grain_store();
    std::size_t triangles = 0;
    for (auto _ : state)
        triangles =
            mesh_building_shell(schedule.building, tolerance_of(state)).mesh.triangles.size();
    state.counters["triangles"] = static_cast<double>(triangles);
}
BENCHMARK(shell_at_tolerance)->Apply(tolerances);

void shell_proof_at_tolerance(benchmark::State& state) {
    const Schedule schedule = grain_store();
    const Mesh mesh = mesh_building_shell(schedule.building, tolerance_of(state)).mesh;
    for (auto _ : state)
        benchmark::DoNotOptimize(check_mesh(mesh, true));
    state.counters["triangles"] = static_cast<double>(mesh.triangles.size());
}
BENCHMARK(shell_proof_at_tolerance)->Apply(tolerances);

void courses_at_tolerance(benchmark::State& state) {
    const Schedule schedule = grain_store();
    std::size_t triangles = 0;
    for (auto _ : state) {
        const SolidResult result = courses_model(schedule, tolerance_of(state));
        triangles = 0;
        for (const SolidPart& part : result.model.parts)
            triangles += part.mesh.triangles.size();
    }
    state.counters["triangles"] = static_cast<double>(triangles);
}
BENCHMARK(courses_at_tolerance)->Apply(tolerances);

/// The home of four domes, two tunnels, eight buttresses and twelve openings, proven.
void shell_of_home(benchmark::State& state) {
    const Schedule schedule = lay(testing::home_design());
    std::size_t triangles = 0;
    for (auto _ : state) {
        const SolidResult result = shell_model(schedule, tolerance_of(state));
        triangles = result.model.parts.at(0).mesh.triangles.size();
    }
    state.counters["triangles"] = static_cast<double>(triangles);
}
BENCHMARK(shell_of_home)->Apply(tolerances);

/// Linked domes, no two alike: how the shell's cost grows with their number.
void shell_of_village(benchmark::State& state) {
    const BuildingForm building =
        make_building_form(testing::village_design(static_cast<int>(state.range(0)), 1));
    std::size_t triangles = 0;
    for (auto _ : state)
        triangles = mesh_building_shell(building, 0.002).mesh.triangles.size();
    state.counters["triangles"] = static_cast<double>(triangles);
    state.SetComplexityN(state.range(0));
}
BENCHMARK(shell_of_village)
    ->Arg(1)
    ->Arg(4)
    ->Arg(16)
    ->Arg(64)
    ->Unit(benchmark::kMillisecond)
    ->Complexity(benchmark::oNLogN);

} // namespace
