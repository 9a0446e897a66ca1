// The picture of an area to be measured: the car's own layout to scale, its points numbered, the ways of the
// tape drawn as dimension lines. One painter for paper and screen.
#pragma once

#include <QPainter>
#include <QRectF>
#include <vector>

#include "widgets/papers/kit/print_type.h"
#include "widgets/papers/sheets/measuring_plan.h"

namespace bolthole {

/// What came of a picture: where its numbers and letters stand, mm.
struct MeasuringMarks {
    std::vector<QRectF> bubbles;
    std::vector<QPointF> points;  ///< the points they belong to, in the same order
    std::vector<QString> signs;   ///< the numbers and letters themselves, in the same order
};

/// Draws the area's picture into `box`, mm, black on white, in a frame. The car is drawn as measured. Of the
/// points only those among `numbers` are numbered; all where it is empty. The point called `lit` has a heavy
/// ring around it and its number; "3–7" lights the way between two points.
MeasuringMarks drawMeasuringPicture(QPainter& painter, const QRectF& box, const PrintFonts& fonts,
                                    const Car& car, const PlanArea& area,
                                    const std::vector<int>& numbers = {}, const QString& lit = {});

/// Puts a heavy ring around the marks called `sign` and the points they belong to.
void lightMarks(QPainter& painter, const MeasuringMarks& marks, const QString& sign);

}  // namespace bolthole
