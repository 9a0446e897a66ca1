// Laws that hold for the launch of any car.
#include <gmock/gmock.h>

#include <cmath>
#include <cstdint>

#include "geometry/dynamics/damping_line.h"
#include "geometry/dynamics/launch_run.h"
#include "tests/support/made_launch.h"

namespace bolthole {

namespace {

constexpr Layout kLayouts[] = {
    Layout::triangulated,         Layout::apart,      Layout::threeLink,     Layout::torqueArm,
    Layout::wattsThreeLink,       Layout::parallel,   Layout::parallelGuide, Layout::parallelTrackBar,
    Layout::triangulatedTrackBar, Layout::ladderGuide};

bool isFinite(const LaunchRow& row) {
    for (const double number :
         {row.time, row.distance, row.speed, row.acceleration, row.engineSpeed, row.turbineSpeed, row.slip,
          row.rearTravel, row.frontTravel, row.pitch, row.rearLoad, row.frontLoad, row.thrust, row.grip,
          row.forward, row.up, row.wheelSpin}) {
        if (!std::isfinite(number)) {
            return false;
        }
    }
    return true;
}

// Anything from meek to absurd, as a person may mistype it.
EnteredLaunch drawSetup(CarGenerator& generator) {
    EnteredLaunch setup = makeLaunchSetup();
    const auto factor = [&generator] { return std::exp(generator.between(-1.2, 1.2)); };
    *setup.frontUnsprungMass *= factor();
    *setup.pitchInertia *= factor();
    *setup.wheelInertia *= factor();
    *setup.engine.inertia *= factor();
    *setup.engine.launchSpeed *= factor();
    *setup.coupling.stallSpeed *= factor();
    *setup.coupling.capacity *= factor();
    *setup.front.droop *= factor();
    *setup.front.bump *= factor();
    setup.front.damping = makeDamping(700 * factor(), 1100 * factor());
    setup.coupling.kind = generator.between(0, 1) < 0.5 ? CouplingKind::clutch : CouplingKind::converter;
    setup.release = generator.between(0, 0.3);
    setup.rollout = generator.between(0, 0.4);
    for (TorquePoint& point : setup.engine.torque) {
        point.torque *= factor();
    }
    return setup;
}

void expectSound(const LaunchRun& run) {
    EXPECT_THAT(run.end, testing::AnyOf(LaunchEnd::done, LaunchEnd::timeOut, LaunchEnd::stalled,
                                        LaunchEnd::linksEnd, LaunchEnd::overBackwards));
    EXPECT_TRUE(run.refusal.empty()) << run.refusal;
    EXPECT_GE(run.endTime, 0);
    EXPECT_LE(run.endTime, kMostTime);
    for (const LaunchRow& row : run.rows) {
        ASSERT_TRUE(isFinite(row)) << "at " << row.time;
        EXPECT_GE(row.rearLoad, 0);
        EXPECT_GE(row.frontLoad, 0);
    }
    EXPECT_TRUE(std::ranges::is_sorted(run.events, {}, &LaunchEvent::time));
    if (run.figures.sixtyFoot) {
        EXPECT_GT(*run.figures.sixtyFoot, 0);
        EXPECT_LE(*run.figures.sixtyFoot, *run.figures.fromRelease);
    }
    if (run.end == LaunchEnd::done) {
        EXPECT_TRUE(run.figures.sixtyFoot);
        EXPECT_GE(run.endTime, kLeastTime - 1e-9);
    }
}

}  // namespace

TEST(LaunchTimeLaws, AnyCarEndsForAReasonAndIsANumber) {
    LaunchSimulator simulator;
    LaunchRun run;
    int done = 0;
    for (const Layout layout : kLayouts) {
        CarGenerator generator(3000 + static_cast<std::uint64_t>(layout));
        for (int number = 0; number < 30; ++number) {
            SCOPED_TRACE(testing::Message() << "layout " << static_cast<int>(layout) << ", car " << number);
            Car car = generator.draw(layout);
            car.launch.friction = generator.between(0.4, 2.2);
            const LaunchInputs inputs = makeLaunch(car, drawSetup(generator));
            simulator.run(inputs, {}, run);
            expectSound(run);
            done += run.end == LaunchEnd::done ? 1 : 0;
        }
    }
    EXPECT_GT(done, 150);  // most get there
}

// The same inputs give the same numbers to the last digit, whatever was computed before.
TEST(LaunchTimeLaws, ARunDoesNotDependOnTheOneBefore) {
    CarGenerator generator(31);
    const LaunchInputs one = makeLaunch(generator.draw(Layout::triangulated));
    const LaunchInputs other = makeLaunch(generator.draw(Layout::torqueArm));
    LaunchSimulator simulator;
    LaunchRun again;
    simulator.run(other, {}, again);
    simulator.run(one, {}, again);
    const LaunchRun fresh = simulateLaunch(one);
    ASSERT_EQ(again.rows.size(), fresh.rows.size());
    EXPECT_EQ(again.figures.sixtyFoot, fresh.figures.sixtyFoot);
    EXPECT_EQ(again.figures.leastRearLoad, fresh.figures.leastRearLoad);
    for (std::size_t row = 0; row < fresh.rows.size(); ++row) {
        EXPECT_EQ(again.rows[row].distance, fresh.rows[row].distance);
        EXPECT_EQ(again.rows[row].rearLoad, fresh.rows[row].rearLoad);
    }
}

// A mirrored car is the same half-car.
TEST(LaunchTimeLaws, LeftAndRightMayChangePlaces) {
    for (const Layout layout : kLayouts) {
        Car car = CarGenerator(60 + static_cast<std::uint64_t>(layout)).draw(layout);
        const LaunchRun one = simulateLaunch(makeLaunch(car));
        mirror(car);
        const LaunchRun other = simulateLaunch(makeLaunch(car));
        ASSERT_EQ(one.end, other.end);
        ASSERT_EQ(one.rows.size(), other.rows.size());
        for (std::size_t row = 0; row < one.rows.size(); ++row) {
            EXPECT_NEAR(one.rows[row].distance, other.rows[row].distance, 1e-6);
            EXPECT_NEAR(one.rows[row].rearTravel, other.rows[row].rearTravel, 1e-6);
        }
    }
}

// What a car is shown in is no part of its launch.
TEST(LaunchTimeLaws, InchesAndMillimetersAreTheSame) {
    for (const Layout layout : kLayouts) {
        Car car = CarGenerator(80 + static_cast<std::uint64_t>(layout)).draw(layout);
        car.units = Units::inch;
        const LaunchRun one = simulateLaunch(makeLaunch(car));
        car.units = Units::metric;
        const LaunchRun other = simulateLaunch(makeLaunch(car));
        EXPECT_EQ(one.end, other.end);
        EXPECT_EQ(one.figures.sixtyFoot, other.figures.sixtyFoot);
        EXPECT_EQ(one.figures.leastRearLoad, other.figures.leastRearLoad);
    }
}

// Twice the clicks there are: the launch is that of the last one.
TEST(LaunchTimeLaws, ClicksPastTheTableAreTheLast) {
    for (const Layout layout : kLayouts) {
        LaunchInputs inputs = makeLaunch(CarGenerator(85 + static_cast<std::uint64_t>(layout)).draw(layout));
        const auto at = [&inputs](double click) {
            inputs.front.damping->bump.at = inputs.front.damping->rebound.at = click;
            for (LaunchPart& part : inputs.parts) {
                if (part.damping) {
                    part.damping->bump.at = part.damping->rebound.at = click;
                }
            }
            return simulateLaunch(inputs);
        };
        const LaunchRun last = at(10);
        const LaunchRun twice = at(20);
        EXPECT_EQ(last.end, twice.end);
        EXPECT_EQ(last.figures.sixtyFoot, twice.figures.sixtyFoot);
        EXPECT_EQ(last.figures.leastRearLoad, twice.figures.leastRearLoad);
        EXPECT_EQ(at(0).figures.sixtyFoot, at(-10).figures.sixtyFoot);
    }
}

// Past its end clicks a table goes on with their rows, so that a click beyond changes nothing.
TEST(LaunchTimeLaws, NothingHappensPastTheEndClicks) {
    Damping damping = makeDamping(700, 1100);
    damping.rebound.at = 10;
    const KinkedLine last = dampingLine(damping);
    damping.rebound.at = 20;
    const KinkedLine past = dampingLine(damping);
    for (double speed = -1; speed < 1; speed += 0.01) {
        EXPECT_EQ(last.at(speed), past.at(speed));
    }
}

}  // namespace bolthole
