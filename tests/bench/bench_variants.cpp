// A thousand variants of the grain store, side by side on two cores. The target is 5 s of real
// time.
#include "geometry/design/read_works.hpp"
#include "geometry/variants/variants.hpp"

#include <benchmark/benchmark.h>

#include <fstream>
#include <sstream>
#include <string>

namespace {

using namespace coilwright;

std::string model_text(const char* name) {
    std::ostringstream text;
    text << std::ifstream(std::string(COILWRIGHT_SOURCE_DIR) + "/models/" + name).rdbuf();
    return text.str();
}

void work_out_variants(benchmark::State& state) {
    VariantStudy study{
        model_text("grain-store.toml"), read_works(model_text("grain-store.works")).works, {}};
    const Design design = read_design(study.text).design;
    for (const char* choice :
         {"diameter=8 ft to 10 ft 3 in by 3 in", "rise=8 ft to 10 ft 3 in by 3 in",
          "lay-flat=15 in to 19-1/2 in by 1/2 in"})
        study.choices.push_back(read_choice(choice, design).choice);
    const std::atomic<bool> stop{false};
    for (auto _ : state) {
        double laid = 0;
        run_variants(
            study, {}, static_cast<unsigned>(state.range(0)), stop,
            [&](std::size_t, const VariantResult& result) { laid += result.laid ? 1 : 0; });
        state.counters["laid"] = laid;
    }
    state.counters["variants"] = static_cast<double>(variant_count(study));
}
BENCHMARK(work_out_variants)
    ->Arg(1)
    ->Arg(2)
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime()
    ->Iterations(1);

} // namespace
