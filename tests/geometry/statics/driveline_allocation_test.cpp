// Sweeps of driveline, link loads and springs allocate nothing for each pose.
#include <array>
#include <memory>

#include "geometry/statics/driveline_figures.h"
#include "geometry/statics/link_loads.h"
#include "geometry/statics/springs.h"
#include "tests/support/car_generator.h"
#include "tests/support/count_allocations.h"
#include "tests/support/made_parts.h"

namespace bolthole {
namespace {

constexpr std::array kShaftLayouts{Layout::triangulated, Layout::torqueArm, Layout::parallelTrackBar,
                                   Layout::ladderGuide};

using SweepAllocation = CountedAllocation;

// Allocations of a second run with as many steps.
template <typename Run>
long secondRun(const Run& run) {
    run();
    const long before = allocations;
    run();
    return allocations - before;
}

}  // namespace

TEST_F(SweepAllocation, TheCounterCounts) {
    const long before = allocations;
    const auto one = std::make_unique<double>(1.0);
    EXPECT_EQ(allocations - before, 1) << *one;
}

TEST_F(SweepAllocation, DrivelineAllocatesNothing) {
    CarGenerator generator(81);
    for (const Layout layout : kShaftLayouts) {
        const Car car = generator.draw(layout);
        const Trace trace = computeTrace(car);
        ShaftSetup setup;
        setup.carrierJoint = Eigen::Vector3d(0.9, 0, 0.35);
        DrivelineReader reader(*car.driveline, setup, car.rearTireRadius);
        DrivelineSweep sweep;
        EXPECT_EQ(secondRun([&] {
                      reader.setRide(trace.ride.pose);
                      sweep = sweepDriveline(reader, trace, 0.03);
                  }),
                  0);
        EXPECT_GT(sweep.equivalent.value, 0);
    }
}

TEST_F(SweepAllocation, LinkLoadsAllocateNothing) {
    CarGenerator generator(82);
    for (const Layout layout : kShaftLayouts) {
        const Car car = generator.draw(layout);
        const Trace trace = computeTrace(car);
        const Linkage linkage = buildLinkage(car);
        const std::array parts{drawSprings(generator, car.rearTireRadius)};
        const LoadCase load{.thrust = 5000, .axleRatio = 4, .track = 1.5, .unsprungMass = 100};
        LinkLoadSweep sweep;
        EXPECT_EQ(secondRun([&] { sweepLinkLoads(car, linkage, trace, parts, load, sweep); }), 0)
            << "layout " << static_cast<int>(layout);
        EXPECT_GT(sweep.worst[0].largest(), 0);
    }
}

// The linkage itself costs a handful; the poses nothing.
TEST_F(SweepAllocation, SpringsAllocateNothingPerPose) {
    CarGenerator generator(83);
    for (const Layout layout : kShaftLayouts) {
        Car car = generator.draw(layout);
        const std::array parts{drawSprings(generator, car.rearTireRadius)};
        const auto allocationsOf = [&](int steps) {
            car.travel.steps = steps;
            SpringSweep sweep;
            return secondRun([&] { computeSprings(car, parts, sweep); });
        };
        EXPECT_EQ(allocationsOf(21), allocationsOf(501)) << "layout " << static_cast<int>(layout);
    }
}

}  // namespace bolthole
