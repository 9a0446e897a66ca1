// How long the solver and the trace take. Built with the tests, run by hand on a quiet machine:
//
//   .build/release/tests/bench/geometry_bench --benchmark_repetitions=5
//   --benchmark_report_aggregates_only=true
//
// Items are poses, so the items-per-second column is poses per second; the counter `per_pose` is seconds per
// pose.
#include <benchmark/benchmark.h>

#include <string>

#include "app/carfile/car_file.h"
#include "geometry/kinematics/axle_solver.h"
#include "geometry/kinematics/trace.h"
#include "tests/support/car_generator.h"

namespace bolthole {

namespace {

constexpr int kPoses = 81;
constexpr double kTravel = 0.09;  // m, each way

Car benchCar(Layout layout) {
    return CarGenerator(1959).draw(layout);
}

// Travel of the poses, up from full droop and back down, so that a lap ends where it began.
double lapTravel(int pose) {
    const double share = static_cast<double>(pose) / (kPoses - 1);
    return kTravel * (share < 0.5 ? 4 * share - 1 : 3 - 4 * share);
}

void countPoses(benchmark::State& state) {
    const auto poses = static_cast<double>(state.iterations()) * kPoses;
    state.SetItemsProcessed(static_cast<std::int64_t>(poses));
    state.counters["per_pose"] =
        benchmark::Counter(poses, benchmark::Counter::kIsRate | benchmark::Counter::kInvert);
}

// The pose and its rates, without figures: 4.5 mm a step.
void poseAlone(benchmark::State& state, Layout layout) {
    AxleSolver solver(buildLinkage(benchCar(layout)), Drive::travel);
    if (!solver.assemble().usable() || !solver.moveTo(-kTravel).usable()) {
        return state.SkipWithError("the car can't be assembled");
    }
    for ([[maybe_unused]] const auto& lap : state) {
        for (int pose = 0; pose < kPoses; ++pose) {
            benchmark::DoNotOptimize(solver.moveTo(lapTravel(pose)));
        }
        benchmark::ClobberMemory();
    }
    countPoses(state);
}

// The same with every figure read.
void poseWithFigures(benchmark::State& state, Layout layout) {
    const Car car = benchCar(layout);
    AxleSolver solver(buildLinkage(car), Drive::travel);
    FigureReader reader(car);
    Station station;
    if (!solver.assemble().usable() || !solver.moveTo(-kTravel).usable()) {
        return state.SkipWithError("the car can't be assembled");
    }
    reader.setRide(solver.pose());
    for ([[maybe_unused]] const auto& lap : state) {
        for (int pose = 0; pose < kPoses; ++pose) {
            benchmark::DoNotOptimize(solver.moveTo(lapTravel(pose)));
            reader.read(solver, lapTravel(pose), station);
            benchmark::DoNotOptimize(station);
        }
    }
    countPoses(state);
}

// A whole trace of 81 steps as the window computes it, linkage built anew, storage reused.
void traceOf(benchmark::State& state, Car car) {
    car.travel.steps = kPoses;
    Trace trace;
    for ([[maybe_unused]] const auto& drag : state) {
        computeTrace(car, trace);
        benchmark::DoNotOptimize(trace);
    }
    if (trace.stations.size() != kPoses || !trace.bumpEnd.usable() || !trace.droopEnd.usable()) {
        state.SkipWithError("the trace is not whole");
    }
    countPoses(state);
}

void wholeTrace(benchmark::State& state, Layout layout) {
    traceOf(state, benchCar(layout));
}

void demoTrace(benchmark::State& state, const std::string& file) {
    const ReadResult result = readCarFile(BOLTHOLE_DEMO_DIR "/" + file);
    if (!result.loaded) {
        return state.SkipWithError(result.problem.line().c_str());
    }
    traceOf(state, result.loaded->car);
}

// Roll at ride, 81 poses from -3 to 3 degrees and back.
void rollStep(benchmark::State& state, Layout layout) {
    AxleSolver solver(buildLinkage(benchCar(layout)), Drive::roll);
    const double share = 3.0 * kRadiansPerDegree / kTravel;
    if (!solver.assemble().usable() || !solver.moveTo(0, -kTravel * share).usable()) {
        return state.SkipWithError("the car can't be assembled");
    }
    for ([[maybe_unused]] const auto& lap : state) {
        for (int pose = 0; pose < kPoses; ++pose) {
            benchmark::DoNotOptimize(solver.moveTo(0, lapTravel(pose) * share));
            benchmark::DoNotOptimize(solver.rollRates());
        }
    }
    countPoses(state);
}

BENCHMARK_CAPTURE(poseAlone, triangulated, Layout::triangulated);
BENCHMARK_CAPTURE(poseAlone, over_held, Layout::triangulatedTrackBar);
BENCHMARK_CAPTURE(poseWithFigures, triangulated, Layout::triangulated);
BENCHMARK_CAPTURE(poseWithFigures, over_held, Layout::triangulatedTrackBar);
BENCHMARK_CAPTURE(wholeTrace, triangulated, Layout::triangulated);
BENCHMARK_CAPTURE(wholeTrace, held_by_symmetry, Layout::parallel);
BENCHMARK_CAPTURE(wholeTrace, over_held, Layout::triangulatedTrackBar);
BENCHMARK_CAPTURE(demoTrace, wagon, "long-roof-wagon.bolt.json");
BENCHMARK_CAPTURE(demoTrace, coupe, "light-coupe.bolt.json");
BENCHMARK_CAPTURE(rollStep, triangulated, Layout::triangulated);
BENCHMARK_CAPTURE(rollStep, over_held, Layout::parallelGuide);

}  // namespace

}  // namespace bolthole
