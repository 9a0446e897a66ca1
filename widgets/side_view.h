// The side view: the car's rear links to scale, to be dragged, nudged and bolted.
#pragma once

#include <QWidget>

#include "widgets/bench_state.h"
#include "widgets/side_drawing.h"

class QToolButton;

namespace bolthole {

/// Shows BenchState from the left side, front of the car to the right. Mouse: drag a hole or joint, click a
/// free hole to bolt the link there, wheel zooms about the pointer, drag on empty space pans, double-click
/// shows the links. Keys:
/// `.` and `,` walk through the holes, arrows nudge the selected one (Shift: four times as far), Enter bolts,
/// Escape abandons a drag or deselects, + and - zoom, L shows the links, A shows all.
class SideView : public QWidget {
    Q_OBJECT
  public:
    explicit SideView(QWidget* parent = nullptr);

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
    /// drawn.
    [[nodiscard]] QPointF placeOf(const PointId& id) const;
    [[nodiscard]] const SideCamera& camera() const { return camera_; }

    [[nodiscard]] QSize sizeHint() const override { return {760, 460}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {320, 240}; }

  signals:
    void edited(const bolthole::Edit& edit, bolthole::EditPhase phase);
    void selected(const bolthole::PointId& id);

  protected:
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
    struct Press {
        bool down = false;
        bool panning = false;
        PointId point;
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

    void addButtons();
    void placeButtons();
    void refit();
    void select(const PointId& id);
    void setHovered(const PointId& id);
    [[nodiscard]] PointId pointUnder(QPointF place) const;
    [[nodiscard]] bool followEdgeMarker(QPointF place);
    void startDrag();
    void dragTo(QPointF place, Qt::KeyboardModifiers modifiers);
    void click(const PointId& id);
    [[nodiscard]] double snapStep() const;
    [[nodiscard]] Edit moveTo(const PointId& id, const Eigen::Vector3d& at) const;
    bool nudge(int key, Qt::KeyboardModifiers modifiers);
    void walkPoints(int step);
    void zoomBy(double factor, QPointF fixed);
    void updateAccessibleText();

    const BenchState* state_ = nullptr;
    SidePoints points_;
    SideCamera camera_;
    Fitting fitting_ = Fitting::links;
    SideMarks marks_;
    bool ring_ = false;  // the focus came by the keyboard
    Press press_;
    Drag drag_;
    Edit lastDragEdit_;
    std::vector<EdgeMarker> edgeMarkers_;
    std::vector<QToolButton*> buttons_;
};

}  // namespace bolthole
