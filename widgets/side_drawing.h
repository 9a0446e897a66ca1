// Draws the side view with any QPainter: screen, PDF and paper share it.
#pragma once

#include <QPainter>
#include <QRectF>

#include "widgets/label_placer.h"
#include "widgets/side_camera.h"
#include "widgets/side_points.h"
#include "widgets/theme.h"

namespace bolthole {

/// What is singled out in the picture.
struct SideMarks {
    PointId hovered;
    PointId selected;
    bool keyboardFocus = false;  ///< the selection carries a focus ring
};

/// A marker at the edge of the picture for something outside it.
struct EdgeMarker {
    QRectF box;      ///< where it was drawn, picture pixels
    QPointF target;  ///< car frame, m
};

/// One picture. Make, draw(), read edgeMarkers().
class SideDrawing {
  public:
    /// `picture`: the area to fill, in the painter's logical pixels. All references must outlive draw().
    SideDrawing(QPainter& painter, const BenchState& state, const SidePoints& points,
                const SideCamera& camera, QRectF picture, const SideMarks& marks);

    void draw();

    /// The markers drawn for the instant center and the CG when they are outside the picture.
    [[nodiscard]] const std::vector<EdgeMarker>& edgeMarkers() const { return edgeMarkers_; }

  private:
    void drawGrid();
    void drawGround();
    void drawTire(QPointF center, double radius);
    void drawHousing();
    void drawShaft();
    void drawGhost(const Ghost& ghost, const QColor& color, const QList<double>& dashes);
    void drawGhostLinks(const Ghost& ghost, const QColor& color, const QList<double>& dashes);
    void drawGhostCenter(const Ghost& ghost, const QColor& color);
    void drawInstantCenterPath(const Trace& trace, const QPen& pen);
    void drawReferenceLine();
    void drawSwingArm();
    void drawLinkLines();
    void drawLinks();
    void drawPoints();
    void drawPoint(const DrawnPoint& point);
    void drawCenterOfGravity();
    void drawInstantCenter();
    void drawLinkNames();
    void drawPointLabel(const PointId& id);
    void drawScaleBar();
    void drawClipped(QPointF from, QPointF to);
    void drawEdgeMarker(const QString& text, QPointF target, const QColor& color);
    void drawChip(const QRectF& box, const QString& text, const QColor& ground);
    void drawTag(const QRectF& box, const QString& title, const QString& text, const QColor& edge);
    [[nodiscard]] double gridSpacing() const;
    [[nodiscard]] QString distanceText(double metres) const;
    [[nodiscard]] QPointF picture(double x, double z) const { return camera_.toPicture(x, z); }
    [[nodiscard]] QColor colorOf(Role role) const;
    [[nodiscard]] bool inPicture(QPointF point, double margin) const;

    static constexpr double kNoLimit = 1e7;  // pixels; a point farther out is as good as at infinity

    QPainter& painter_;
    const BenchState& state_;
    const SidePoints& points_;
    const SideCamera& camera_;
    QRectF picture_;
    const SideMarks& marks_;
    const Theme& theme_;
    const Station* station_;
    LabelPlacer labels_;
    double holeRadius_;  // pixels
    std::vector<EdgeMarker> edgeMarkers_;
};

}  // namespace bolthole
