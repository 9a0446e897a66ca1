// The views a measuring picture is made of. Lengths in mm, y down.
#pragma once

#include "widgets/papers/sheets/measuring_picture.h"

namespace bolthole {

/// The car's rear from its left side with the area's lines and points, and the ways forward and up.
MeasuringMarks drawMeasuringSide(QPainter& painter, const QRectF& box, const PrintFonts& fonts,
                                 const Car& car, const PlanArea& area);
/// The rear axle from behind, with the way out and what runs across the car.
MeasuringMarks drawMeasuringRear(QPainter& painter, const QRectF& box, const PrintFonts& fonts,
                                 const Car& car, const PlanArea& area);
/// The whole car from its side and from above, with wheelbase, radii and tracks.
MeasuringMarks drawMeasuringWheels(QPainter& painter, const QRectF& box, const PrintFonts& fonts,
                                   const Car& car);
/// The whole car from above on its four scales, with driver and ballast.
MeasuringMarks drawMeasuringScales(QPainter& painter, const QRectF& box, const PrintFonts& fonts,
                                   const Car& car, const PlanArea& area);

/// The tracks of a car for its picture, m: entered, or half of the wheelbase, which nobody is told.
[[nodiscard]] double drawnTrack(const std::optional<double>& track, const Car& car);

}  // namespace bolthole
