// The launch at its limits: lift, grip, a front tire off the ground, and what is not known.
#include "geometry/statics/launch.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/support/car_generator.h"

namespace bolthole {
namespace {

const StandingCar kCar{.mass = 1600, .wheelbase = 2.8, .cgAhead = 1.5, .cgHeight = 0.56};
const CornerWeights kStanding{435, 422, 378, 365};

Stance stance() {
    return {.wheelbase = 2.8,
            .frontTrack = 1.5,
            .rearTrack = 1.45,
            .front = WheelRates{.wheel = 28e3, .tire = 220e3},
            .rear = WheelRates{.wheel = 24e3, .tire = 160e3, .roll = 12e3}};
}

double totalOf(const LaunchSides& sides) {
    return sides.leftFront + sides.rightFront + sides.leftRear + sides.rightRear;
}

// Moment of all tires about the middle, N m, left heavier +.
double momentOf(const LaunchSides& sides) {
    return (sides.leftFront - sides.rightFront) * 0.75 + (sides.leftRear - sides.rightRear) * 0.725;
}

}  // namespace

TEST(Launch, FrontWheelsLeaveTheGroundAtTheLimit) {
    for (const double grade : {0.0, 0.02, -0.02}) {
        StandingCar car = kCar;
        car.grade = grade;
        const double limit = launchLoads(car, 0).liftAcceleration;
        const LaunchLoads at = launchLoads(car, limit * (1 - 1e-12));
        EXPECT_NEAR(at.front, 0, 1e-6);
        EXPECT_NEAR(at.rear, car.pressing(), 1e-6);
        EXPECT_FALSE(at.wheelsUp);
        const LaunchLoads past = launchLoads(car, limit + 1);
        EXPECT_TRUE(past.wheelsUp);
        EXPECT_DOUBLE_EQ(past.front, 0);
        EXPECT_DOUBLE_EQ(past.rear, car.pressing());
        EXPECT_FALSE(launchAttitude(car, past, 0.2, *stance().front, *stance().rear).has_value());
    }
    EXPECT_LT(
        launchLoads({.mass = 1600, .wheelbase = 2.8, .cgAhead = 1.5, .cgHeight = 0.56, .grade = 0.05}, 0)
            .liftAcceleration,
        launchLoads(kCar, 0).liftAcceleration)
        << "uphill they come up sooner";
}

TEST(Launch, GripGivesWhatTheRearTiresHold) {
    for (const double friction : {0.3, 0.9, 1.4}) {
        const LaunchLoads loads = launchLoads(kCar, gripAcceleration(kCar, friction));
        EXPECT_NEAR(loads.thrust, friction * loads.rear, 1e-8);
    }
    const double limit = launchLoads(kCar, 0).liftAcceleration;
    EXPECT_DOUBLE_EQ(gripAcceleration(kCar, 3.5), limit);
    EXPECT_DOUBLE_EQ(gripAcceleration(kCar, 2.8 / 0.56 + 1), limit) << "every newton brings more than one";
}

// The springs keep their length at 100 % of anti-squat, the body its height only where they open by what the
// tires give.
TEST(Launch, TheBodyRisesAboveWhatTheTiresGive) {
    const WheelRates front{.wheel = 30e3};
    const WheelRates rear{.wheel = 25e3, .tire = 200e3};
    EXPECT_DOUBLE_EQ(risingAntiSquat(rear), 112.5);
    EXPECT_DOUBLE_EQ(risingAntiSquat({.wheel = 25e3}), 100) << "rigid tires";
    const LaunchLoads loads = launchLoads(kCar, 5);
    const auto at = [&](double percent) {
        return launchAttitude(kCar, loads, percent / 100 * kCar.cgHeight / kCar.wheelbase, front, rear)
            .value();
    };
    EXPECT_NEAR(at(100).rearTravel, 0, 1e-15);
    EXPECT_LT(at(100).rearRise, -1e-3);
    EXPECT_NEAR(at(112.5).rearRise, 0, 1e-15);
    EXPECT_GT(at(113).rearRise, 0);
}

TEST(Launch, TireLoadsAddUpAndBalance) {
    CarGenerator generator(21);
    bool sawTireUp = false;
    for (int number = 0; number < 300; ++number) {
        const LaunchLoads loads = launchLoads(kCar, generator.between(0, 28));
        const double torque = generator.between(0, 2500);
        const LaunchSides sides = launchSides(kCar, loads, kStanding, torque, stance()).value();
        sawTireUp = sawTireUp || sides.frontTireUp;
        EXPECT_NEAR(totalOf(sides), kCar.pressing(), 1e-8);
        EXPECT_NEAR(sides.leftFront + sides.rightFront, loads.front, 1e-8);
        EXPECT_GE(std::min(sides.leftFront, sides.rightFront), -1e-9);
        EXPECT_NEAR(momentOf(sides), kStandardGravity * (13 * 0.75 + 13 * 0.725), 1e-8)
            << "the torque pulls on nothing outside the car";
    }
    EXPECT_TRUE(sawTireUp);
}

// Nothing jumps where the left front tire comes off the ground; past it the rear springs alone roll the body.
TEST(Launch, FrontTireComesOffSmoothly) {
    const LaunchLoads loads = launchLoads(kCar, 20);
    double before = 0;
    bool up = false;
    for (double torque = 0; torque < 4000; torque += 5) {
        const LaunchSides sides = launchSides(kCar, loads, kStanding, torque, stance()).value();
        EXPECT_LT(sides.bodyRoll - before, 6.0 / 12e3);
        EXPECT_GE(sides.bodyRoll, before);
        EXPECT_TRUE(sides.frontTireUp || !up) << "and stays off";
        before = sides.bodyRoll;
        up = sides.frontTireUp;
        if (up) {
            EXPECT_NEAR(sides.leftFront, 0, 1e-9);
        }
    }
    EXPECT_TRUE(up);
}

TEST(Launch, MirroredEngineMirrorsTheTires) {
    const LaunchLoads loads = launchLoads(kCar, 5);
    const CornerWeights even{428.5, 428.5, 371.5, 371.5};
    const LaunchSides one = launchSides(kCar, loads, even, 600, stance()).value();
    const LaunchSides other = launchSides(kCar, loads, even, -600, stance()).value();
    EXPECT_NEAR(one.leftRear, other.rightRear, 1e-9);
    EXPECT_NEAR(one.rightFront, other.leftFront, 1e-9);
    EXPECT_NEAR(one.bodyRoll, -other.bodyRoll, 1e-15);
    EXPECT_GT(one.leftRear, one.rightRear);
    EXPECT_GT(one.rightFront, one.leftFront);
}

// The preload that scales show standing is what launching takes away: the rear tires then carry alike.
TEST(Launch, PreloadedCarLaunchesEven) {
    const LaunchLoads loads = launchLoads(kCar, 5);
    const double torque = driveshaftTorque(loads.thrust, 0.34, 3.7);
    const Preload preload = cancelingPreload(torque, stance()).value();
    CornerWeights crossed{428.5, 428.5, 371.5, 371.5};
    crossed.rightRear += preload.rearShift / kStandardGravity;
    crossed.leftRear -= preload.rearShift / kStandardGravity;
    crossed.leftFront += preload.frontShift / kStandardGravity;
    crossed.rightFront -= preload.frontShift / kStandardGravity;
    const LaunchSides sides = launchSides(kCar, loads, crossed, torque, stance()).value();
    EXPECT_NEAR(sides.leftRear, sides.rightRear, 1e-8);
    EXPECT_NEAR(sides.leftFront, sides.rightFront, 1e-8);
    EXPECT_NEAR(sides.bodyRoll + preload.lean, 0, 1e-15);
    EXPECT_LT(preload.lean, 0);
    EXPECT_DOUBLE_EQ(preload.moment, torque);
}

TEST(Launch, NotKnownWithoutRates) {
    const LaunchLoads loads = launchLoads(kCar, 5);
    Stance unknown = stance();
    unknown.rear.reset();
    EXPECT_FALSE(launchSides(kCar, loads, kStanding, 600, unknown).has_value());
    EXPECT_FALSE(cancelingPreload(600, unknown).has_value());
}

TEST(Launch, TorqueByHand) {
    // 8000 N at 0.35 m make 2800 N m at the axle; a 4:1 axle takes 700 from the shaft.
    EXPECT_DOUBLE_EQ(driveshaftTorque(8000, 0.35, 4.0), 700);
    EXPECT_DOUBLE_EQ(springDifference(700, 0.875), 1600);
}

}  // namespace bolthole
