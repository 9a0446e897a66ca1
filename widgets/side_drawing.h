// Draws the side view with any QPainter.
#pragma once

#include <QLineF>

#include "widgets/picture_drawing.h"
#include "widgets/side_points.h"

namespace bolthole {

/// One picture from the side. Make, draw(), read edgeMarkers(): those of the instant center and the CG.
class SideDrawing : public PictureDrawing {
  public:
    /// `picture`: the area to fill, in the painter's logical pixels. All references must outlive draw().
    SideDrawing(QPainter& painter, const BenchState& state, const DrawnPoints& points,
                const SideCamera& camera, QRectF picture, const PictureMarks& marks)
        : PictureDrawing(painter, state, points, camera, picture, marks, ViewPlane::side) {}

    void draw();

  private:
    QLineF rollAxis_;  // what is seen of it, rear end first; null where there is none

    void drawCar();
    void drawGround();
    void drawTire(QPointF center, double radius);
    void drawHousing();
    void drawShaft();
    void drawGhost(const Ghost& ghost, const QColor& color, const QList<double>& dashes);
    void drawGhostCenter(const Ghost& ghost, const QColor& color);
    void drawInstantCenterPath(const Trace& trace, const QPen& pen);
    void drawReferenceLine();
    void drawSwingArm();
    void drawLinkLines();
    void drawRollAxis();
    void nameRollAxis();
    void drawCenterOfGravity();
    void drawInstantCenter();

    static constexpr double kNoLimit = 1e7;  // pixels; a point farther out is as good as at infinity
};

}  // namespace bolthole
