// Length, motion ratio and wheel rate of a part side by side over one vertical travel axis, bump up.
#pragma once

#include <QRectF>
#include <QWidget>
#include <array>
#include <memory>
#include <vector>

#include "widgets/pages/springs/spring_curve_card.h"

namespace bolthole {

/// What the three cards show, and where the cursor stands.
struct SpringCurveData {
    TravelSpan span;
    std::vector<double> travel;  ///< m, of each row
    std::array<SpringCardData, 3> cards;
    std::vector<OutOfReach> past;  ///< travel entered that a part or the links do not allow
    double cursor = 0;             ///< m
    Units units = Units::inch;
    int part = -1;  ///< which part it belongs to: the axes keep still while that stays
};

/// Three cards with a cursor through all of them. Press and drag to move it, or use the keys of
/// travelAfterKey(); double click for ride.
class SpringCurves : public QWidget {
    Q_OBJECT
  public:
    explicit SpringCurves(QWidget* parent = nullptr);

    void show(SpringCurveData wanted);
    [[nodiscard]] const SpringCurveData& shown() const { return data_; }
    [[nodiscard]] QSize sizeHint() const override { return {560, 340}; }
    /// The plots, px: full bump at the top.
    [[nodiscard]] QRectF plotArea() const;
    using QWidget::show;

  signals:
    /// The person moved the cursor: travel, m, within the range.
    void cursorMoved(double travel);

  protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    void ask(double travel);
    void describeInWords();
    void placeCards();
    void paintTravelLabels(QPainter& painter) const;
    [[nodiscard]] double gutter() const;
    [[nodiscard]] int header() const;
    [[nodiscard]] TravelOnScreen onScreen() const;

    std::unique_ptr<CardType> type_;
    std::array<SpringCurveCard, 3> cards_;
    SpringCurveData data_;
};

}  // namespace bolthole
