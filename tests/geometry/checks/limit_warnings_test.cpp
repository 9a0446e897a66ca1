// findWarnings() of geometry/edits/edit.h: entered limits and wishes that contradict the car or themselves.
#include <gmock/gmock.h>

#include <string>
#include <vector>

#include "geometry/car/faults.h"
#include "geometry/checks/warnings.h"
#include "geometry/edits/edit.h"
#include "tests/support/level_car.h"
#include "tests/support/warning_lines.h"

namespace bolthole {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

/// The level car with every limit there is, none of them passed.
Car limitedCar() {
    Car car = levelCar();
    car.links[0].adjuster = Adjuster{.pitch = 0.0015875,
                                     .shortest = 19 * kInch,
                                     .longest = 21 * kInch,
                                     .engagement = 1.25 * kInch,
                                     .leastEngagement = 1 * kInch};
    car.links[0].rodEndLimit = 0.2;
    car.target = TargetWindow{.icNear = 1.2, .icFar = 2, .antiSquatLow = 95, .antiSquatHigh = 130};
    return car;
}

Adjuster& adjusterOf(Car& car) {
    return *car.links[0].adjuster;
}

TEST(LimitWarnings, AreNoneWhereEverythingFits) {
    EXPECT_THAT(warningLines(levelCar()), IsEmpty());
    EXPECT_THAT(warningLines(limitedCar()), IsEmpty());
    Car car = limitedCar();
    adjusterOf(car).shortest = adjusterOf(car).longest = 20 * kInch;
    adjusterOf(car).engagement = adjusterOf(car).leastEngagement;
    EXPECT_THAT(warningLines(car), IsEmpty()) << "just so";
}

TEST(LimitWarnings, AnAdjusterThatIsShortestPastItsLongest) {
    Car car = limitedCar();
    adjusterOf(car).shortest = 21.5 * kInch;
    EXPECT_THAT(warningLines(car),
                ElementsAre("links[0].adjuster.shortest: shortest length 21 1/2 in is above the longest, 21 "
                            "in: check which is which"));
    EXPECT_EQ(findWarnings(car).at(0).id, (FieldId{.field = Field::adjusterShortest, .link = 0}));
}

TEST(LimitWarnings, ABuiltLengthOutsideTheAdjuster) {
    Car car = limitedCar();
    adjusterOf(car).longest = 19.75 * kInch;
    EXPECT_THAT(warningLines(car),
                ElementsAre("links[0].adjuster.longest: the link is 20 in long now, but its longest length "
                            "is 19 3/4 in: check both"));
    car = limitedCar();
    adjusterOf(car).shortest = 20.25 * kInch;
    EXPECT_THAT(warningLines(car),
                ElementsAre("links[0].adjuster.shortest: the link is 20 in long now, but its shortest "
                            "length is 20 1/4 in: check both"));
    car.links[0].length = 20.25 * kInch;
    car.links[0].axle.holes[0].at.x() -= 0.25 * kInch;
    EXPECT_THAT(warningLines(car), IsEmpty()) << "the written length counts";
}

TEST(LimitWarnings, ThreadThatIsNotMeasured) {
    Car car = limitedCar();
    adjusterOf(car).engagement.reset();
    EXPECT_THAT(
        warningLines(car),
        ElementsAre("links[0].adjuster.least_engagement: the thread engagement is not entered, so the "
                    "least can't be checked: measure it"));
}

// 1 1/4 in held at 19 in; an inch more over two ends leaves 3/4.
TEST(LimitWarnings, TooLittleThreadNow) {
    Car car = limitedCar();
    adjusterOf(car).engagementAt = 19 * kInch;
    EXPECT_THAT(
        warningLines(car),
        ElementsAre("links[0].adjuster.engagement: at 20 in long each end holds 3/4 in of thread, less than "
                    "the 1 in entered as the least: a rod end can pull out; do not drive it so"));
    adjusterOf(car).leastEngagement.reset();
    EXPECT_THAT(warningLines(car), IsEmpty());
}

TEST(LimitWarnings, ATargetWindowTheWrongWayRound) {
    Car car = limitedCar();
    std::swap(car.target->icNear, car.target->icFar);
    const std::string far = "wanted.ic_near: the near side of the target window lies past its far side";
    EXPECT_THAT(warningLines(car), ElementsAre(far + ": no hole combination can be inside"));
    car = limitedCar();
    car.target->icFar = -5;
    EXPECT_THAT(warningLines(car), IsEmpty()) << "through infinity to behind the axle";
    car.target->icNear = -6;
    EXPECT_THAT(warningLines(car), IsEmpty());
    car.target->icNear = -4;
    EXPECT_THAT(warningLines(car), ElementsAre(far + ": no hole combination can be inside"));
    car = limitedCar();
    car.target->antiSquatLow = 140;
    EXPECT_THAT(warningLines(car),
                ElementsAre("wanted.anti_squat_low: lowest target anti-squat 140 % is above the most, 130 %: "
                            "no hole combination can be inside"));
    EXPECT_EQ(findWarnings(car).at(0).id, FieldId{.field = Field::targetLow});
}

TEST(LimitWarnings, AreInTheCarsUnits) {
    Car car = limitedCar();
    car.units = Units::metric;
    adjusterOf(car).shortest = 550 * 0.001;
    EXPECT_THAT(warningLines(car),
                ElementsAre("links[0].adjuster.shortest: shortest length 550 mm is above the longest, 533.4 "
                            "mm: check which is which"));
}

}  // namespace
}  // namespace bolthole
