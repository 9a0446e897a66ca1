// Small pictures of how a rear axle is linked: from the side and from above, drawn from a car's own points.
#pragma once

#include <QRectF>

#include "geometry/car/car.h"

class QPainter;

namespace bolthole {

/// From which side a layout is looked at: front at right, seen from the side or from above.
enum class LayoutSight { side, plan };

/// Draws tires, axle and links of `car` to scale into `box`, px. Links have the colors of their roles; each
/// kind has a sign of its own: a bar with two eyes for a rod, a thick arm with a pin for a pivot, with a slot
/// for a slider, two bars on a short swinging one for a guide.
void drawLayout(QPainter& painter, const QRectF& box, const Car& car, LayoutSight sight);

}  // namespace bolthole
