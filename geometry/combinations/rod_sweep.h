// How the rods of a linkage lie while the axle moves: how far their ends lean, how near two of them come.
#pragma once

#include <array>
#include <cstddef>
#include <limits>
#include <span>

#include "geometry/kinematics/linkage.h"

namespace bolthole {

/// Keeps the worst of the poses it is shown. Allocates nothing: made anew for each choice.
class RodSweep {
  public:
    /// `constraints` of a linkage and, for each, the direction of its bolts (unit, car frame at the measured
    /// pose; the axle's turns with it). Both must outlive the sweep. What is no rod is left out.
    RodSweep(std::span<const Constraint> constraints, std::span<const Eigen::Vector3d> bolts);

    /// Takes in one more pose of the axle.
    void visit(const AxlePose& pose);

    /// The largest lean of either end of a rod so far, rad, as rodEndLean(); NaN for what is no rod.
    [[nodiscard]] double lean(std::size_t constraint) const;

    /// The two rods that came nearest between their ends, and how near, m. Pairs farther apart than
    /// kCrossingDistance are not measured: then the distance is infinite.
    struct Crossing {
        double distance = std::numeric_limits<double>::infinity();
        std::size_t one = 0;
        std::size_t other = 0;
    };
    [[nodiscard]] const Crossing& closest() const { return closest_; }

  private:
    /// A rod at the present pose: its ends, and the box around it.
    struct Rod {
        Eigen::Vector3d axleEnd = Eigen::Vector3d::Zero();
        Eigen::Array3d low = Eigen::Array3d::Zero();
        Eigen::Array3d high = Eigen::Array3d::Zero();
        double sineSquared = 0;  // of the largest lean so far
    };
    void measurePairs();

    std::span<const Constraint> constraints_;
    std::span<const Eigen::Vector3d> bolts_;
    std::array<Rod, 2 * kMaxLinks> rods_;
    Crossing closest_;
};

}  // namespace bolthole
