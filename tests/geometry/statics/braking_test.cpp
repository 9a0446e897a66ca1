// Anti-lift and axle loads on the brakes: by hand, at the limits, and what is said of them.
#include "geometry/statics/braking.h"

#include <gtest/gtest.h>

namespace bolthole {
namespace {

const StandingCar kBrakingCar{.mass = 1500, .wheelbase = 2.8, .cgAhead = 1.5, .cgHeight = 0.56};

}  // namespace

TEST(Braking, AntiLiftByHand) {
    // h/L 0.2; a swing arm at 0.3 gives 150 % of anti-squat, and 40 % of the brakes in the rear 60 % of
    // anti-lift.
    EXPECT_NEAR(rearAntiLift(0.3, 0.56, 2.8, 0.4), 60, 1e-12);
    EXPECT_DOUBLE_EQ(rearAntiLift(0.3, 0.56, 2.8, 0.0), 0) << "no rear brakes, no help";
    EXPECT_LT(rearAntiLift(-0.1, 0.56, 2.8, 0.4), 0) << "a swing arm that falls forward lifts the rear";
}

TEST(Braking, AxleLoadsByHand) {
    const BrakeLoads loads = brakeLoads(kBrakingCar, 5.0, 0.3, 0.25);
    EXPECT_NEAR(loads.transfer, 1500 * 5 * 0.2, 1e-9);
    EXPECT_NEAR(loads.rear, 1500 * kStandardGravity * 1.3 / 2.8 - 1500, 1e-9);
    EXPECT_NEAR(loads.front + loads.rear, 1500 * kStandardGravity, 1e-9);
    EXPECT_NEAR(loads.rearBrake, 2250, 1e-9);
    EXPECT_FALSE(loads.rearUp);
    EXPECT_FALSE(loads.rearLocksFirst);
    // 1500 N less on the rear axle, 37.5 % of it held by the links; 50 kN/m for the axle.
    EXPECT_NEAR(brakeTravel(loads, {.wheel = 25e3}).value(), -1500 * 0.625 / 50e3, 1e-12);
    EXPECT_NEAR(brakeTravel(brakeLoads(kBrakingCar, 5.0, 0.8, 0.25), {.wheel = 25e3}).value(), 0, 1e-12)
        << "100 % of anti-lift";
}

TEST(Braking, RearTiresLeaveTheGroundAtTheLimit) {
    const double limit = kStandardGravity * 1.3 / 0.56;
    EXPECT_FALSE(brakeLoads(kBrakingCar, limit * (1 - 1e-9), 0.3, 0.2).rearUp);
    const BrakeLoads past = brakeLoads(kBrakingCar, limit * (1 + 1e-9), 0.3, 0.2);
    EXPECT_TRUE(past.rearUp);
    EXPECT_DOUBLE_EQ(past.rear, 0);
    EXPECT_FALSE(brakeTravel(past, {.wheel = 25e3}).has_value());
}

// The rear locks first where its share of the brakes is above its share of the load.
TEST(Braking, RearLocksFirstAboveItsShareOfTheLoad) {
    for (const double deceleration : {1.0, 4.0, 8.0}) {
        const BrakeLoads even = brakeLoads(kBrakingCar, deceleration, 0.3, 0.2);
        const double share = even.rear / (even.front + even.rear);
        EXPECT_FALSE(brakeLoads(kBrakingCar, deceleration, share - 1e-6, 0.2).rearLocksFirst);
        EXPECT_TRUE(brakeLoads(kBrakingCar, deceleration, share + 1e-6, 0.2).rearLocksFirst);
    }
}

TEST(Braking, AClimbBrakesToo) {
    StandingCar uphill = kBrakingCar;
    uphill.grade = 0.1;
    EXPECT_LT(brakeLoads(uphill, 4.0, 0.3, 0.2).rearBrake, brakeLoads(kBrakingCar, 4.0, 0.3, 0.2).rearBrake);
    EXPECT_DOUBLE_EQ(brakeLoads(uphill, 0.5, 0.3, 0.2).rearBrake, 0) << "the grade alone slows it more";
}

TEST(Braking, WarnsOnlyOfWhatIsDoubtful) {
    EXPECT_FALSE(antiLiftWarning(0));
    EXPECT_FALSE(antiLiftWarning(100));
    EXPECT_NE(antiLiftWarning(130).value_or(Finding{}).cause.find("130 % pulls the rear down"),
              std::string::npos);
    EXPECT_NE(antiLiftWarning(-12).value_or(Finding{}).cause.find("lifts the rear"), std::string::npos);
}

}  // namespace bolthole
