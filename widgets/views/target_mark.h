// The target instant center as a mark over the side view, to be dragged.
#pragma once

#include <Eigen/Core>
#include <QWidget>
#include <optional>

#include "geometry/kinematics/trace.h"
#include "widgets/state/bench_state.h"

namespace bolthole {

class SideView;

/// Lies over the side view and lets the mouse through but for the mark itself. W in the view shows or hides
/// it; while it is shown, Ctrl with the arrow keys moves it. The mark: a square frame on its corner with a
/// cross through it, its words beside it.
class TargetMark : public QWidget {
    Q_OBJECT
  public:
    /// Becomes a child of `view`.
    explicit TargetMark(SideView& view);

    [[nodiscard]] bool isOn() const { return at_.has_value(); }
    /// Shows the mark at a place, m, car frame: forward, up; nothing: hides it.
    void showMark(const std::optional<Eigen::Vector2d>& at, Units units);
    /// The small line beside it.
    void showLine(const QString& line);
    [[nodiscard]] const QString& line() const { return line_; }
    [[nodiscard]] bool isDragging() const { return dragging_; }
    /// Where it is drawn, in the view's coordinates: at the edge where it would lie outside.
    [[nodiscard]] QPointF place() const;

  signals:
    /// W was pressed in the view.
    void toggled();
    /// It is dragged, or was moved: `done` when it is let go.
    void moved(const Eigen::Vector2d& at, bool done);
    /// Escape in a drag.
    void abandoned();

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

  private:
    bool press(const QMouseEvent& event);
    bool drag(const QMouseEvent& event);
    bool release(const QMouseEvent& event);
    bool key(const QKeyEvent& event);
    [[nodiscard]] bool isOver(QPointF at) const;
    void paintMark(QPainter& painter, QPointF at) const;

    SideView& view_;
    std::optional<Eigen::Vector2d> at_;
    Units units_ = Units::inch;
    QString line_;
    bool dragging_ = false;
    bool isHovered_ = false;
};

/// The ground-line coordinates of a point of the car frame, ahead of the rear patch and above the ground, and
/// back.
[[nodiscard]] Eigen::Vector2d onGround(const GroundLine& ground, const Eigen::Vector2d& at);
[[nodiscard]] Eigen::Vector2d inCar(const GroundLine& ground, const Eigen::Vector2d& onGround);

}  // namespace bolthole
