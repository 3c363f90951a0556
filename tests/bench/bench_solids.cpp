// The two models of the grain store: meshing, proof, and how both grow as the tolerance shrinks.
#include "geometry/design/read_design.hpp"
#include "geometry/plan/plan_building.hpp"
#include "geometry/solids/building_shell.hpp"
#include "geometry/solids/mesh_check.hpp"
#include "geometry/solids/solid_model.hpp"

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
        triangles = mesh_building_shell(schedule.building, tolerance_of(state)).mesh.triangles.size();
    state.counters["triangles"] = static_cast<double>(triangles);
}
BENCHMARK(shell_at_tolerance)->Apply(tolerances);

void shell_proof_at_tolerance(benchmark::State& state) {
    const Schedule schedule = grain_store();
    const Mesh mesh =
        mesh_building_shell(schedule.building, tolerance_of(state)).mesh;
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

} // namespace
