// Cardan joints: what their formulas must agree on among each other.
#include "geometry/statics/cardan.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "tests/support/made_units.h"

namespace bolthole {
namespace {

using Eigen::Vector3d;

constexpr double kQuarter = std::numbers::pi / 2;

Vector3d inPlane(double degrees) {
    return {std::cos(degrees * kDegree), 0, std::sin(degrees * kDegree)};
}

// Two joints in side view, in degrees against the level: output, shaft, pinion.
JointTrain sideView(double output, double shaft, double pinion, double offset = 0) {
    return jointTrain(std::array{inPlane(output), inPlane(shaft), inPlane(pinion)}, std::array{offset});
}

}  // namespace

TEST(CardanTrain, InOnePlaneAndInPhaseTheSquaresSubtract) {
    for (const auto& [output, shaft, pinion] :
         {std::array{3.0, -2.0, 1.0}, std::array{1.0, 4.0, 9.0}, std::array{2.0, 7.0, 2.0}}) {
        const double front = std::abs(output - shaft) * kDegree;
        const double rear = std::abs(pinion - shaft) * kDegree;
        EXPECT_NEAR(equivalentAngle(sideView(output, shaft, pinion)),
                    std::sqrt(std::abs(front * front - rear * rear)), 1e-9);
        EXPECT_NEAR(equivalentAngle(sideView(output, shaft, pinion, kQuarter)), std::hypot(front, rear),
                    1e-9);
    }
}

// Equal joints cancel, pointing the same way or opposite ways off the shaft, and all the way around.
TEST(CardanTrain, ParallelAndBrokenBackCancel) {
    for (const double pinion : {3.0, -7.0}) {
        const JointTrain train = sideView(3, -2, pinion);
        EXPECT_NEAR(train.angle[0], 5 * kDegree, 1e-12);
        EXPECT_NEAR(train.angle[1], 5 * kDegree, 1e-12);
        EXPECT_NEAR(equivalentAngle(train), 0, 1e-8);
        EXPECT_NEAR(speedRatios(train).swing(), 0, 1e-12);
    }
}

// The planes of the two joints stand square to each other: yokes in phase add, yokes turned with the planes
// cancel.
TEST(CardanTrain, YokesTurnedWithThePlanesCancel) {
    const double angle = 6 * kDegree;
    const Vector3d shaft = Vector3d::UnitX();
    const std::array shafts{Vector3d(std::cos(angle), 0, std::sin(angle)), shaft,
                            Vector3d(std::cos(angle), std::sin(angle), 0)};
    EXPECT_NEAR(equivalentAngle(jointTrain(shafts, std::array{0.0})), std::sqrt(2) * angle, 1e-12);
    EXPECT_NEAR(equivalentAngle(jointTrain(shafts, std::array{kQuarter})), 0, 1e-8);
}

// A front piece in line with the transmission leaves two joints.
TEST(CardanTrain, AStraightJointCountsForNothing) {
    const JointTrain two = sideView(2, -3, 0.5);
    const JointTrain first =
        jointTrain(std::array{inPlane(2), inPlane(2), inPlane(-3), inPlane(0.5)}, std::array{0.3, 0.0});
    const JointTrain middle =
        jointTrain(std::array{inPlane(2), inPlane(-3), inPlane(-3), inPlane(0.5)}, std::array{0.0, kQuarter});
    EXPECT_NEAR(equivalentAngle(first), equivalentAngle(two), 1e-9);
    EXPECT_NEAR(equivalentAngle(middle), equivalentAngle(two), 1e-9);
    EXPECT_NEAR(speedRatios(first).most, speedRatios(two).most, 1e-12);
    EXPECT_NEAR(speedRatios(middle).most, speedRatios(two).most, 1e-12);
}

TEST(CardanJoint, ExtremesAreThoseOfARevolution) {
    for (const double angle : {0.02, 0.1, 0.4, 1.2}) {
        double least = 1;
        double most = 1;
        double steepest = 0;
        double steepestAt = 0;
        constexpr double kStep = 1e-5;
        for (double input = 0; input < kQuarter; input += 1e-4) {
            const double ratio = cardanRatio(input, angle);
            least = std::min(least, ratio);
            most = std::max(most, ratio);
            const double slope =
                (cardanRatio(input - kStep, angle) - cardanRatio(input + kStep, angle)) / (2 * kStep);
            steepestAt = slope > steepest ? input : steepestAt;
            steepest = std::max(steepest, slope);
            EXPECT_NEAR(
                (cardanOutput(input + kStep, angle) - cardanOutput(input - kStep, angle)) / (2 * kStep),
                ratio, 1e-7);
        }
        EXPECT_NEAR(cardanRatios(angle).least, least, 1e-7);
        EXPECT_NEAR(cardanRatios(angle).most, most, 1e-7);
        EXPECT_NEAR(speedSwing(angle), most - least, 2e-7);
        const PeakAcceleration peak = peakAcceleration(angle, 10);
        EXPECT_NEAR(peak.acceleration / (100 * steepest), 1, 1e-5);
        EXPECT_NEAR(peak.input, steepestAt, 2e-3);
    }
}

TEST(CardanJoint, AngleOfASwingIsTheSwingsInverse) {
    for (const double angle : {1e-6, 0.01, 0.3, 1.4}) {
        EXPECT_NEAR(angleOfSwing(speedSwing(angle)) / angle, 1, 1e-10);
    }
    EXPECT_EQ(angleOfSwing(0), 0);
}

TEST(CardanJoint, TheLimitFallsAsTheShaftSpeedsUp) {
    double before = 1;
    for (double rpm = 100; rpm <= 5000; rpm += 50) {
        const AngleLimit limit = jointAngleLimit(rpm * kRpm);
        EXPECT_FALSE(limit.pastTable);
        EXPECT_LE(limit.angle, before);
        EXPECT_TRUE(rpm <= 1500 || limit.angle < before);
        before = limit.angle;
    }
    EXPECT_DOUBLE_EQ(driveshaftSpeed(6000, 1.5), 4000);
}

TEST(SlipYokeTest, RoomIsWhatPlungeLeaves) {
    const SlipYoke yoke{.engagement = 0.08, .leastEngagement = 0.05, .inward = 0.02};
    const SlipRoom fine = slipRoom(yoke, -0.012, 0.018);
    EXPECT_NEAR(fine.out, 0.012, 1e-15);
    EXPECT_NEAR(fine.in, 0.008, 1e-15);
    const SlipRoom neither = slipRoom(yoke, -0.025, 0.04);
    EXPECT_NEAR(neither.out, -0.01, 1e-15);
    EXPECT_NEAR(neither.in, -0.005, 1e-15);
}

}  // namespace bolthole
