#include "widgets/scales/travel_steps.h"

#include <algorithm>
#include <cmath>

#include "widgets/kit/unit_text.h"
#include "widgets/scales/axis_ticks.h"

namespace bolthole {

namespace {
constexpr double kRideSnap = 3.0;  // px
constexpr double kSameRow = 1e-6;  // rows; a cursor this near to a row stands on it
}  // namespace

double TravelSpan::clamp(double travel) const {
    return std::clamp(travel, droop, bump);
}

double TravelSpan::rowStep() const {
    return (bump - droop) / std::max(rows - 1, 1);
}

TravelSpan travelSpan(const BenchState& state) {
    const std::vector<Station>& stations = state.trace.stations;
    const TravelRange& range = stations.empty() ? state.car.travel : state.solvedCar.travel;
    return {-range.droop, range.bump, stations.empty() ? range.steps : static_cast<int>(stations.size())};
}

double TravelOnScreen::position(double travel) const {
    const double height = span.bump - span.droop;
    if (height <= 0) {
        return (top + bottom) / 2;
    }
    return top + (span.bump - travel) / height * (bottom - top);
}

double TravelOnScreen::travelAt(double y) const {
    if (bottom <= top) {
        return span.clamp(0.0);
    }
    if (std::abs(y - position(0.0)) <= kRideSnap) {
        return span.clamp(0.0);
    }
    return span.clamp(span.bump - (y - top) / (bottom - top) * (span.bump - span.droop));
}

std::optional<double> travelAfterKey(int key, double travel, const TravelSpan& span) {
    const double step = span.rowStep();
    const double row = step > 0 ? (travel - span.droop) / step : 0.0;
    const auto atRow = [&](double index) {
        const double at = span.clamp(span.droop + index * step);
        return std::abs(at) < kSameRow * step ? 0.0 : at;
    };
    switch (key) {
        case Qt::Key_Up:
            return atRow(std::floor(row + kSameRow) + 1);
        case Qt::Key_Down:
            return atRow(std::ceil(row - kSameRow) - 1);
        case Qt::Key_PageUp:
            return atRow(std::floor(row + kSameRow) + 10);
        case Qt::Key_PageDown:
            return atRow(std::ceil(row - kSameRow) - 10);
        case Qt::Key_Home:
            return span.bump;
        case Qt::Key_End:
            return span.droop;
        case Qt::Key_R:
            return span.clamp(0.0);
        default:
            return std::nullopt;
    }
}

std::vector<TravelTick> travelTicks(const TravelOnScreen& axis, Units units, double spacing) {
    const double unit = shownUnit(Quantity::length, units);
    const double shownSpan = (axis.span.bump - axis.span.droop) / unit;
    std::vector<TravelTick> ticks;
    if (shownSpan <= 0 || axis.bottom <= axis.top) {
        ticks.push_back({0.0, QStringLiteral("ride")});
        return ticks;
    }
    const double least = spacing * shownSpan / (axis.bottom - axis.top);
    // Whole inches or millimetres read calmer than halves as long as they are not far apart.
    const double step = least > 0.2 && least < 1.0 ? 1.0 : niceStep(least);
    const double last = std::floor(axis.span.bump / unit / step + 1e-6);
    for (double index = std::ceil(axis.span.droop / unit / step - 1e-6); index <= last; index += 1.0) {
        const double shown = index * step;
        const bool whole = std::abs(shown - std::round(shown)) < 1e-6;
        const QString text = tickText(shown, whole ? 1.0 : step);
        const QString label = index == 0  ? QStringLiteral("ride")
                              : index > 0 ? QLatin1Char('+') + text
                                          : text;
        ticks.push_back({index * step * unit, label});
    }
    return ticks;
}

std::vector<OutOfReach> outOfReach(const Trace& trace) {
    std::vector<OutOfReach> stretches;
    const std::vector<Station>& rows = trace.stations;
    for (std::size_t i = 0; i < rows.size();) {
        std::size_t end = i;
        while (end < rows.size() && !rows[end].usable) {
            ++end;
        }
        if (end > i) {
            const std::size_t first = i > 0 ? i - 1 : 0;
            const std::size_t last = std::min(end, rows.size() - 1);
            stretches.push_back({rows[first][Figure::travel], rows[last][Figure::travel]});
        }
        i = std::max(end, i + 1);
    }
    return stretches;
}

QString travelInWords(double travel, Units units) {
    const std::string figure = figureText(std::abs(travel), Quantity::length, units);
    if (figure == figureText(0.0, Quantity::length, units)) {
        return QStringLiteral("ride");
    }
    return QStringLiteral("%1 %2 %3")
        .arg(QString::fromStdString(figure), unitText(Quantity::length, units),
             travel > 0 ? QStringLiteral("bump") : QStringLiteral("droop"));
}

}  // namespace bolthole
