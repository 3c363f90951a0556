// Drawings, pictures and templates of the home: four domes, two tunnels, eight buttresses.
#include "cli/package.hpp"
#include "exporters/dxf.hpp"
#include "exporters/pdf.hpp"
#include "exporters/shaded_picture.hpp"
#include "geometry/design/read_design.hpp"
#include "geometry/drawing/crew_book.hpp"
#include "geometry/templates/form_set.hpp"

#include <benchmark/benchmark.h>

#include <fstream>
#include <iterator>
#include <string>

namespace {

using namespace coilwright;

const BuildingPlan& home() {
    static const BuildingPlan plan = [] {
        std::ifstream file(COILWRIGHT_SOURCE_DIR "/models/home.toml", std::ios::binary);
        DesignReading reading = read_design(std::string{std::istreambuf_iterator<char>(file), {}});
        return plan_building(std::move(reading.design), std::move(reading.diagnostics));
    }();
    return plan;
}

const DrawingViews& home_views() {
    static const DrawingViews views = drawing_views(
        home(), whole_shell(shell_model(home().schedule).model), default_tolerance, {});
    return views;
}

void find_the_views_of_the_home(benchmark::State& state) {
    const EdgedMesh shell = whole_shell(shell_model(home().schedule).model);
    for (auto _ : state)
        benchmark::DoNotOptimize(drawing_views(home(), shell, default_tolerance, {}));
}
BENCHMARK(find_the_views_of_the_home)->Unit(benchmark::kMillisecond);

void lay_out_the_drawings_of_the_home(benchmark::State& state) {
    const MeasureText measure = pango_measure();
    const Drafting drafting{home(), *drawing_paper("tabloid"), measure};
    for (auto _ : state)
        benchmark::DoNotOptimize(drawing_set(drafting, home_views()));
}
BENCHMARK(lay_out_the_drawings_of_the_home)->Unit(benchmark::kMillisecond);

void write_the_dxf_of_the_home(benchmark::State& state) {
    const MeasureText measure = pango_measure();
    const Drafting drafting{home(), *drawing_paper("tabloid"), measure};
    for (auto _ : state)
        benchmark::DoNotOptimize(dxf_text_of(drawing_space(drafting, home_views()), measure));
}
BENCHMARK(write_the_dxf_of_the_home)->Unit(benchmark::kMillisecond);

void shade_the_picture_of_the_home(benchmark::State& state) {
    const SolidModel model = finished_shell_model(home().schedule, home().design).model;
    for (auto _ : state)
        benchmark::DoNotOptimize(png_of(shaded_picture(model, {Bearing{150}})));
}
BENCHMARK(shade_the_picture_of_the_home)->Unit(benchmark::kMillisecond);

void make_the_parts_of_the_home(benchmark::State& state, const std::vector<std::string>& parts) {
    PackageOptions options;
    options.parts = parts;
    options.paper = letter_paper();
    options.sheet = *drawing_paper("tabloid");
    for (auto _ : state)
        benchmark::DoNotOptimize(
            make_package(home(), options, [](int, int, const std::string&) {}));
}
BENCHMARK_CAPTURE(make_the_parts_of_the_home, templates, std::vector<std::string>{"templates"})
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();
BENCHMARK_CAPTURE(make_the_parts_of_the_home, drawings_and_templates,
                  std::vector<std::string>{"drawings", "templates"})
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();

} // namespace
