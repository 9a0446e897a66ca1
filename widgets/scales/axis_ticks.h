// Tick labels of a short axis: few, round, never touching.
#pragma once

#include <QFontMetricsF>
#include <QString>
#include <vector>

namespace bolthole {

/// A horizontal axis on the screen. `low` and `high` in the axis's own unit lie at `left` and `right` px;
/// labels are kept between `labelLeft` and `labelRight` px.
struct AxisOnScreen {
    double low = 0;
    double high = 1;
    double left = 0;
    double right = 1;
    double labelLeft = 0;
    double labelRight = 1;

    /// Where `value` lies, px.
    [[nodiscard]] double position(double value) const {
        return left + (value - low) / (high - low) * (right - left);
    }
};

/// One tick with its label.
struct AxisTick {
    double at = 0;         ///< in the axis's own unit
    double position = 0;   ///< px
    double labelLeft = 0;  ///< px; the label is centered on the tick where there is room
    double labelRight = 0;
    QString label;
};

/// Most labels an axis gets, and the px kept free between two of them.
inline constexpr int kMostTicks = 4;
inline constexpr double kTickGap = 5.0;

/// The smallest of 1, 2, 5 times a power of ten that is not below `least` (> 0).
[[nodiscard]] double niceStep(double least);

/// A number for reading, with a true minus sign (U+2212) and as many decimals as `step` has.
[[nodiscard]] QString tickText(double value, double step);

/// The tick at `at` with its label pushed inside the axis's label bounds.
[[nodiscard]] AxisTick placeTick(const AxisOnScreen& axis, double at, const QString& label,
                                 const QFontMetricsF& metrics);

/// Whether the labels, given from left to right, keep their distance.
[[nodiscard]] bool ticksFit(const std::vector<AxisTick>& ticks);

/// Ticks at round multiples of `unit` (the shown unit in the axis's own), from left to right, at most
/// kMostTicks. Empty only where not even one label has room.
[[nodiscard]] std::vector<AxisTick> linearTicks(const AxisOnScreen& axis, double unit,
                                                const QFontMetricsF& metrics);

}  // namespace bolthole
