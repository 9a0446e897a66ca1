// Over-held linkages by Ceres Solver: unweighted least squares over all equations, derivatives by Ceres' own
// automatic differentiation.
//
// S. Agarwal, K. Mierle and others, "Ceres Solver", ceres-solver.org; used as the library Debian ships.
#pragma once

#include <Eigen/Core>

#include "tests/outside/reference_links.h"

namespace bolthole {

/// The axle's pose where the sum of the squared misfits of all links is least.
class CeresReference {
  public:
    /// The axle stands at its measured pose, not yet assembled.
    explicit CeresReference(ReferenceAxle axle);

    /// Goes on from the present pose to `travel` (m) and `roll` (rad) in small steps. False if Ceres did not
    /// converge on the way.
    [[nodiscard]] bool moveTo(double travel, double roll = 0.0);

    /// Where a point of the axle stands, car frame, m. `fromCenter`: m, from the center, measured pose.
    [[nodiscard]] Eigen::Vector3d carry(const Eigen::Vector3d& fromCenter) const;

    /// The largest misfit of any equation, m.
    [[nodiscard]] double bind() const;

  private:
    [[nodiscard]] bool minimizeAt(double travel, double roll);

    ReferenceAxle axle_;
    double unknowns_[4] = {0, 0, 0, 0};  // x, y (m), pitch, yaw (rad)
    double travel_ = 0;
    double roll_ = 0;
};

}  // namespace bolthole
