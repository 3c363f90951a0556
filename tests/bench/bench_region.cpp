// The wall of one course as a plan region: one dome, and up to 64 of them.
#include "geometry/exact/exact_region.hpp"
#include "geometry/plan/path.hpp"

#include <benchmark/benchmark.h>

#include <cmath>

namespace {

using namespace coilwright;

int add(PlanExpression& plan, const Shape& shape) {
    plan.shapes.push_back(shape);
    return static_cast<int>(plan.shapes.size()) - 1;
}

/// A ring with a tunnel and its end wall, five openings and four buttresses: 15 shapes.
void add_dome(PlanExpression& plan, const Vec2& at) {
    const double r = 1.4, w = 0.38;
    const int inner = add(plan, Disc{at, r});
    PlanTerm ring{"ring", add(plan, Disc{at, r + w}), {inner}};
    const Vec2 axis = along({37});
    const int body = add(plan, Box{at, axis, 0, 2.6, -0.85, 0.85});
    const int hole = add(plan, Box{at, axis, 0, 2.6, -0.47, 0.47});
    const int end = add(plan, Box{at, axis, 2.6 - w, 2.6, -0.85, 0.85});
    const int door = add(plan, Box{at, axis, 0, 100, -0.3, 0.3});
    ring.less.push_back(hole);
    plan.terms.push_back({"tunnel", body, {hole, inner}});
    plan.terms.push_back({"end", end, {door}});
    for (const double bearing : {110.0, 160.0, 215.0, 260.0, 310.0})
        ring.less.push_back(add(plan, Box{at, along({bearing}), 0, 100, -0.2, 0.2}));
    for (const double bearing : {85.0, 135.0, 235.0, 285.0})
        plan.terms.push_back(
            {"pier", add(plan, Box{at, along({bearing}), r, 2.4, -0.15, 0.15}), {inner}});
    plan.terms.push_back(ring);
}

/// Domes in a square, each overlapping its neighbours: open plan.
PlanExpression village(int domes) {
    PlanExpression plan;
    const int side = static_cast<int>(std::lround(std::sqrt(domes)));
    for (int i = 0; i < domes; ++i)
        add_dome(plan, {3.1 * (i % side), 3.2 * (i / side)});
    return plan;
}

void region_of_domes(benchmark::State& state) {
    const PlanExpression plan = village(static_cast<int>(state.range(0)));
    for (auto _ : state) {
        auto region = fast_region(plan);
        if (!region)
            state.SkipWithError("not decided in doubles");
        benchmark::DoNotOptimize(region);
    }
    state.counters["shapes"] = static_cast<double>(plan.shapes.size());
    state.SetComplexityN(state.range(0));
}
BENCHMARK(region_of_domes)
    ->Arg(1)
    ->Arg(4)
    ->Arg(16)
    ->Arg(64)
    ->Complexity(benchmark::oNLogN)
    ->Unit(benchmark::kMicrosecond);

void region_of_a_ring(benchmark::State& state) {
    PlanExpression plan;
    plan.shapes = {Disc{{0, 0}, 1.8}, Disc{{0, 0}, 1.4}, Box{{0, 0}, {0, 1}, 0, 100, -0.4, 0.4}};
    plan.terms = {{"ring", 0, {1, 2}}};
    for (auto _ : state)
        benchmark::DoNotOptimize(fast_region(plan));
}
BENCHMARK(region_of_a_ring)->Unit(benchmark::kMicrosecond);

void exact_region_of_a_dome(benchmark::State& state) {
    const PlanExpression plan = village(1);
    for (auto _ : state)
        benchmark::DoNotOptimize(exact_region(plan));
}
BENCHMARK(exact_region_of_a_dome)->Unit(benchmark::kMillisecond);

void runs_of_a_ring(benchmark::State& state) {
    const Path path = CirclePath{{0, 0}, 1.59, {37}};
    std::vector<Shape> taken;
    for (const double bearing : {37.0, 110.0, 160.0, 215.0, 260.0, 310.0})
        taken.push_back(Box{{0, 0}, along({bearing}), 0, 100, -0.2, 0.2});
    for (auto _ : state)
        benchmark::DoNotOptimize(kept_intervals(path, taken));
}
BENCHMARK(runs_of_a_ring)->Unit(benchmark::kMicrosecond);

} // namespace
