// What is computed from what was entered: whole groups only, and the balance every figure stands on.
#include "geometry/weights/entered_figures.h"

#include <gmock/gmock.h>

#include "geometry/car/measuring_tool.h"
#include "geometry/car/numbers.h"
#include "geometry/edits/edit.h"
#include "geometry/edits/ride_change.h"
#include "geometry/kinematics/standing_car.h"
#include "geometry/kinematics/trace.h"
#include "geometry/statics/entered_setup.h"
#include "geometry/uncertainty/uncertain_inputs.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

using testing::HasSubstr;

Car bareCar() {
    Car car = plainCar();
    car.ballast.clear();
    car.springs.clear();
    return car;
}

EnteredBallast ballast(double mass, double x, double z) {
    EnteredBallast load;
    load.name = "ballast";
    load.mass = mass;
    load.at.at = {x, 0, z};
    return load;
}

TEST(BalanceOf, IsWhatWasWeighedWhereNothingElseWasEntered) {
    const Car car = bareCar();
    const CarBalance balance = balanceOf(car);
    EXPECT_EQ(balance.total, car.cornerWeights.total());
    EXPECT_EQ(balance.front, car.cornerWeights.front());
    EXPECT_EQ(balance.height, car.cgHeight);
    EXPECT_EQ(balance.from.source, CgHeightSource::entered);
    EXPECT_EQ(balance.from.uncertainty, kEnteredCgUncertainty) << "a height that was typed has the ± of one";
}

// Moments about the rear axle and the ground: R. N. Jazar, Vehicle Dynamics, 1st ed., ch. 2. The car of 1630
// kg, 920 in front, takes 100 kg aboard 0.5 m behind the rear axle and 0.9 m up.
TEST(BalanceOf, TakesBallastByMoments) {
    Car car = bareCar();
    const double wheelbase = 116 * kMetresPerInch;
    car.ballast = {ballast(100, -0.5, 0.9)};
    const CarBalance balance = balanceOf(car);
    EXPECT_DOUBLE_EQ(balance.total, 1730);
    EXPECT_NEAR(balance.front, 920 - 100 * 0.5 / wheelbase, 1e-9);
    EXPECT_NEAR(balance.cgX(wheelbase), (920 * wheelbase - 100 * 0.5) / 1730, 1e-9);
    EXPECT_NEAR(balance.height, (1630 * 22 * kMetresPerInch + 100 * 0.9) / 1730, 1e-9);
}

TEST(BalanceOf, BallastThatWasAboardWhenWeighedChangesNothing) {
    Car car = bareCar();
    car.ballast = {ballast(100, -0.5, 0.9)};
    car.ballast[0].weighed = 100;
    EXPECT_EQ(balanceOf(car).total, 1630);
    car.ballast[0].aboard = 25;  // a tank three quarters used up
    EXPECT_DOUBLE_EQ(balanceOf(car).total, 1555);
}

TEST(BalanceOf, CountsWholeBallastOnly) {
    Car car = bareCar();
    car.ballast = {ballast(100, -0.5, 0.9), ballast(50, 1, 0.5), ballast(30, 1, 0.5)};
    car.ballast[1].at.at[2].reset();
    car.ballast[2].mass.reset();
    car.ballast[2].volume = 0.06;
    EXPECT_EQ(missingOf(car.ballast[1]), "no place");
    EXPECT_EQ(missingOf(car.ballast[2]), "no weight");
    EXPECT_DOUBLE_EQ(balanceOf(car).total, 1730);
    car.ballast[2].density = 745;
    EXPECT_DOUBLE_EQ(balanceOf(car).total, 1730 + 0.06 * 745);
}

TEST(BalanceOf, PutsTheDriverInWhereTheScalesHadNone) {
    Car car = bareCar();
    car.cornersAre = DriverSeat::out;
    EXPECT_EQ(balanceOf(car).total, 1630);
    car.weighing.driver = {90, {{1.3, 0.4, 0.6}}};
    EXPECT_DOUBLE_EQ(balanceOf(car).total, 1720);
    car.cornersAre = DriverSeat::aboard;
    EXPECT_EQ(balanceOf(car).total, 1630);
}

TEST(BalanceOf, BallastThatLiftsTheFrontIsLeftOutAndSaid) {
    Car car = bareCar();
    car.ballast = {ballast(2000, -10, 0.9)};
    const CarBalance balance = balanceOf(car);
    EXPECT_NE(balance.ballastRefusal, "");
    EXPECT_EQ(balance.total, 1630);
}

// The lift's own formula is checked against its source elsewhere; here that its height reaches anti-squat.
TEST(BalanceOf, TheHeightChosenIsTheOneAntiSquatStandsOn) {
    Car car = bareCar();
    const double entered = computeTrace(car).ride[Figure::antiSquat];
    car.cgHeightFrom = CgHeightSource::lift;
    EXPECT_THAT(balanceOf(car).refusal, HasSubstr("lift"));
    EXPECT_EQ(balanceOf(car).height, car.cgHeight);  // and it is said that the entered one is in use
    car.lift.height = 0.8;
    car.lift.reading = 895;
    const CarBalance lifted = balanceOf(car);
    ASSERT_EQ(lifted.refusal, "");
    EXPECT_EQ(lifted.from.source, CgHeightSource::lift);
    EXPECT_GT(lifted.from.uncertainty.value(), 0);
    const double byLift = computeTrace(car).ride[Figure::antiSquat];
    EXPECT_NEAR(byLift / entered, car.cgHeight / lifted.height, 1e-9);
    car.cgHeightFrom = CgHeightSource::estimate;
    EXPECT_EQ(balanceOf(car).height, estimatedCgHeight().height);
    EXPECT_NEAR(standingCar(car, computeTrace(car).ride.ground).cgHeight, estimatedCgHeight().height, 1e-12);
}

// The ± somebody entered for the height stands on every page, whatever the height comes from; a lift has its
// own.
TEST(BalanceOf, TheHeightsOwnUncertaintyIsTheOneInUse) {
    Car car = bareCar();
    const FieldId height{.field = Field::cgHeight};
    EXPECT_EQ(balanceOf(car).from.uncertainty, uncertaintyOf(car, height).uncertainty);
    car.cgHeightFrom = CgHeightSource::estimate;
    EXPECT_EQ(balanceOf(car).from.uncertainty, uncertaintyOf(car, height).uncertainty);
    EXPECT_EQ(balanceOf(car).from.uncertainty, estimatedCgHeight().uncertainty);
    const auto withOwn = [&car] {
        EditResult set = apply(car, SetNumber{{.field = Field::cgHeight, .uncertainty = true}, 0.007});
        EXPECT_EQ(set.refusal, "");
        return set.car;
    };
    EXPECT_EQ(balanceOf(withOwn()).from.uncertainty, 0.007);
    car.cgHeightFrom = CgHeightSource::entered;
    EXPECT_EQ(balanceOf(withOwn()).from.uncertainty, 0.007);
    car.cgHeightFrom = CgHeightSource::lift;
    car.lift.height = 0.8;
    car.lift.reading = 895;
    const double byLift = balanceOf(car).from.uncertainty.value();
    EXPECT_EQ(balanceOf(withOwn()).from.uncertainty, byLift);
}

// Lifted empty, figured with the driver in: his mass is the difference of both readings, and the mean of the
// heights by mass is the whole car's.
TEST(BalanceOf, ALiftWithoutDriverGetsHimBack) {
    Car car = bareCar();
    car.cgHeightFrom = CgHeightSource::lift;
    car.lift = {.height = 0.8, .reading = 850, .driver = DriverSeat::out};
    car.weighing.other = {448, 432, 335, 325};  // 1540, so the driver is 90
    const CarBalance without = balanceOf(car);
    EXPECT_THAT(without.from.remark, HasSubstr("he is left out of it"));
    car.weighing.driver.at.at[2] = 0.62;
    const CarBalance with = balanceOf(car);
    EXPECT_THAT(with.from.remark, testing::Not(HasSubstr("he is left out")));
    EXPECT_NEAR(with.height, (1540 * without.height + 90 * 0.62) / 1630, 1e-12);
}

TEST(EnteredGroups, CountWhenTheyAreWhole) {
    Car car = bareCar();
    EXPECT_FALSE(stanceOf(car).front);
    car.wheelRates.front.tire = 220e3;
    EXPECT_FALSE(stanceOf(car).front);  // a tire alone says nothing of the wheel
    car.wheelRates.front.wheel = 25e3;
    EXPECT_EQ(stanceOf(car).front->tire, 220e3);
    EXPECT_FALSE(weighingOf(car).pads);
    car.weighing.pads = {0, 0.001, 0, std::nullopt};
    EXPECT_FALSE(weighingOf(car).pads);
    car.weighing.pads.rightRear = 0.002;
    EXPECT_EQ(weighingOf(car).pads->rightRear, 0.002);
    EXPECT_FALSE(weighingOf(car).withoutDriver);
    car.weighing.other = {450, 440, 340, 330};
    EXPECT_EQ(weighingOf(car).withoutDriver->leftRear, 340);
    EXPECT_EQ(weighingOf(car).withDriver->leftRear, 360);
    car.cornersAre = DriverSeat::out;
    EXPECT_EQ(weighingOf(car).withDriver->leftRear, 340);
    EXPECT_FALSE(shaftSetupOf(*car.driveline).slip);
    car.driveline->shaft.slip = {0.07, 0.05, 0.02};
    EXPECT_EQ(shaftSetupOf(*car.driveline).slip->inward, 0.02);
}

// A coil of 30 N/mm straight over the axle at 0.5 m from the middle makes a wheel rate of its own rate while
// the axle moves straight: motion ratio 1.
TEST(FullStance, TakesTheRearRateFromTheSpringsWhereNoneIsEntered) {
    Car car = bareCar();
    EXPECT_EQ(fullStanceOf(car).rear, RearRateSource::none);
    SuspensionPart coil;
    coil.name = "coil";
    coil.chassis.holes = {{-1, "top", {0, 0.5, 0.6}}};
    coil.axle.holes = {{-1, "seat", {0, 0.5, 0.35}}};
    coil.rate = 30e3;
    coil.freeLength = 0.36;
    car.springs = {coil};
    const FullStance full = fullStanceOf(car);
    EXPECT_EQ(full.rear, RearRateSource::springs);
    EXPECT_NEAR(full.stance.rear->wheel, 30e3, 600);
    car.wheelRates.rear.wheel = 28e3;
    EXPECT_EQ(fullStanceOf(car).rear, RearRateSource::entered);
    EXPECT_EQ(fullStanceOf(car).stance.rear->wheel, 28e3);
}

TEST(ChangeRideOfEntered, TakesSpringsBallastAndJointAlong) {
    Car car = plainCar();
    car.driveline->shaft.carrierJoint.at = {1.0, 0, 0.4};
    car.weighing.driver.at.at = {1.3, 0.4, 0.6};
    // Both ends 1 in lower on the same tires: all of the body comes down by it, the axle stays.
    const double inch = kMetresPerInch;
    RideChange change = noChange(car);
    change.rearLower = change.frontLower = inch;
    const CarResult changed = changeRide(car, change);
    ASSERT_TRUE(changed.car) << changed.refusal;
    const Car& low = *changed.car;
    EXPECT_NEAR(low.springs[0].chassis.holes[0].at.z(), car.springs[0].chassis.holes[0].at.z() - inch, 1e-4);
    // The mount on the axle turns with the housing, whose center stays at the tires' radius.
    const auto arm = [](const Car& of) {
        return (of.springs[0].axle.holes[0].at - Eigen::Vector3d(0, 0, of.rearTireRadius)).norm();
    };
    EXPECT_NEAR(arm(low), arm(car), 1e-12);
    EXPECT_NEAR(*low.driveline->shaft.carrierJoint.at[2], 0.4 - inch, 1e-4);
    EXPECT_NEAR(*low.weighing.driver.at.at[2], 0.6 - inch, 1e-4);
    EXPECT_NEAR(*low.ballast[0].at.at[2], 0.4 - inch, 1e-4);
    // The parts' lengths change by what the ride does: a spring 1 in shorter where it stands upright.
    const auto length = [](const Car& of) {
        return (of.springs[0].chassis.holes[0].at - of.springs[0].axle.holes[0].at).norm();
    };
    EXPECT_NEAR(length(low), length(car) - inch, 2e-3);
}

}  // namespace
}  // namespace bolthole
