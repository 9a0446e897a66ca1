// What changed between setups and passes, in words.
#include "geometry/compare/setup_changes.h"

#include <gmock/gmock.h>

#include "geometry/edits/edit.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

Car applied(const Car& car, const Edit& edit) {
    const EditResult result = apply(car, edit);
    EXPECT_EQ(result.refusal, "") << describe(edit, car);
    return result.car;
}

std::vector<std::string> changed(const Edit& edit, Units units = Units::inch) {
    return setupChanges(plainCar(), applied(plainCar(), edit), units);
}

TEST(SetupChanges, NothingIsNothing) {
    EXPECT_THAT(setupChanges(plainCar(), plainCar(), Units::inch), IsEmpty());
    EXPECT_TRUE(isSameSetup(plainCar(), plainCar()));
}

TEST(SetupChanges, EachInItsWords) {
    EXPECT_THAT(changed(UseHole{0, End::axle, 1}), ElementsAre("lower axle hole 'top'"));
    EXPECT_THAT(changed(MoveHole{0, End::chassis, 0, Eigen::Vector3d(0.5, 0.4, 0.26)}),
                ElementsAre("lower chassis hole 'front' moved"));
    EXPECT_THAT(changed(SetNumber{{.field = Field::cgHeight}, 23 * kMetresPerInch}),
                ElementsAre("CG height +1 in"));
    EXPECT_THAT(changed(SetNumber{{.field = Field::cgHeight}, 21 * kMetresPerInch}, Units::metric),
                ElementsAre("CG height -25.4 mm"));
    EXPECT_THAT(changed(RemoveBallast{0}), ElementsAre("fuel removed"));
    EXPECT_THAT(changed(SetNumber{{.field = Field::ballastAboard, .item = 0}, 50}),
                ElementsAre("fuel part aboard now -50 %"));
    EXPECT_THAT(changed(SetNumber{{.field = Field::springRate, .item = 0}, 30000}, Units::metric),
                ElementsAre("coil rate entered"));
    EXPECT_THAT(changed(RemoveLink{1}), ElementsAre("upper removed"));
}

// One and a half turns of an adjuster with two ends of 1.5875 mm pitch are 4.7625 mm.
TEST(SetupChanges, AnAdjusterIsToldInTurns) {
    const Car car = plainCar();
    const double longer = builtLength(car.links[1]) + 1.5 * 2 * 0.0015875;
    EXPECT_THAT(changed(SetNumber{{.field = Field::linkLength, .link = 1}, longer}),
                ElementsAre("upper +1.5 turns"));
    const double shorter = builtLength(car.links[0]) - 0.00635;
    EXPECT_THAT(changed(SetNumber{{.field = Field::linkLength, .link = 0}, shorter}),
                ElementsAre("lower length -0.25 in"));
}

TEST(SetupChanges, AMountOfASpringIsToldByItsHole) {
    Car other = plainCar();
    other.springs[0].axle.use = 1;
    EXPECT_THAT(setupChanges(plainCar(), other, Units::inch), ElementsAre("coil axle hole 'high'"));
    EXPECT_FALSE(isSameSetup(plainCar(), other));
}

TEST(SetupName, ThreeOfMoreAndUnlikeTheOthers) {
    Car car = applied(plainCar(), KeepSetup{"base", "2026-11-01", "", nullptr});
    car = applied(car, UseHole{0, End::axle, 1});
    EXPECT_EQ(nameForSetup(car), "lower axle hole 'top'");
    car = applied(car, SetNumber{{.field = Field::cgHeight}, 23 * kMetresPerInch});
    car = applied(car, SetNumber{{.field = Field::leftFrontWeight}, 480});
    car = applied(car, SetNumber{{.field = Field::rightFrontWeight}, 460});
    car = applied(car, RemoveBallast{0});
    EXPECT_EQ(nameForSetup(car), "lower axle hole 'top', fuel removed, left front weight +22 lb and 2 more");
    Car same = applied(plainCar(), KeepSetup{"lower axle hole 'top'", "2026-11-01", "", nullptr});
    same = applied(same, UseHole{0, End::axle, 1});
    EXPECT_EQ(nameForSetup(same), "lower axle hole 'top' (2)");
    Car renamed = applied(plainCar(), KeepSetup{"base", "2026-11-01", "", nullptr});
    renamed = applied(renamed, RenameHole{0, End::axle, 1, "upper"});
    EXPECT_EQ(nameForSetup(renamed), "other entries");
}

Car twoPasses(const Pass& first, const Pass& second, const Car& between) {
    Car car = applied(plainCar(), AddPass{first});
    Car changed = between;
    changed.kept = car.kept;
    changed.passes = car.passes;
    return applied(changed, AddPass{second});
}

Pass pass(int number) {
    Pass made;
    made.number = number;
    made.date = "2026-11-20";
    return made;
}

TEST(PassChanges, SetupPressuresRpmAndPlace) {
    Pass first = pass(1);
    first.pressures = {220, 220, 124, 124};
    first.launchRpm = 2600;
    first.surface = {SurfaceKind::street, "north lane", 11};
    first.air.temperature = 7;
    Pass second = pass(2);
    second.pressures = {220, 213, 110, 110};
    second.launchRpm = 2400;
    second.surface = {SurfaceKind::street, "south lane", 14};
    second.air.temperature = 9;
    const Car car = twoPasses(first, second, applied(plainCar(), UseHole{0, End::axle, 1}));
    EXPECT_EQ(changesSincePassBefore(car, 0, Units::metric), "");
    EXPECT_EQ(changesSincePassBefore(car, 1, Units::metric),
              "lower axle hole 'top', right front tire pressure -7 kPa, rear tire pressures -14 kPa, "
              "launch -200 rpm, surface south lane");
    EXPECT_EQ(changesSincePassBefore(car, 1, Units::inch),
              "lower axle hole 'top', right front tire pressure -1.02 psi, rear tire pressures -2.03 psi, "
              "launch -200 rpm, surface south lane");
    EXPECT_EQ(changesSincePassBefore(car, 2, Units::inch), "") << "no such pass";
}

TEST(PassChanges, WhatIsMissingIsNoChange) {
    Pass first = pass(1);
    first.launchRpm = 2600;
    first.pressures.leftRear = 124;
    const Car car = twoPasses(first, pass(2), plainCar());
    EXPECT_EQ(changesSincePassBefore(car, 1, Units::inch), "");
}

}  // namespace
}  // namespace bolthole
