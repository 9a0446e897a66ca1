#include "widgets/scene/scene_springs.h"

#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "widgets/kit/pens.h"

namespace bolthole {

namespace {

constexpr int kTurns = 7;

/// Places points along and across the line between two mounts.
struct Span {
    QPointF from;
    QPointF along;
    QPointF across;
    double length;

    Span(QPointF chassis, QPointF axle)
        : from(chassis),
          along(unit(axle - chassis)),
          across(-along.y(), along.x()),
          length(std::hypot(axle.x() - chassis.x(), axle.y() - chassis.y())) {}
    /// `share` of the span from the chassis, `out` to the side.
    [[nodiscard]] QPointF at(double share, double out = 0) const {
        return from + along * (share * length) + across * out;
    }
    /// Never so wide that a short symbol turns into a plate.
    [[nodiscard]] double halfWidth(double wanted) const { return std::min(wanted, 0.3 * length); }
};

void drawCoil(QPainter& painter, const Span& span, double from, double to, double half) {
    QPainterPath path(span.at(from));
    for (int turn = 0; turn < kTurns; ++turn) {
        const double step = (to - from) / kTurns;
        path.lineTo(span.at(from + step * (turn + 0.25), half));
        path.lineTo(span.at(from + step * (turn + 0.75), -half));
    }
    path.lineTo(span.at(to));
    painter.drawPath(path);
    painter.drawLine(span.at(from, half), span.at(from, -half));
    painter.drawLine(span.at(to, half), span.at(to, -half));
}

void drawTube(QPainter& painter, const Span& span, double from, double to, double half) {
    const QPointF corners[] = {span.at(from, half), span.at(to, half), span.at(to, -half),
                               span.at(from, -half)};
    painter.drawConvexPolygon(corners, 4);
}

void drawShock(QPainter& painter, const Span& span, double half) {
    painter.drawLine(span.at(0), span.at(0.5));
    drawTube(painter, span, 0.45, 0.95, half);
    painter.drawLine(span.at(0.95), span.at(1));
}

// The stop stands on its foot; its pad is a bar across the line at the axle.
void drawStop(QPainter& painter, const Span& span, const SymbolLook& look) {
    const double tip = std::min(look.stopShare, 1.0);
    const double half = std::max(4.0 * look.unit, span.halfWidth(9 * look.unit));
    painter.setPen(look.stopIsMeasured ? roundPen(look.ink, look.width)
                                       : dashedPen(look.ink, look.width, {2.5, 2.0}));
    QPainterPath block(span.at(0, half));
    block.lineTo(span.at(0.6 * tip, 0.8 * half));
    block.quadTo(span.at(tip, 0.7 * half), span.at(tip));
    block.quadTo(span.at(tip, -0.7 * half), span.at(0.6 * tip, -0.8 * half));
    block.lineTo(span.at(0, -half));
    block.closeSubpath();
    painter.drawPath(block);
    painter.setPen(roundPen(look.ink, look.width + look.unit));
    painter.drawLine(span.at(1, half + 2 * look.unit), span.at(1, -half - 2 * look.unit));
}

void drawStrap(QPainter& painter, const Span& span, const SymbolLook& look) {
    QPainterPath path(span.at(0));
    path.quadTo(span.at(0.5, look.slack ? 0.22 * span.length : 0.0), span.at(1));
    painter.setBrush(Qt::NoBrush);
    painter.setPen(dashedPen(look.ink, look.width + 1.8 * look.unit, {2.2, 0.8}));
    painter.drawPath(path);
}

}  // namespace

void drawPartSymbol(QPainter& painter, PartKind kind, QPointF chassis, QPointF axle, const SymbolLook& look) {
    const Span span(chassis, axle);
    if (!(span.length > 2 * look.unit)) {
        return;
    }
    painter.setPen(roundPen(look.ink, look.width));
    painter.setBrush(look.fill);
    switch (kind) {
        case PartKind::spring:
            painter.setBrush(Qt::NoBrush);
            drawCoil(painter, span, 0, 1, span.halfWidth(11 * look.unit));
            return;
        case PartKind::shock:
            drawShock(painter, span, span.halfWidth(5.5 * look.unit));
            return;
        case PartKind::coilOver:
            drawShock(painter, span, span.halfWidth(4 * look.unit));
            painter.setBrush(Qt::NoBrush);
            drawCoil(painter, span, 0.12, 0.78, span.halfWidth(10 * look.unit));
            return;
        case PartKind::bumpStop:
            drawStop(painter, span, look);
            return;
        case PartKind::strap:
            drawStrap(painter, span, look);
            return;
    }
}

}  // namespace bolthole
