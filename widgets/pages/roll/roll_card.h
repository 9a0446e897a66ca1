// One card of the roll page's curves: one quantity against roll, or against travel.
#pragma once

#include <QPainter>
#include <QPainterPath>
#include <QString>
#include <vector>

#include "widgets/curves/curve_card.h"
#include "widgets/scales/axis_ticks.h"
#include "widgets/scales/stable_range.h"

namespace bolthole {

/// Which way the imposed motion runs: roll across the card, or travel upward, as the wheel moves.
enum class ImposedAxis { rollAcross, travelUp };

/// What a card shows. A NaN value breaks the line.
struct RollCurve {
    struct Point {
        double imposed = 0;  ///< rad of roll or m of travel
        double value = 0;    ///< SI
    };
    QString title;
    QString unitText;
    double unit = 1;         ///< SI value of the shown unit
    int decimals = 2;        ///< of the value at the cursor
    double minimumSpan = 0;  ///< SI
    bool neverNegative = false;
    std::vector<Point> points;
    std::vector<Point> before;  ///< the same of the state kept as the before; empty: there is none
};

/// A stretch of the screen, px, with the imposed motion along it: `low` lies at `from`, `high` at `to`.
struct ImposedOnScreen {
    double low = 0;
    double high = 1;
    double from = 0;
    double to = 1;

    [[nodiscard]] double position(double imposed) const {
        return from + (imposed - low) / (high - low) * (to - from);
    }
    [[nodiscard]] double imposedAt(double position) const {
        return low + (position - from) / (to - from) * (high - low);
    }
};

/// A tick of the imposed motion; an empty label draws its line alone.
struct ImposedTick {
    double at = 0;
    QString label;
};

/// A card as it stands on the screen.
class RollCard {
  public:
    explicit RollCard(ImposedAxis axis) : axis_(axis), range_(1) {}

    /// Takes another curve, keeping the value's axis still where it can.
    void show(RollCurve curve);
    void showCursor(double value) { cursorValue_ = value; }
    /// Puts the card, px, and its plot: the stretch of the imposed motion and the rest.
    void place(const QRectF& card, const QRectF& plot, const CardType& type);
    void paint(QPainter& painter, const CardType& type, const std::vector<ImposedTick>& ticks,
               const ImposedOnScreen& imposed, double cursor, bool focused) const;

    /// "bind 0.02 in": for screen readers.
    [[nodiscard]] QString spokenValue() const;
    [[nodiscard]] const RollCurve& curve() const { return curve_; }
    [[nodiscard]] const QRectF& plot() const { return plot_; }

  private:
    [[nodiscard]] QPointF place(const ImposedOnScreen& imposed, double at, double value) const;
    [[nodiscard]] double valuePosition(double value) const;
    [[nodiscard]] QString valueText(double value) const;
    void paintFace(QPainter& painter, const CardType& type, bool focused) const;
    void paintImposedTicks(QPainter& painter, const CardType& type, const std::vector<ImposedTick>& ticks,
                           const ImposedOnScreen& imposed) const;
    void paintValueTicks(QPainter& painter, const CardType& type) const;
    [[nodiscard]] QPainterPath pathOf(const std::vector<RollCurve::Point>& points,
                                      const ImposedOnScreen& imposed) const;
    void paintCurves(QPainter& painter, const ImposedOnScreen& imposed) const;
    void paintCursor(QPainter& painter, const ImposedOnScreen& imposed, double cursor) const;

    ImposedAxis axis_;
    RollCurve curve_;
    StableRange range_;
    std::vector<AxisTick> ticks_;  // of the value
    double cursorValue_ = 0;
    QRectF card_;
    QRectF plot_;
};

/// The places of both kinds of plot in a card, px: room for title and value above, for the imposed motion's
/// or the value's labels below, and in cards of roll for the value's at left.
[[nodiscard]] QRectF plotIn(const QRectF& card, ImposedAxis axis, const CardType& type);

}  // namespace bolthole
