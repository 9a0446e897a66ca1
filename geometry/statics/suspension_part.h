// Springs, shocks, bump stops and straps: what stands between axle and chassis beside the links, by its two
// mounts.
#pragma once

#include <Eigen/Core>
#include <Eigen/Geometry>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "geometry/car/car.h"
#include "geometry/car/part.h"
#include "geometry/kinematics/axle_solver.h"

namespace bolthole {

/// Why the part can't be computed, in one sentence; empty: it can.
[[nodiscard]] std::string refusal(const SuspensionPart& part);

/// One part on one side of the car: the line between its mounts.
struct PartLine {
    int part = 0;                                         ///< index of the part
    Side side = Side::center;                             ///< left, right or center, never both
    Eigen::Vector3d onAxle = Eigen::Vector3d::Zero();     ///< m, from the axle's center, at the measured pose
    Eigen::Vector3d onChassis = Eigen::Vector3d::Zero();  ///< m, car frame
    /// A bump stop pushes along its own axis, fixed in the chassis, and the pad slides under it: the unit
    /// vector from foot to pad at the measured pose. Absent: the line turns with its mounts.
    std::optional<Eigen::Vector3d> fixedAxis = std::nullopt;

    /// Fixes the axis as the mounts stand with the axle's center at `measuredHeight` (m).
    void fixAxis(double measuredHeight) {
        fixedAxis = (Eigen::Vector3d(0, 0, measuredHeight) + onAxle - onChassis).normalized();
    }
};
/// The lines of `parts` for the holes in use. `measuredHeight`: of the axle's center, m. Into storage that is
/// used again.
void buildPartLines(std::span<const SuspensionPart> parts, double measuredHeight,
                    std::vector<PartLine>& lines);

/// How the axle moves for each unit of an imposed motion: its center (m) and its turning (rad), car frame.
struct AxleMotion {
    Eigen::Vector3d velocity = Eigen::Vector3d::Zero();
    Eigen::Vector3d turning = Eigen::Vector3d::Zero();

    /// Of a point of the axle, `arm` (m) from its center.
    [[nodiscard]] Eigen::Vector3d at(const Eigen::Vector3d& arm) const {
        return velocity + turning.cross(arm);
    }
};
/// Per m of travel, from AxleSolver::travelRates(), and per rad of roll, from rollRates(), at `pose`.
[[nodiscard]] AxleMotion travelMotion(const AxlePose& pose, const AxleRates& rates);
[[nodiscard]] AxleMotion rollMotion(const AxlePose& pose, const AxleRates& rates);

/// A line at a pose.
struct LineState {
    Eigen::Vector3d arm = Eigen::Vector3d::Zero();  ///< axle mount from the axle's center, car frame, m
    /// Along which it pushes: from the chassis mount to the axle mount, or the axis that is fixed.
    Eigen::Vector3d unit = Eigen::Vector3d::Zero();
    double length = 0;     ///< m, between the mounts, along `unit`
    bool isFixed = false;  ///< whether `unit` stays as it is in every motion

    /// By how much the line gets shorter in a motion, per unit of it.
    [[nodiscard]] double shortening(const AxleMotion& motion) const { return -unit.dot(motion.at(arm)); }
    /// Second derivative of the length, with the axle mount's first and second derivative (m) by the same
    /// unit: how the line turns, and how its mount's path bends.
    [[nodiscard]] double curvature(const Eigen::Vector3d& velocity, const Eigen::Vector3d& change) const {
        const double along = unit.dot(velocity);
        const double turning = isFixed ? 0 : (velocity.squaredNorm() - along * along) / length;
        return turning + unit.dot(change);
    }
};
/// `rotation`: pose.rotation(), which every line of a pose shares.
[[nodiscard]] LineState lineState(const PartLine& line, const AxlePose& pose,
                                  const Eigen::Matrix3d& rotation);

}  // namespace bolthole
