// A figure that rests on a number nobody measured has no uncertainty; the others keep theirs.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "geometry/car/starting_numbers.h"
#include "geometry/edits/starting_car.h"
#include "geometry/uncertainty/choice_spread.h"
#include "geometry/uncertainty/ic_cloud.h"
#include "geometry/uncertainty/read_spread.h"
#include "geometry/uncertainty/roll_spread.h"
#include "geometry/uncertainty/trace_spread.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

Car guessed(const FieldId& id) {
    Car car = plainCar();
    setStarting(car, id, true);
    return car;
}

// Anti-squat is swing-arm slope over h / wheelbase (by hand): the CG height moves it and no other figure.
TEST(StartingSpread, OfTheCgHeightTakesAntiSquatAlone) {
    const TraceSpread sure = computeSpread(plainCar());
    const TraceSpread spread = computeSpread(guessed({.field = Field::cgHeight}));
    EXPECT_TRUE(std::isnan(spread.atRide(Figure::antiSquat)));
    EXPECT_TRUE(std::isnan(spread.at(static_cast<std::size_t>(Figure::antiSquat), 0.03)));
    for (const Figure figure : {Figure::icX, Figure::icZ, Figure::swingArmAngle, Figure::pinion}) {
        EXPECT_EQ(spread.atRide(figure), sure.atRide(figure)) << static_cast<int>(figure);
    }
    EXPECT_EQ(spread.startsBehindFigure(0, static_cast<std::size_t>(Figure::antiSquat)).size(), 1U);
    EXPECT_TRUE(
        std::isnan(spreadOfDifference(spread, spread, 0, static_cast<std::size_t>(Figure::antiSquat))));
}

// A joint of the driveshaft moves no link.
TEST(StartingSpread, OfAJointLeavesTheLinksAlone) {
    const TraceSpread spread = computeSpread(guessed({.field = Field::outputJoint, .axis = 2}));
    EXPECT_TRUE(std::isnan(spread.atRide(Figure::driveshaft)));
    EXPECT_FALSE(std::isnan(spread.atRide(Figure::antiSquat)));
}

TEST(StartingSpread, AnOwnUncertaintyCounts) {
    Car car = guessed({.field = Field::cgHeight});
    car.spreads.set(Field::cgHeight, -1, 0.05);
    EXPECT_GT(computeSpread(car).atRide(Figure::antiSquat), 0) << "somebody said how wide it is";
    car = guessed({.field = Field::cgHeight});
    car.cgHeightFrom = CgHeightSource::estimate;
    EXPECT_GT(computeSpread(car).atRide(Figure::antiSquat), 0) << "an estimate has its own";
    EXPECT_EQ(startWords(car, startsUsed(car)), "CG height");
}

TEST(StartingSpread, OfANewCarThereIsNone) {
    const Car car = startingCar({});
    const TraceSpread spread = computeSpread(car);
    EXPECT_TRUE(std::isnan(spread.atRide(Figure::antiSquat)));
    EXPECT_TRUE(std::isnan(spread.atRide(Figure::icX)));
    EXPECT_TRUE(std::isnan(computeRollSpread(car).of(3, RollFigure::center)));
    EXPECT_TRUE(std::isnan(ChoiceSpreader(car, LengthTreatment::keep).solve(holesInUse(car)).antiSquat));
    EXPECT_EQ(drawCloud(car, {.samples = 1000, .threads = 1}).drawn, 0U);
}

// y = x / 2 of the wheelbase and of the front track, by hand.
TEST(StartingSpread, OfNumbersReadOffACar) {
    const Car car = guessed({.field = Field::wheelbase});
    const ReadNumbers read = [](const Car& of, std::span<double> numbers) {
        numbers[0] = of.wheelbase / 2;
        numbers[1] = of.rearTireRadius / 2;
        return true;
    };
    const std::vector<double> spread = readSpread(car, 2, read);
    EXPECT_TRUE(std::isnan(spread[0]));
    EXPECT_NEAR(spread[1], kTapeSpread / 2, 1e-12);
    const auto behind = startsBehind(car, 2, read);
    EXPECT_THAT(behind[0], testing::ElementsAre(FieldId{.field = Field::wheelbase}));
    EXPECT_TRUE(behind[1].empty());
}

TEST(StartingSpread, NamesTheFirstAndCountsTheRest) {
    Car car = guessed({.field = Field::cgHeight});
    setStarting(car, holeField(0, End::chassis, 0, 0), true);
    setStarting(car, holeField(0, End::chassis, 0, 2), true);
    const std::string hole = car.links[0].name + " " + car.links[0].chassis.holes[0].name + " hole";
    EXPECT_EQ(startWords(car, startsUsed(car)), hole + ", CG height");
    const Car whole = startingCar({});
    EXPECT_EQ(startWords(whole, startsUsed(whole)),
              "wheelbase, rear tire radius, front tire radius and 10 more");
    EXPECT_EQ(startWords(plainCar(), startsUsed(plainCar())), "");
}

}  // namespace
}  // namespace bolthole
