// The solver's inner loop allocates nothing.
#include <gmock/gmock.h>

#include <memory>

#include "geometry/combinations/combination_figures.h"
#include "geometry/kinematics/axle_solver.h"
#include "geometry/kinematics/trace.h"
#include "tests/support/car_generator.h"
#include "tests/support/count_allocations.h"

namespace bolthole {

namespace {

constexpr Layout kLayouts[] = {Layout::triangulated,         Layout::torqueArm,     Layout::parallelTrackBar,
                               Layout::triangulatedTrackBar, Layout::parallelGuide, Layout::ladderGuide};

using Allocation = CountedAllocation;

}  // namespace

TEST_F(Allocation, TheCounterCounts) {
    const long before = allocations;
    const auto one = std::make_unique<double>(1.0);
    const Eigen::VectorXd two = Eigen::VectorXd::Constant(2, *one);
    EXPECT_EQ(allocations - before, 2) << two.sum();
}

TEST_F(Allocation, MovingAllocatesNothing) {
    CarGenerator generator(31);
    for (const Layout layout : kLayouts) {
        AxleSolver solver(buildLinkage(generator.draw(layout)), Drive::roll);
        ASSERT_TRUE(solver.assemble().usable());
        const long before = allocations;
        bool reached = true;
        for (int step = -40; step <= 40; ++step) {
            reached = solver.moveTo(0.002 * step, 0.001 * step).usable() && reached;
        }
        const long after = allocations;
        EXPECT_TRUE(reached);
        EXPECT_EQ(after - before, 0) << "layout " << static_cast<int>(layout);
    }
}

// A second trace into the same storage allocates a fixed handful for the linkage, none for its poses.
TEST_F(Allocation, TraceAllocatesNothingPerPose) {
    CarGenerator generator(32);
    for (const Layout layout : kLayouts) {
        Car car = generator.draw(layout);
        const auto allocationsOf = [&car](int steps) {
            car.travel.steps = steps;
            Trace trace;
            computeTrace(car, trace);
            const long before = allocations;
            computeTrace(car, trace);
            return allocations - before;
        };
        EXPECT_EQ(allocationsOf(81), allocationsOf(2001)) << "layout " << static_cast<int>(layout);
    }
}

// A table of combinations costs nothing but its rows. Reset moves the points of pivots and sliders too.
TEST_F(Allocation, CombinationsAllocateNothingAfterTheFirst) {
    CarGenerator generator(33);
    for (const Layout layout : kLayouts) {
        Car car = generator.draw(layout);
        drillHoles(car, 2, 0.02);
        const CombinationSpace space(car, {});
        ASSERT_GE(space.count(), 4U);
        for (const LengthTreatment treatment :
             {LengthTreatment::keep, LengthTreatment::refit, LengthTreatment::uppers}) {
            if (treatment == LengthTreatment::uppers && !hasUpperRod(car)) {
                continue;
            }
            CombinationSolver solver(car, treatment);
            HoleCombination combination;
            solver.solve(space.at(0), combination);
            const long before = allocations;
            for (std::uint64_t index = 0; index < space.count(); ++index) {
                solver.solve(space.at(index), combination);
            }
            EXPECT_EQ(allocations - before, 0) << "layout " << static_cast<int>(layout);
        }
    }
}

}  // namespace bolthole
