// The body that the pictures of a whole car draw from the side: a plain shape, no car's.
#pragma once

#include <QPolygonF>

namespace bolthole {

/// Of the outline, m: body beyond either axle, and the roof above the ground.
inline constexpr double kBodyOverhang = 0.75;
inline constexpr double kBodyRoof = 1.35;

/// Closed, in the car frame from the side, x forward and y up, m, the car at rest.
[[nodiscard]] QPolygonF bodyOutline(double wheelbase, double rearRadius);

}  // namespace bolthole
