// Limit analysis of the demo domes: budgets are 300 ms for a finished building of four domes, 2 s
// for all of its stages.
#include "geometry/design/read_design.hpp"
#include "geometry/plan/plan_building.hpp"
#include "geometry/statics/dome_statics.hpp"

#include <benchmark/benchmark.h>

#include <fstream>
#include <iterator>
#include <string>

namespace {

using namespace coilwright;

BuildingPlan plan_of(const std::string& demo) {
    std::ifstream file(COILWRIGHT_SOURCE_DIR "/models/" + demo, std::ios::binary);
    DesignReading reading = read_design(std::string{std::istreambuf_iterator<char>(file), {}});
    return plan_building(std::move(reading.design), std::move(reading.diagnostics));
}

void finished_dome(benchmark::State& state, const char* demo) {
    const BuildingPlan plan = plan_of(demo);
    const BuildingForm& building = plan.schedule.building;
    for (auto _ : state)
        benchmark::DoNotOptimize(dome_statics(plan.design, building, building.domes[0]));
}
BENCHMARK_CAPTURE(finished_dome, grain_store, "grain-store.toml")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(finished_dome, cabin, "cabin-metric.toml")->Unit(benchmark::kMillisecond);

void every_stage(benchmark::State& state) {
    const BuildingPlan plan = plan_of("grain-store.toml");
    const BuildingForm& building = plan.schedule.building;
    const std::vector<WallCourse> courses = dome_courses(plan.design, building, building.domes[0]);
    for (auto _ : state)
        for (const WallCourse& course : courses)
            benchmark::DoNotOptimize(building_stage(courses, {}, course.number));
}
BENCHMARK(every_stage)->Unit(benchmark::kMillisecond);

} // namespace
