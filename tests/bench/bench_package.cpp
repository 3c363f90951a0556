// The models, the sheets and the whole package of the demo designs, in memory.
#include "cli/package.hpp"
#include "cli/program.hpp"
#include "exporters/model_formats.hpp"
#include "exporters/pdf.hpp"
#include "geometry/design/read_design.hpp"
#include "geometry/drawing/crew_book.hpp"

#include <benchmark/benchmark.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <sstream>
#include <string>

#include <sys/resource.h>

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

/// All formats at both depths: the budget for the home is 3 s on two cores.
void make_all_models(benchmark::State& state, const std::string& demo) {
    const BuildingPlan plan = plan_of(demo);
    PackageOptions options;
    options.parts = {"models"};
    options.formats = model_words();
    for (auto _ : state)
        benchmark::DoNotOptimize(make_package(plan, options, [](int, int, const std::string&) {}));
}
BENCHMARK_CAPTURE(make_all_models, home, "home.toml")->Unit(benchmark::kMillisecond)->UseRealTime();

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

/// The program from the command line to the files on the disk, with the most memory that the
/// process has had by then: run it alone (--benchmark_filter=package/home) to know that of one
/// building.
void make_the_package(benchmark::State& state, const std::string& demo) {
    const auto out = std::filesystem::temp_directory_path() / "coilwright-bench-package";
    std::istringstream in;
    std::ostringstream told;
    Console console{in, told, told};
    for (auto _ : state)
        if (run_program({"build", COILWRIGHT_SOURCE_DIR "/models/" + demo, "--out", out.string()},
                        console) != 0)
            state.SkipWithError("the package was not written");
    rusage used{};
    getrusage(RUSAGE_SELF, &used);
    state.counters["peak_MB"] = static_cast<double>(used.ru_maxrss) / 1024;
    std::filesystem::remove_all(out);
}
BENCHMARK_CAPTURE(make_the_package, grain_store, "grain-store.toml")
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();
BENCHMARK_CAPTURE(make_the_package, workshop, "workshop.toml")
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();
BENCHMARK_CAPTURE(make_the_package, home, "home.toml")
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();

} // namespace
