// Four corners as a vector, for Eigen to solve with.
#pragma once

#include <Eigen/Core>

#include "geometry/car/car.h"

namespace bolthole {

/// In the order left front, right front, left rear, right rear, kg.
[[nodiscard]] inline Eigen::Vector4d asVector(const CornerWeights& corners) {
    return {corners.leftFront, corners.rightFront, corners.leftRear, corners.rightRear};
}

}  // namespace bolthole
