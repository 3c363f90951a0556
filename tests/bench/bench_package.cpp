// The models, the sheets and the whole package of the demo designs, in memory.
#include "cli/package.hpp"
#include "exporters/model_formats.hpp"
#include "exporters/pdf.hpp"
#include "geometry/design/read_design.hpp"
#include "geometry/drawing/crew_book.hpp"

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

void mesh_the_shell(benchmark::State& state) {
    const BuildingPlan plan = plan_of("grain-store.toml");
    for (auto _ : state)
        benchmark::DoNotOptimize(shell_model(plan.schedule));
}
BENCHMARK(mesh_the_shell)->Unit(benchmark::kMillisecond);

void mesh_the_courses(benchmark::State& state) {
    const BuildingPlan plan = plan_of("grain-store.toml");
    for (auto _ : state)
        benchmark::DoNotOptimize(courses_model(plan.schedule));
}
BENCHMARK(mesh_the_courses)->Unit(benchmark::kMillisecond);

void write_the_models(benchmark::State& state) {
    const SolidModel model = courses_model(plan_of("grain-store.toml").schedule).model;
    for (auto _ : state)
        for (const ModelFormat& format : model_formats())
            benchmark::DoNotOptimize(format.write(model, "courses", {}));
}
BENCHMARK(write_the_models)->Unit(benchmark::kMillisecond);

void lay_out_the_crew_book(benchmark::State& state) {
    const BuildingPlan plan = plan_of("grain-store.toml");
    const MeasureText measure = pango_measure();
    for (auto _ : state)
        benchmark::DoNotOptimize(crew_book(plan, letter_paper(), measure));
}
BENCHMARK(lay_out_the_crew_book)->Unit(benchmark::kMillisecond);

void write_the_crew_book(benchmark::State& state) {
    const BuildingPlan plan = plan_of("grain-store.toml");
    const auto sheets = crew_book(plan, letter_paper(), pango_measure());
    for (auto _ : state)
        benchmark::DoNotOptimize(pdf_bytes(sheets, "bench"));
}
BENCHMARK(write_the_crew_book)->Unit(benchmark::kMillisecond);

void make_the_package(benchmark::State& state, const std::string& demo) {
    const BuildingPlan plan = plan_of(demo);
    PackageOptions options;
    options.parts = package_parts();
    options.paper = letter_paper();
    options.formats = model_words();
    for (auto _ : state)
        benchmark::DoNotOptimize(make_package(plan, options, [](int, int, const std::string&) {}));
}
BENCHMARK_CAPTURE(make_the_package, grain_store, "grain-store.toml")
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();
BENCHMARK_CAPTURE(make_the_package, workshop, "workshop.toml")
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();

} // namespace
