// Corner weights, loads that came and went, pads: figures worked by hand and laws that must hold.
#include "geometry/weights/weights.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "geometry/weights/wheel_rates.h"
#include "tests/support/car_generator.h"

namespace bolthole {
namespace {

const CornerWeights kCorners{480, 440, 360, 340};

Stance stanceOf(bool rates) {
    Stance stance{.wheelbase = 2.8, .frontTrack = 1.5, .rearTrack = 1.45};
    if (rates) {
        stance.front = WheelRates{.wheel = 30e3, .tire = 200e3, .roll = 50e3};
        stance.rear = WheelRates{.wheel = 25e3, .roll = 15e3};
    }
    return stance;
}

CornerWeights mirrored(const CornerWeights& corners) {
    return {corners.rightFront, corners.leftFront, corners.rightRear, corners.leftRear};
}

}  // namespace

TEST(Weights, FiguresByHand) {
    const WeightFigures figures = weightFigures(kCorners, stanceOf(false));
    EXPECT_DOUBLE_EQ(figures.total, 1620);
    EXPECT_DOUBLE_EQ(figures.front, 920);
    EXPECT_DOUBLE_EQ(figures.rear, 700);
    EXPECT_DOUBLE_EQ(figures.left, 840);
    EXPECT_DOUBLE_EQ(figures.right, 780);
    EXPECT_DOUBLE_EQ(figures.diagonal, 800);
    EXPECT_NEAR(figures.frontPercent, 56.790, 5e-4);
    EXPECT_NEAR(figures.leftPercent, 51.852, 5e-4);
    EXPECT_NEAR(figures.diagonalPercent, 49.383, 5e-4);
    EXPECT_NEAR(figures.cgAhead, 2.8 * 920 / 1620, 1e-12);
    EXPECT_NEAR(figures.cgLeft.value(), (40 * 0.75 + 20 * 0.725) / 1620, 1e-12);
}

TEST(Weights, NoTrackNoSidewaysFigures) {
    for (const bool front : {false, true}) {
        Stance stance = stanceOf(true);
        (front ? stance.frontTrack : stance.rearTrack).reset();
        EXPECT_FALSE(weightFigures(kCorners, stance).cgLeft.has_value());
        const MassAt driver{80, {1.2, 0.4, 0.5}};
        const BallastResult loaded = withBallast(kCorners, stance, {&driver, 1});
        ASSERT_TRUE(loaded.car.has_value());
        EXPECT_FALSE(loaded.car->cgLeft || loaded.car->leftPercent || loaded.car->corners);
        EXPECT_NEAR(loaded.car->front, 920 + 80 * 1.2 / 2.8, 1e-12);
        EXPECT_FALSE(padFigures({.leftFront = 0.01}, kCorners, 0.5, stance).worst().has_value());
    }
}

TEST(Weights, MirroredCarMirrorsItsFigures) {
    for (const bool rates : {false, true}) {
        const Stance stance = stanceOf(rates);
        const MassAt load{95, {1.1, 0.38, 0.5}};
        const MassAt other{95, {1.1, -0.38, 0.5}};
        const BallastedCar one = withBallast(kCorners, stance, {&load, 1}).car.value();
        const BallastedCar two = withBallast(mirrored(kCorners), stance, {&other, 1}).car.value();
        EXPECT_NEAR(one.front, two.front, 1e-12);
        EXPECT_NEAR(one.cgLeft.value(), -two.cgLeft.value(), 1e-12);
        EXPECT_NEAR(one.leftPercent->low, 100 - two.leftPercent->high, 1e-10);
        EXPECT_EQ(one.corners.has_value(), rates);
        if (rates) {
            EXPECT_NEAR(one.corners->leftRear, two.corners->rightRear, 1e-10);
            EXPECT_NEAR(one.corners->leftFront, two.corners->rightFront, 1e-10);
        }
    }
}

// Total, and moments about the rear axle and the middle, are those of the masses.
TEST(Weights, LoadsBalance) {
    CarGenerator generator(11);
    const Stance stance = stanceOf(true);
    for (int number = 0; number < 100; ++number) {
        std::vector<MassAt> changes;
        double mass = 0;
        double foreAft = 0;
        double sideways = 0;
        for (int load = 0; load < 4; ++load) {
            changes.push_back({generator.between(-30, 60),
                               {generator.between(-0.9, 3.2), generator.between(-0.6, 0.6), 0.4}});
            mass += changes.back().mass;
            foreAft += changes.back().mass * changes.back().at.x();
            sideways += changes.back().mass * changes.back().at.y();
        }
        const CornerWeights corners = withBallast(kCorners, stance, changes).car->corners.value();
        const WeightFigures was = weightFigures(kCorners, stance);
        const WeightFigures is = weightFigures(corners, stance);
        EXPECT_NEAR(is.total - was.total, mass, 1e-9);
        EXPECT_NEAR(is.total * is.cgAhead - was.total * was.cgAhead, foreAft, 1e-9);
        EXPECT_NEAR(is.total * *is.cgLeft - was.total * *was.cgLeft, sideways, 1e-9);
    }
}

TEST(Weights, WhatWasPutOnComesOffAgain) {
    const Stance stance = stanceOf(true);
    const MassAt on{120, {0.4, -0.3, 0.6}};
    const MassAt off{-120, {0.4, -0.3, 0.6}};
    const CornerWeights there = withBallast(kCorners, stance, {&on, 1}).car->corners.value();
    const CornerWeights back = withBallast(there, stance, {&off, 1}).car->corners.value();
    EXPECT_NEAR(back.leftFront, kCorners.leftFront, 1e-10);
    EXPECT_NEAR(back.rightFront, kCorners.rightFront, 1e-10);
    EXPECT_NEAR(back.leftRear, kCorners.leftRear, 1e-10);
    EXPECT_NEAR(back.rightRear, kCorners.rightRear, 1e-10);
}

TEST(Weights, ChangesFollowLevelsAndWhatIsAboard) {
    const std::vector<Ballast> ballast{
        {.name = "fuel",
         .fill = Fill{.volume = 0.060, .density = 740},
         .at = {-0.5, 0, 0.4},
         .weighed = 0.5,
         .aboard = 0.25},
        {.name = "tools", .mass = 12, .at = {-0.7, 0.3, 0.5}, .weighed = 1, .aboard = 0},
        {.name = "bottle", .mass = 9, .at = {-0.4, -0.3, 0.5}, .weighed = 0, .aboard = 1},
        {.name = "helmet", .mass = 2, .at = {1, 0.4, 0.7}, .weighed = 1, .aboard = 1}};
    const std::vector<MassAt> changes = changesSinceWeighed(ballast);
    ASSERT_EQ(changes.size(), 3U) << "the helmet stayed";
    EXPECT_NEAR(changes[0].mass, -11.1, 1e-12) << "a quarter of 60 liters at 0.74 kg";
    EXPECT_DOUBLE_EQ(changes[1].mass, -12);
    EXPECT_DOUBLE_EQ(changes[2].mass, 9);
    EXPECT_EQ(changes[2].at, ballast[2].at);
}

TEST(Weights, RefusesToLiftWheels) {
    for (const bool rates : {false, true}) {
        const MassAt anvil{700, {-6, 0, 0.5}};
        const BallastResult axle = withBallast(kCorners, stanceOf(rates), {&anvil, 1});
        EXPECT_FALSE(axle.car.has_value());
        EXPECT_NE(axle.refusal.find("an axle would carry less than nothing"), std::string::npos);
    }
    const MassAt aside{300, {1.4, 5, 0.5}};
    const BallastResult corner = withBallast(kCorners, stanceOf(true), {&aside, 1});
    EXPECT_FALSE(corner.car.has_value());
    EXPECT_NE(corner.refusal.find("a corner would carry less than nothing"), std::string::npos);
    const MassAt nonsense{std::numeric_limits<double>::quiet_NaN(), {1, 0, 0}};
    EXPECT_FALSE(withBallast(kCorners, stanceOf(false), {&nonsense, 1}).car.has_value());
}

TEST(Weights, LeftSideIsBoundedByWhicheverAxleHoldsTheLean) {
    const MassAt driver{80, {1.2, 0.4, 0.5}};
    const BallastedCar car = withBallast(kCorners, stanceOf(false), {&driver, 1}).car.value();
    EXPECT_NEAR(car.leftPercent->low, 100 * (840 + 40 + 32 / 1.5) / 1700, 1e-10);
    EXPECT_NEAR(car.leftPercent->high, 100 * (840 + 40 + 32 / 1.45) / 1700, 1e-10);
}

TEST(Weights, PadsTiltedAsOnePlaneDoNotWarp) {
    // A plane that leans 0.01 sideways and 0.02 fore and aft; the tracks differ.
    const auto height = [](double x, double y) { return 0.02 * x + 0.01 * y; };
    const PadHeights pads{height(2.8, 0.75), height(2.8, -0.75), height(0, 0.725), height(0, -0.725)};
    const PadFigures figures = padFigures(pads, kCorners, 0.5, stanceOf(true));
    EXPECT_NEAR(figures.warp, 0, 1e-15);
    EXPECT_NEAR(figures.worst().value(), 0, 1e-12);
    EXPECT_NEAR(figures.slope, 0.02, 1e-15);
    EXPECT_NEAR(figures.lean.value(), 0.01, 1e-15);
    EXPECT_LT(figures.frontBySlope, 0) << "the high end reads light";
    EXPECT_LT(figures.leftByLean.value(), 0);
}

TEST(Weights, WarpLoadsTheHighDiagonal) {
    const PadFigures figures = padFigures({.leftFront = 0.005}, kCorners, 0.5, stanceOf(true));
    EXPECT_GT(figures.byWarp->leftFront, 0);
    EXPECT_GT(figures.byWarp->rightRear, 0);
    EXPECT_LT(figures.byWarp->rightFront, 0);
    EXPECT_LT(figures.byWarp->leftRear, 0);
    EXPECT_NEAR(figures.byWarp->total(), 0, 1e-12);
    EXPECT_NEAR(figures.byWarp->front(), 0, 1e-12) << "axles stay right too";
}

// The same height one pad lower than three is the same warp with the other sign on each diagonal.
TEST(Weights, AnyPadOutOfPlaneThrowsTheSame) {
    const Stance stance = stanceOf(true);
    const double one = padFigures({.leftFront = 0.005}, kCorners, 0.5, stance).byWarp->leftFront;
    EXPECT_NEAR(padFigures({.rightFront = 0.005}, kCorners, 0.5, stance).byWarp->leftFront, -one, 1e-12);
    EXPECT_NEAR(padFigures({.leftFront = 0.012, .rightFront = 0.007, .leftRear = 0.007, .rightRear = 0.007},
                           kCorners, 0.5, stance)
                    .byWarp->leftFront,
                one, 1e-12);
}

TEST(WheelRates, RollInSeriesWithTires) {
    const WheelRates rates{.wheel = 20e3, .tire = 200e3};
    EXPECT_DOUBLE_EQ(suspensionRoll(rates, 1.5), 20e3 * 1.5 * 1.5 / 2);
    const double series = 20e3 * 200e3 / 220e3;
    EXPECT_NEAR(rollStiffness(rates, 1.5), series * 1.5 * 1.5 / 2, 1e-9);
    EXPECT_NEAR(1 / rideGive(rates), series, 1e-9);
    EXPECT_DOUBLE_EQ(tireRollGive({.wheel = 20e3}, 1.5), 0);
    EXPECT_DOUBLE_EQ(suspensionRoll({.wheel = 20e3, .roll = 9e3}, 1.5), 9e3) << "what was entered counts";
}

TEST(WheelRates, UnknownWithoutTracksOrRates) {
    for (int missing = 0; missing < 4; ++missing) {
        Stance stance = stanceOf(true);
        ASSERT_TRUE(rollStiffness(stance).has_value());
        missing == 0   ? stance.frontTrack.reset()
        : missing == 1 ? stance.rearTrack.reset()
        : missing == 2 ? stance.front.reset()
                       : stance.rear.reset();
        EXPECT_FALSE(rollStiffness(stance).has_value()) << missing;
    }
}

}  // namespace bolthole
