// How springs, shocks, stops and straps are drawn: a symbol of its own for each kind, so that none is told by
// color alone.
#pragma once

#include <QPainter>
#include <QPointF>

#include "geometry/car/part.h"

namespace bolthole {

/// How one symbol looks.
struct SymbolLook {
    QColor ink;
    QColor fill;
    double width = 1.6;           ///< of its lines, picture's units
    double unit = 1;              ///< a screen's pixel in the picture's units: what widths across are made of
    bool slack = false;           ///< a strap that hangs
    double stopShare = 0.4;       ///< of the span, how far a stop reaches from its foot
    bool stopIsMeasured = false;  ///< false: nobody said how long the stop is; it is drawn dashed
};

/// Draws a part between its mounts, where they are in the picture. A span of no length draws nothing.
void drawPartSymbol(QPainter& painter, PartKind kind, QPointF chassis, QPointF axle, const SymbolLook& look);

}  // namespace bolthole
