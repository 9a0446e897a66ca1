// A picture of the bench that is worked in: what the side, rear and top views share.
#pragma once

#include <QWidget>

#include "widgets/state/bench_state.h"
#include "widgets/views/picture_drawing.h"

class QToolButton;

namespace bolthole {

/// Shows BenchState in one plane. Mouse: drag a hole or joint, click a free hole to bolt the link there,
/// wheel zooms about the pointer, drag on empty space pans, double-click shows the links. Of a mirrored pair
/// either hole can be taken: both move, mirrored. Keys:
/// `.` and `,` walk through the holes, arrows nudge the selected one (Shift: four times as far), Enter bolts,
/// Escape abandons a drag or deselects, + and - zoom, L shows the links, A shows all.
class BenchPicture : public QWidget {
    Q_OBJECT
  public:
    /// Shows the state, which must outlive the view or be shown anew. Cheap: only marks for repainting.
    void showState(const BenchState& state);
    /// Fits the links (or the whole car) into the view, now and while the window is resized until the next
    /// zoom or pan.
    void showLinks();
    void showAll();
    /// Whether a hole is being dragged.
    [[nodiscard]] bool isDragging() const { return drag_.active; }
    /// Gives up a press or drag under way: the car is as before it, and the release will do nothing.
    void abandonDrag();
    /// Where a point is drawn, widget coordinates; for tests and accessibility. Null point if it is not
    /// drawn. `mirrored`: the right-hand one of a pair.
    [[nodiscard]] QPointF placeOf(const PointId& id, bool mirrored = false) const;
    [[nodiscard]] const SideCamera& camera() const { return camera_; }
    /// Something else stands there over the picture: labels keep off it.
    void keepFree(const QRect& place);
    /// A word in the picture's corner that says which view it is, where several stand together: then there is
    /// no room for buttons. Empty: none.
    void setCaption(const QString& caption);

    [[nodiscard]] QSize sizeHint() const override { return {760, 460}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {240, 160}; }

  signals:
    void edited(const bolthole::Edit& edit, bolthole::EditPhase phase);
    void selected(const bolthole::PointId& id);

  protected:
    /// `allTip`: what "show all" shows, for its tool tip.
    BenchPicture(ViewPlane plane, const QString& allTip, QWidget* parent);

    /// Boxes to fit, in the view's plane, m.
    [[nodiscard]] virtual QRectF boxOfLinks(const BenchState& state) const = 0;
    [[nodiscard]] virtual QRectF boxOfAll(const BenchState& state) const = 0;
    /// Paints everything and gives back the edge markers.
    [[nodiscard]] virtual std::vector<EdgeMarker> paintPicture(QPainter& painter,
                                                               const BenchState& state) = 0;
    /// Tells the drawing where no label may stand.
    void keepFreeOf(PictureDrawing& drawing) const;

    [[nodiscard]] ViewPlane plane() const { return plane_; }
    [[nodiscard]] const DrawnPoints& points() const { return points_; }
    [[nodiscard]] const PictureMarks& marks() const { return marks_; }

    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    bool event(QEvent* event) override;

  private:
    enum class Fitting { links, all, byHand };
    // A point and which of the two of a pair it is.
    struct Picked {
        PointId id;
        bool mirrored = false;
    };
    struct Press {
        bool down = false;
        bool panning = false;
        Picked point;
        QPointF at;
        QPointF cameraOrigin;
    };
    struct Drag {
        bool active = false;
        QPointF grab;   // from the pointer to the point's place, picture pixels
        AxlePose pose;  // the axle's at the start: the whole drag is read against it, so that it can't chase
                        // itself
        Eigen::Vector3d measured = Eigen::Vector3d::Zero();
    };

    void addButtons(const QString& allTip);
    void placeButtons();
    void refit();
    void keepInPicture();
    [[nodiscard]] QRectF fittedBox() const;
    void select(const Picked& point, bool tells);
    void setHovered(const Picked& point);
    void rebuildHoles();
    [[nodiscard]] Picked pointUnder(QPointF place) const;
    [[nodiscard]] QRect aroundPoint(QPoint place) const;
    [[nodiscard]] bool followEdgeMarker(QPointF place);
    void startDrag();
    void dragTo(QPointF place, Qt::KeyboardModifiers modifiers);
    [[nodiscard]] Eigen::Vector3d measuredAt(QPointF shown) const;
    void click(const Picked& point, bool byKey);
    [[nodiscard]] double snapStep() const;
    bool nudge(int key, Qt::KeyboardModifiers modifiers);
    void walkPoints(int step);
    void zoomBy(double factor, QPointF fixed);
    [[nodiscard]] QRect captionBox() const;
    void showTip(QPoint place, QPoint onScreen);
    void updateAccessibleText();

    ViewPlane plane_;
    const BenchState* state_ = nullptr;
    DrawnPoints points_;
    Scene holes_;  // of the points, to be hit
    SideCamera camera_;
    Fitting fitting_ = Fitting::links;
    PictureMarks marks_;
    std::optional<QPointF> pointer_;  // while it is over the picture
    bool ring_ = false;               // the focus came by the keyboard
    Press press_;
    Drag drag_;
    Edit lastDragEdit_;
    std::vector<EdgeMarker> edgeMarkers_;
    std::vector<QToolButton*> buttons_;
    QRect keptFree_;
    QString caption_;
};

}  // namespace bolthole
