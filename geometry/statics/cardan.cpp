#include "geometry/statics/cardan.h"

#include <Eigen/Geometry>
#include <cassert>
#include <cmath>
#include <complex>

namespace bolthole {

namespace {

constexpr double kStraight = 1e-12;  // sine of an angle that has no plane

struct LimitRow {
    double rpm;
    double degrees;

    [[nodiscard]] double angle() const { return degrees * kRadiansPerDegree; }
};
constexpr std::array<LimitRow, 8> kAngleLimits{{
    {1500, 11.5},
    {2000, 8.7},
    {2500, 7.0},
    {3000, 5.8},
    {3500, 5.0},
    {4000, 4.2},
    {4500, 3.7},
    {5000, 3.2},
}};

}  // namespace

double cardanOutput(double input, double angle) {
    // Driven and driving yoke never part by more than a fraction of a turn: their difference is the arc
    // tangent.
    const double cosine = std::cos(angle);
    const double s = std::sin(input);
    const double c = std::cos(input);
    return input + std::atan2(s * c * (1 - cosine), c * c * cosine + s * s);
}

double cardanRatio(double input, double angle) {
    const double sine = std::sin(angle) * std::cos(input);
    return std::cos(angle) / (1 - sine * sine);
}

SpeedRatios cardanRatios(double angle) {
    return {.least = std::cos(angle), .most = 1 / std::cos(angle)};
}

double speedSwing(double angle) {
    return std::tan(angle) * std::sin(angle);
}

double angleOfSwing(double swing) {
    // 1/c - c = U; with c = cos, 2 sin(angle/2)^2 = 1 - c keeps small angles exact.
    const double cosine = 2 / (swing + std::hypot(swing, 2.0));
    const double versine = swing * cosine / (1 + cosine);
    return 2 * std::asin(std::sqrt(versine / 2));
}

// The slope of cos(angle)/(1 - k cos^2 in), k = sin^2(angle), is steepest where u = cos(2 in) solves
// k u^2 + (2 - k) u - 2 k = 0.
PeakAcceleration peakAcceleration(double angle, double speed) {
    const double k = std::sin(angle) * std::sin(angle);
    const double u = 4 * k / ((2 - k) + std::sqrt((2 - k) * (2 - k) + 8 * k * k));
    const double input = std::acos(u) / 2;
    const double rest = 1 - k * (1 + u) / 2;
    return {.acceleration = speed * speed * std::cos(angle) * k * std::sin(2 * input) / (rest * rest),
            .input = input};
}

double compoundAngle(double side, double top) {
    return std::atan(std::hypot(std::tan(side), std::tan(top)));
}

namespace {

// Unit normal of the plane of two shafts; where they are in line, `otherwise` made square to the second.
Eigen::Vector3d planeNormal(const Eigen::Vector3d& driving, const Eigen::Vector3d& driven,
                            const Eigen::Vector3d& otherwise) {
    const Eigen::Vector3d normal = driving.cross(driven);
    const double sine = normal.norm();
    if (sine > kStraight) {
        return normal / sine;
    }
    return (otherwise - driven * driven.dot(otherwise)).normalized();
}

}  // namespace

JointTrain jointTrain(std::span<const Eigen::Vector3d> shafts, std::span<const double> yokeOffset) {
    assert(shafts.size() >= 2 && shafts.size() <= kMostJoints + 1 && yokeOffset.size() + 2 >= shafts.size());
    JointTrain train;
    train.joints = shafts.size() - 1;
    Eigen::Vector3d before = shafts[0].unitOrthogonal();
    for (std::size_t joint = 0; joint < train.joints; ++joint) {
        const Eigen::Vector3d& driving = shafts[joint];
        const Eigen::Vector3d& driven = shafts[joint + 1];
        const Eigen::Vector3d normal = planeNormal(driving, driven, before);
        train.angle[joint] = std::atan2(driving.cross(driven).norm(), driving.dot(driven));
        if (joint > 0) {
            // The driven yoke stands square to the driving one; the plane of the next joint is turned about
            // the shaft between by the twist.
            const double twist = std::atan2(driving.dot(before.cross(normal)), before.dot(normal));
            train.phase[joint] =
                train.phase[joint - 1] + std::numbers::pi / 2 + yokeOffset[joint - 1] - twist;
        }
        before = normal;
    }
    return train;
}

double equivalentAngle(const JointTrain& train) {
    std::complex<double> sum = 0;
    for (std::size_t joint = 0; joint < train.joints; ++joint) {
        sum += std::polar(train.angle[joint] * train.angle[joint], 2 * train.phase[joint]);
    }
    return std::sqrt(std::abs(sum));
}

SpeedRatios speedRatios(const JointTrain& train) {
    Eigen::Matrix2d matrix = Eigen::Matrix2d::Identity();
    double before = 0;
    for (std::size_t joint = 0; joint < train.joints; ++joint) {
        matrix = Eigen::Rotation2Dd(train.phase[joint] - before).toRotationMatrix() * matrix;
        matrix.row(0) *= std::cos(train.angle[joint]);
        before = train.phase[joint];
    }
    // Singular values of a 2 x 2 matrix: the sum and the difference of the lengths of its two halves, one a
    // turned scaling, the other a turned mirroring.
    const double turned = std::hypot(matrix(0, 0) + matrix(1, 1), matrix(1, 0) - matrix(0, 1));
    const double mirrored = std::hypot(matrix(0, 0) - matrix(1, 1), matrix(1, 0) + matrix(0, 1));
    const double most = (turned + mirrored) / (turned - mirrored);
    return {.least = 1 / most, .most = most};
}

AngleLimit jointAngleLimit(double speed) {
    const double rpm = speed / kRpm;
    if (rpm <= kAngleLimits.front().rpm) {
        return {.angle = kAngleLimits.front().angle()};
    }
    for (std::size_t row = 1; row < kAngleLimits.size(); ++row) {
        const LimitRow& low = kAngleLimits[row - 1];
        const LimitRow& high = kAngleLimits[row];
        if (rpm <= high.rpm) {
            return {.angle = std::lerp(low.angle(), high.angle(), (rpm - low.rpm) / (high.rpm - low.rpm))};
        }
    }
    return {.angle = kAngleLimits.back().angle(), .pastTable = true};
}

SlipRoom slipRoom(const SlipYoke& yoke, double leastPlunge, double mostPlunge) {
    return {.out = yoke.engagement - yoke.leastEngagement - mostPlunge, .in = yoke.inward + leastPlunge};
}

}  // namespace bolthole
