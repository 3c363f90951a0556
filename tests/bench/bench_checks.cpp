// All checks of a whole building, and what would mend those that do not hold: budgets are 300 ms
// for the home of four domes, 5 s for the changes of the retreat.
#include "geometry/checks/check_building.hpp"
#include "geometry/checks/find_changes.hpp"
#include "geometry/design/read_design.hpp"
#include "geometry/exact/exact_region.hpp"

#include <benchmark/benchmark.h>

#include <fstream>
#include <iterator>
#include <string>

namespace {

using namespace coilwright;

BuildingPlan plan_of(const std::string& demo) {
    std::ifstream file(COILWRIGHT_SOURCE_DIR "/models/" + demo, std::ios::binary);
    DesignReading reading = read_design(std::string{std::istreambuf_iterator<char>(file), {}});
    return plan_building(std::move(reading.design), std::move(reading.diagnostics), exact_region);
}

void all_checks(benchmark::State& state, const char* demo) {
    const BuildingPlan plan = plan_of(demo);
    for (auto _ : state)
        benchmark::DoNotOptimize(all_findings(plan));
}
BENCHMARK_CAPTURE(all_checks, home, "home.toml")->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK_CAPTURE(all_checks, retreat, "retreat.toml")
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();
BENCHMARK_CAPTURE(all_checks, grain_store, "grain-store.toml")
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();

void changes(benchmark::State& state, const char* demo) {
    const BuildingPlan plan = plan_of(demo);
    const std::vector<Finding> findings = all_findings(plan);
    for (auto _ : state)
        benchmark::DoNotOptimize(find_changes(plan, findings, exact_region, 2));
}
BENCHMARK_CAPTURE(changes, retreat, "retreat.toml")->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK_CAPTURE(changes, grain_store, "grain-store.toml")
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();

} // namespace
