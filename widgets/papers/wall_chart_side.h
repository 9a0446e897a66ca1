// The side view on the wall chart: to scale, in black on white, every hole named as the cells name it.
#pragma once

#include <QPainter>
#include <QRectF>

#include "widgets/papers/wall_chart_layout.h"

namespace bolthole {

/// What came of a side view, for tests: no two boxes overlap.
struct SidePicture {
    double scale = 1;   ///< 1 : scale
    double bottom = 0;  ///< how far down it reaches, mm
    std::vector<QRectF> labels;
};

/// Draws it into `area`, mm, at the largest round scale that fits. The car stands at its measured ride
/// height.
SidePicture drawSidePicture(QPainter& painter, const QRectF& area, const SheetFrame& frame,
                            const PrintFonts& fonts, const Car& car, const ChartWords& words);

}  // namespace bolthole
