// A whole launch of an ordinary car, and how launches end that do not get there.
#include <gmock/gmock.h>

#include <algorithm>

#include "geometry/dynamics/launch_run.h"
#include "tests/support/made_launch.h"

namespace bolthole {

namespace {

using testing::DoubleNear;

LaunchInputs plainLaunch(std::uint64_t seed = 7) {
    return makeLaunch(CarGenerator(seed).draw(Layout::triangulated));
}

bool has(const LaunchRun& run, LaunchEventKind kind) {
    return std::ranges::any_of(run.events, [kind](const LaunchEvent& event) { return event.kind == kind; });
}

}  // namespace

TEST(LaunchTime, AnOrdinaryLaunchRunsItsSixtyFeet) {
    const LaunchRun run = simulateLaunch(plainLaunch());
    ASSERT_EQ(run.end, LaunchEnd::done) << run.refusal << " at " << run.endTime << " s";
    ASSERT_TRUE(run.figures.sixtyFoot);
    EXPECT_THAT(*run.figures.sixtyFoot, DoubleNear(1.9, 0.8));
    EXPECT_EQ(run.rows.front().time, 0);
    EXPECT_THAT(run.rows.back().time, DoubleNear(std::max(*run.figures.fromRelease, 2.5), 0.01 + 1e-9));
    EXPECT_TRUE(has(run, LaunchEventKind::released));
    EXPECT_TRUE(has(run, LaunchEventKind::sixtyFeet));
}

TEST(LaunchTime, WithoutTorqueItTimesOut) {
    LaunchInputs inputs = plainLaunch();
    for (TorquePoint& point : inputs.engine.torque) {
        point.torque = 1;
    }
    inputs.engine.launchSpeed = 400 * kRpm;
    const LaunchRun run = simulateLaunch(inputs);
    EXPECT_EQ(run.end, LaunchEnd::timeOut);
    EXPECT_FALSE(run.figures.sixtyFoot);
    EXPECT_EQ(run.rows.back().time, kMostTime);
}

TEST(LaunchTime, AClutchThatHoldsTooMuchStallsTheEngine) {
    LaunchInputs inputs = plainLaunch();
    inputs.coupling.kind = CouplingKind::clutch;
    inputs.coupling.capacity = 5000;
    inputs.engine.launchSpeed = 500 * kRpm;
    const LaunchRun run = simulateLaunch(inputs);
    EXPECT_EQ(run.end, LaunchEnd::stalled);
    EXPECT_GT(run.endTime, 0);
    EXPECT_LT(run.endTime, 1);
}

TEST(LaunchTime, ACarThatGoesOverBackwardsEndsThere) {
    LaunchInputs inputs = plainLaunch();
    inputs.bodies.cgHeight = 1.3;
    inputs.tires.friction = 3;
    for (TorquePoint& point : inputs.engine.torque) {
        point.torque *= 2;
    }
    const LaunchRun run = simulateLaunch(inputs);
    ASSERT_EQ(run.end, LaunchEnd::overBackwards);
    EXPECT_TRUE(run.figures.frontUp);
    EXPECT_GT(run.endTime, *run.figures.frontUp);
    EXPECT_LT(run.endTime, kMostTime);
    // Nose up by the angle at which the center of gravity stands over the rear wheels, and not far past it.
    const double over = std::atan2(inputs.bodies.cgAhead, inputs.bodies.cgHeight - inputs.bodies.rearRadius);
    EXPECT_NEAR(-run.rows.back().pitch, over, 0.1);
}

TEST(LaunchTime, RefusesWhatCannotBeComputed) {
    LaunchInputs inputs = plainLaunch();
    inputs.bodies.pitchInertia = 0;
    EXPECT_EQ(simulateLaunch(inputs).end, LaunchEnd::refused);
    inputs = plainLaunch();
    inputs.engine.torque.clear();
    EXPECT_THAT(simulateLaunch(inputs).refusal, testing::HasSubstr("torque curve"));
}

TEST(LaunchTime, SaysWhichNumbersAreMissing) {
    Car car = CarGenerator(7).draw(Layout::triangulated);
    const LaunchInputsResult result = launchInputsOf(car);
    EXPECT_FALSE(result.inputs);
    EXPECT_THAT(result.missing,
                testing::Contains(testing::Field(&MissingInput::path, "launch.wheel_inertia")));
    EXPECT_THAT(result.missing,
                testing::Contains(testing::Field(&MissingInput::path, "launch.engine.torque")));
    car.launch = makeLaunchSetup();
    dressForLaunch(car);
    EXPECT_TRUE(launchInputsOf(car).inputs);
    car.springs[1].damping->rebound.at.reset();
    EXPECT_THAT(launchInputsOf(car).missing,
                testing::Contains(testing::Field(&MissingInput::path, "springs[1].damping.rebound.at")));
}

}  // namespace bolthole
