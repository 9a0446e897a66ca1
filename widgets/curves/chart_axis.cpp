#include "widgets/curves/chart_axis.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "widgets/kit/unit_text.h"
#include "widgets/scales/axis_ticks.h"

namespace bolthole {

namespace {

constexpr double kQuarterDegree = 0.25 * kRadiansPerDegree;
constexpr double kOnStep = 1e-6;  // steps; a cursor this near to one stands on it

/// The label nearest to an imposed value; there is one at least.
std::size_t nearestLabel(const ChartAxis& axis, double imposed) {
    const auto farness = [&](const ImposedLabel& label) { return std::abs(label.at - imposed); };
    return static_cast<std::size_t>(std::ranges::min_element(axis.labels, {}, farness) - axis.labels.begin());
}

/// From label to label.
std::optional<double> labelAfterKey(const ChartAxis& axis, int by, double imposed) {
    const std::ptrdiff_t last = std::ssize(axis.labels) - 1;
    const std::ptrdiff_t wanted = static_cast<std::ptrdiff_t>(nearestLabel(axis, imposed)) + by;
    return axis.labels[static_cast<std::size_t>(std::clamp<std::ptrdiff_t>(wanted, 0, last))].at;
}

/// How many steps a key goes, pages being ten; 0: not a key that steps.
int stepsOf(const ChartAxis& axis, int key) {
    switch (key) {
        case Qt::Key_Left:
            return axis.isUpright ? 0 : -1;
        case Qt::Key_Right:
            return axis.isUpright ? 0 : 1;
        case Qt::Key_Down:
            return axis.isUpright ? -1 : 0;
        case Qt::Key_Up:
            return axis.isUpright ? 1 : 0;
        case Qt::Key_PageDown:
            return -10;
        case Qt::Key_PageUp:
            return 10;
        default:
            return 0;
    }
}

double afterSteps(const ChartAxis& axis, int steps, double imposed) {
    if (std::abs(steps) > 1) {
        return imposed + (steps > 0 ? axis.page : -axis.page);
    }
    const double at = imposed / axis.step;
    return axis.step * (steps > 0 ? std::floor(at + kOnStep) + 1 : std::ceil(at - kOnStep) - 1);
}

std::vector<ImposedLabel> numberTicks(const ChartAxis& axis, const ImposedRange& at,
                                      const QFontMetricsF& metrics) {
    const double length = std::abs(at.to - at.from);
    const double span = (at.high - at.low) / axis.unit;
    std::vector<ImposedLabel> ticks;
    if (length < 1 || !(span > 0)) {
        return ticks;
    }
    // The finest round step whose labels keep clear of each other, the last one with its unit.
    const double ofUnit =
        axis.unitText.isEmpty() ? 0 : metrics.horizontalAdvance(QLatin1Char(' ') + axis.unitText);
    const auto isTooNarrow = [&](double step) {
        const double widest = std::max(metrics.horizontalAdvance(tickText(at.low / axis.unit, step)),
                                       metrics.horizontalAdvance(tickText(at.high / axis.unit, step)));
        return step * length / span < (axis.isUpright ? 2.4 * metrics.height() : widest + ofUnit + 12);
    };
    double step = niceStep(span * kTickGap / length);
    while (isTooNarrow(step)) {
        step = niceStep(1.5 * step);
    }
    const double last = std::floor(at.high / axis.unit / step + kOnStep);
    for (double index = std::ceil(at.low / axis.unit / step - kOnStep); index <= last; ++index) {
        ticks.push_back({index * step * axis.unit, tickText(index * step, step)});
    }
    if (!ticks.empty() && !axis.unitText.isEmpty()) {
        const bool isMark = axis.unitText.size() == 1 && !axis.unitText.front().isLetter();
        ticks.back().text += (isMark ? QString() : QStringLiteral(" ")) + axis.unitText;
    }
    return ticks;
}

}  // namespace

double ChartAxis::clamp(double imposed) const {
    return isPoint ? (low + high) / 2 : std::clamp(imposed, low, high);
}

QString ChartAxis::words(double imposed) const {
    if (kind == Kind::travel) {
        return travelInWords(imposed, units);
    }
    if (kind == Kind::labels) {
        return labels.empty() ? QString() : labels[nearestLabel(*this, imposed)].text;
    }
    const bool isMark = unitText.size() == 1 && !unitText.front().isLetter();
    return (name.isEmpty() ? QString() : name + QLatin1Char(' ')) +
           tickText(imposed / unit, std::pow(10.0, -decimals)) +
           (isMark || unitText.isEmpty() ? unitText : QLatin1Char(' ') + unitText);
}

std::optional<double> ChartAxis::afterKey(int key, double imposed) const {
    if (kind == Kind::travel) {
        return travelAfterKey(key, imposed, span());
    }
    if (kind == Kind::labels && labels.empty()) {
        return std::nullopt;
    }
    switch (key) {
        case Qt::Key_Home:
            return kind == Kind::labels ? labels.front().at : low;
        case Qt::Key_End:
            return kind == Kind::labels ? labels.back().at : high;
        case Qt::Key_R:
        case Qt::Key_0:
            return clamp(home);
        default:
            break;
    }
    const int steps = stepsOf(*this, key);
    if (steps == 0) {
        return std::nullopt;
    }
    return kind == Kind::labels ? labelAfterKey(*this, steps, imposed)
                                : clamp(afterSteps(*this, steps, imposed));
}

ChartAxis travelAxis(const TravelSpan& span, Units units) {
    ChartAxis axis;
    axis.kind = ChartAxis::Kind::travel;
    axis.isUpright = true;
    // A travel of no extent still needs an axis.
    const double least = span.bump > span.droop ? 0.0 : kMetresPerMillimetre;
    axis.isPoint = least > 0;
    axis.low = span.droop - least;
    axis.high = span.bump + least;
    axis.rows = span.rows;
    axis.units = units;
    axis.unit = shownUnit(Quantity::length, units);
    axis.unitText = unitText(Quantity::length, units);
    return axis;
}

ChartAxis rollAxis(double most) {
    ChartAxis axis;
    axis.low = -most;
    axis.high = most;
    axis.unit = kRadiansPerDegree;
    axis.unitText = QStringLiteral("°");
    axis.snap = 1;
    axis.step = kQuarterDegree;
    axis.page = 4 * kQuarterDegree;
    return axis;
}

ChartAxis timeAxis(double from, double to) {
    ChartAxis axis;
    axis.low = from;
    axis.high = std::max(to, from + 1e-3);
    axis.unitText = QStringLiteral("s");
    axis.home = from;
    return axis;
}

ChartAxis labelAxis(std::vector<ImposedLabel> labels) {
    ChartAxis axis;
    axis.kind = ChartAxis::Kind::labels;
    axis.labels = std::move(labels);
    axis.low = axis.labels.empty() ? 0 : axis.labels.front().at - 0.5;
    axis.high = axis.labels.empty() ? 1 : axis.labels.back().at + 0.5;
    axis.home = axis.labels.empty() ? 0 : axis.labels.back().at;
    return axis;
}

std::vector<ImposedLabel> imposedTicks(const ChartAxis& axis, const ImposedRange& at,
                                       const QFontMetricsF& metrics) {
    if (axis.kind == ChartAxis::Kind::number) {
        return numberTicks(axis, at, metrics);
    }
    std::vector<ImposedLabel> ticks;
    if (axis.kind == ChartAxis::Kind::travel) {
        const TravelOnScreen travel{
            {at.low, at.high, axis.rows}, std::min(at.from, at.to), std::max(at.from, at.to)};
        for (const TravelTick& tick : travelTicks(travel, axis.units, travelTickSpacing(metrics.height()))) {
            ticks.push_back({tick.travel, tick.label});
        }
        return ticks;
    }
    double free = -std::numeric_limits<double>::infinity();
    for (const ImposedLabel& label : axis.labels) {
        if (label.at < at.low || label.at > at.high) {
            continue;
        }
        const double length = axis.isUpright ? metrics.height() : metrics.horizontalAdvance(label.text);
        const double middle = std::abs(at.position(label.at) - at.from);
        const bool fits = middle - length / 2 >= free;
        ticks.push_back({label.at, fits ? label.text : QString()});
        free = fits ? middle + length / 2 + kTickGap : free;
    }
    return ticks;
}

}  // namespace bolthole
