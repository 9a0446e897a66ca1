#include "widgets/kit/pens.h"

#include <QPaintEngine>
#include <QPainter>
#include <QPolygonF>
#include <algorithm>
#include <array>
#include <cmath>

namespace bolthole {

QPen roundPen(const QColor& color, double width, Qt::PenStyle style) {
    return {color, width, style, Qt::RoundCap, Qt::RoundJoin};
}

QColor faded(QColor color, double alpha) {
    color.setAlphaF(static_cast<float>(alpha));
    return color;
}

QColor over(const QColor& color, double alpha, const QColor& ground) {
    const auto mix = [&](int above, int below) { return static_cast<int>(std::lerp(below, above, alpha)); };
    return {mix(color.red(), ground.red()), mix(color.green(), ground.green()),
            mix(color.blue(), ground.blue())};
}

QPointF unit(QPointF vector) {
    const double length = std::hypot(vector.x(), vector.y());
    return length > 0 ? vector / length : QPointF(1, 0);
}

QPen dashedPen(const QColor& color, double width, const QList<double>& pattern) {
    QPen pen(color, width, Qt::CustomDashLine, Qt::FlatCap);
    pen.setDashPattern(pattern);
    return pen;
}

bool takesPixels(const QPainter& painter) {
    const QPaintEngine* engine = painter.paintEngine();
    return engine == nullptr || engine->type() == QPaintEngine::Raster;
}

std::optional<QLineF> clipped(const QLineF& line, const QRectF& box) {
    double from = 0;
    double to = 1;
    const std::array<std::array<double, 2>, 4> edges{{{-line.dx(), line.x1() - box.left()},
                                                      {line.dx(), box.right() - line.x1()},
                                                      {-line.dy(), line.y1() - box.top()},
                                                      {line.dy(), box.bottom() - line.y1()}}};
    for (const auto& [rate, room] : edges) {
        if (rate == 0 && room < 0) {
            return std::nullopt;
        }
        if (rate < 0) {
            from = std::max(from, room / rate);
        } else if (rate > 0) {
            to = std::min(to, room / rate);
        }
    }
    if (!(from < to)) {
        return std::nullopt;
    }
    return QLineF(line.pointAt(from), line.pointAt(to));
}

void paintArrow(QPainter& painter, QPointF from, QPointF to, const QPen& pen) {
    const QPointF along = unit(to - from);
    const QPointF across(-along.y(), along.x());
    painter.setPen(pen);
    painter.setBrush(Qt::NoBrush);
    painter.drawLine(from, to);
    QPen solid = pen;
    solid.setStyle(Qt::SolidLine);
    painter.setPen(solid);
    const QPointF back = to - kArrowHead * along;
    painter.drawPolyline(QPolygonF{back + 0.55 * kArrowHead * across, to, back - 0.55 * kArrowHead * across});
}

}  // namespace bolthole
