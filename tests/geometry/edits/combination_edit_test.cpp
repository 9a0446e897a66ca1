// The edits about hole combinations, limits and the target window: geometry/edits/edit.h.
#include <gmock/gmock.h>

#include <cmath>
#include <limits>
#include <string>

#include "geometry/car/numbers.h"
#include "geometry/car/starting_numbers.h"
#include "geometry/edits/edit.h"
#include "geometry/units/units.h"
#include "tests/support/edit_tools.h"
#include "tests/support/level_car.h"

namespace bolthole {
namespace {

using testing::HasSubstr;

const TargetWindow kWindow{.icNear = 1.2, .icFar = 2.0, .antiSquatLow = 95, .antiSquatHigh = 130};

FieldId ofLower(Field field) {
    return {.field = field, .link = 0};
}

std::optional<double> measuredAt(const Car& car) {
    return car.links[0].adjuster->engagementAt;
}

/// The level car with half an inch of thread held in the lowers, 20 in long, not said at which length.
Car threadedCar() {
    Car car = levelCar();
    car.links[0].adjuster->engagement = 0.5 * kInch;
    return car;
}

TEST(SetTarget, SetsAndTakesTheWindow) {
    const Car car = levelCar();
    const Car wanting = applied(car, SetTarget{kWindow});
    EXPECT_EQ(wanting.target, kWindow);
    EXPECT_EQ(applied(wanting, SetTarget{std::nullopt}), car);
    EXPECT_EQ(describe(SetTarget{kWindow}, car), "Set target: anti-squat 95 to 130 %");
    EXPECT_EQ(describe(SetTarget{std::nullopt}, car), "Clear target");
}

TEST(SetTarget, MayRunToInfinityAndBehind) {
    const Car car = levelCar();
    for (const TargetWindow& window : {TargetWindow{.icNear = 2.0, .antiSquatHigh = 100},
                                       TargetWindow{.icNear = 2.0, .icFar = -5.0, .antiSquatHigh = 100},
                                       TargetWindow{.antiSquatHigh = 100}}) {
        EXPECT_EQ(applied(car, SetTarget{window}).target, window);
    }
}

TEST(SetTarget, RefusesWhatIsNoWindow) {
    const Car car = levelCar();
    TargetWindow window = kWindow;
    window.icFar = 101;
    expectRefused(car, SetTarget{window}, "farthest target IC distance: expected a distance within 100 m");
    window = kWindow;
    window.icNear = kNaN;
    expectRefused(car, SetTarget{window}, "nearest target IC distance");
    window = kWindow;
    window.antiSquatLow = kNaN;
    expectRefused(car, SetTarget{window}, "lowest target anti-squat: expected a percentage");
    window = kWindow;
    window.antiSquatHigh = 20'000;
    expectRefused(car, SetTarget{window}, "highest target anti-squat");
}

TEST(SetTarget, ItsNumbersAreEditedOnceItIsThere) {
    const Car car = levelCar();
    expectRefused(car, SetNumber{{.field = Field::targetLow}, 90}, "no target is set for this car yet");
    const Car wanting = applied(car, SetTarget{kWindow});
    EXPECT_EQ(applied(wanting, SetNumber{{.field = Field::targetIcFar}, -4}).target->icFar, -4);
    EXPECT_EQ(applied(wanting, ClearNumber{{.field = Field::targetIcFar}}).target->icFar, std::nullopt);
    expectRefused(wanting, ClearNumber{{.field = Field::targetLow}}, "cannot be left out");
    EXPECT_EQ(describe(SetNumber{{.field = Field::targetLow}, 90}, wanting),
              "Set lowest target anti-squat to 90 %");
}

TEST(ChooseHoles, IsTheCombinationAsCarWithCombinationMakesIt) {
    const Car car = levelCar();
    const HoleUse use = useOf({{1, 0}, {0, 1}});
    for (const LengthTreatment lengths :
         {LengthTreatment::keep, LengthTreatment::refit, LengthTreatment::uppers}) {
        Car made = carWithCombination(car, use, lengths).car.value();
        markWorkedOutLengths(made, car);
        EXPECT_EQ(applied(car, ChooseHoles{use, lengths}), made);
    }
    EXPECT_EQ(applied(car, ChooseHoles{holesInUse(car), LengthTreatment::refit}), car);
    EXPECT_EQ(describe(ChooseHoles{use, LengthTreatment::uppers}, car),
              "Bolt to high / rear / front / high, lengths: uppers");
}

TEST(ChooseHoles, IsNamedWhereThereIsOneHoleEverywhere) {
    Car car = levelCar();
    drillHoles(car, 1, 0.01);
    EXPECT_EQ(describe(ChooseHoles{{}, LengthTreatment::refit}, car), "Set lengths: refit");
}

TEST(ChooseHoles, RefusesWhatCannotBe) {
    Car car = levelCar();
    expectRefused(car, ChooseHoles{useOf({{0, 7}}), LengthTreatment::keep}, "'lower' has no hole 8");
    car.links[0].chassis.holes.push_back({-1, "far", in(20, 18, 40)});
    expectRefused(car, ChooseHoles{useOf({{2, 0}}), LengthTreatment::uppers}, "can't be assembled at ride");
    car.links.erase(car.links.begin() + 1);
    expectRefused(car, ChooseHoles{useOf({{1, 0}}), LengthTreatment::uppers}, "no upper link to refit");
}

// What was measured stays true: the thread held belongs to the length the rod had then.
TEST(Engagement, IsPinnedWhereTheLengthChanges) {
    const Car car = threadedCar();
    EXPECT_EQ(measuredAt(car), std::nullopt);
    EXPECT_EQ(measuredAt(applied(car, SetNumber{ofLower(Field::linkLength), 0.51})), 20 * kInch);
    EXPECT_EQ(measuredAt(applied(car, ChooseHoles{useOf({{0, 1}}), LengthTreatment::refit})), 20 * kInch);
    EXPECT_EQ(measuredAt(applied(car, UseHole{0, End::axle, 1})), 20 * kInch) << "set to fit the other hole";
    Car written = car;
    written.links[0].length = 20.125 * kInch;
    EXPECT_EQ(measuredAt(applied(written, UseHole{0, End::axle, 1})), std::nullopt) << "as long as before";
    EXPECT_EQ(measuredAt(applied(written, ClearNumber{ofLower(Field::linkLength)})), 20.125 * kInch);
    EXPECT_EQ(measuredAt(applied(car, RemoveHole{0, End::axle, 0})), 20 * kInch) << "bolted to the next hole";
    EXPECT_EQ(measuredAt(applied(car, RemoveHole{0, End::axle, 1})), std::nullopt);
}

TEST(Engagement, IsNotPinnedWhereNothingWasMeasured) {
    const Car car = levelCar();
    EXPECT_EQ(measuredAt(applied(car, SetNumber{ofLower(Field::linkLength), 0.51})), std::nullopt);
    EXPECT_EQ(measuredAt(applied(car, UseHole{0, End::axle, 1})), std::nullopt);
}

TEST(Engagement, EnteredIsMeasuredNow) {
    Car car = applied(levelCar(), SetNumber{ofLower(Field::adjusterEngagement), 0.012});
    EXPECT_EQ(car.links[0].adjuster->engagement, 0.012);
    EXPECT_EQ(measuredAt(car), 20 * kInch);
    car = applied(car, SetNumber{ofLower(Field::linkLength), 0.51});
    EXPECT_EQ(measuredAt(car), 20 * kInch);
    EXPECT_EQ(measuredAt(applied(car, SetNumber{ofLower(Field::adjusterEngagement), 0.011})), 0.51);
    EXPECT_EQ(describe(SetNumber{ofLower(Field::adjusterEngagement), 0.5 * kInch}, car),
              "Set lower thread engagement to 1/2 in");
}

TEST(Limits, ComeAndGo) {
    Car car = levelCar();
    car.driveline = Driveline{0, in(12, 0, 13), 0, in(60, 0, 13)};
    for (const FieldId& id : {ofLower(Field::adjusterShortest), ofLower(Field::adjusterLongest),
                              ofLower(Field::adjusterLeastEngagement), ofLower(Field::rodEndLimit),
                              FieldId{.field = Field::jointLimit}}) {
        EXPECT_EQ(numberAt(car, id), std::nullopt);
        const Car limited = applied(car, SetNumber{id, 0.125});
        EXPECT_EQ(numberAt(limited, id), 0.125);
        EXPECT_EQ(applied(limited, ClearNumber{id}), car);
    }
    Adjuster adjuster = *car.links[0].adjuster;
    adjuster.leastEngagement = -1;
    expectRefused(car, SetAdjuster{0, adjuster}, "least thread engagement: expected a length of thread");
    adjuster = *car.links[0].adjuster;
    adjuster.longest = 0;
    expectRefused(car, SetAdjuster{0, adjuster}, "longest length: expected");
    Driveline line = *car.driveline;
    line.jointLimit = 2;
    expectRefused(car, SetDriveline{line}, "driveshaft joint angle limit: expected an angle above 0");
    car.driveline.reset();
    expectRefused(car, SetNumber{{.field = Field::jointLimit}, 0.1}, "no driveline yet");
}

}  // namespace
}  // namespace bolthole
