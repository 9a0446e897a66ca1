// What the side, rear and top views draw alike: grid, links, holes, names, ghosts, scale bar.
#pragma once

#include <QPainter>
#include <QRectF>
#include <memory>

#include "widgets/kit/label_placer.h"
#include "widgets/kit/theme.h"
#include "widgets/scene/scene_things.h"
#include "widgets/state/drawn_points.h"
#include "widgets/state/side_camera.h"
#include "widgets/views/still_layers.h"

namespace bolthole {

/// What is singled out in a picture.
struct PictureMarks {
    PointId hovered;
    PointId selected;
    bool hoveredMirrored = false;   ///< pointed at is the right-hand hole of the pair
    bool selectedMirrored = false;  ///< and the selection was made there
    bool tellsSelected = false;     ///< its tag stands there without the pointer: the keyboard chose it
    bool keyboardFocus = false;     ///< the selection carries a focus ring
};

/// A marker at the edge of the picture for something outside it.
struct EdgeMarker {
    QRectF box;      ///< where it was drawn, picture pixels
    QPointF target;  ///< in the picture's plane, m
};

/// One picture of one plane, in the painter's logical pixels. The drawings of the views derive from it.
class PictureDrawing {
  public:
    virtual ~PictureDrawing() = default;
    PictureDrawing(const PictureDrawing&) = delete;
    PictureDrawing& operator=(const PictureDrawing&) = delete;

    /// Labels keep off this place; call before drawing.
    void keepFree(const QRectF& place) { labels_.take(place); }

    /// The markers drawn for what is outside the picture.
    [[nodiscard]] const std::vector<EdgeMarker>& edgeMarkers() const { return edgeMarkers_; }

  protected:
    /// `picture`: the area to fill. All references must outlive the drawing.
    PictureDrawing(QPainter& painter, const BenchState& state, const DrawnPoints& points,
                   const SideCamera& camera, QRectF picture, const PictureMarks& marks, ViewPlane plane);
    /// The same picture on another painter.
    [[nodiscard]] virtual std::unique_ptr<PictureDrawing> on(QPainter& painter) const = 0;
    /// What stands still while links are dragged, down to the canvas; and all it depends on besides camera
    /// and theme.
    virtual void drawBackdrop() = 0;
    virtual void tellBackdrop(StillKey& key) const = 0;
    /// The axle and what it turns, which stand still as long as it does. Only with a station.
    virtual void drawAxle() = 0;
    virtual void tellAxle(StillKey& key) const = 0;
    /// Both, from `layers` where they are given and the painter takes pixels.
    void drawBehind(StillLayers* layers);

    void drawGrid();
    /// Draws a thing at once, as scenes have it drawn.
    void put(SceneShape shape, SceneMarks marks = {}) { things_.draw({std::move(shape), -1, marks}); }
    /// The same for a path.
    void putPath(const QPolygonF& through, const SceneStroke& stroke);
    /// A line without end that is clipped to the picture: `way` in the picture's pixels.
    void putRay(QPointF from, QPointF way, const SceneStroke& stroke);
    void drawGhostLinks(const Ghost& ghost, SceneInk ink);
    void drawLinks();
    void drawPoints();
    void drawLinkNames();
    void drawMarkedPoints();
    void drawScaleBar();
    void drawEdgeMarker(const QString& text, QPointF target, const QColor& color);
    void drawChip(const QRectF& box, const QString& text, const QColor& ground);
    void drawTag(const QRectF& box, const QString& title, const QString& text, const QColor& edge);
    [[nodiscard]] QString distanceText(double metres) const;
    /// Of the grid's lines, m: a round number of the units shown.
    [[nodiscard]] double gridSpacing() const;
    [[nodiscard]] QPointF picture(double across, double up) const { return camera_.toPicture(across, up); }
    [[nodiscard]] bool inPicture(QPointF point, double margin) const;

    static constexpr double kShaftRadius = 0.03;  // m, of the drawing alone

    QPainter& painter_;
    const BenchState& state_;
    const DrawnPoints& points_;
    const SideCamera& camera_;
    QRectF picture_;
    const PictureMarks& marks_;
    const Theme& theme_;
    const Station* station_;
    ViewPlane plane_;
    LabelPlacer labels_;
    SceneStyle style_;

  private:
    [[nodiscard]] StillKey cameraKey() const;
    void drawPoint(const DrawnPoint& point);
    void drawPointLabel(const PointId& id, bool mirrored);

    SceneView view_;
    Scene scene_;  // one path at a time
    ThingPainter things_;
    std::vector<EdgeMarker> edgeMarkers_;
};

}  // namespace bolthole
