// Two cars side by side: what counts as turned, and what the figures say.
#include "geometry/compare/comparison.h"

#include <gtest/gtest.h>

#include <cmath>

#include "geometry/combinations/combination_figures.h"
#include "tests/support/car_generator.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

constexpr double kNone = kAbsent;

TEST(Comparison, OfACarWithItselfIsEmpty) {
    for (int layout = 0; layout <= static_cast<int>(Layout::ladderGuide); ++layout) {
        CarGenerator generator(20 + static_cast<std::uint64_t>(layout));
        const Car car = generator.draw(static_cast<Layout>(layout));
        const Comparison comparison = compareCars(car, car);
        EXPECT_TRUE(comparison.bolts.empty());
        EXPECT_TRUE(comparison.lengths.empty());
        EXPECT_TRUE(comparison.numbers.empty());
        EXPECT_TRUE(comparison.unshared.empty());
        EXPECT_EQ(comparison.shared.size(), car.links.size());
        for (const TravelPosition place : kTravelPositions) {
            for (const FigureChange& change :
                 changesAt(stationAt(comparison.before, place), stationAt(comparison.after, place))) {
                EXPECT_FALSE(change.tells());
                EXPECT_EQ(change.weight(), 0.0);
            }
        }
    }
}

TEST(Comparison, OtherUnitsAreNoDifference) {
    Car metric = plainCar();
    metric.units = Units::metric;
    const Comparison comparison = compareCars(plainCar(), metric);
    EXPECT_TRUE(comparison.numbers.empty());
    EXPECT_EQ(comparison.before.ride.figures, comparison.after.ride.figures);
}

TEST(Comparison, ABoltThatMovesIsNamedFromHoleToHole) {
    Car after = plainCar();
    after.links[0].axle.use = 1;
    const Comparison comparison = compareCars(plainCar(), after);
    ASSERT_EQ(comparison.bolts.size(), 1U);
    const BoltMove& move = comparison.bolts[0];
    EXPECT_EQ(move.end, End::axle);
    EXPECT_EQ(move.from, "bottom");
    EXPECT_EQ(move.to, "top");
    EXPECT_NEAR(move.by.z(), 2.5 * kMetresPerInch, 1e-12);
    EXPECT_EQ(move.bolts, 2) << "left and right";
    // The lower's length was not written: it is fitted to the other hole.
    ASSERT_EQ(comparison.lengths.size(), 1U);
    EXPECT_NEAR(comparison.lengths[0].after - comparison.lengths[0].before,
                (plainCar().links[0].axle.holes[1].at - plainCar().links[0].chassis.holes[0].at).norm() -
                    holeDistance(plainCar().links[0]),
                1e-12);
    EXPECT_FALSE(comparison.lengths[0].turns) << "the lowers have no adjuster";
}

TEST(Comparison, AHoleThatStandsElsewhereKeepsItsName) {
    Car after = plainCar();
    after.links[2].axle.holes[0].at.z() += 2e-5;
    const Comparison comparison = compareCars(plainCar(), after);
    ASSERT_EQ(comparison.bolts.size(), 1U);
    EXPECT_EQ(comparison.bolts[0].from, comparison.bolts[0].to);
    EXPECT_EQ(comparison.bolts[0].bolts, 1) << "a center link has one";
    after.links[2].axle.holes[0].at.z() -= 1.5e-5;
    EXPECT_TRUE(compareCars(plainCar(), after).bolts.empty()) << "less than a hundredth of a millimeter";
}

TEST(Comparison, AHoleOfAnotherNameIsTheSameHole) {
    Car after = plainCar();
    after.links[0].axle.holes[0].name = "lowest";
    EXPECT_TRUE(compareCars(plainCar(), after).bolts.empty());
    after.links[1].chassis.holes[0].at.x() += 0.01;
    const Comparison comparison = compareCars(plainCar(), after);
    ASSERT_EQ(comparison.bolts.size(), 1U);
    EXPECT_EQ(comparison.bolts[0].from, "1") << "a hole without a name is counted";
}

// 3/4-16 UNF: pitch 1.5875 mm (ASME B1.1), two ends that counter-turn: 3.175 mm a turn.
TEST(Comparison, LengthsComeWithTurns) {
    Car before = plainCar();
    before.links[1].length = 0.400;
    Car after = before;
    after.links[1].length = 0.400 + 1.25 * 0.003175;
    Comparison comparison = compareCars(before, after);
    ASSERT_EQ(comparison.lengths.size(), 1U);
    EXPECT_NEAR(comparison.lengths[0].turns.value(), 1.25, 1e-9);
    EXPECT_EQ(comparison.lengths[0].rods, 2);
    after.links[1].adjuster.reset();
    comparison = compareCars(before, after);
    EXPECT_NEAR(comparison.lengths[0].turns.value(), 1.25, 1e-9) << "the one it had before";
    after.links[1].length = 0.400 + 0.9 * kNoAdjustment;
    EXPECT_TRUE(compareCars(before, after).lengths.empty());
}

TEST(Comparison, NumbersThatDifferAreListedAndRoundingIsNot) {
    Car after = plainCar();
    after.cgHeight += 0.01;
    after.driveline->pinionJoint.z() += 0.01;
    after.wheelbase = std::nextafter(after.wheelbase, 10.0);
    after.cornerWeights.leftRear += 1e-4;
    const Comparison comparison = compareCars(plainCar(), after);
    ASSERT_EQ(comparison.numbers.size(), 2U);
    EXPECT_EQ(comparison.numbers[0].id.field, Field::cgHeight);
    EXPECT_EQ(comparison.numbers[1].id.field, Field::pinionJoint);
    EXPECT_EQ(comparison.numbers[1].id.axis, 2);
    after.driveline.reset();
    const Comparison without = compareCars(plainCar(), after);
    EXPECT_EQ(without.numbers.size(), 1U + 8U);
    EXPECT_TRUE(without.numbers[1].before.has_value());
    EXPECT_FALSE(without.numbers[1].after.has_value());
}

TEST(Comparison, UnlikeLinksShareWhatTheyShare) {
    Car after = plainCar();
    after.links[2].name = "third link";
    after.links[0].side = Side::left;
    after.links[1].kind = LinkKind::slider;
    const Comparison comparison = compareCars(plainCar(), after);
    EXPECT_TRUE(comparison.shared.empty()) << "name, side and kind must agree";
    ASSERT_EQ(comparison.unshared.size(), 6U);
    EXPECT_EQ(comparison.unshared[2].name, "guide");
    EXPECT_TRUE(comparison.unshared[2].inBefore);
    EXPECT_EQ(comparison.unshared[5].name, "third link");
    EXPECT_FALSE(comparison.unshared[5].inBefore);
}

TEST(Comparison, LinksOfOneNameAreMatchedInOrder) {
    Car before = plainCar();
    before.links[1] = before.links[0];
    before.links[1].axle.use = 1;
    const Comparison same = compareCars(before, before);
    ASSERT_EQ(same.shared.size(), 3U);
    EXPECT_EQ(same.shared[1].after, 1);
    EXPECT_TRUE(same.bolts.empty());
    Car after = before;
    after.links.erase(after.links.begin());
    const Comparison fewer = compareCars(before, after);
    EXPECT_EQ(fewer.shared.size(), 2U);
    ASSERT_EQ(fewer.unshared.size(), 1U);
    EXPECT_TRUE(fewer.unshared[0].inBefore);
}

TEST(Comparison, FiguresAreThoseOfEachCarsOwnTrace) {
    Car after = plainCar();
    after.links[0].axle.use = 1;
    after.travel.bump = 0.07;
    const Comparison comparison = compareCars(plainCar(), after);
    EXPECT_EQ(stationAt(comparison.before, TravelPosition::bump)->figures,
              computeTrace(plainCar()).stations.back().figures);
    EXPECT_EQ(stationAt(comparison.after, TravelPosition::bump)->figures,
              computeTrace(after).stations.back().figures);
    EXPECT_EQ((*stationAt(comparison.after, TravelPosition::bump))[Figure::travel], 0.07);
    EXPECT_EQ((*stationAt(comparison.after, TravelPosition::droop))[Figure::travel], -0.1016);
    EXPECT_EQ((*stationAt(comparison.after, TravelPosition::ride))[Figure::travel], 0.0);
}

TEST(Comparison, ACarThatCannotBeAssembledHasNoStations) {
    Car after = plainCar();
    after.links[0].length = 5.0;
    const Comparison comparison = compareCars(plainCar(), after);
    for (const TravelPosition place : kTravelPositions) {
        EXPECT_EQ(stationAt(comparison.after, place), nullptr);
    }
    for (const FigureChange& change :
         changesAt(stationAt(comparison.before, TravelPosition::ride), nullptr)) {
        EXPECT_TRUE(std::isnan(change.after));
        EXPECT_TRUE(change.tells()) << "it is there before and gone after";
    }
}

TEST(FigureChange, TellsFromATellingChangeOn) {
    EXPECT_FALSE((FigureChange{Figure::antiSquat, 100, 100.9}).tells());
    EXPECT_TRUE((FigureChange{Figure::antiSquat, 100, 99}).tells());
    EXPECT_TRUE((FigureChange{Figure::icX, 1.0, 1.0 + 1.001 / 16 * kMetresPerInch}).tells());
    EXPECT_FALSE((FigureChange{Figure::pinion, 0, 0.09 * kRadiansPerDegree}).tells());
    EXPECT_NEAR((FigureChange{Figure::pinion, 0, -0.3 * kRadiansPerDegree}).weight(), 3, 1e-12);
    EXPECT_TRUE((FigureChange{Figure::icX, kNone, 1.0}).tells());
    EXPECT_EQ((FigureChange{Figure::icX, kNone, 1.0}).weight(), 0);
    EXPECT_FALSE((FigureChange{Figure::icX, kNone, kNone}).tells());
}

TEST(ChangesAt, WhatTellsComesFirstTheLargestOnTop) {
    Station before;
    Station after;
    const auto set = [](Station& station, Figure figure, double value) {
        station.figures[static_cast<std::size_t>(figure)] = value;
    };
    for (Station* station : {&before, &after}) {
        for (const FigureInfo& info : figureTable()) {
            set(*station, info.figure, 0.0);
        }
    }
    set(after, Figure::antiSquat, 20);
    set(after, Figure::pinion, -5 * kRadiansPerDegree);
    set(after, Figure::plunge, 1e-4);
    set(after, Figure::icZ, kNone);
    const std::vector<FigureChange> changes = changesAt(&before, &after);
    ASSERT_EQ(changes.size(), kFigureCount - 2);
    EXPECT_EQ(changes[0].figure, Figure::pinion) << "50 tenths of a degree";
    EXPECT_EQ(changes[1].figure, Figure::antiSquat) << "20 percent";
    EXPECT_EQ(changes[2].figure, Figure::icZ) << "it vanishes";
    EXPECT_EQ(changes[3].figure, Figure::ground) << "the rest in their own order";
    EXPECT_EQ(changes.back().figure, Figure::plunge);
}

TEST(CompareCars, WhatOnlyOneOfThemEnteredIsNoChange) {
    Car before = plainCar();
    before.wheelRates.front.wheel = 25e3;
    before.frontTrack = 1.5;
    Car after = plainCar();
    after.wheelRates.front.wheel = 28e3;
    const Comparison comparison = compareCars(before, after);
    ASSERT_EQ(comparison.numbers.size(), 1U);
    EXPECT_EQ(comparison.numbers[0].id.field, Field::frontWheelRate);
    EXPECT_EQ(comparison.numbers[0].after, 28e3);
}

}  // namespace
}  // namespace bolthole
