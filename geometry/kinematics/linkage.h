// The linkage: a car's links resolved to points and lengths for the holes in use.
#pragma once

#include <Eigen/Core>
#include <optional>
#include <string>
#include <vector>

#include "geometry/car/car.h"

namespace bolthole {

/// One link on one side of the car. With b the axle end carried by the axle's pose and c the chassis end:
///   rod:    |b - c| - length = 0
///   pivot:  b_x - c_x = 0 and b_z - c_z = 0
///   slider: b_z - c_z = 0
///   guide:  b_y - c_y = 0
struct Constraint {
    LinkKind kind = LinkKind::rod;
    int link = 0;                                         ///< index into Car::links
    Side side = Side::center;                             ///< left, right or center, never both
    Eigen::Vector3d onAxle = Eigen::Vector3d::Zero();     ///< m, from the axle's center, at the measured pose
    Eigen::Vector3d onChassis = Eigen::Vector3d::Zero();  ///< m, car frame
    double length = 0;                                    ///< m, rods only
};

/// All constraints on the axle, and the height the axle's center was measured at.
struct Linkage {
    std::vector<Constraint> constraints;
    double measuredHeight =
        0;  ///< height of the axle's center at the measured pose, m: the rear tire's radius

    /// Whether mirroring left and right leaves the linkage as it is, points and lengths to a nanometre.
    [[nodiscard]] bool isMirrorSymmetric() const;
};

/// Resolves the links of `car` for the holes in use and the lengths built. The car must have passed
/// findFaults().
[[nodiscard]] Linkage buildLinkage(const Car& car);
/// The same into a linkage whose storage is used again: no allocation after the first call.
void buildLinkage(const Car& car, Linkage& linkage);

/// Position and attitude of the axle in the car frame: center (x, y, z) in m and R = Rz(yaw) Ry(pitch)
/// Rx(roll), the rotation order of ISO 8855:2011, rad. Positive pitch drops the pinion's nose, positive roll
/// lifts the left end.
struct AxlePose {
    double x = 0;
    double y = 0;
    double z = 0;
    double roll = 0;
    double pitch = 0;
    double yaw = 0;

    [[nodiscard]] Eigen::Matrix3d rotation() const;
    /// Where a point fixed to the axle stands, car frame, m. `fromCenter`: m, from the axle's center at the
    /// measured pose.
    [[nodiscard]] Eigen::Vector3d carry(const Eigen::Vector3d& fromCenter) const;
};

/// R = Rz(yaw) Ry(pitch) Rx(roll), and the axis about which it pitches, car frame. It yaws about z, and rolls
/// about the rotation's first column.
struct AxleTurn {
    Eigen::Matrix3d rotation = Eigen::Matrix3d::Identity();
    Eigen::Vector3d pitchAxis = Eigen::Vector3d::UnitY();

    /// Turns to these angles, rad.
    void turnTo(double roll, double pitch, double yaw);
};

/// Points nearer than this, m, are one and the same.
inline constexpr double kSamePoint = 1e-9;

}  // namespace bolthole
