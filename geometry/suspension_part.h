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

#include "geometry/axle_solver.h"
#include "geometry/car.h"

namespace bolthole {

/// Springs and coilovers carry the car; the rest only pushes or stops, each by its numbers.
enum class PartKind { spring, shock, coilOver, bumpStop, strap };
/// "spring", "shock", "coilover", "bump stop", "strap".
[[nodiscard]] std::string_view nameOf(PartKind kind);

/// A part with one mount on the axle and one on the chassis, each a bracket of one or more holes, or a
/// mirrored pair of them. Its length is the distance between the holes in use. `id` as for Hole.
///
/// It pushes `push`, and `rate` for every meter it is shorter than `freeLength`. Longer than that it is
/// loose: it never pulls. A bump stop's mount on the chassis is the stop's foot, the one on the axle the pad
/// it meets, and its free length what it has unsqueezed.
struct SuspensionPart {
    int id = -1;
    std::string name;
    PartKind kind = PartKind::spring;
    Side side = Side::both;
    Bracket chassis;
    Bracket axle;
    std::optional<double> rate = std::nullopt;          ///< N/m
    std::optional<double> freeLength = std::nullopt;    ///< m
    std::optional<double> closedLength = std::nullopt;  ///< m, the shortest: coils touch, shock bottoms
    std::optional<double> openLength = std::nullopt;    ///< m, the longest: shock topped out, strap taut
    double push = 0;                                    ///< N, whatever its length: a shock's gas

    /// Whether it is one of those the car stands on.
    [[nodiscard]] bool carries() const { return kind == PartKind::spring || kind == PartKind::coilOver; }
    /// N at a length of `length` (m), + pushes the mounts apart.
    [[nodiscard]] double force(double length) const;
    /// N/m at that length: 0 where it is loose or no spring.
    [[nodiscard]] double rateAt(double length) const;

    bool operator==(const SuspensionPart&) const = default;
};
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
