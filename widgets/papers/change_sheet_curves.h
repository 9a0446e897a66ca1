// The travel curves on the change sheet: before dashed, after solid, travel upward.
#pragma once

#include <QPainter>
#include <QRectF>

#include "geometry/compare/comparison.h"
#include "widgets/papers/kit/print_type.h"

namespace bolthole {

/// Draws anti-squat, distance of the instant center (on a scale of 1/distance) and pinion to driveshaft over
/// the travel into `area`, mm; without a driveline the height of the instant center instead of the last.
void drawSheetCurves(QPainter& painter, const QRectF& area, const PrintFonts& fonts,
                     const Comparison& comparison, Units units);

}  // namespace bolthole
