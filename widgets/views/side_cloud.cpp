#include "widgets/views/side_cloud.h"

#include <QPainterPath>
#include <cmath>

#include "widgets/kit/pens.h"
#include "widgets/kit/theme.h"
#include "widgets/scales/center_uncertainty.h"

namespace bolthole {

namespace {

constexpr float kPointInk = 0.22F;  // of one point; where many lie it adds up
constexpr double kPointSize = 2.0;  // px
constexpr double kFar = 1e6;        // px; farther, an outline's point is as good as at infinity

bool hasCenter(const BenchState& state) {
    return state.showsUncertainty && state.cursor.usable && state.trace.assembly.usable();
}

// Unsmoothed squares of one pen: two thousand of them cost less than a link's label.
void drawPoints(QPainter& painter, const IcCloud& cloud, const SideCamera& camera, const QRectF& picture) {
    QPolygonF points;
    points.reserve(static_cast<qsizetype>(cloud.points.size()));
    for (const auto& [x, z] : cloud.points) {
        const QPointF at = camera.toPicture(static_cast<double>(x), static_cast<double>(z));
        if (picture.contains(at)) {
            points << at;
        }
    }
    QColor color = theme().instantCenter;
    color.setAlphaF(kPointInk);
    painter.setRenderHint(QPainter::Antialiasing, false);
    painter.setPen(QPen(color, kPointSize, Qt::SolidLine, Qt::SquareCap));
    painter.drawPoints(points);
    painter.setRenderHint(QPainter::Antialiasing);
}

void drawOutline(QPainter& painter, const BenchState& state, const SideCamera& camera) {
    const std::optional<CenterUncertainty> uncertainty =
        centerUncertaintyAt(state.uncertainty, state.cursorTravel);
    if (!uncertainty) {
        return;
    }
    QPainterPath path;
    for (const std::vector<QPointF>& piece : centerRegion(*uncertainty, state.cursor)) {
        bool started = false;
        for (const QPointF& point : piece) {
            const QPointF at = camera.toPicture(point);
            if (!(std::abs(at.x()) < kFar && std::abs(at.y()) < kFar)) {
                started = false;
                continue;
            }
            started ? path.lineTo(at) : path.moveTo(at);
            started = true;
        }
    }
    QColor fill = theme().instantCenter;
    fill.setAlphaF(0.12F);
    painter.setBrush(showsCloud(state) ? QBrush(Qt::NoBrush) : QBrush(fill));
    painter.setPen(dashedPen(theme().instantCenter, 1.2, {3.0, 2.0}));
    painter.drawPath(path);
    painter.setBrush(Qt::NoBrush);
}

}  // namespace

bool showsCloud(const BenchState& state) {
    return hasCenter(state) && state.cloud && state.cloud->drawn > 0 &&
           std::abs(state.cursorTravel) < kAtRide;
}

bool showsOutline(const BenchState& state) {
    return hasCenter(state) && state.uncertainty.known &&
           (!showsCloud(state) || (state.cloud->holds(Figure::icX) && state.cloud->holds(Figure::icZ)));
}

void drawCenterUncertainty(QPainter& painter, const BenchState& state, const SideCamera& camera,
                           const QRectF& picture) {
    painter.save();
    painter.setClipRect(picture);
    if (showsCloud(state)) {
        drawPoints(painter, *state.cloud, camera, picture);
    }
    if (showsOutline(state)) {
        drawOutline(painter, state, camera);
    }
    painter.restore();
}

}  // namespace bolthole
