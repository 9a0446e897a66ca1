// findWarnings() of geometry/edits/edit.h.
#include "geometry/checks/warnings.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include "geometry/car/faults.h"
#include "geometry/edits/edit.h"
#include "tests/support/car_generator.h"
#include "tests/support/made_units.h"
#include "tests/support/warning_lines.h"

namespace bolthole {
namespace {

using testing::AllOf;
using testing::Contains;
using testing::ContainsRegex;
using testing::Each;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::SizeIs;

using Id = bolthole::Field;

/// A symmetric car of three level links and a guide, so that shifts can be worked out by hand: two lowers
/// 20 in long at 7 in, a third link 15 in long at 19 in, axle center at 13 in.
Car levelCar() {
    Car car;
    car.wheelbase = 116 * kInch;
    car.rearTireRadius = 13 * kInch;
    car.frontTireRadius = 13 * kInch;
    car.cornerWeights = {470, 450, 360, 350};
    car.cgHeight = 22 * kInch;
    car.travel.bump = car.travel.droop = 3 * kInch;
    const auto in = [](double x, double y, double z) {
        return Eigen::Vector3d(Eigen::Vector3d(x, y, z) * kInch);
    };
    car.links = {makeLink("lower", LinkKind::rod, Side::both, {in(20, 18, 7), in(0, 18, 7)}),
                 makeLink("third link", LinkKind::rod, Side::center, {in(15, 0, 19), in(0, 0, 19)}),
                 makeLink("Watts", LinkKind::guide, Side::center, {in(-5, 0, 13), in(-5, 0, 13)})};
    car.driveline = Driveline{3.2 * kDegree, in(12, 0, 13), 3.2 * kDegree, in(60, 0, 14)};
    return car;
}

TEST(FindWarnings, DoesNotTakeAMovedBoltForAMeasuringMistake) {
    Car car = levelCar();
    car.links[0].length = 20 * kInch;
    Hole low = car.links[0].axle.holes[0];
    low.at.z() -= 3 * kInch;
    low.at.x() -= 1 * kInch;
    car.links[0].axle.holes.push_back(low);
    EXPECT_THAT(warningLines(car), Not(Contains(HasSubstr("written length"))));
    car.links[0].axle.use = 1;  // 21.2 in from the chassis hole, but the rod fits the other hole
    EXPECT_THAT(warningLines(car), Not(Contains(HasSubstr("written length"))));
    car.links[0].length = 22 * kInch;  // fits neither
    EXPECT_THAT(warningLines(car), Contains(HasSubstr("written length 22 in")));
}

TEST(FindWarnings, HasNoneForAPlausibleCar) {
    EXPECT_THAT(warningLines(levelCar()), IsEmpty());
}

TEST(FindWarnings, HasNoneForACarWithFaults) {
    Car car = levelCar();
    car.wheelbase = std::numeric_limits<double>::quiet_NaN();
    car.cgHeight = 50;
    EXPECT_THAT(warningLines(car), IsEmpty());
    EXPECT_THAT(warningLines(Car{}), IsEmpty());
}

TEST(FindWarnings, AWrittenLengthWithinASixteenthIsNone) {
    Car car = levelCar();
    for (const double off : {-1.0 / 16, -1.0 / 32, 0.0, 1.0 / 16}) {
        car.links[0].length = (20 + off) * kInch;
        EXPECT_THAT(warningLines(car), IsEmpty()) << off;
    }
}

TEST(FindWarnings, AWrittenLengthThatDisagreesSaysWhatItShifts) {
    Car car = levelCar();
    // By hand: lowers 1/8 longer push the axle's foot back by 1/8 while the third link, level as well, holds
    // its head; the housing turns by atan(0.125/12) = 0.6 deg, nose down, the center moves half as far back.
    car.links[0].length = 20.125 * kInch;
    EXPECT_THAT(
        warningLines(car),
        ElementsAre("links[0].length: written length 20 1/8 in, but the current holes are 20 in apart: as "
                    "written the axle sits 0.1 in back and the pinion 0.6\u00B0 nose down; re-measure, or "
                    "clear the length to fit the holes"));
    // A third link 1/4 short pulls the head forward, the center half as far.
    car.links[0].length.reset();
    car.links[1].length = 14.75 * kInch;
    EXPECT_THAT(warningLines(car),
                Contains(AllOf(HasSubstr("links[1].length: written length 14 3/4 in"),
                               HasSubstr("0.1 in forward"), HasSubstr("1.2\u00B0 nose down"))));
}

TEST(FindWarnings, ShiftsAreTheCarsUnitsAndTheLinksOwn) {
    Car car = levelCar();
    car.units = Units::metric;
    car.links[0].length = 20.25 * kInch;
    car.links[1].length = 15.25 * kInch;
    // Each alone turns the housing, both together only move it back: each line tells its own share.
    EXPECT_THAT(warningLines(car),
                ElementsAre(AllOf(HasSubstr("written length 514.35 mm"), HasSubstr("508 mm apart"),
                                  HasSubstr("3 mm back"), HasSubstr("1.2\u00B0 nose down")),
                            AllOf(HasSubstr("written length 387.35 mm"), HasSubstr("3 mm back"),
                                  HasSubstr("1.2\u00B0 nose up"))));
}

TEST(FindWarnings, AShortTrackBarPullsTheAxleSideways) {
    Car car = levelCar();
    car.links.pop_back();
    car.links.push_back(
        makeLink("track bar", LinkKind::rod, Side::center,
                 {Eigen::Vector3d(-5, 20, 13) * kInch, Eigen::Vector3d(-5, -20, 13) * kInch}));
    EXPECT_THAT(warningLines(car), IsEmpty());
    car.links[2].length = 39.5 * kInch;
    EXPECT_THAT(warningLines(car),
                ElementsAre(AllOf(HasSubstr("links[2].length"), HasSubstr("0.5 in to the left"))));
    car.links[2].length = 40.5 * kInch;
    EXPECT_THAT(warningLines(car), ElementsAre(HasSubstr("0.5 in to the right")));
}

TEST(FindWarnings, ALengthOfAnythingButARodIsNoted) {
    Car car = levelCar();
    car.links[2].length = 0.5;
    EXPECT_THAT(
        warningLines(car),
        ElementsAre(
            "links[2].length: a length is used for links with two ends only: this one has no effect"));
}

TEST(FindWarnings, ACarThatCannotBeAssembledSaysWhichLink) {
    Car car = levelCar();
    car.links[1].length = 2 * kInch;
    const std::vector<std::string> found = warningLines(car);
    EXPECT_THAT(found,
                Contains(HasSubstr("links[1].length: written length 2 in, but the current holes are 15 in")));
    EXPECT_THAT(found, Contains(HasSubstr("as written the axle cannot be assembled")));
    EXPECT_THAT(found, Contains(HasSubstr("can't be assembled at ride")));
}

TEST(FindWarnings, ACarUnderHeldSaysWhatIsFree) {
    Car car = levelCar();
    car.links.erase(car.links.begin() + 1);
    EXPECT_THAT(warningLines(car), ElementsAre("links: nothing keeps the axle housing from turning over"));
    car.links.clear();
    EXPECT_THAT(warningLines(car), ElementsAre(HasSubstr("links: nothing ")));
}

TEST(FindWarnings, TravelBeyondTheLinksReachSaysWhereItEnds) {
    Car car = levelCar();
    car.travel.bump = 0.5;
    car.travel.droop = 0.4;
    const std::vector<Warning> warnings = findWarnings(car);
    ASSERT_THAT(warnings, SizeIs(2));
    EXPECT_EQ(warnings[0].id.field, Id::bump);
    EXPECT_EQ(warnings[1].id.field, Id::droop);
    EXPECT_EQ(warnings[0].path, "links[1]");
    EXPECT_THAT(sentence(warnings[0].finding),
                ContainsRegex("'third link' stops travel at [0-9.]+ in of bump"));
    EXPECT_THAT(sentence(warnings[1].finding), ContainsRegex("stops travel at [0-9.]+ in of droop"));
}

TEST(FindWarnings, AMissingLocatorIsNamed) {
    Car car = levelCar();
    car.links.pop_back();
    EXPECT_THAT(
        warningLines(car),
        ElementsAre("links: nothing holds the axle laterally: a track bar or Watts linkage is missing; "
                    "figures assume it stays centered"));
}

TEST(FindWarnings, NumbersOutsideWhatCarsHaveAreNoted) {
    const auto warningsWith = [](Id field, double value) {
        Car car = apply(levelCar(), SetNumber{{.field = field}, value}).car;
        return warningLines(car);
    };
    EXPECT_THAT(warningsWith(Id::wheelbase, 11.6 * kInch),
                ElementsAre("wheelbase: wheelbase \u2248 11 19/32 in looks outside what cars have: check"));
    EXPECT_THAT(warningsWith(Id::wheelbase, 7), ElementsAre(HasSubstr("wheelbase")));
    EXPECT_THAT(warningsWith(Id::frontTireRadius, 0.1), ElementsAre(HasSubstr("front tire radius")));
    EXPECT_THAT(warningsWith(Id::cgHeight, 0.2), ElementsAre(HasSubstr("CG height")));
    EXPECT_THAT(warningsWith(Id::cgHeight, 0.7), ElementsAre(HasSubstr("above the top of the rear tire")));
    EXPECT_THAT(warningsWith(Id::rearTrack, 0.3), ElementsAre(HasSubstr("rear track")));
    EXPECT_THAT(warningsWith(Id::frontRatio, 5), ElementsAre(HasSubstr("front travel ratio 5")));
    EXPECT_THAT(warningsWith(Id::leftFrontWeight, 5000),
                ElementsAre(HasSubstr("corner_weights: total weight"),
                            HasSubstr("of the weight in front looks outside what cars have"),
                            HasSubstr("corner_weights.left_front: left front carries 81.2 %")));
    EXPECT_THAT(warningsWith(Id::pinionAngle, 20 * kDegree),
                Contains(HasSubstr("pinion angle 20\u00B0 looks")));
}

TEST(FindWarnings, LinksOnTheWrongSideOrUnderground) {
    Car car = levelCar();
    car.links[0].chassis.holes[0].at.y() *= -1;
    car.links[0].axle.holes[0].at.y() *= -1;
    EXPECT_THAT(warningLines(car),
                ElementsAre(HasSubstr("links[0]: lower stands on the other side of the car")));
    car = levelCar();
    car.links[0].axle.holes.push_back({-1, "low", Eigen::Vector3d(0, 18, -7) * kInch});
    EXPECT_THAT(warningLines(car),
                ElementsAre(AllOf(HasSubstr("links[0].axle.holes[1].at[2]"), HasSubstr("below the ground"))));
}

TEST(FindWarnings, JointAnglesThatDoNotCancelAreNoted) {
    Car car = levelCar();
    const double shaft = std::atan2(1, 48);  // rises 1 in over 48 in
    const auto withAngles = [&](double front, double rear) {
        car.driveline->outputAngle = shaft + front * kDegree;
        car.driveline->pinionAngle = shaft + rear * kDegree;
        return warningLines(car);
    };
    // Equal angles cancel, parallel axes or broken back; else sqrt(|f^2 - r^2|) is left: 5, 3 leave 4. Ends
    // equal within 1 deg and no joint straight: Dana Spicer, J3311-1-DSSP (2008), pp. 5, 16-17.
    EXPECT_THAT(withAngles(4, 4), IsEmpty());
    EXPECT_THAT(withAngles(4, -4), IsEmpty());
    EXPECT_THAT(withAngles(2.9, 0), ElementsAre(HasSubstr("within 1.00\u00B0 of each other"),
                                                HasSubstr("rear joint 0.00\u00B0 at ride: its needles")));
    EXPECT_THAT(withAngles(5, 4.1), IsEmpty());
    EXPECT_THAT(withAngles(3.1, 0), ElementsAre(HasSubstr("do not cancel"), HasSubstr("its needles")));
    EXPECT_THAT(withAngles(5, 3), ElementsAre("driveline.pinion_angle: at ride 5.00\u00B0 at the front joint "
                                              "and 3.00\u00B0 at the rear joint do "
                                              "not cancel: the shaft turns as unevenly as with one joint at "
                                              "4.00\u00B0; 3.00\u00B0 is the usual "
                                              "most"));
    EXPECT_THAT(withAngles(-3, 5), ElementsAre(HasSubstr("one joint at 4.00\u00B0")));
}

TEST(FindWarnings, JointsThatBendInDifferentPlanesAdd) {
    Car car = levelCar();
    const double shaft = std::atan2(1, 48);
    car.driveline->outputJoint.y() = std::tan(3 * kDegree) * 48 * kInch;
    car.driveline->outputAngle = car.driveline->pinionAngle = shaft + 3 * kDegree;
    EXPECT_THAT(warningLines(car), IsEmpty());
    // Both bend by 3 sqrt 2, in planes square to each other: 6 deg are left although the angles are equal.
    car.driveline->outputAngle = shaft - 3 * kDegree;
    EXPECT_THAT(warningLines(car),
                ElementsAre(HasSubstr("the joints add instead of canceling: together they swing as one at "
                                      "6.00\u00B0")));
}

TEST(FindWarnings, JointsAtOnePlaceHaveNoShaft) {
    Car car = levelCar();
    car.driveline->outputJoint = car.driveline->pinionJoint;
    EXPECT_THAT(warningLines(car), ElementsAre(HasSubstr("both driveshaft joints stand at the same place")));
    car.driveline.reset();
    EXPECT_THAT(warningLines(car), IsEmpty());
}

TEST(FindWarnings, GeneratedCarsHaveOnlyWarningsThatHold) {
    CarGenerator generator(17);
    for (int round = 0; round < 50; ++round) {
        for (int layout = 0; layout <= static_cast<int>(Layout::ladderGuide); ++layout) {
            Car car = generator.draw(static_cast<Layout>(layout));
            car.driveline.reset();
            EXPECT_THAT(warningLines(car), Each(Not(HasSubstr("written length")))) << layout;
            const bool free = static_cast<Layout>(layout) == Layout::parallel;
            const auto found = warningLines(car);
            EXPECT_EQ(
                std::ranges::any_of(
                    found, [](const auto& line) { return line.find("laterally") != std::string::npos; }),
                free)
                << layout;
        }
    }
}

}  // namespace
}  // namespace bolthole
