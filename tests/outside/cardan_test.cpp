// Cardan joints against printed examples and tables, and against yokes and crosses laid out in space.
#include "geometry/statics/cardan.h"

#include <gtest/gtest.h>

#include <Eigen/Geometry>
#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <vector>

#include "tests/support/car_generator.h"
#include "tests/support/made_units.h"

namespace bolthole {
namespace {

using Eigen::Vector3d;

}  // namespace

// T. Bevan, The Theory of Machines, 3rd ed., Dorling, 2005, ch. 4, Ex. 1, p. 138 (read in its Python
// companion, FOSSEE, which names the edition): 20 deg, 1000 rpm: 111.4 and 98.4 rad/s, peak 1370 rad/s^2 at
// 41.43 deg, which is cos(2 in) = 2 sin^2/(2 - sin^2) = 0.1242, the first approximation; the maximum itself
// lies at 41.46 deg.
TEST(Cardan, BevanSpeedsAndPeakAcceleration) {
    const double speed = 1000 * kRpm;
    const SpeedRatios ratios = cardanRatios(20 * kDegree);
    EXPECT_NEAR(speed * ratios.most, 111.4, 0.05);
    EXPECT_NEAR(speed * ratios.least, 98.4, 0.05);
    const PeakAcceleration peak = peakAcceleration(20 * kDegree, speed);
    EXPECT_NEAR(peak.acceleration, 1370, 1);
    EXPECT_NEAR(peak.input / kDegree, 41.43, 0.05);
}

// R. S. Khurmi, J. K. Gupta, Theory of Machines, 14th ed., Eurasia, 2009, Ex. 9.4, p. 252 (read in its Python
// companion, FOSSEE, which names the edition): a total fluctuation of 12 % takes 19.64 deg. Ex. 9.5 (read):
// 1200 rpm and 100 rpm of it: 16.4 deg, 1251 and 1151 rpm.
TEST(Cardan, KhurmiAngleOfASwing) {
    EXPECT_NEAR(angleOfSwing(0.12) / kDegree, 19.64, 0.01);
    const double angle = angleOfSwing(100.0 / 1200.0);
    EXPECT_NEAR(angle / kDegree, 16.4, 0.05);
    EXPECT_NEAR(1200 * cardanRatios(angle).most, 1251, 0.5);
    EXPECT_NEAR(1200 * cardanRatios(angle).least, 1151, 0.5);
}

// The same, Ex. 9.7, p. 254 (read): two joints of 20 deg, the intermediate shaft's forks square to each
// other, 500 rpm: intermediate shaft 532.1 and 469.85 rpm, driven shaft 566.24 and 441.5 rpm.
TEST(Cardan, KhurmiTwoJointsOutOfPhase) {
    const SpeedRatios one = cardanRatios(20 * kDegree);
    EXPECT_NEAR(500 * one.most, 532.1, 0.05);
    EXPECT_NEAR(500 * one.least, 469.85, 0.05);
    const Vector3d ends = Vector3d::UnitX();
    const Vector3d middle(std::cos(20 * kDegree), 0, std::sin(20 * kDegree));
    const std::array shafts{ends, middle, ends};
    const SpeedRatios both = speedRatios(jointTrain(shafts, std::array{std::numbers::pi / 2}));
    EXPECT_NEAR(500 * both.most, 566.24, 0.05);
    EXPECT_NEAR(500 * both.least, 441.5, 0.05);
}

// Elbe and Dana, industrial driveshaft catalogues (read): U = tan b sin b, at most 0.0027, which is 3 deg.
TEST(Cardan, CatalogueSwingOfThreeDegrees) {
    EXPECT_NEAR(speedSwing(3 * kDegree), 0.0027, 5e-5);
    EXPECT_NEAR(angleOfSwing(0.0027) / kDegree, 3, 0.05);
}

// Dana Spicer, J3311-1-DSSP (2008), p. 10: top 2.15 deg (calculated), side 2.50 deg (measured): compound
// angle 3.3 deg (read; 3.2956 exactly, computed).
TEST(Cardan, SpicerCompoundAngle) {
    EXPECT_NEAR(compoundAngle(2.50 * kDegree, 2.15 * kDegree) / kDegree, 3.3, 0.05);
    EXPECT_NEAR(compoundAngle(2.50 * kDegree, 2.15 * kDegree) / kDegree, 3.2956, 5e-5);
}

// A table after SAE AE-7, Universal Joint and Driveshaft Design Manual, sec. 3.1.1 (read): at 1500 rpm the
// second joint's largest angle for 0 ... 9 deg of the first. Row 0 is the equivalent angle allowed; the rest
// must have the same, to the rounding of both to 0.1 deg.
TEST(Cardan, SaeTableOfTwoJoints) {
    constexpr std::array kSecond{7.3, 7.4, 7.6, 7.9, 8.3, 8.9, 9.5, 10.1, 10.8, 11.6};
    const auto equivalent = [](double first, double second) {
        const JointTrain train{
            .joints = 2, .angle = {first * kDegree, second * kDegree}, .phase = {0, std::numbers::pi / 2}};
        return equivalentAngle(train) / kDegree;
    };
    for (std::size_t first = 0; first < kSecond.size(); ++first) {
        const auto degrees = static_cast<double>(first);
        EXPECT_LT(equivalent(degrees, kSecond[first] - 0.1), kSecond[0]) << first;
        EXPECT_GT(equivalent(degrees, kSecond[first] + 0.1), kSecond[0]) << first;
    }
}

// Largest angle against speed: Dana Limited, "Driveline Operating Angle Calculator" (Spicer, web page, rule
// 3, read, no edition).
TEST(Cardan, PublishedTableOfAnglesAndSpeeds) {
    constexpr std::array<std::array<double, 2>, 8> kTable{{{5000, 3.2},
                                                           {4500, 3.7},
                                                           {4000, 4.2},
                                                           {3500, 5.0},
                                                           {3000, 5.8},
                                                           {2500, 7.0},
                                                           {2000, 8.7},
                                                           {1500, 11.5}}};
    for (const auto& [rpm, degrees] : kTable) {
        EXPECT_NEAR(jointAngleLimit(rpm * kRpm).angle / kDegree, degrees, 1e-9) << rpm;
        EXPECT_FALSE(jointAngleLimit(rpm * kRpm * (1 - 1e-12)).pastTable);
    }
    EXPECT_NEAR(jointAngleLimit(3250 * kRpm).angle / kDegree, 5.4, 1e-9);
    EXPECT_NEAR(jointAngleLimit(800 * kRpm).angle / kDegree, 11.5, 1e-9);
    EXPECT_TRUE(jointAngleLimit(7000 * kRpm).pastTable);
    EXPECT_NEAR(jointAngleLimit(7000 * kRpm).angle / kDegree, 3.2, 1e-9);
}

namespace {

Vector3d turned(const Vector3d& direction, const Vector3d& axis, double angle) {
    return Eigen::AngleAxisd(angle, axis) * direction;
}

// A row of joints as hardware: each cross keeps the two yokes' pins square to each other, and each pin is
// square to its own shaft. No angle formula of geometry/statics/cardan.h is used.
class Hardware {
  public:
    Hardware(std::vector<Vector3d> shafts, std::vector<double> yokeOffset)
        : shafts_(std::move(shafts)), yokeOffset_(std::move(yokeOffset)) {}

    // Where the last shaft's yoke pin points, with the first shaft's turned by `turn`.
    [[nodiscard]] Vector3d lastPin(double turn) const {
        Vector3d pin = turned(shafts_[0].unitOrthogonal(), shafts_[0], turn);
        for (std::size_t joint = 0; joint + 1 < shafts_.size(); ++joint) {
            if (joint > 0) {
                pin = turned(pin, shafts_[joint], yokeOffset_[joint - 1]);
            }
            // Square to the shaft it sits on and to the cross's other pin.
            pin = shafts_[joint + 1].cross(pin).normalized();
        }
        return pin;
    }
    // Driven over driving speed at `turn`, by central difference of the pin's direction.
    [[nodiscard]] double ratio(double turn) const {
        constexpr double kStep = 1e-4;
        const Vector3d before = lastPin(turn - kStep);
        const Vector3d after = lastPin(turn + kStep);
        return std::atan2(shafts_.back().dot(before.cross(after)), before.dot(after)) / (2 * kStep);
    }
    [[nodiscard]] SpeedRatios extremes() const {
        constexpr int kSteps = 7200;
        SpeedRatios found{.least = 1e9, .most = -1e9};
        for (int step = 0; step < kSteps; ++step) {
            const double at = ratio(step * std::numbers::pi / kSteps);
            found.least = std::min(found.least, at);
            found.most = std::max(found.most, at);
        }
        return found;
    }

  private:
    std::vector<Vector3d> shafts_;
    std::vector<double> yokeOffset_;
};

// Shafts within `spread` (rad) of straight ahead, in space.
std::vector<Vector3d> drawShafts(CarGenerator& generator, std::size_t count, double spread) {
    std::vector<Vector3d> shafts;
    for (std::size_t shaft = 0; shaft < count; ++shaft) {
        shafts.push_back(Vector3d(1, std::tan(generator.between(-spread, spread)),
                                  std::tan(generator.between(-spread, spread)))
                             .normalized());
    }
    return shafts;
}

}  // namespace

// One, two and three joints anywhere in space, yokes anyhow: the extremes are those of the hardware.
TEST(Cardan, RatiosAreThoseOfYokesAndCrosses) {
    CarGenerator generator(61);
    for (int number = 0; number < 45; ++number) {
        const std::size_t joints = 1 + static_cast<std::size_t>(number) % 3;
        const std::vector<Vector3d> shafts = drawShafts(generator, joints + 1, 0.35);
        const std::vector<double> offsets{generator.between(-2, 2), generator.between(-2, 2)};
        const SpeedRatios found = Hardware(shafts, offsets).extremes();
        const SpeedRatios computed = speedRatios(jointTrain(shafts, offsets));
        EXPECT_NEAR(computed.most, found.most, 1e-6) << "case " << number;
        EXPECT_NEAR(computed.least, found.least, 1e-6) << "case " << number;
    }
}

// At small angles the hardware swings by the square of the equivalent angle: what is left is of fourth order.
TEST(Cardan, EquivalentAngleIsThatOfYokesAndCrosses) {
    CarGenerator generator(62);
    for (int number = 0; number < 40; ++number) {
        const std::size_t joints = 2 + static_cast<std::size_t>(number) % 2;
        const std::vector<Vector3d> shafts = drawShafts(generator, joints + 1, 0.05);
        const std::vector<double> offsets{generator.between(-2, 2), generator.between(-2, 2)};
        const JointTrain train = jointTrain(shafts, offsets);
        const double equivalent = equivalentAngle(train);
        double squares = 0;
        for (const double angle : train.angle) {
            squares += angle * angle;
        }
        const double swing = Hardware(shafts, offsets).extremes().swing();
        EXPECT_NEAR(equivalent * equivalent, swing, squares * squares / 4 + 1e-8) << "case " << number;
    }
}

// The driven shaft of one joint, pin by pin: tan(out) = tan(in)/cos, counted from the plane of the shafts.
TEST(Cardan, OutputFollowsThePins) {
    const double angle = 0.3;
    const Vector3d driving = Vector3d::UnitX();
    const Vector3d driven(std::cos(angle), 0, std::sin(angle));
    for (double input = -7; input < 7; input += 0.1) {
        const Vector3d pin = turned(Vector3d::UnitZ(), driving, input);
        const Vector3d other = driven.cross(pin).normalized();
        // With the driving pin in the plane the driven one is square to it, along -y.
        const Vector3d start = -Vector3d::UnitY();
        const double out = std::atan2(driven.dot(start.cross(other)), start.dot(other));
        EXPECT_NEAR(std::remainder(cardanOutput(input, angle) - out, 2 * std::numbers::pi), 0, 1e-12);
        EXPECT_NEAR(cardanOutput(input, angle), input, 0.03) << "stays with the input, turn after turn";
    }
}

}  // namespace bolthole
