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
    double width = 1.6;           ///< of its lines, px
    bool slack = false;           ///< a strap that hangs
    double stopShare = 0.4;       ///< of the span, how far a stop reaches from its foot
    bool stopIsMeasured = false;  ///< false: nobody said how long the stop is; it is drawn dashed
};

/// Draws a part between its mounts, px. A span of no length draws nothing.
void drawPartSymbol(QPainter& painter, PartKind kind, QPointF chassis, QPointF axle, const SymbolLook& look);

/// A mount: square on the chassis, round on the axle; hollow where it is not in use.
void drawMount(QPainter& painter, QPointF at, bool onChassis, bool inUse, const SymbolLook& look);

}  // namespace bolthole
