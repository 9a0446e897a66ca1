// How long it takes to say the uncertainty of a car's figures. Built with the tests, run by hand on a quiet
// machine:
//
//   .build/tests/tests/bench/uncertainty_bench --benchmark_repetitions=5
//   --benchmark_report_aggregates_only=true
#include <benchmark/benchmark.h>

#include <string>

#include "app/carfile/car_file.h"
#include "geometry/uncertainty/ic_cloud.h"
#include "geometry/uncertainty/trace_uncertainty.h"

namespace bolthole {

namespace {

ReadResult demoCar(const std::string& name) {
    return readCarFile(BOLTHOLE_DEMO_DIR "/" + name + ".bolt.json");
}

// What a drag computes beside its trace.
void traceUncertainty(benchmark::State& state, const std::string& name) {
    const ReadResult read = demoCar(name);
    if (!read.loaded) {
        return state.SkipWithError(read.problem.line().c_str());
    }
    TraceUncertainty uncertainty;
    for ([[maybe_unused]] const auto& drag : state) {
        computeUncertainty(read.loaded->car, uncertainty);
        benchmark::DoNotOptimize(uncertainty);
    }
    if (!uncertainty.known) {
        state.SkipWithError("the spread is not known");
    }
    state.counters["inputs"] = static_cast<double>(uncertainty.inputs.size());
}

// The uncertainty of one combination of holes, as `bolthole holes --uncertainty` computes it for each row.
void combinationUncertainty(benchmark::State& state, const std::string& name) {
    const ReadResult read = demoCar(name);
    if (!read.loaded) {
        return state.SkipWithError(read.problem.line().c_str());
    }
    const Car& car = read.loaded->car;
    for ([[maybe_unused]] const auto& row : state) {
        benchmark::DoNotOptimize(computeUncertainty(car, defaultTreatment(car), holesInUse(car)));
    }
}

// 100,000 samples of the instant center on two threads.
void cloud(benchmark::State& state, const std::string& name) {
    const ReadResult read = demoCar(name);
    if (!read.loaded) {
        return state.SkipWithError(read.problem.line().c_str());
    }
    for ([[maybe_unused]] const auto& drawn : state) {
        benchmark::DoNotOptimize(drawCloud(read.loaded->car, SamplePlan{}));
    }
}

#define BOLTHOLE_BENCH_CARS(routine)                                                       \
    BENCHMARK_CAPTURE(routine, wagon, "long-roof-wagon")->Unit(benchmark::kMillisecond);   \
    BENCHMARK_CAPTURE(routine, coupe, "light-coupe")->Unit(benchmark::kMillisecond);       \
    BENCHMARK_CAPTURE(routine, roadster, "gully-roadster")->Unit(benchmark::kMillisecond); \
    BENCHMARK_CAPTURE(routine, sedan, "notch-sedan")->Unit(benchmark::kMillisecond);       \
    BENCHMARK_CAPTURE(routine, pickup, "short-pickup")->Unit(benchmark::kMillisecond)

BOLTHOLE_BENCH_CARS(traceUncertainty);
BOLTHOLE_BENCH_CARS(combinationUncertainty);
BENCHMARK_CAPTURE(cloud, wagon, "long-roof-wagon")
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime()
    ->MeasureProcessCPUTime();
BENCHMARK_CAPTURE(cloud, coupe, "light-coupe")
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime()
    ->MeasureProcessCPUTime();
BENCHMARK_CAPTURE(cloud, roadster, "gully-roadster")
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime()
    ->MeasureProcessCPUTime();
BENCHMARK_CAPTURE(cloud, sedan, "notch-sedan")
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime()
    ->MeasureProcessCPUTime();
BENCHMARK_CAPTURE(cloud, pickup, "short-pickup")
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime()
    ->MeasureProcessCPUTime();

}  // namespace

}  // namespace bolthole
