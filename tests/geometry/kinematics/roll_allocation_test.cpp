// Roll allocates nothing a pose.
#include <gmock/gmock.h>

#include "geometry/kinematics/roll.h"
#include "tests/support/car_generator.h"
#include "tests/support/count_allocations.h"

namespace bolthole {

using RollAllocation = CountedAllocation;

TEST_F(RollAllocation, ReadingAndMovingAllocateNothing) {
    CarGenerator generator(34);
    for (const Layout layout :
         {Layout::apart, Layout::torqueArm, Layout::parallelTrackBar, Layout::ladderGuide}) {
        const Car car = generator.draw(layout);
        AxleSolver solver(buildLinkage(car), Drive::roll);
        const RollReader reader(car);
        ASSERT_TRUE(solver.assemble().usable());
        const long before = allocations;
        double sum = 0;
        for (int step = -50; step <= 50; ++step) {
            const double roll = 0.001 * step;
            if (solver.moveTo(0, roll).usable()) {
                sum += reader.read(solver, 0, roll).center;
            }
        }
        const long after = allocations;
        EXPECT_GT(std::abs(sum), 0);
        EXPECT_EQ(after - before, 0) << "layout " << static_cast<int>(layout);
    }
}

TEST_F(RollAllocation, ATraceIntoTheSameStorageAllocatesNothingPerPose) {
    CarGenerator generator(35);
    for (const Layout layout : {Layout::apart, Layout::parallelGuide}) {
        Car car = generator.draw(layout);
        const auto allocationsOf = [&car](int steps) {
            car.travel.steps = steps;
            RollTrace trace;
            computeRollTrace(car, {0.05, steps}, trace);
            const long before = allocations;
            computeRollTrace(car, {0.05, steps}, trace);
            return allocations - before;
        };
        EXPECT_EQ(allocationsOf(13), allocationsOf(2001)) << "layout " << static_cast<int>(layout);
    }
}

}  // namespace bolthole
