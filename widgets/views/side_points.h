// What the side view shows of the car: boxes to fit, and points fixed to the axle. The points themselves:
// drawn_points.h.
#pragma once

#include "widgets/state/drawn_points.h"

namespace bolthole {

/// Where a point fixed to the axle, given as measured (m, car frame), stands in the drawn pose, from the
/// side.
[[nodiscard]] QPointF carriedToPicture(const BenchState& state, const Eigen::Vector3d& measured);

/// Box around rear tire, links and driveline, with the instant center while it is near (car frame, m, y is
/// z).
[[nodiscard]] QRectF linksBox(const BenchState& state);
/// Box around the whole car, CG and the instant center unless it is farther than 8 m.
[[nodiscard]] QRectF wholeBox(const BenchState& state);

}  // namespace bolthole
