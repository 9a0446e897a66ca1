// What the passes taught, taken over: the car, its kept setups, its limits, and its words.
#include <gmock/gmock.h>

#include <memory>

#include "geometry/compare/setup_changes.h"
#include "geometry/edits/edit.h"
#include "tests/support/edit_tools.h"
#include "tests/support/made_launch.h"

namespace bolthole {
namespace {

Car launchable() {
    Car car = CarGenerator(77).draw(Layout::triangulated);
    car.launch = makeLaunchSetup();
    dressForLaunch(car);
    return car;
}

/// With a setup that has other clicks, and one with another converter.
Car withSetups() {
    Car car = applied(launchable(), KeepSetup{"base", "2026-11-20", "", nullptr});
    Car other = applied(launchable(), SetNumber{{.field = Field::frontReboundClick}, 8});
    car = applied(car, KeepSetup{"rebound", "2026-11-20", "", std::make_shared<const Car>(other)});
    other = applied(launchable(), SetNumber{{.field = Field::stallSpeed}, 2800 * kRpm});
    return applied(car, KeepSetup{"converter", "2026-11-20", "", std::make_shared<const Car>(other)});
}

CorrectLaunch whole() {
    return {.friction = 1.1,
            .stallSpeed = 3650 * kRpm,
            .peakSlip = 11,
            .torqueScale = 0.9,
            .frontDampingScale = 1.2,
            .rearDampingScale = 0.8};
}

}  // namespace

TEST(CorrectLaunch, WritesNumbersAndScalesTables) {
    const Car car = launchable();
    const Car taught = applied(car, whole());
    EXPECT_EQ(taught.launch.friction, 1.1);
    EXPECT_EQ(taught.launch.coupling.stallSpeed, 3650 * kRpm);
    EXPECT_EQ(taught.launch.tire.peakSlip, 11);
    EXPECT_NEAR(taught.launch.engine.torque[3].torque, 0.9 * car.launch.engine.torque[3].torque, 1e-9);
    EXPECT_EQ(taught.launch.engine.torque[3].speed, car.launch.engine.torque[3].speed);
    EXPECT_NEAR(taught.launch.front.damping->rebound.force[1][2],
                1.2 * car.launch.front.damping->rebound.force[1][2], 1e-9);
    EXPECT_EQ(taught.launch.front.damping->rebound.at, car.launch.front.damping->rebound.at);
    EXPECT_NEAR(taught.springs[1].damping->bump.force[0][4], 0.8 * car.springs[1].damping->bump.force[0][4],
                1e-9);
}

// Forces as a person would write them.
TEST(CorrectLaunch, TablesKeepFourDigits) {
    const Car car = launchable();  // 800 * 0.5 * 0.25 = 100 N and so on
    const Car taught = applied(car, CorrectLaunch{.rearDampingScale = 1.23456});
    EXPECT_EQ(taught.springs[1].damping->bump.force[0][0], 123.5);
    EXPECT_EQ(taught.springs[1].damping->bump.force[1][4], 2370);  // 1920 * 1.23456 = 2370.4
}

TEST(CorrectLaunch, KeptSetupsLearnTheSame) {
    const Car car = withSetups();
    const Car taught = applied(car, whole());
    EXPECT_TRUE(isSameSetup(taught, *taught.kept[0].car)) << "the bench is still that setup";
    EXPECT_EQ(setupChanges(*taught.kept[0].car, *taught.kept[1].car, Units::metric),
              setupChanges(*car.kept[0].car, *car.kept[1].car, Units::metric));
    EXPECT_EQ(taught.kept[2].car->launch.coupling.stallSpeed, 2800 * kRpm) << "another converter";
    EXPECT_EQ(taught.kept[2].car->launch.friction, 1.1);
    EXPECT_EQ(taught.stateName, car.stateName);
}

TEST(CorrectLaunch, NothingTaughtIsNothingChanged) {
    const Car car = withSetups();
    EXPECT_EQ(applied(car, CorrectLaunch{}), car);
}

TEST(CorrectLaunch, RefusesWhatLeavesTheLimitsAndChangesNothing) {
    Car car = withSetups();
    expectRefused(car, CorrectLaunch{.friction = 11}, "tire friction: expected a friction");
    expectRefused(car, CorrectLaunch{.peakSlip = -1}, "expected");
    expectRefused(car, CorrectLaunch{.torqueScale = 0}, "expected scales above 0");
    expectRefused(car, CorrectLaunch{.frontDampingScale = std::numeric_limits<double>::quiet_NaN()},
                  "expected scales above 0");
    expectRefused(car, CorrectLaunch{.torqueScale = 1000}, "engine: expected a torque within");
    expectRefused(car, CorrectLaunch{.frontDampingScale = 1e5}, "front shock: expected a force");
    expectRefused(car, CorrectLaunch{.rearDampingScale = 1e5}, "shock: expected a force");
    Car strong = *car.kept[1].car;
    strong.launch.engine.torque[0].torque = 99'000;
    car.kept[1].car = std::make_shared<const Car>(strong);
    expectRefused(car, CorrectLaunch{.torqueScale = 1.1}, "kept setup 'rebound', engine: expected a torque");
}

TEST(CorrectLaunch, SaysWhatItDoes) {
    EXPECT_EQ(
        describe(whole(), launchable()),
        "Take over what the passes taught: friction 1.1, torque \u00D7 0.9, front damping \u00D7 1.2, rear "
        "damping \u00D7 0.8, stall speed 3650 rpm, peak slip 11 %");
    EXPECT_EQ(describe(CorrectLaunch{.friction = 1.1}, launchable()),
              "Take over what the passes taught: friction 1.1");
}

}  // namespace bolthole
