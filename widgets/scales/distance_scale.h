// The scale of the instant center's distance: it runs in 1/distance and is labelled in distance.
//
// Where two links pass through parallel the distance goes to infinity ahead of the car and comes back from
// infinity behind it. Its inverse goes through zero, so the curve stays one smooth line.
#pragma once

#include <QFontMetricsF>
#include <vector>

#include "geometry/kinematics/trace.h"
#include "widgets/scales/axis_ticks.h"

namespace bolthole {

/// Largest |1/distance| that is drawn, 1/m: an instant center nearer than 0.2 m (8 in) leaves the plot.
inline constexpr double kMostInverseDistance = 5.0;

/// 1/(distance of the instant center ahead of the rear contact patch), 1/m; negative behind it; 0 where the
/// instant center is at infinity. NaN where the links do not reach or the distance is within a micrometre of
/// zero.
[[nodiscard]] double inverseDistance(const Station& station);

/// Ticks for an axis in 1/m, labelled in multiples of `unit` (m), from left to right, at most kMostTicks;
/// infinity, where it is on the axis, is always one of them.
[[nodiscard]] std::vector<AxisTick> distanceTicks(const AxisOnScreen& axis, double unit,
                                                  const QFontMetricsF& metrics);

}  // namespace bolthole
