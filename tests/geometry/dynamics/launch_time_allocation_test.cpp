// A launch allocates nothing for its steps.
#include <gmock/gmock.h>

#include "geometry/dynamics/launch_run.h"
#include "tests/support/count_allocations.h"
#include "tests/support/made_launch.h"

namespace bolthole {

namespace {

using LaunchTimeAllocation = CountedAllocation;

}  // namespace

TEST_F(LaunchTimeAllocation, NoneForSteps) {
    for (const Layout layout : {Layout::triangulated, Layout::apart, Layout::parallelTrackBar}) {
        const LaunchInputs inputs = makeLaunch(CarGenerator(8).draw(layout));
        LaunchSimulator simulator;
        LaunchRun run;
        const auto allocationsOf = [&](double tolerance) {
            simulator.run(inputs, {.tolerance = tolerance}, run);
            const int steps = run.steps;
            const long before = allocations;
            simulator.run(inputs, {.tolerance = tolerance}, run);
            EXPECT_EQ(run.steps, steps);
            return std::pair(allocations - before, steps);
        };
        const auto [few, fewSteps] = allocationsOf(1);
        const auto [many, manySteps] = allocationsOf(1e-5);
        EXPECT_GT(manySteps, 2 * fewSteps);
        EXPECT_EQ(few, many);
    }
}

}  // namespace bolthole
