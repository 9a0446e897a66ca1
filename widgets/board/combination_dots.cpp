#include "widgets/board/combination_dots.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "widgets/kit/pens.h"
#include "widgets/kit/theme.h"

namespace bolthole {

namespace {

constexpr double kEdgeLength = 7.0;  // px, of the triangle at the edge
constexpr double kEdgeHalf = 4.5;

void strike(QPainter& painter, QPointF center, double reach, bool crossed) {
    const QPointF along(reach * std::numbers::sqrt2 / 2, -reach * std::numbers::sqrt2 / 2);
    const QPointF across(along.x(), -along.y());
    painter.drawLine(center - along, center + along);
    if (crossed) {
        painter.drawLine(center - across, center + across);
    }
}

}  // namespace

void paintDot(QPainter& painter, QPointF center, double radius, DotKind kind) {
    const bool small = radius < kSmallDot;
    const QColor color = kind == DotKind::problem ? theme().problem : theme().ink;
    if (small && kind == DotKind::plain) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(faded(color, 0.75));
        painter.drawEllipse(center, radius, radius);
        return;
    }
    painter.setPen(roundPen(color, small ? 1.0 : 1.5));
    painter.setBrush(theme().card);
    if (!small) {
        painter.drawEllipse(center, radius, radius);
    }
    if (kind == DotKind::problem) {
        strike(painter, center, radius + (small ? 0.6 : 2.0), small);
    }
}

void paintEdgeMark(QPainter& painter, QPointF tip, QPointF outward, DotKind kind) {
    const QPointF foot = tip - kEdgeLength * outward;
    const QPointF side(-outward.y() * kEdgeHalf, outward.x() * kEdgeHalf);
    const QColor color = kind == DotKind::problem ? theme().problem : theme().ink;
    painter.setPen(roundPen(color, 1.3));
    painter.setBrush(kind == DotKind::problem ? theme().card : color);
    painter.drawPolygon(QPolygonF{tip, foot + side, foot - side});
}

void paintPresent(QPainter& painter, QPointF center, double radius, DotKind kind) {
    painter.setPen(roundPen(theme().ink, 1.8));
    painter.setBrush(theme().card);
    painter.drawEllipse(center, radius + 4.0, radius + 4.0);
    if (kind == DotKind::problem) {
        paintDot(painter, center, std::max(radius, kSmallDot), kind);
        return;
    }
    painter.setPen(Qt::NoPen);
    painter.setBrush(theme().ink);
    painter.drawEllipse(center, radius, radius);
}

void paintHalo(QPainter& painter, QPointF center, double radius, bool selected) {
    painter.setPen(roundPen(theme().focus, selected ? 2.4 : 1.6));
    painter.setBrush(Qt::NoBrush);
    painter.drawEllipse(center, radius, radius);
}

QPixmap dotIcon(DotKind kind, bool present, int size, double ratio) {
    QPixmap icon(QSize(size, size) * ratio);
    icon.setDevicePixelRatio(ratio);
    icon.fill(Qt::transparent);
    QPainter painter(&icon);
    painter.setRenderHint(QPainter::Antialiasing);
    const QPointF center(size / 2.0, size / 2.0);
    if (present) {
        paintPresent(painter, center, size / 2.0 - 5.0, kind);
    } else {
        paintDot(painter, center, size / 2.0 - 4.0, kind);
    }
    return icon;
}

}  // namespace bolthole
