// One card of the springs' curves: a figure of a part over the vertical travel axis.
#pragma once

#include <QPainter>
#include <QString>
#include <limits>
#include <vector>

#include "geometry/units/units.h"
#include "widgets/curves/curve_card.h"
#include "widgets/scales/axis_ticks.h"
#include "widgets/scales/stable_range.h"
#include "widgets/scales/travel_steps.h"

namespace bolthole {

/// One curve of a card; the second of a card is drawn dash-dotted.
struct SpringCurve {
    QString name;                ///< in the key and for screen readers
    std::vector<double> values;  ///< SI, a row a step of the travel; NaN breaks the line
    double atCursor = std::numeric_limits<double>::quiet_NaN();
};

/// A value drawn as an upright line with a word: where a part is closed, open, free.
struct SpringLimit {
    double at = 0;  ///< SI
    QString words;
    bool isStop = true;  ///< false: nothing stops there, the part only comes loose
};

/// What a card shows.
struct SpringCardData {
    QString title;
    Quantity quantity = Quantity::length;
    double minimumSpan = 0;  ///< of the axis, SI: a flat curve is not blown up to noise
    std::vector<SpringCurve> curves;
    std::vector<SpringLimit> limits;
    QString absent;  ///< said where no row has a figure
};

/// A card as it stands on the screen.
class SpringCurveCard {
  public:
    /// Takes the curves and lets the axis follow; `afresh`: it belongs to another part or other units.
    void show(SpringCardData data, Units units, bool afresh);
    /// Puts the card and its plot, px.
    void place(const QRectF& card, const QRectF& plot, const CardType& type);
    /// `travel`: of each row, m. `past`: stretches of travel something keeps the axle out of, hatched.
    void paint(QPainter& painter, const CardType& type, const TravelOnScreen& axis,
               const std::vector<double>& travel, const std::vector<OutOfReach>& past, double cursor) const;
    /// "length 10.2 in", one a curve that has a figure at the cursor.
    [[nodiscard]] QStringList spokenValues() const;
    [[nodiscard]] const SpringCardData& data() const { return data_; }

  private:
    [[nodiscard]] double across(double value) const;
    [[nodiscard]] QString valueText(double value) const;
    [[nodiscard]] bool hasPoints() const;
    void paintHead(QPainter& painter, const CardType& type) const;
    void paintKey(QPainter& painter, const CardType& type, std::size_t curve, double top) const;
    void paintGrid(QPainter& painter, const CardType& type, const TravelOnScreen& axis) const;
    void paintPast(QPainter& painter, const CardType& type, const TravelOnScreen& axis,
                   const std::vector<OutOfReach>& past) const;
    void paintLimits(QPainter& painter, const CardType& type) const;
    void paintCurve(QPainter& painter, const TravelOnScreen& axis, const std::vector<double>& travel,
                    std::size_t curve) const;

    SpringCardData data_;
    Units units_ = Units::inch;
    StableRange range_{0.01};
    QRectF card_;
    QRectF plot_;
    std::vector<AxisTick> ticks_;
};

}  // namespace bolthole
