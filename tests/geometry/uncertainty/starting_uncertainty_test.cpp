// A figure that rests on a number nobody measured has no uncertainty; the others keep theirs.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "geometry/car/starting_numbers.h"
#include "geometry/edits/starting_car.h"
#include "geometry/uncertainty/combination_uncertainty.h"
#include "geometry/uncertainty/ic_cloud.h"
#include "geometry/uncertainty/read_uncertainty.h"
#include "geometry/uncertainty/roll_uncertainty.h"
#include "geometry/uncertainty/trace_uncertainty.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

Car guessed(const FieldId& id) {
    Car car = plainCar();
    setOrigin(car, id, Origin::starting);
    return car;
}

// Anti-squat is swing-arm slope over h / wheelbase (by hand): the CG height moves it and no other figure.
TEST(StartingUncertainty, OfTheCgHeightTakesAntiSquatAlone) {
    const TraceUncertainty measured = computeUncertainty(plainCar());
    const TraceUncertainty uncertainty = computeUncertainty(guessed({.field = Field::cgHeight}));
    EXPECT_TRUE(std::isnan(uncertainty.atRide(Figure::antiSquat)));
    EXPECT_TRUE(std::isnan(uncertainty.at(static_cast<std::size_t>(Figure::antiSquat), 0.03)));
    for (const Figure figure : {Figure::icX, Figure::icZ, Figure::swingArmAngle, Figure::pinion}) {
        EXPECT_EQ(uncertainty.atRide(figure), measured.atRide(figure)) << static_cast<int>(figure);
    }
    EXPECT_EQ(uncertainty.startsBehindFigure(0, static_cast<std::size_t>(Figure::antiSquat)).size(), 1U);
    EXPECT_TRUE(std::isnan(
        uncertaintyOfDifference(uncertainty, uncertainty, 0, static_cast<std::size_t>(Figure::antiSquat))));
}

// A joint of the driveshaft moves no link.
TEST(StartingUncertainty, OfAJointLeavesTheLinksAlone) {
    const TraceUncertainty uncertainty =
        computeUncertainty(guessed({.field = Field::outputJoint, .axis = 2}));
    EXPECT_TRUE(std::isnan(uncertainty.atRide(Figure::driveshaft)));
    EXPECT_FALSE(std::isnan(uncertainty.atRide(Figure::antiSquat)));
}

TEST(StartingUncertainty, AnOwnUncertaintyCounts) {
    Car car = guessed({.field = Field::cgHeight});
    car.uncertainties.set(Field::cgHeight, -1, 0.05);
    EXPECT_GT(computeUncertainty(car).atRide(Figure::antiSquat), 0) << "somebody said how wide it is";
    car = guessed({.field = Field::cgHeight});
    car.cgHeightFrom = CgHeightSource::estimate;
    EXPECT_GT(computeUncertainty(car).atRide(Figure::antiSquat), 0) << "an estimate has its own";
    EXPECT_EQ(startWords(car, startsUsed(car)), "CG height");
}

TEST(StartingUncertainty, OfANewCarThereIsNone) {
    const Car car = startingCar({});
    const TraceUncertainty uncertainty = computeUncertainty(car);
    EXPECT_TRUE(std::isnan(uncertainty.atRide(Figure::antiSquat)));
    EXPECT_TRUE(std::isnan(uncertainty.atRide(Figure::icX)));
    EXPECT_TRUE(std::isnan(computeRollUncertainty(car).of(3, RollFigure::center)));
    EXPECT_TRUE(std::isnan(
        CombinationUncertaintySolver(car, LengthTreatment::keep).solve(holesInUse(car)).antiSquat));
    EXPECT_EQ(drawCloud(car, {.samples = 1000, .threads = 1}).drawn, 0U);
}

// y = x / 2 of the wheelbase and of the front track, by hand.
TEST(StartingUncertainty, OfNumbersReadOffACar) {
    const Car car = guessed({.field = Field::wheelbase});
    const ReadNumbers read = [](const Car& of, std::span<double> numbers) {
        numbers[0] = of.wheelbase / 2;
        numbers[1] = of.rearTireRadius / 2;
        return true;
    };
    const std::vector<double> uncertainty = readUncertainty(car, 2, read);
    EXPECT_TRUE(std::isnan(uncertainty[0]));
    EXPECT_NEAR(uncertainty[1], kTapeUncertainty / 2, 1e-12);
    const auto behind = startsBehind(car, 2, read);
    EXPECT_THAT(behind[0], testing::ElementsAre(FieldId{.field = Field::wheelbase}));
    EXPECT_TRUE(behind[1].empty());
}

TEST(StartingUncertainty, NamesTheFirstAndCountsTheRest) {
    Car car = guessed({.field = Field::cgHeight});
    setOrigin(car, holeField(0, End::chassis, 0, 0), Origin::starting);
    setOrigin(car, holeField(0, End::chassis, 0, 2), Origin::starting);
    const std::string hole = car.links[0].name + " " + car.links[0].chassis.holes[0].name + " hole";
    EXPECT_EQ(startWords(car, startsUsed(car)), hole + ", CG height");
    const Car whole = startingCar({});
    EXPECT_EQ(startWords(whole, startsUsed(whole)), "wheelbase, rear tire radius, front tire radius and " +
                                                        std::to_string(startsUsed(whole).size() - 3) +
                                                        " more numbers");
    EXPECT_EQ(startWords(plainCar(), startsUsed(plainCar())), "");
}

}  // namespace
}  // namespace bolthole
