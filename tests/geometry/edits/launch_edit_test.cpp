// Edits of what a launch in time takes: the torque curve, numbers that go together, what stands behind the
// engine.
#include <gmock/gmock.h>

#include "geometry/car/numbers.h"
#include "geometry/units/units.h"
#include "tests/support/edit_tools.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

constexpr FieldId kInertia{.field = Field::pitchInertia};
constexpr FieldId kInertiaUncertainty{.field = Field::pitchInertia, .uncertainty = true};

TEST(LaunchEdits, AnEstimateComesWithItsUncertaintyInOneStep) {
    const Car car = plainCar();
    const SetNumbers estimate{{{kInertia, 2100}, {kInertiaUncertainty, 200}}};
    const Car after = applied(car, estimate);
    EXPECT_EQ(after.launch.pitchInertia, 2100);
    EXPECT_EQ(after.uncertainties.of(Field::pitchInertia), 200);
    EXPECT_THAT(describe(estimate, car), testing::AllOf(testing::HasSubstr("Set pitch inertia to "),
                                                        testing::HasSubstr(", with its ±")));
}

TEST(LaunchEdits, OneNumberThatIsRefusedLeavesAllOthers) {
    const Car car = plainCar();
    expectRefused(car, SetNumbers{{{kInertia, 2100}, {{.field = Field::friction}, -1}}}, "friction");
    expectRefused(car, SetNumbers{}, "no number");
}

TEST(LaunchEdits, ATorqueCurveIsEnteredChangedAndTakenAway) {
    const Car car = plainCar();
    ASSERT_TRUE(car.launch.engine.torque.empty());
    const SetTorque two{{{2000 * kRpm, 400}, {5000 * kRpm, 450}}};
    const Car entered = applied(car, two);
    EXPECT_EQ(entered.launch.engine.torque, two.torque);
    EXPECT_EQ(describe(two, car), "Enter a torque curve of 2 rows");
    const SetTorque one{{{2000 * kRpm, 400}}};
    EXPECT_EQ(describe(one, entered), "Change the torque curve to 1 row");
    EXPECT_EQ(applied(entered, SetTorque{}), car);
    EXPECT_EQ(describe(SetTorque{}, entered), "Take away the torque curve");
}

TEST(LaunchEdits, ATorqueCurveThatDoesNotRiseIsRefusedWithItsPlace) {
    expectRefused(plainCar(), SetTorque{{{3000 * kRpm, 400}, {2000 * kRpm, 450}}}, "torque[1][0]");
}

TEST(LaunchEdits, WhatStandsBehindTheEngineIsChosenAndTakenBack) {
    const Car car = plainCar();
    EXPECT_EQ(optionsOf(Choice::coupling), 3);
    EXPECT_EQ(chosen(car, Choice::coupling), 0);
    const Car clutch = applied(car, SetChoice{Choice::coupling, 2});
    EXPECT_EQ(clutch.launch.coupling.kind, CouplingKind::clutch);
    EXPECT_EQ(chosen(clutch, Choice::coupling), 2);
    EXPECT_EQ(applied(clutch, SetChoice{Choice::coupling, 0}), car);
    EXPECT_EQ(describe(SetChoice{Choice::coupling, 1}, car), "Engine drives through: converter");
}

}  // namespace
}  // namespace bolthole
