// The driveline's curves: four quantities side by side over one vertical travel axis, bump up.
#pragma once

#include <QWidget>
#include <memory>
#include <vector>

#include "widgets/pages/driveline/driveline_cards.h"

namespace bolthole {

/// Joint angles, equivalent angle, speed swing and plunge, coasting solid and wound up dashed, with a cursor
/// through all of them. Press and drag anywhere to move it, or use the keys of travelAfterKey(); double click
/// for ride.
class DrivelineCurves : public QWidget {
    Q_OBJECT
  public:
    explicit DrivelineCurves(QWidget* parent = nullptr);

    /// Takes the reading, which is read in place until the next call, with range and units of `state`.
    void showReading(const DrivelineReading& reading, const BenchState& state);
    /// Takes the cursor alone.
    void showCursor(const BenchState& state);

    /// The plots in this widget, px: full bump at its top, full droop at top() + height().
    [[nodiscard]] QRect plotArea() const;
    [[nodiscard]] const std::vector<DrivelineCurveCard>& cards() const { return cards_; }

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

  signals:
    void cursorMoved(double travel);           ///< the person moved the cursor: travel, m
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
    void ask(double travel);
    void setRing(bool shown);
    void describeInWords();
    [[nodiscard]] int header() const;
    [[nodiscard]] TravelOnScreen onScreen() const;

    std::unique_ptr<CardType> type_;
    std::vector<DrivelineCurveCard> cards_;
    std::vector<TravelTick> travelTicks_;
    std::vector<OutOfReach> outOfReach_;
    const DrivelineReading* reading_ = nullptr;
    TravelSpan span_;
    Units units_ = Units::inch;
    DrivelineRow cursor_;
    double travel_ = 0;
    bool ring_ = false;
};

}  // namespace bolthole
