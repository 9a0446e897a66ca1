// The side view's ghosts: another car's links, swing arm and instant center drawn over the one on the bench.
#include <QFontMetricsF>
#include <cmath>

#include "widgets/kit/pens.h"
#include "widgets/kit/unit_text.h"
#include "widgets/views/side_drawing.h"

namespace bolthole {

// A ghost stands at the same travel as the car on the bench; out of its reach there is nothing to draw but
// its path.
void SideDrawing::drawGhost(const Ghost& ghost, const QColor& color, const QList<double>& dashes) {
    const QColor quiet = over(color, 0.75, theme_.canvas);
    drawInstantCenterPath(ghost.trace, dashedPen(over(color, 0.6, theme_.canvas), 1.2, {1.0, 2.5}));
    if (!ghost.cursor.usable) {
        return;
    }
    const GroundLine& ground = ghost.cursor.ground;
    const double angle = ghost.cursor[Figure::swingArmAngle] + ghost.cursor[Figure::ground];
    const QPointF from = picture(ground.patchX, ground.patchZ);
    QPointF to = picture(ghost.cursor.icCarX, ghost.cursor.icCarZ);
    if (!(std::abs(to.x()) < kNoLimit && std::abs(to.y()) < kNoLimit)) {
        to = from + QPointF(std::cos(angle), -std::sin(angle)) * 2 * picture_.width();
    }
    painter_.setPen(dashedPen(quiet, 1.2, {1.5, 2.5}));
    drawClipped(from, to);
    drawGhostLinks(ghost, quiet, dashes);
}

// An open dashed ring, where the bench's own instant center is a full one with a dot.
void SideDrawing::drawGhostCenter(const Ghost& ghost, const QColor& color) {
    if (station_ == nullptr || !ghost.cursor.usable || !std::isfinite(ghost.cursor.icCarX)) {
        return;
    }
    const QPointF at = picture(ghost.cursor.icCarX, ghost.cursor.icCarZ);
    const QFontMetricsF metrics(painter_.font());
    constexpr double kWidestName = 110;  // px
    const QString text =
        QStringLiteral("%1 %2 × %3 %4")
            .arg(metrics.elidedText(ghost.name, Qt::ElideRight, kWidestName),
                 distanceText(ghost.cursor[Figure::icX]), distanceText(ghost.cursor[Figure::icZ]),
                 unitText(Quantity::length, state_.style.units));
    if (!inPicture(at, 12)) {
        drawEdgeMarker(text, {ghost.cursor.icCarX, ghost.cursor.icCarZ}, over(color, 0.75, theme_.canvas));
        return;
    }
    painter_.setPen(dashedPen(color, 2.0, {1.6, 1.2}));
    painter_.setBrush(Qt::NoBrush);
    painter_.drawEllipse(at, 9, 9);
    labels_.take(QRectF(at - QPointF(11, 11), QSizeF(22, 22)));
    // Over the bench's own there is nothing to tell apart, and the label would only be in the way.
    const QPointF own = picture(station_->icCarX, station_->icCarZ);
    if (std::hypot(own.x() - at.x(), own.y() - at.y()) < 3) {
        return;
    }
    drawChip(labels_.place(at, metrics.size(0, text) + QSizeF(8, 4), 13, 6), text,
             faded(theme_.canvas, 0.85));
}

}  // namespace bolthole
