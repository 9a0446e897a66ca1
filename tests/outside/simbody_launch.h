// The bodies of a launch on real rods, moved by Simbody: no path of the axle is entered, its links make it.
//
// Free of this project's headers and of C++20, which Simbody's headers do not compile under. SI; frame and
// signs of geometry/car/car.h: x forward, y left, z up, pitch about y.
#pragma once

#include <Eigen/Core>
#include <array>
#include <memory>
#include <vector>

#include "tests/outside/reference_links.h"

namespace bolthole {

/// Masses, and where they stand at rest.
struct RodsBodies {
    double sprungMass = 0;
    double sprungX = 0;  ///< m, its center in the car frame
    double sprungZ = 0;
    double pitchInertia = 0;    ///< of the sprung mass about its center
    double rearUnsprung = 0;    ///< kg at the axle's center, which moves in the plane of the side view alone
    double housingInertia = 0;  ///< turns as the axle pitches
    double wheelInertia = 0;    ///< both rear wheels
    double drivelineInertia = 0;  ///< at the wheels' speed: turns as they do against the housing
    double frontUnsprung = 0;     ///< kg at the front wheels' center, which goes straight up the chassis
    double frontRollingMass = 0;  ///< kg that the front wheels' turning adds along the ground
    double wheelbase = 0;
    double rearRadius = 0;
    double frontRadius = 0;
    double gravity = 0;
};

/// Two mounts that a force acts between: along their line, or along the line they had when measured.
struct RodsLine {
    Eigen::Vector3d onAxle = Eigen::Vector3d::Zero();  ///< m, from the axle's center, measured pose
    Eigen::Vector3d onChassis = Eigen::Vector3d::Zero();
    bool alongMeasuredLine = false;
};

/// What is known of a moment: the chassis against the ground, travels, their rates.
struct RodsMotion {
    double forward = 0;  ///< m, the car frame's origin; and up
    double up = 0;
    double pitch = 0;
    double rearTravel = 0;
    double frontTravel = 0;
    double forwardRate = 0;
    double upRate = 0;
    double pitchRate = 0;
    double rearRate = 0;
    double frontRate = 0;
};

/// N and N m. Loads and thrust act at the wheels' centers, thrust turns the rear wheels about them.
struct RodsForces {
    double rearLoad = 0;
    double frontLoad = 0;
    double thrust = 0;
    double axleUp = 0;  ///< m, what thrust turns the wheels with
    double ringTorque = 0;
    double onPitch = 0;
    double onRear = 0;
    double onFront = 0;
    std::vector<double> lines{};  ///< N, + pushes the mounts apart
};

/// What Simbody makes of it.
struct RodsRates {
    double forward = 0;  ///< m/s^2
    double up = 0;
    double pitch = 0;  ///< rad/s^2
    double rearTravel = 0;
    double frontTravel = 0;
    double wheelSpin = 0;
    double axleX = 0;     ///< m, against the chassis, where the rods put it
    double axleTurn = 0;  ///< rad
};

class SimbodyLaunch {
  public:
    /// `axle` must hold the axle exactly: as many links as leave travel alone, roll locked.
    SimbodyLaunch(const RodsBodies& bodies, const ReferenceAxle& axle, const std::vector<RodsLine>& lines);
    ~SimbodyLaunch();
    SimbodyLaunch(const SimbodyLaunch&) = delete;
    SimbodyLaunch& operator=(const SimbodyLaunch&) = delete;

    /// False where the rods can't be closed from where they were. Begins at the measured pose.
    bool moveTo(const RodsMotion& motion);
    /// Where moveTo() went.
    RodsRates rates(const RodsForces& forces);

  private:
    struct Model;
    std::unique_ptr<Model> model_;
};

}  // namespace bolthole
