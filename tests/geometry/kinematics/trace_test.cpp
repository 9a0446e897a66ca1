// The trace's figures on cars small enough to work by hand.
#include "geometry/kinematics/trace.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "tests/support/made_units.h"

namespace bolthole {
namespace {

Link rod(const std::string& name, Eigen::Vector3d axle, Eigen::Vector3d chassis) {
    Link link;
    link.name = name;
    link.chassis.holes.push_back({-1, "front", chassis * kInch});
    link.axle.holes.push_back({-1, "rear", axle * kInch});
    return link;
}

// physics.md's own case: CG 20 in above ground, wheelbase 110 in.
Car handCar() {
    Car car;
    car.wheelbase = 110 * kInch;
    car.rearTireRadius = car.frontTireRadius = 13 * kInch;
    car.cornerWeights = {450, 450, 350, 350};
    car.cgHeight = 20 * kInch;
    car.links = {rod("lower", {0, 21, 8}, {20, 21, 10}), rod("upper", {2, 12, 20}, {12, 18, 18})};
    return car;
}

// Worked by hand: lines z = 8 + 0.1 x and z = 20.4 - 0.2 x cross at (41.333, 12.133); slope 12.133 / 41.333;
// times 110 / 20.
TEST(Trace, HandCase) {
    const Trace trace = computeTrace(handCar());
    ASSERT_TRUE(trace.assembly.usable());
    EXPECT_EQ(trace.heldBySymmetry, Freedom::none);
    EXPECT_NEAR(trace.ride[Figure::icX] / kInch, 124.0 / 3.0, 1e-9);
    EXPECT_NEAR(trace.ride[Figure::icZ] / kInch, 8.0 + 12.4 / 3.0, 1e-9);
    EXPECT_NEAR(trace.ride[Figure::antiSquat], 100.0 * (36.4 / 124.0) * 110.0 / 20.0, 1e-9);
    EXPECT_NEAR(std::tan(trace.ride[Figure::swingArmAngle]), 36.4 / 124.0, 1e-12);
}

// A trace is used again for one car after another: what the last one had must not stay.
TEST(Trace, UsedAgainKeepsNothingOfTheLastCar) {
    Trace trace;
    computeTrace(handCar(), trace);
    Car parallel = handCar();
    parallel.links[1] = rod("upper", {0, 12, 18}, {20, 18, 20});  // side by side with the lower
    computeTrace(parallel, trace);
    ASSERT_TRUE(trace.assembly.usable());
    EXPECT_TRUE(std::isnan(trace.ride[Figure::icX])) << trace.ride[Figure::icX];
    EXPECT_TRUE(std::isnan(trace.ride.icCarX));
    EXPECT_NEAR(trace.ride[Figure::antiSquat], 100.0 * 0.1 * 110.0 / 20.0, 1e-9);
}

TEST(Trace, RowsAreEvenlySpacedWithBothEnds) {
    Car car = handCar();
    car.travel = {.bump = 0.1, .droop = 0.05, .steps = 4, .frontRatio = 0.5};
    const Trace trace = computeTrace(car);
    ASSERT_EQ(trace.stations.size(), 4U);
    EXPECT_EQ(trace.stations[0][Figure::travel], -0.05);
    EXPECT_NEAR(trace.stations[1][Figure::travel], 0.0, 1e-15);
    EXPECT_NEAR(trace.stations[2][Figure::travel], 0.05, 1e-15);
    EXPECT_EQ(trace.stations[3][Figure::travel], 0.1);
    EXPECT_EQ(trace.stations[3][Figure::frontTravel], 0.05);
    EXPECT_TRUE(trace.stations[3].usable);
}

// Both tires of one size and both ends moving together: the ground stays level, and ride is one of the rows.
TEST(Trace, LevelGroundWhenBothEndsMoveTogether) {
    const Trace trace = computeTrace(handCar());
    for (const Station& station : trace.stations) {
        // Not exactly level: the axle's fore-aft shift only moves the tire along the ground.
        EXPECT_NEAR(station[Figure::ground], 0.0, 1e-12);
    }
    EXPECT_EQ(trace.stations[40][Figure::travel], 0.0);
    EXPECT_NEAR(trace.stations[40][Figure::icX], trace.ride[Figure::icX], 1e-9);
}

// Tires of unlike radii standing still: the car frame's ground is level by definition. Rear only in bump by
// d: the ground turns by asin of what two circles' common tangent gives, here checked by its two tangency
// distances.
TEST(Trace, GroundIsTangentToBothTires) {
    Car car = handCar();
    car.frontTireRadius = 12 * kInch;
    car.travel.frontRatio = 0;
    const Trace trace = computeTrace(car);
    EXPECT_NEAR(trace.ride[Figure::ground], 0.0, 1e-12);
    for (const Station& station : trace.stations) {
        const GroundLine& ground = station.ground;
        EXPECT_NEAR(ground.above(station.pose.x, station.pose.z), car.rearTireRadius, 1e-12);
        EXPECT_NEAR(ground.above(ground.frontCenterX, ground.frontCenterZ), car.frontTireRadius, 1e-12);
        EXPECT_NEAR(ground.ahead(ground.frontCenterX, ground.frontCenterZ), ground.wheelbase, 1e-12);
        EXPECT_NEAR(std::hypot(ground.alongX, ground.alongZ), 1.0, 1e-12);
    }
    // The rear tire moved up against the chassis by 4 in: in the car frame the ground falls toward the front.
    EXPECT_LT(trace.stations.back()[Figure::ground], 0.0);
}

TEST(Trace, WithoutDrivelineItsFiguresAreAbsent) {
    const Trace trace = computeTrace(handCar());
    for (const Figure figure : {Figure::pinion, Figure::driveshaft, Figure::pinionToDriveshaft,
                                Figure::frontJoint, Figure::rearJoint, Figure::plunge}) {
        EXPECT_TRUE(std::isnan(trace.ride[figure]));
    }
}

// A straight driveline lying on one line: no joint angle, and plunge 0 at ride.
TEST(Trace, StraightDriveline) {
    Car car = handCar();
    const double rise = std::atan2(2.0, 40.0);
    car.driveline = Driveline{.pinionAngle = rise,
                              .pinionJoint = Eigen::Vector3d(10, 0, 13) * kInch,
                              .outputAngle = rise,
                              .outputJoint = Eigen::Vector3d(50, 0, 15) * kInch};
    const Trace trace = computeTrace(car);
    EXPECT_NEAR(trace.ride[Figure::frontJoint], 0.0, 1e-9);
    EXPECT_NEAR(trace.ride[Figure::rearJoint], 0.0, 1e-9);
    EXPECT_NEAR(trace.ride[Figure::driveshaft], rise, 1e-12);
    EXPECT_NEAR(trace.ride[Figure::pinionToDriveshaft], 0.0, 1e-12);
    EXPECT_NEAR(trace.ride[Figure::plunge], 0.0, 1e-12);
}

// Equal parallel links move the axle without turning it: the instant center is at infinity, its figures are
// absent, and the swing arm runs along the links' slope.
TEST(Trace, ParallelEqualLinks) {
    Car car = handCar();
    car.links = {rod("lower", {0, 21, 8}, {20, 21, 9}), rod("upper", {0, 21, 18}, {20, 21, 19})};
    const Trace trace = computeTrace(car);
    ASSERT_TRUE(trace.assembly.usable());
    EXPECT_EQ(trace.heldBySymmetry, Freedom::sideways);
    EXPECT_TRUE(std::isnan(trace.ride[Figure::icX]));
    EXPECT_NEAR(std::tan(trace.ride[Figure::swingArmAngle]), 0.05, 1e-12);
    for (const Station& station : trace.stations) {
        ASSERT_TRUE(station.usable);
        EXPECT_NEAR(station.pose.pitch, 0.0, 1e-12);
        EXPECT_TRUE(std::isfinite(station[Figure::antiSquat]));
    }
}

// A lower of 3 in can't follow 4 in of travel: rows past its reach stay, empty, and the report names it.
TEST(Trace, ShortLinkRunsOut) {
    Car car = handCar();
    car.links = {rod("lower", {0, 21, 8}, {3, 21, 8}), rod("upper", {0, 12, 20}, {20, 18, 20})};
    const Trace trace = computeTrace(car);
    ASSERT_TRUE(trace.assembly.usable());
    EXPECT_EQ(trace.bumpEnd.stop, Stop::outOfReach);
    EXPECT_EQ(trace.droopEnd.stop, Stop::outOfReach);
    EXPECT_LT(trace.bumpEnd.travel, 4 * kInch);
    EXPECT_GT(trace.bumpEnd.travel, 2 * kInch);
    EXPECT_EQ(trace.bumpEnd.constraint / 2, 0);
    EXPECT_FALSE(trace.stations.back().usable);
    EXPECT_EQ(trace.stations.back()[Figure::travel], car.travel.bump);
    EXPECT_TRUE(std::isnan(trace.stations.back()[Figure::antiSquat]));
    EXPECT_THAT(describe(trace.bumpEnd, car, Units::inch), testing::HasSubstr("'lower'"));
}

// A written length that the links cannot meet at ride.
TEST(Trace, ImpossibleLengthIsReported) {
    Car car = handCar();
    car.links[0].length = 40 * kInch;
    car.links[1].length = 4 * kInch;
    const Trace trace = computeTrace(car);
    EXPECT_EQ(trace.assembly.stop, Stop::outOfReach);
    EXPECT_FALSE(trace.ride.usable);
    EXPECT_FALSE(trace.stations[40].usable);
    EXPECT_FALSE(describe(trace.assembly, car, Units::inch).empty());
}

TEST(Trace, NoLinksIsUnderHeld) {
    Car car = handCar();
    car.links.clear();
    EXPECT_EQ(computeTrace(car).assembly.stop, Stop::underHeld);
}

TEST(Trace, SolveStationMatchesTheTrace) {
    const Car car = handCar();
    const Trace trace = computeTrace(car);
    const Station station = solveStation(car, trace.stations[7][Figure::travel]);
    EXPECT_NEAR(station[Figure::icX], trace.stations[7][Figure::icX], 1e-9);
    EXPECT_FALSE(solveStation(car, 3.0).usable);
}

}  // namespace
}  // namespace bolthole
