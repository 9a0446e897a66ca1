// How long hole combinations take. Built with the tests, run by hand on a quiet machine:
//
//   .build/release/tests/bench/combination_bench
//
// Items are combinations; the counter `per_combination` is seconds per combination on one thread, `assembled`
// the share of the combinations that can be assembled. Every combination is computed over 81 steps of travel.
#include <benchmark/benchmark.h>

#include <algorithm>
#include <thread>
#include <vector>

#include "geometry/combinations/combination_figures.h"
#include "tests/support/car_generator.h"

namespace bolthole {

namespace {

constexpr int kSteps = 81;

/// A four-link with `holes` holes at each of its four brackets, all within 2 in.
Car benchCar(Layout layout, int holes) {
    Car car = CarGenerator(1959).draw(layout);
    drillHoles(car, holes, 0.05 / (holes - 1));
    car.travel.steps = kSteps;
    return car;
}

void countCombinations(benchmark::State& state, std::uint64_t combinations, std::uint64_t assembled) {
    const double total = static_cast<double>(state.iterations()) * static_cast<double>(combinations);
    state.SetItemsProcessed(static_cast<std::int64_t>(total));
    state.counters["per_choice"] =
        benchmark::Counter(total, benchmark::Counter::kIsRate | benchmark::Counter::kInvert);
    state.counters["assembled"] = static_cast<double>(assembled) / static_cast<double>(combinations);
}

/// Combinations from `first` in steps of `stride`; how many can be assembled.
std::uint64_t solveSome(const Car& car, const CombinationSpace& space, LengthTreatment treatment,
                        std::uint64_t first, std::uint64_t stride,
                        std::vector<HoleCombination>& combinations) {
    CombinationSolver solver(car, treatment);
    std::uint64_t assembled = 0;
    for (std::uint64_t index = first; index < space.count(); index += stride) {
        solver.solve(space.at(index), combinations[index]);
        assembled += combinations[index].assembled ? 1U : 0U;
    }
    return assembled;
}

// One thread, all combinations of a car with so many holes a bracket.
void combinations(benchmark::State& state, LengthTreatment treatment, Layout layout) {
    const Car car = benchCar(layout, static_cast<int>(state.range(0)));
    const CombinationSpace space(car, {});
    std::vector<HoleCombination> all(space.count());
    std::uint64_t assembled = 0;
    for ([[maybe_unused]] const auto& table : state) {
        assembled = solveSome(car, space, treatment, 0, 1, all);
        benchmark::DoNotOptimize(all.data());
    }
    countCombinations(state, space.count(), assembled);
}

// Two threads, every second combination each: how long a person waits.
void combinationsOnTwoThreads(benchmark::State& state, LengthTreatment treatment) {
    const Car car = benchCar(Layout::triangulated, 8);
    const CombinationSpace space(car, {});
    std::vector<HoleCombination> all(space.count());
    for ([[maybe_unused]] const auto& table : state) {
        std::jthread other([&] { solveSome(car, space, treatment, 1, 2, all); });
        solveSome(car, space, treatment, 0, 2, all);
    }
    const auto assembled = std::ranges::count_if(all, &HoleCombination::assembled);
    countCombinations(state, space.count(), static_cast<std::uint64_t>(assembled));
}

// What a combination costs at least: the trace of the car alone.
void traceAlone(benchmark::State& state, Layout layout) {
    const Car car = benchCar(layout, 2);
    const Linkage linkage = buildLinkage(car);
    Trace trace;
    for ([[maybe_unused]] const auto& one : state) {
        computeTrace(car, linkage, trace);
        benchmark::DoNotOptimize(trace);
    }
    countCombinations(state, 1, trace.assembly.usable() ? 1 : 0);
}

BENCHMARK_CAPTURE(traceAlone, triangulated, Layout::triangulated);
BENCHMARK_CAPTURE(traceAlone, held_by_symmetry, Layout::parallel);
BENCHMARK_CAPTURE(combinations, keep, LengthTreatment::keep, Layout::triangulated)->Arg(8);
BENCHMARK_CAPTURE(combinations, reset, LengthTreatment::refit, Layout::triangulated)->Arg(8);
BENCHMARK_CAPTURE(combinations, uppers, LengthTreatment::uppers, Layout::triangulated)->Arg(8);
BENCHMARK_CAPTURE(combinations, uppers_held_by_symmetry, LengthTreatment::uppers, Layout::parallel)->Arg(8);
// 2, 4, 8 and 16 holes a bracket: 16, 256, 4,096 and 65,536 combinations.
BENCHMARK_CAPTURE(combinations, count, LengthTreatment::uppers, Layout::triangulated)
    ->RangeMultiplier(2)
    ->Range(2, 16)
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(combinationsOnTwoThreads, keep, LengthTreatment::keep)
    ->UseRealTime()
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(combinationsOnTwoThreads, reset, LengthTreatment::refit)
    ->UseRealTime()
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(combinationsOnTwoThreads, uppers, LengthTreatment::uppers)
    ->UseRealTime()
    ->Unit(benchmark::kMillisecond);

}  // namespace

}  // namespace bolthole
