// A shock's forces and an engine's torque, all of them made larger or smaller alike.
#pragma once

#include <vector>

#include "geometry/car/damping.h"

namespace bolthole {

/// Every force, bump and rebound, times `factor`; speeds and clicks stay. Nothing is refused: refusal() says
/// whether what comes of it may stand in a car.
[[nodiscard]] Damping scaled(const Damping& damping, double factor);
/// Every torque times `factor`; speeds stay. As above.
[[nodiscard]] std::vector<TorquePoint> scaled(const std::vector<TorquePoint>& torque, double factor);

}  // namespace bolthole
