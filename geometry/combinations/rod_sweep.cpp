#include "geometry/combinations/rod_sweep.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

#include "geometry/combinations/combination_figures.h"

namespace bolthole {

RodSweep::RodSweep(std::span<const Constraint> constraints, std::span<const Eigen::Vector3d> bolts)
    : constraints_(constraints), bolts_(bolts) {}

// The sine of a lean is the rod's share along the bolt; its square orders as the lean does, without an arc
// tangent at every pose.
void RodSweep::visit(const AxlePose& pose) {
    const Eigen::Matrix3d rotation = pose.rotation();
    const Eigen::Vector3d center(pose.x, pose.y, pose.z);
    for (std::size_t index = 0; index < constraints_.size(); ++index) {
        const Constraint& constraint = constraints_[index];
        if (constraint.kind != LinkKind::rod) {
            continue;
        }
        Rod& rod = rods_[index];
        rod.axleEnd = center + rotation * constraint.onAxle;
        rod.low = rod.axleEnd.cwiseMin(constraint.onChassis);
        rod.high = rod.axleEnd.cwiseMax(constraint.onChassis);
        const Eigen::Vector3d along = constraint.onChassis - rod.axleEnd;
        const double atChassis = along.dot(bolts_[index]);
        const double atAxle = along.dot(rotation * bolts_[index]);
        const double share = std::max(atChassis * atChassis, atAxle * atAxle) / along.squaredNorm();
        rod.sineSquared = std::max(rod.sineSquared, share);
    }
    measurePairs();
}

// Rods whose boxes stand apart by more than counts as a crossing are no nearer themselves.
void RodSweep::measurePairs() {
    for (std::size_t one = 0; one < constraints_.size(); ++one) {
        for (std::size_t other = one + 1; other < constraints_.size(); ++other) {
            const Rod& a = rods_[one];
            const Rod& b = rods_[other];
            const bool rods =
                constraints_[one].kind == LinkKind::rod && constraints_[other].kind == LinkKind::rod;
            if (!rods || (a.low.max(b.low) - a.high.min(b.high)).maxCoeff() > kCrossingDistance) {
                continue;
            }
            const Approach approach =
                approachOf(a.axleEnd, constraints_[one].onChassis, b.axleEnd, constraints_[other].onChassis);
            if (approach.betweenEnds && approach.distance < closest_.distance) {
                closest_ = {approach.distance, one, other};
            }
        }
    }
}

double RodSweep::lean(std::size_t constraint) const {
    if (constraints_[constraint].kind != LinkKind::rod) {
        return kAbsent;
    }
    return std::asin(std::sqrt(std::min(rods_[constraint].sineSquared, 1.0)));
}

double rodEndLean(const Eigen::Vector3d& along, const Eigen::Vector3d& bolt) {
    return std::atan2(std::abs(along.dot(bolt)), along.cross(bolt).norm());
}

// The common perpendicular of two lines: Ericson, "Real-Time Collision Detection", Morgan Kaufmann 2005,
// sec. 5.1.8 (from memory, no page).
Approach approachOf(const Eigen::Vector3d& a0, const Eigen::Vector3d& a1, const Eigen::Vector3d& b0,
                    const Eigen::Vector3d& b1) {
    constexpr double kParallel = 1e-12;
    const Eigen::Vector3d a = a1 - a0;
    const Eigen::Vector3d b = b1 - b0;
    const Eigen::Vector3d apart = a0 - b0;
    const double aa = a.squaredNorm();
    const double bb = b.squaredNorm();
    const double ab = a.dot(b);
    const double denominator = aa * bb - ab * ab;
    if (!(denominator > kParallel * aa * bb)) {
        return {};
    }
    const double s = (ab * b.dot(apart) - bb * a.dot(apart)) / denominator;
    const double t = (aa * b.dot(apart) - ab * a.dot(apart)) / denominator;
    return {(apart + s * a - t * b).norm(), s > 0 && s < 1 && t > 0 && t < 1};
}

}  // namespace bolthole
