// The axes of the hole board's map: instant-center distance across, anti-squat up.
//
// Distance runs in 1/distance, near at left. Past infinity it goes on behind the axle without a break.
#pragma once

#include <QFontMetricsF>
#include <QPointF>
#include <QRectF>
#include <span>
#include <vector>

#include "widgets/board/combination_list.h"
#include "widgets/scales/axis_ticks.h"
#include "widgets/scales/stable_range.h"

namespace bolthole {

/// The range the bulk of some values lies in.
struct Bulk {
    double least = 0;
    double most = 0;
};

/// Where the bulk of `values` lies: all but those farther outside the quartiles than three times their
/// distance, or than three times `floor` where the quartiles lie closer than that; of a dozen values or fewer
/// eight times, for each of them is wanted in sight. The fence of three is Tukey's for what is "far out"
/// (J. W. Tukey, Exploratory Data Analysis, 1977; from memory, no page), that of eight a judgement. Reorders
/// `values`, which must not be empty.
[[nodiscard]] Bulk bulkOf(std::vector<double>& values, double floor);

/// Ranges of the two axes and where they lie on the screen.
class CombinationMapScale {
  public:
    /// Follows what is to be shown without jittering: the bulk of the combinations that have a place, and the
    /// target window where that does not squash them.
    void follow(const std::vector<CombinationList::Item>& items, const std::optional<TargetWindow>& target);
    /// The next follow() starts afresh.
    void forget();
    /// Where the axes lie, px.
    void place(const QRectF& plot) { plot_ = plot; }

    [[nodiscard]] const QRectF& plot() const { return plot_; }
    [[nodiscard]] double x(double inverse) const;
    [[nodiscard]] double y(double antiSquat) const;
    [[nodiscard]] QPointF at(double inverse, double antiSquat) const { return {x(inverse), y(antiSquat)}; }
    [[nodiscard]] double inverseAt(double x) const;
    [[nodiscard]] double antiSquatAt(double y) const;
    /// 1/distance at the right and left end, 1/m.
    [[nodiscard]] double leastInverse() const { return inverse_.low(); }
    [[nodiscard]] double mostInverse() const { return inverse_.high(); }
    [[nodiscard]] double leastAntiSquat() const { return antiSquat_.low(); }
    [[nodiscard]] double mostAntiSquat() const { return antiSquat_.high(); }
    [[nodiscard]] bool reachesInfinity() const { return leastInverse() <= 0 && mostInverse() >= 0; }
    /// Whether both ranges hold the place of a combination.
    [[nodiscard]] bool holds(const CombinationList::Item& item) const;
    /// The window on the screen, as far as it lies in the plot; empty if it misses it.
    [[nodiscard]] QRectF boxOf(const TargetWindow& target) const;

    /// Round distances in multiples of `unit` (m), labelled; infinity first among equals. Left to right.
    [[nodiscard]] std::vector<AxisTick> distanceTicks(double unit, const QFontMetricsF& metrics) const;
    /// Round percentages, from the bottom up; `position` is a y.
    [[nodiscard]] std::vector<AxisTick> antiSquatTicks(const QFontMetricsF& metrics) const;

  private:
    StableRange inverse_{0.12};  // 1/m: 7 in about an instant center 60 in ahead
    StableRange antiSquat_{20.0};
    QRectF plot_{0, 0, 1, 1};
};

}  // namespace bolthole
