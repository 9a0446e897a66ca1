// How long a launch takes, linkage tables included. Built with the tests, run by hand on a quiet machine:
//
//   .build/release/tests/bench/launch_bench --benchmark_repetitions=5 --benchmark_report_aggregates_only=true
//
// Counters: steps taken, kinks crossed, evaluations of the equations in full.
#include <benchmark/benchmark.h>

#include <string>

#include "app/carfile/car_file.h"
#include "geometry/dynamics/launch_run.h"
#include "geometry/kinematics/trace.h"
#include "tests/support/made_launch.h"

namespace bolthole {

namespace {

void launch(benchmark::State& state, const LaunchInputs& inputs) {
    LaunchSimulator simulator;
    LaunchRun run;
    for ([[maybe_unused]] const auto& once : state) {
        simulator.run(inputs, {}, run);
        benchmark::DoNotOptimize(run);
    }
    if (run.end != LaunchEnd::done) {
        state.SkipWithError("the launch did not get to 60 ft");
    }
    state.counters["steps"] = run.steps;
    state.counters["rejected"] = run.rejected;
    state.counters["crossings"] = run.crossings;
    state.counters["evaluations"] = static_cast<double>(run.evaluations);
}

Car demoCar(benchmark::State& state, const std::string& file) {
    const ReadResult result = readCarFile(BOLTHOLE_DEMO_DIR "/" + file);
    if (!result.loaded) {
        state.SkipWithError(result.problem.line().c_str());
        return {};
    }
    return result.loaded->car;
}

void demoLaunch(benchmark::State& state, const std::string& file) {
    launch(state, makeLaunch(demoCar(state, file)));
}

void clutchLaunch(benchmark::State& state, const std::string& file) {
    EnteredLaunch setup = makeLaunchSetup();
    setup.coupling.kind = CouplingKind::clutch;
    setup.engine.launchSpeed = 4200 * kRpm;
    launch(state, makeLaunch(demoCar(state, file), setup));
}

// The tables alone, over the travel entered.
void tables(benchmark::State& state, const std::string& file) {
    const LaunchInputs inputs = makeLaunch(demoCar(state, file));
    LaunchModel model;
    for ([[maybe_unused]] const auto& once : state) {
        benchmark::DoNotOptimize(model.prepare(inputs));
    }
    state.counters["nodes"] = static_cast<double>(model.table().nodeCount());
}

// One evaluation of the equations.
void equations(benchmark::State& state, const std::string& file) {
    LaunchModel model;
    if (!model.prepare(makeLaunch(demoCar(state, file))).usable()) {
        return state.SkipWithError("the car can't be assembled");
    }
    LaunchState at = model.atRest();
    at[kForwardRate] = 3;
    at[kRearTravel] = 0.01;
    LaunchState rates{};
    model.observe(1, at);
    model.choosePieces();
    for ([[maybe_unused]] const auto& once : state) {
        model.observe(1, at);
        model.derive(rates);
        benchmark::DoNotOptimize(rates);
    }
}

// What a drag computes anyway, to compare with.
void trace(benchmark::State& state, const std::string& file) {
    const Car car = demoCar(state, file);
    Trace traced;
    for ([[maybe_unused]] const auto& once : state) {
        computeTrace(car, traced);
        benchmark::DoNotOptimize(traced);
    }
}

BENCHMARK_CAPTURE(demoLaunch, wagon, "long-roof-wagon.bolt.json");
BENCHMARK_CAPTURE(demoLaunch, coupe, "light-coupe.bolt.json");
BENCHMARK_CAPTURE(clutchLaunch, wagon, "long-roof-wagon.bolt.json");
BENCHMARK_CAPTURE(clutchLaunch, coupe, "light-coupe.bolt.json");
BENCHMARK_CAPTURE(tables, wagon, "long-roof-wagon.bolt.json");
BENCHMARK_CAPTURE(tables, coupe, "light-coupe.bolt.json");
BENCHMARK_CAPTURE(equations, wagon, "long-roof-wagon.bolt.json");
BENCHMARK_CAPTURE(trace, wagon, "long-roof-wagon.bolt.json");

}  // namespace

}  // namespace bolthole
