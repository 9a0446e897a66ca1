#include "widgets/curves/chart_data.h"

#include <algorithm>
#include <cmath>

#include "widgets/kit/unit_text.h"
#include "widgets/scales/axis_ticks.h"

namespace bolthole {

void Extent::take(double value) {
    if (std::isfinite(value)) {
        least = std::min(least, value);
        most = std::max(most, value);
    }
}

ChartRule referenceRule(double at) {
    return {.at = at};
}

ChartRule limitRule(double at, const QString& words) {
    return {.at = at,
            .words = words,
            .color = &Theme::problem,
            .line = ChartLine::dashed,
            .width = 1.5,
            .setsRange = true};
}

std::vector<ChartCard> withStartingMark(std::vector<ChartCard> cards, bool restsOnStarts) {
    for (ChartCard& card : cards) {
        card.restsOnStarts = restsOnStarts;
    }
    return cards;
}

Extent extentOf(const ChartCard& card) {
    if (card.extent) {
        return *card.extent;
    }
    Extent extent;
    const auto take = [&](double value) {
        if (std::isfinite(value)) {
            extent.take(std::clamp(value, card.least, card.most));
        }
    };
    for (const ChartSeries& series : card.series) {
        for (const ChartPoint& point : series.points) {
            if (series.setsRange) {
                take(point.value);
                take(point.low);
                take(point.high);
            }
        }
    }
    if (extent.holdsAny()) {
        for (const ChartRule& rule : card.rules) {
            if (rule.setsRange) {
                take(rule.at);
            }
        }
    }
    return extent;
}

bool hasValues(const ChartCard& card) {
    return std::ranges::any_of(card.series, [](const ChartSeries& series) {
        return !series.isGhost && std::ranges::any_of(series.points, [](const ChartPoint& point) {
            return std::isfinite(point.value);
        });
    });
}

double valueAt(const ChartSeries& series, double imposed) {
    const std::vector<ChartPoint>& points = series.points;
    for (std::size_t i = 0; i < points.size(); ++i) {
        if (points[i].imposed == imposed) {
            return points[i].value;
        }
        if (i > 0 && (points[i - 1].imposed < imposed) == (imposed < points[i].imposed)) {
            const double share =
                (imposed - points[i - 1].imposed) / (points[i].imposed - points[i - 1].imposed);
            return points[i - 1].value + share * (points[i].value - points[i - 1].value);
        }
    }
    return kNaN;
}

QString valueText(const ChartCard& card, double value) {
    if (card.scale == ChartScale::inverseDistance) {
        if (value == 0) {
            return QString(kInfinity);
        }
        value = 1 / value;
    }
    return std::isfinite(value) ? tickText(value / card.unit, std::pow(10.0, -card.decimals))
                                : QString(kDash);
}

ChartValue chartValue(const ChartCard& card, const ChartSeries& series, double value) {
    ChartValue there{.value = value, .text = valueText(card, value)};
    if (std::isfinite(value)) {
        there.spoken = series.name + QLatin1Char(' ') + there.text;
        there.spoken += card.unitText.isEmpty() ? QString() : QLatin1Char(' ') + card.unitText;
    }
    return there;
}

ChartValue valueWithWords(const ChartCard& card, const ChartSeries& series, double imposed) {
    return chartValue(card, series, valueAt(series, imposed));
}

}  // namespace bolthole
