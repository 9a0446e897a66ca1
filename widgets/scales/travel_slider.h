// The vertical travel slider: where the axle stands, as the wheel moves.
#pragma once

#include <QRect>
#include <QWidget>

#include "widgets/scales/travel_steps.h"

namespace bolthole {

/// A vertical track from full bump (top) to full droop (bottom) with the cursor as its handle. Stands left of
/// the curves and lines up with their plots; see alignTrack().
class TravelSlider : public QWidget {
    Q_OBJECT
  public:
    explicit TravelSlider(QWidget* parent = nullptr);

    /// Takes the travel range, the stretches out of reach, the unit and the cursor.
    void showTrace(const BenchState& state);
    /// Takes the cursor alone.
    void showCursor(const BenchState& state);

    /// The track, px in this widget: x of its center, top (full bump) and bottom (full droop).
    [[nodiscard]] QRect track() const;
    /// What a screen reader says: "1.2 in bump", "out of reach" added where it is.
    [[nodiscard]] QString valueText() const;
    [[nodiscard]] double travel() const { return travel_; }
    [[nodiscard]] const TravelSpan& span() const { return span_; }
    /// Asks for another travel, as a drag does; `travel` in m is clamped to the range.
    void ask(double travel);

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

  public slots:
    /// Lines the track up with the curves' plots: top and bottom of `plots`, in a widget as tall as this one.
    void alignTrack(const QRect& plots);

  signals:
    /// The person moved the handle: travel, m, within the range.
    void cursorMoved(double travel);

  protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void changeEvent(QEvent* event) override;

  private:
    [[nodiscard]] TravelOnScreen onScreen() const;
    void paintTrack(QPainter& painter) const;
    void paintTicks(QPainter& painter) const;
    void paintEndWords(QPainter& painter) const;
    void paintHandle(QPainter& painter) const;
    void announce();

    TravelSpan span_;
    std::vector<OutOfReach> outOfReach_;
    Units units_ = Units::inch;
    double travel_ = 0;
    bool reachable_ = true;
    QRect plots_;  // empty: the track keeps its own margins
    int wheelRest_ = 0;
};

}  // namespace bolthole
