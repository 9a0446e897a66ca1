// The walk: every box of the sheet once, and what two readings of a number make of it.
#include "widgets/pages/measure/measuring_walk.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "geometry/car/numbers.h"
#include "geometry/car/starting_numbers.h"
#include "geometry/edits/starting_car.h"
#include "geometry/uncertainty/uncertain_inputs.h"
#include "geometry/units/uncertainty_text.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

constexpr FieldId kWheelbase{.field = Field::wheelbase};

FieldId uncertaintyIdOf(FieldId id) {
    id.uncertainty = true;
    return id;
}

TEST(MeasuringWalk, EveryNumberOfTheSheetIsAskedForOnce) {
    const MeasuringWalk walk = measuringWalk(plainCar());
    ASSERT_GT(walk.stops.size(), 20U);
    for (std::size_t at = 0; at < walk.stops.size(); ++at) {
        EXPECT_LT(walk.stops[at].area, walk.areas.size());
        EXPECT_FALSE(walk.stops[at].name.isEmpty());
        EXPECT_EQ(std::ranges::count_if(walk.stops,
                                        [&](const WalkStop& stop) { return stop.id == walk.stops[at].id; }),
                  1)
            << walk.stops[at].name.toStdString();
        EXPECT_TRUE(at == 0 || walk.stops[at - 1].area <= walk.stops[at].area) << "in the sheet's order";
    }
}

TEST(MeasuringWalk, ItBeginsAtTheFirstBoxThatIsLeft) {
    Car car = startingCar({.layout = kLinkLayouts[0], .title = "Started"});
    const MeasuringWalk walk = measuringWalk(car);
    EXPECT_EQ(firstLeft(car, walk), 0U);
    const auto absent =
        std::ranges::find_if(walk.stops, [&](const WalkStop& stop) { return !numberAt(car, stop.id); });
    ASSERT_NE(absent, walk.stops.end());
    for (auto stop = walk.stops.begin(); stop != absent; ++stop) {
        setOrigin(car, stop->id, Origin::measured);
    }
    EXPECT_EQ(walk.stops[firstLeft(car, walk).value()].id, absent->id)
        << "an empty box is left as one with a starting number is";
}

TEST(MeasuringWalk, WhatWasWorkedOutIsLeftToo) {
    Car car = plainCar();
    const FieldId length{.field = Field::linkLength, .link = 0};
    car.links[0].length = 0.5;
    const MeasuringWalk walk = measuringWalk(car);
    const std::size_t left = countLeft(car, walk);
    setOrigin(car, length, Origin::workedOut);
    EXPECT_EQ(leftWords(car, walk), QStringLiteral(", %1 boxes left to fill, 1 worked out").arg(left + 1));
    const auto place = [&](const FieldId& id) {
        return std::ranges::find(walk.stops, id, &WalkStop::id) - walk.stops.begin();
    };
    EXPECT_LE(static_cast<std::ptrdiff_t>(firstLeft(car, walk).value()), place(length));
}

// JCGM 100:2008, 4.2.2 and 4.2.3: the mean's experimental standard deviation is s/sqrt(n); of two readings
// s is their difference over sqrt(2).
TEST(MeasuringWalk, TwoReadingsGiveTheMeanAndItsStandardUncertainty) {
    const Car car = plainCar();
    const Car then = bolthole::apply(car, editOfReadings(car, kWheelbase, 2.90, 2.92)).car;
    EXPECT_NEAR(then.wheelbase, 2.91, 1e-12);
    const double guide = 0.02 / std::sqrt(2.0) / std::sqrt(2.0);
    ASSERT_TRUE(numberAt(then, uncertaintyIdOf(kWheelbase)));
    EXPECT_NEAR(*numberAt(then, uncertaintyIdOf(kWheelbase)), guide, 0.03 * guide) << "1.96 for 2";
    EXPECT_NEAR(kCoverage95 * *numberAt(then, uncertaintyIdOf(kWheelbase)), 0.02, 1e-9);
}

TEST(MeasuringWalk, OfThreeReadingsTheTwoThatLieClosestCount) {
    const auto closest = [](double a, double b, double c) {
        std::array<double, 2> two = closestTwo({a, b, c});
        std::ranges::sort(two);
        return two;
    };
    EXPECT_EQ(closest(1.0, 3.0, 1.1), (std::array{1.0, 1.1}));
    EXPECT_EQ(closest(1.0, 3.0, 2.9), (std::array{2.9, 3.0}));
    EXPECT_EQ(closest(1.0, 1.5, 9.0), (std::array{1.0, 1.5}));
    EXPECT_EQ(closest(1.0, 3.0, 2.0), (std::array{2.0, 3.0})) << "as far from both: with the later one";
}

TEST(MeasuringWalk, EqualReadingsMakeNoTapeFiner) {
    const Car car = plainCar();
    const Car then = bolthole::apply(car, editOfReadings(car, kWheelbase, 2.9, 2.9)).car;
    EXPECT_FALSE(numberAt(then, uncertaintyIdOf(kWheelbase)));
    const Car doubtful = bolthole::apply(car, SetNumber{uncertaintyIdOf(kWheelbase), 0.05}).car;
    const Car again = bolthole::apply(doubtful, editOfReadings(doubtful, kWheelbase, 2.9, 2.9)).car;
    ASSERT_TRUE(numberAt(again, uncertaintyIdOf(kWheelbase)));
    EXPECT_NEAR(*numberAt(again, uncertaintyIdOf(kWheelbase)), uncertaintyOf(car, kWheelbase).uncertainty,
                1e-9);
}

TEST(MeasuringWalk, OneReadingTakesThePlaceOfTwoAndOfTheirUncertainty) {
    const Car car = plainCar();
    const Car doubtful = bolthole::apply(car, editOfReadings(car, kWheelbase, 2.8, 3.0)).car;
    ASSERT_GT(*numberAt(doubtful, uncertaintyIdOf(kWheelbase)), 0.1);
    const Car again = bolthole::apply(doubtful, editOfReadings(doubtful, kWheelbase, 2.9, std::nullopt)).car;
    EXPECT_NEAR(*numberAt(again, uncertaintyIdOf(kWheelbase)), uncertaintyOf(car, kWheelbase).uncertainty,
                1e-9);
    const Car once = bolthole::apply(car, editOfReadings(car, kWheelbase, 2.9, std::nullopt)).car;
    EXPECT_FALSE(numberAt(once, uncertaintyIdOf(kWheelbase)));
}

}  // namespace
}  // namespace bolthole
