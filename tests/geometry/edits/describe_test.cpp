// describe(Edit) of geometry/edits/edit.h.
#include <gmock/gmock.h>

#include <limits>
#include <vector>

#include "geometry/edits/edit.h"
#include "geometry/units/units.h"
#include "tests/support/made_units.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

TEST(Describe, SpeaksTheCarsUnits) {
    Car car = plainCar();
    const SetNumber wheelbase{{.field = Field::wheelbase}, 2.9};
    EXPECT_EQ(describe(SetNumber{{.field = Field::wheelbase}, 116 * kInch}, car), "Set wheelbase to 116 in");
    EXPECT_EQ(describe(SetNumber{{.field = Field::pinionAngle}, 1.5 * kRadiansPerDegree}, car),
              "Set pinion angle to 1.5\u00B0");
    EXPECT_EQ(describe(SetNumber{{.field = Field::leftRearWeight}, 800 * 0.45359237}, car),
              "Set left rear weight to 800 lb");
    EXPECT_EQ(describe(SetNumber{{.field = Field::steps}, 41}, car), "Set travel steps to 41");
    EXPECT_EQ(describe(SetNumber{lengthOf(0), 20.25 * kInch}, car), "Set lower length to 20 1/4 in");
    EXPECT_EQ(describe(SetNumber{{.field = Field::adjusterEnds, .link = 1}, 1}, car),
              "Set upper threaded ends to 1");
    car.units = Units::metric;
    EXPECT_EQ(describe(wheelbase, car), "Set wheelbase to 2900 mm");
    EXPECT_EQ(describe(SetUnits{Units::inch}, car), "Set units to inch");
    EXPECT_EQ(describe(SetUnits{Units::metric}, car), "Set units to metric");
}

TEST(Describe, TellsWhichWayAHoleMoves) {
    const Car car = plainCar();
    const Eigen::Vector3d top = car.links[0].axle.holes[1].at;
    const auto moved = [&](double x, double y, double z) {
        return describe(MoveHole{0, End::axle, 1, Eigen::Vector3d(x, y, z) * kInch}, car);
    };
    EXPECT_EQ(moved(12.375, 21, 9.75), "Move lower axle hole 'top' to 12 3/8 in forward");
    EXPECT_EQ(moved(-2, 21, 9.75), "Move lower axle hole 'top' to 2 in back");
    EXPECT_EQ(moved(0.5, 20.5, 9.75), "Move lower axle hole 'top' to 20 1/2 in left");
    EXPECT_EQ(moved(0.5, -3, 9.75), "Move lower axle hole 'top' to 3 in right");
    EXPECT_EQ(moved(0.5, 21, 10), "Move lower axle hole 'top' to 10 in up");
    EXPECT_EQ(moved(1, 21, 10), "Move lower axle hole 'top' to 1 in forward, 10 in up");
    EXPECT_EQ(describe(MoveHole{0, End::axle, 1, top}, car),
              "Move lower axle hole 'top' to 1/2 in forward, 21 in left, 9 3/4 in up");
    EXPECT_EQ(describe(SetNumber{holeField(0, End::axle, 1, 2), 9 * kInch}, car),
              "Move lower axle hole 'top' to 9 in up");
    EXPECT_EQ(describe(MoveJoint{End::axle, {0.3302, 0, 0.343}}, car), "Move rear U-joint to 13 in forward");
    EXPECT_EQ(describe(SetNumber{{.field = Field::outputJoint, .axis = 1}, -kInch}, car),
              "Move front U-joint to 1 in right");
}

TEST(Describe, NamesEveryOtherChange) {
    Car car = plainCar();
    EXPECT_EQ(describe(UseHole{0, End::axle, 1}, car), "Bolt lower axle to 'top'");
    EXPECT_EQ(describe(UseHole{1, End::chassis, 0}, car), "Bolt upper chassis to hole 1");
    EXPECT_EQ(describe(ClearNumber{lengthOf(0)}, car), "Fit lower to its holes");
    EXPECT_EQ(describe(ClearNumber{{.field = Field::rearTrack}}, car), "Clear rear track");
    EXPECT_EQ(describe(SetTitle{"Wagon"}, car), "Set title to 'Wagon'");
    EXPECT_EQ(describe(SetTitle{""}, car), "Clear title");
    EXPECT_EQ(describe(SetNotes{"x"}, car), "Edit notes");
    EXPECT_EQ(describe(SetNotes{""}, car), "Clear notes");
    EXPECT_EQ(describe(SetAdjuster{0, Adjuster{0.0015875, 2}}, car),
              "Set adjuster of lower to pitch 1/16 in, 2 threaded ends");
    EXPECT_EQ(describe(SetAdjuster{1, std::nullopt}, car), "Remove adjuster of upper");
    EXPECT_EQ(describe(RenameLink{0, "arm"}, car), "Rename lower to 'arm'");
    EXPECT_EQ(describe(RenameHole{0, End::axle, 1, "high"}, car), "Rename lower axle hole 'top' to 'high'");
    EXPECT_EQ(describe(AddHole{0, End::axle, hole("third", 0.5, 21, 11)}, car),
              "Add lower axle hole 'third' at 1/2 in forward, 21 in left, 11 in up");
    EXPECT_EQ(describe(RemoveHole{0, End::axle, 0}, car), "Remove lower axle hole 'bottom'");
    EXPECT_EQ(describe(SetDriveline{std::nullopt}, car), "Remove driveline");
    EXPECT_EQ(describe(SetDriveline{Driveline{}}, car), "Change driveline");
    car.driveline.reset();
    EXPECT_EQ(describe(SetDriveline{Driveline{}}, car), "Add driveline");
    car.links[0].name.clear();
    EXPECT_EQ(describe(UseHole{0, End::axle, 1}, car), "Bolt link 1 axle to 'top'");
}

TEST(Describe, IsNeverEmptyEvenForPartsThatAreNotThere) {
    const Eigen::Vector3d nowhere(kNaN, kEndless, -1e300);
    for (const Car& car : {plainCar(), Car{}}) {
        for (const int index : {-7, 0, 99}) {
            for (const Edit& edit : std::vector<Edit>{
                     SetNumber{holeField(index, End::axle, index, index), kNaN},
                     SetNumber{lengthOf(index), 1e300},
                     SetNumber{{.field = Field::pinionJoint, .axis = index}, kEndless},
                     ClearNumber{lengthOf(index)}, MoveHole{index, End::axle, index, nowhere},
                     UseHole{index, End::chassis, index}, MoveJoint{End::axle, nowhere},
                     SetAdjuster{index, Adjuster{kNaN, index}}, SetAdjuster{index, std::nullopt},
                     RenameLink{index, ""}, RenameHole{index, End::axle, index, ""},
                     AddHole{index, End::axle, Hole{}}, RemoveHole{index, End::axle, index}}) {
                EXPECT_NE(describe(edit, car), "");
                (void)apply(car, edit);
            }
        }
    }
}

}  // namespace
}  // namespace bolthole
