// One card of the driveline's curves: joint angles, equivalent angle, speed swing or plunge over travel.
#pragma once

#include <QColor>
#include <QPainter>
#include <QStringList>
#include <functional>
#include <vector>

#include "widgets/curves/curve_card.h"
#include "widgets/pages/driveline/driveline_reading.h"
#include "widgets/scales/axis_ticks.h"
#include "widgets/scales/stable_range.h"
#include "widgets/scales/travel_steps.h"

namespace bolthole {

/// How a curve's marker looks, so that curves differ by more than color.
enum class CurveMark { circle, diamond, square };

/// One curve, drawn solid coasting and dashed wound up.
struct DrivelineCurve {
    QString name;  ///< in the key and for screen readers
    CurveMark mark = CurveMark::circle;
    std::function<double(const DrivelineFigures&)> value;  ///< SI
};

/// A bound drawn as an upright line, where it is not so far off that the curves would shrink to nothing.
struct DrivelineBound {
    double at = 0;  ///< SI
    QString words;
};

/// What a card shows.
struct DrivelineCardSpec {
    QString title;
    QString unitText;
    double unit = 1;         ///< SI value of the shown unit
    int decimals = 2;        ///< of the values at the cursor
    double minimumSpan = 0;  ///< SI
    bool neverNegative = true;
    double share = 1;  ///< of the width
    std::vector<DrivelineCurve> curves;
    std::vector<DrivelineBound> bounds;
};

/// The four cards for a reading.
[[nodiscard]] std::vector<DrivelineCardSpec> drivelineCardSpecs(const DrivelineReading& reading, Units units);

/// A card as it stands on the screen.
class DrivelineCurveCard {
  public:
    explicit DrivelineCurveCard(DrivelineCardSpec spec);

    /// Takes another spec of the same card, keeping the axis still where it can.
    void setSpec(DrivelineCardSpec spec);
    /// Takes the curves' points and lets the axis follow. `reading` is read in place until the next call.
    void showReading(const DrivelineReading& reading);
    /// Puts the card and its plot, px.
    void place(const QRectF& card, const QRectF& plot, const CardType& type);

    void paintFace(QPainter& painter, const CardType& type, const std::vector<TravelTick>& travelTicks,
                   const TravelOnScreen& travel, const std::vector<OutOfReach>& outOfReach,
                   bool focused) const;
    void paintCurves(QPainter& painter, const CardType& type, const TravelOnScreen& travel) const;
    void paintValues(QPainter& painter, const CardType& type, const TravelOnScreen& travel,
                     const DrivelineRow& cursor) const;

    [[nodiscard]] const DrivelineCardSpec& spec() const { return spec_; }
    /// "front joint 1.40°", one a curve; wound up after it.
    [[nodiscard]] QStringList spokenValues(const DrivelineRow& cursor) const;
    /// Whether a bound has its line on the axis.
    [[nodiscard]] bool showsBound(const DrivelineBound& bound) const;

  private:
    [[nodiscard]] double across(double value) const;
    [[nodiscard]] QString valueText(double value) const;
    void paintTitle(QPainter& painter, const CardType& type) const;
    void paintGrid(QPainter& painter, const std::vector<TravelTick>& travelTicks,
                   const TravelOnScreen& travel) const;
    [[nodiscard]] int pointsUnder(const QRectF& place, const TravelOnScreen& travel) const;
    [[nodiscard]] QRectF boundPlace(double x, QSizeF size, const TravelOnScreen& travel) const;
    void paintBounds(QPainter& painter, const CardType& type, const TravelOnScreen& travel) const;
    void paintKey(QPainter& painter, const CardType& type, std::size_t curve, const DrivelineRow& cursor,
                  double top) const;
    void paintCurve(QPainter& painter, const TravelOnScreen& travel, std::size_t curve, bool woundUp) const;

    DrivelineCardSpec spec_;
    const DrivelineReading* reading_ = nullptr;
    StableRange range_;
    std::vector<AxisTick> ticks_;
    QRectF card_;
    QRectF plot_;
};

}  // namespace bolthole
