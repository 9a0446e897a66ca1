// The plate of a bracket from the side, to scale: outline, holes, edge distance; its corners can be moved.
#pragma once

#include <QWidget>
#include <optional>

#include "geometry/car/car.h"
#include "geometry/units/text.h"
#include "widgets/scene/scene_style.h"

namespace bolthole {

/// What the picture shows.
struct BracketScene {
    Bracket bracket;
    NumberStyle style;
    int hoveredHole = -1;
    int hoveredCorner = -1;
    int selectedCorner = -1;
    bool hasRing = false;  ///< the selection carries a focus ring
    QString refusal;       ///< why the outline as it is being dragged can't be; empty: it can
};

/// The front of the car to the right, as in the side view. Mouse: drag a corner, it snaps to the tape's
/// fraction; Alt leaves the snapping out, Escape gives the drag up. Keys: `.` and `,` walk through the
/// corners, arrows nudge the selected one (Shift: four times as far).
class BracketPicture : public QWidget {
    Q_OBJECT
  public:
    explicit BracketPicture(QWidget* parent = nullptr);

    /// Shows another state of the bracket, or another bracket; a drag under way is given up where its number
    /// of corners changed.
    void showBracket(const Bracket& bracket, NumberStyle style);

    [[nodiscard]] const BracketScene& scene() const { return scene_; }
    /// Where a point (m, car frame: forward, up) is drawn, px.
    [[nodiscard]] QPointF place(const Eigen::Vector2d& at) const { return camera_.toPicture(at.x(), at.y()); }
    [[nodiscard]] QSize sizeHint() const override { return {620, 440}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {300, 260}; }

  signals:
    void plateRequested(
        const bolthole::Plate& plate);  ///< with a corner moved; one refusal() has nothing against

  protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    bool event(QEvent* event) override;

  private:
    void refit();
    void showNow();
    [[nodiscard]] SceneView view() const { return {camera_, QRectF(rect())}; }
    [[nodiscard]] int cornerAt(QPointF place) const;
    [[nodiscard]] int holeAt(QPointF place) const;
    [[nodiscard]] int cornerCount() const;
    void select(int corner);
    void moveCorner(const Eigen::Vector2d& to);
    void abandonDrag();
    void nudge(const Eigen::Vector2d& way, bool coarse);
    bool takeKey(int key, bool shift);
    [[nodiscard]] QString tipAt(QPointF place) const;
    void describe();

    BracketScene scene_;
    SideCamera camera_;
    Scene drawing_;
    std::optional<Plate> before_;  // while a corner is being dragged: the plate as it was
    QPointF grab_;                 // from the pointer to the corner, px
};

/// The picture of it. Corners have their index as id, holes theirs after kHoleIds.
void composeBracket(Scene& scene, const BracketScene& bracket, const SideCamera& camera);
inline constexpr int kHoleIds = 1'000'000;

}  // namespace bolthole
