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
    Eigen::Vector3d arm = Eigen::Vector3d::Zero();   ///< axle mount from the axle's center, car frame, m
    Eigen::Vector3d unit = Eigen::Vector3d::Zero();  ///< from the chassis mount to the axle mount
    double length = 0;                               ///< m

    /// By how much the line gets shorter in a motion, per unit of it.
    [[nodiscard]] double shortening(const AxleMotion& motion) const { return -unit.dot(motion.at(arm)); }
};
/// `rotation`: pose.rotation(), which every line of a pose shares.
[[nodiscard]] LineState lineState(const PartLine& line, const AxlePose& pose,
                                  const Eigen::Matrix3d& rotation);

}  // namespace bolthole
