// Reading a design and laying its courses.
#include "geometry/design/read_design.hpp"
#include "geometry/plan/lay.hpp"
#include "geometry/plan/plan_building.hpp"
#include "tests/support/home.hpp"

#include <benchmark/benchmark.h>

#include <fstream>
#include <sstream>
#include <string>

namespace {

using namespace coilwright;

std::string grain_store() {
    std::ostringstream text;
    text << std::ifstream(COILWRIGHT_SOURCE_DIR "/models/grain-store.toml").rdbuf();
    return text.str();
}

void read_a_design(benchmark::State& state) {
    const std::string text = grain_store();
    for (auto _ : state)
        benchmark::DoNotOptimize(read_design(text));
}
BENCHMARK(read_a_design)->Unit(benchmark::kMicrosecond);

void lay_the_courses(benchmark::State& state) {
    const Design design = read_design(grain_store()).design;
    for (auto _ : state)
        benchmark::DoNotOptimize(lay(design));
}
BENCHMARK(lay_the_courses)->Unit(benchmark::kMicrosecond);

void plan_a_building(benchmark::State& state) {
    const DesignReading reading = read_design(grain_store());
    for (auto _ : state)
        benchmark::DoNotOptimize(plan_building(reading.design, reading.diagnostics));
}
BENCHMARK(plan_a_building)->Unit(benchmark::kMicrosecond);

/// The home of four domes, two tunnels, eight buttresses and twelve openings.
void lay_the_home(benchmark::State& state) {
    const Design design = testing::home_design();
    for (auto _ : state)
        benchmark::DoNotOptimize(lay(design));
}
BENCHMARK(lay_the_home)->Unit(benchmark::kMillisecond);

/// Linked domes, no two alike: how the cost of layout checks, laying and findings grows.
void plan_a_village(benchmark::State& state) {
    const Design design = testing::village_design(static_cast<int>(state.range(0)), 1);
    for (auto _ : state)
        benchmark::DoNotOptimize(plan_building(design, {}));
    state.SetComplexityN(state.range(0));
}
BENCHMARK(plan_a_village)
    ->Arg(1)
    ->Arg(4)
    ->Arg(16)
    ->Arg(64)
    ->Unit(benchmark::kMillisecond)
    ->Complexity(benchmark::oNLogN);

} // namespace
