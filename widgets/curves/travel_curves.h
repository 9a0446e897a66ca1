// The travel curves: five quantities side by side over one vertical travel axis, bump up.
#pragma once

#include <QRect>
#include <QWidget>
#include <memory>
#include <vector>

#include "widgets/scales/travel_steps.h"

class QCustomPlot;
class QCPAxisRect;

namespace bolthole {

class CurveCard;
struct CardType;

/// Cards for IC distance, IC height, anti-squat, pinion and joints, with a cursor through all of them. Press
/// and drag anywhere to move the cursor, or use the keys of travelAfterKey(); double click for ride.
class TravelCurves : public QWidget {
    Q_OBJECT
  public:
    explicit TravelCurves(QWidget* parent = nullptr);
    ~TravelCurves() override;

    /// Takes trace, units and cursor, and redraws everything.
    void showTrace(const BenchState& state);
    /// Takes the cursor alone; the curves under it are not drawn anew.
    void showCursor(const BenchState& state);

    /// The plots in this widget, px: full bump at its top, full droop at top() + height(). Depends on the
    /// size of the widget and the fonts only.
    [[nodiscard]] QRect plotArea() const;

    /// A card, from the left; for tests.
    [[nodiscard]] const CurveCard& card(std::size_t index) const { return *cards_[index]; }

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

  signals:
    /// The person moved the cursor: travel, m, within the range.
    void cursorMoved(double travel);
    /// plotArea() changed.
    void plotAreaChanged(const QRect& plots);

  protected:
    void resizeEvent(QResizeEvent* event) override;
    void showEvent(QShowEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

  private:
    void buildPlot();
    void dress();
    void layOut();
    void placeCards();
    void takeTravelTicks();
    void paintFaces(QPainter& painter);
    void paintBands(QPainter& painter) const;
    void paintCursor(QPainter& painter) const;
    void paintMessage(QPainter& painter) const;
    void takeCursor(const BenchState& state);
    void describeInWords();
    void setRing(bool shown);
    void ask(double travel);
    [[nodiscard]] TravelOnScreen onScreen() const;

    QCustomPlot* plot_;
    std::vector<std::unique_ptr<CurveCard>> cards_;
    std::unique_ptr<CardType> type_;
    std::vector<TravelTick> travelTicks_;
    TravelSpan span_;
    Units units_ = Units::inch;
    double travel_ = 0;
    bool reachable_ = false;
    bool hasCurve_ = false;
    bool current_ = false;
    QString problem_;
    bool ring_ = false;
    QRect announced_;
};

}  // namespace bolthole
