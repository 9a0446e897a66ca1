// The curves of the roll page: cards side by side over one axis of roll, or of travel, with a cursor.
#pragma once

#include <QWidget>
#include <memory>
#include <optional>
#include <vector>

#include "widgets/pages/roll/roll_card.h"
#include "widgets/scales/travel_steps.h"

namespace bolthole {

/// Cards with one cursor through all of them. Press and drag to move it, or use keys: against roll Left and
/// Right by a quarter degree, Page Up and Page Down by one, Home and End to the ends, 0 to none; against
/// travel those of travelAfterKey(). Double click goes to ride.
class RollCurves : public QWidget {
    Q_OBJECT
  public:
    /// `name`: for screen readers. `cards`: how many.
    RollCurves(ImposedAxis axis, const QString& name, int cards, QWidget* parent = nullptr);

    /// Takes the curves, as many as there are cards, and the range: `span` counts in cards of travel, `most`
    /// (rad) in cards of roll.
    void showCurves(std::vector<RollCurve> curves, const TravelSpan& span, double most, Units units);
    /// Takes the cursor (m of travel, rad of roll), its words, and a value a card, NaN where out of reach.
    void showCursor(double imposed, const QString& words, const std::vector<double>& values);

    /// The plots in this widget, px, for a slider beside them.
    [[nodiscard]] QRect plotArea() const;
    [[nodiscard]] const std::vector<RollCard>& cards() const { return cards_; }

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

  signals:
    void cursorMoved(double imposed);          ///< the person moved the cursor
    void plotAreaChanged(const QRect& plots);  ///< plotArea() changed

  protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

  private:
    void layOut();
    void ask(double imposed);
    void askAt(QPointF position);
    void setRing(bool shown);
    [[nodiscard]] bool isRoll() const { return axis_ == ImposedAxis::rollAcross; }
    [[nodiscard]] ImposedOnScreen onScreen(const RollCard& card) const;
    [[nodiscard]] std::vector<ImposedTick> ticks() const;
    [[nodiscard]] std::optional<double> afterKey(int key) const;

    ImposedAxis axis_;
    std::unique_ptr<CardType> type_;
    std::vector<RollCard> cards_;
    std::vector<QRectF> places_;
    TravelSpan span_;
    double most_ = 1;
    Units units_ = Units::inch;
    double cursor_ = 0;
    bool ring_ = false;
};

}  // namespace bolthole
