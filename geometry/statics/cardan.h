// Cardan joints (universal joints, Hooke's joints): what one does to the speed of a shaft, what several in a
// row leave of it, and how far they may bend. A shaft's turn is counted clockwise seen from the rear.
#pragma once

#include <Eigen/Core>
#include <array>
#include <cstddef>
#include <span>

#include "geometry/units/units.h"

namespace bolthole {

/// Turn of the driven shaft, rad, when the driving one has turned by `input`, both counted from where the
/// driving yoke lies in the plane of the two shafts. `angle`: between the shafts, rad, 0 to below pi/2.
/// tan(out) = tan(in)/cos(angle) (GWB, catalogue); follows the input around.
[[nodiscard]] double cardanOutput(double input, double angle);

/// Driven speed over driving speed where the driving shaft stands at `input`.
[[nodiscard]] double cardanRatio(double input, double angle);

/// Slowest and fastest of the driven shaft in a turn, over the driving shaft's speed.
struct SpeedRatios {
    double least = 1;
    double most = 1;

    [[nodiscard]] double swing() const { return most - least; }
};
/// cos(angle) and 1/cos(angle).
[[nodiscard]] SpeedRatios cardanRatios(double angle);

/// U = most - least = tan(angle) sin(angle); industry asks for 0.0027 at most, a joint at 3 deg (Elbe, Dana,
/// industrial catalogues).
[[nodiscard]] double speedSwing(double angle);
/// The angle whose joint swings by `swing`, rad.
[[nodiscard]] double angleOfSwing(double swing);

/// The largest angular acceleration of the driven shaft, rad/s^2, and where the driving shaft stands then,
/// rad, 0 to pi/2: there it slows down, at pi less that it speeds up. `speed`: of the driving shaft, rad/s.
struct PeakAcceleration {
    double acceleration = 0;
    double input = 0;
};
/// The true maximum. The textbooks' cos(2 in) = 2 sin^2/(2 - sin^2) is its first approximation.
[[nodiscard]] PeakAcceleration peakAcceleration(double angle, double speed);

/// Angle in space between two shafts that include `side` in side view and `top` in plan, rad, one of them
/// lying along the views' common axis: tan^2 = tan^2 side + tan^2 top.
[[nodiscard]] double compoundAngle(double side, double top);

inline constexpr std::size_t kMostJoints = 3;

/// Joints in a row, driving end first.
struct JointTrain {
    std::size_t joints = 0;
    std::array<double, kMostJoints> angle{};  ///< of each joint, rad, 0 to below pi/2
    /// Of each joint: how far its driving yoke leads the plane of its shafts when the first joint's lies in
    /// it, rad, were all joints straight.
    std::array<double, kMostJoints> phase{};
};

/// The train of shafts that lie along `shafts` (unit, all pointing the same way, forward; 2 to 4, driving one
/// first). `yokeOffset`: of each shaft between two joints, how far its far yoke is turned from its near one,
/// rad, clockwise seen from the rear; 0: in phase, both yokes in one plane.
[[nodiscard]] JointTrain jointTrain(std::span<const Eigen::Vector3d> shafts,
                                    std::span<const double> yokeOffset);

/// The single joint that swings as much as the train to first order, rad:
///   eq^2 = |sum of angle^2 e^(2 i phase)|.
/// Each joint throws the turn by angle^2/4 sin 2(in + phase); these add as vectors of doubled phase. Derived.
/// Two joints in one plane and in phase: sqrt|f^2 - r^2|, out of phase by 90 deg sqrt(f^2 + r^2) (SAE AE-7,
/// Universal Joint and Driveshaft Design Manual, sec. 3.1.1).
[[nodiscard]] double equivalentAngle(const JointTrain& train);

/// Slowest and fastest of the last shaft over the first one's speed, exactly. With its turn as a direction
/// (cos, sin), a joint is the matrix diag(cos angle, 1) and an offset a rotation, so the train is one matrix
/// M and its ratio det M/|M u|^2: the extremes are the quotient of M's singular values and its inverse.
/// Derived.
[[nodiscard]] SpeedRatios speedRatios(const JointTrain& train);

/// How far a joint may bend at a speed.
struct AngleLimit {
    double angle = 0;  ///< rad
    /// The shaft turns faster than the table goes: the limit is less than `angle`, nobody says by how much.
    bool pastTable = false;
};
/// The largest joint angle at which a driveshaft runs at `speed` (rad/s), linear between the rows of Dana
/// Limited's "Driveline Operating Angle Calculator" (Spicer, web page, rule 3, read, no edition): 5000 rpm
/// 3.2 deg, 4500 3.7, 4000 4.2, 3500 5.0, 3000 5.8, 2500 7.0, 2000 8.7, 1500 11.5 and so below.
[[nodiscard]] AngleLimit jointAngleLimit(double speed);

/// Speed of a driveshaft behind a gear of ratio `gear`, same unit as `engineSpeed`.
[[nodiscard]] constexpr double driveshaftSpeed(double engineSpeed, double gear) {
    return engineSpeed / gear;
}

/// A slip yoke as it stands at ride, m.
struct SlipYoke {
    double engagement = 0;       ///< spline that is held
    double leastEngagement = 0;  ///< spline that must stay held
    double inward = 0;           ///< how far it can go in before it bottoms

    bool operator==(const SlipYoke&) const = default;
};
/// What is left of it, m; below 0: too little spline held, or bottomed.
struct SlipRoom {
    double out = 0;
    double in = 0;
};
/// `leastPlunge` and `mostPlunge`: m, + pulls it out, both over the whole travel.
[[nodiscard]] SlipRoom slipRoom(const SlipYoke& yoke, double leastPlunge, double mostPlunge);

}  // namespace bolthole
