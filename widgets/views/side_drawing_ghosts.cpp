// The side view's ghosts: another car's links, swing arm and instant center drawn over the one on the bench.
#include <QFontMetricsF>
#include <cmath>

#include "widgets/kit/pens.h"
#include "widgets/kit/unit_text.h"
#include "widgets/views/side_drawing.h"

namespace bolthole {

// A ghost stands at the same travel as the car on the bench; out of its reach there is nothing to draw but
// its path.
void SideDrawing::drawGhost(const Ghost& ghost, SceneInk ink) {
    drawInstantCenterPath(ghost.trace, dashedPen(style_.color(ink, 0.6), 1.2, {1.0, 2.5}));
    if (ghost.cursor.usable) {
        drawArm(ghost.cursor, {ink, SceneWeight::thin, SceneDash::dotted, 0.75});
        drawGhostLinks(ghost, ink);
    }
}

// An open dashed ring, where the bench's own instant center is a full one with a dot.
void SideDrawing::drawGhostCenter(const Ghost& ghost, SceneInk ink) {
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
        drawEdgeMarker(text, {ghost.cursor.icCarX, ghost.cursor.icCarZ}, style_.color(ink, 0.75));
        return;
    }
    put(SceneCenter{.at = {ghost.cursor.icCarX, ghost.cursor.icCarZ}, .kind = CenterKind::instant},
        {.ghost = ink});
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
