#include "widgets/scales/axis_ticks.h"

#include <algorithm>
#include <cmath>

namespace bolthole {

namespace {

std::vector<AxisTick> multiples(const AxisOnScreen& axis, double unit, double step,
                                const QFontMetricsF& metrics) {
    std::vector<AxisTick> ticks;
    // A tick that misses the axis's end only by rounding still counts.
    const double slack = 1e-9;
    const double first = std::ceil(axis.low / unit / step - slack);
    const double last = std::floor(axis.high / unit / step + slack);
    for (double index = first; index <= last; index += 1.0) {
        ticks.push_back(placeTick(axis, index * step * unit, tickText(index * step, step), metrics));
    }
    return ticks;
}

/// The outermost two ticks of the coarsest step where they fit, or else one tick.
std::vector<AxisTick> endTicks(const AxisOnScreen& axis, double unit, const QFontMetricsF& metrics) {
    const double span = (axis.high - axis.low) / unit;
    for (const double parts : {4.0, 8.0, 16.0, 32.0}) {
        std::vector<AxisTick> ticks = multiples(axis, unit, niceStep(span / parts), metrics);
        if (ticks.size() > 1 && ticksFit({ticks.front(), ticks.back()})) {
            return {ticks.front(), ticks.back()};
        }
    }
    const std::vector<AxisTick> ticks = multiples(axis, unit, niceStep(span / 4.0), metrics);
    return {ticks[ticks.size() / 2]};
}

}  // namespace

double niceStep(double least) {
    const double decade = std::pow(10.0, std::floor(std::log10(least)));
    for (const double mantissa : {1.0, 2.0, 5.0}) {
        if (mantissa * decade >= least * (1.0 - 1e-9)) {
            return mantissa * decade;
        }
    }
    return 10.0 * decade;
}

QString tickText(double value, double step) {
    const int decimals = std::clamp(static_cast<int>(std::ceil(-std::log10(step) - 1e-9)), 0, 4);
    const double rounded = std::abs(value) < 0.5 * std::pow(10.0, -decimals) ? 0.0 : value;
    QString text = QString::number(rounded, 'f', decimals);
    text.replace(QLatin1Char('-'), QChar(0x2212));
    return text;
}

AxisTick placeTick(const AxisOnScreen& axis, double at, const QString& label, const QFontMetricsF& metrics) {
    const double width = metrics.horizontalAdvance(label);
    const double position = axis.position(at);
    double left = std::min(position - width / 2, axis.labelRight - width);
    left = std::max(left, axis.labelLeft);
    return {at, position, left, left + width, label};
}

bool ticksFit(const std::vector<AxisTick>& ticks) {
    for (std::size_t i = 1; i < ticks.size(); ++i) {
        if (ticks[i].labelLeft < ticks[i - 1].labelRight + kTickGap || ticks[i].label == ticks[i - 1].label) {
            return false;
        }
    }
    return true;
}

std::vector<AxisTick> linearTicks(const AxisOnScreen& axis, double unit, const QFontMetricsF& metrics) {
    const double span = (axis.high - axis.low) / unit;
    for (double step = niceStep(span / (kMostTicks + 1)); step <= span * 1.001; step = niceStep(step * 1.5)) {
        std::vector<AxisTick> ticks = multiples(axis, unit, step, metrics);
        if (ticks.size() > 1 && ticks.size() <= kMostTicks && ticksFit(ticks)) {
            return ticks;
        }
    }
    return endTicks(axis, unit, metrics);
}

}  // namespace bolthole
