#include "widgets/board/combination_map_scale.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "widgets/scales/distance_scale.h"

namespace bolthole {

namespace {

constexpr double kFence = 3.0;
constexpr double kFenceOfFew = 8.0;
constexpr std::size_t kFew = 12;
constexpr double kInverseFloor = 0.06;   // 1/m
constexpr double kAntiSquatFloor = 5.0;  // percent
constexpr double kMostStretch = 3.0;     // by the target window, of the combinations' own extent
constexpr double kTickRoom = 14.0;       // px between the labels of two distances
constexpr double kLabelOverhang = 8.0;   // px a label may stand out past the right end
constexpr double kRowRoom = 1.9;         // text heights between two percentages

double quantile(std::vector<double>& values, double share) {
    const auto place = static_cast<std::ptrdiff_t>(share * static_cast<double>(values.size() - 1));
    std::nth_element(values.begin(), values.begin() + place, values.end());
    return values[static_cast<std::size_t>(place)];
}

// The combinations' extent, stretched to the target where that leaves them room enough.
Bulk stretched(Bulk combinations, double least, double most, double minimum) {
    const double span = std::max(combinations.most - combinations.least, minimum);
    const Bulk both{std::min(combinations.least, least), std::max(combinations.most, most)};
    return both.most - both.least <= kMostStretch * span ? both : combinations;
}

// Digits that make round distances, roundest first.
constexpr std::array<std::array<int, 6>, 5> kRoundDigits{{{10, 20, 50, 0, 0, 0},
                                                          {30, 40, 15, 0, 0, 0},
                                                          {25, 60, 80, 0, 0, 0},
                                                          {35, 45, 70, 90, 0, 0},
                                                          {12, 14, 16, 18, 55, 65}}};

}  // namespace

Bulk bulkOf(std::vector<double>& values, double floor) {
    const double lower = quantile(values, 0.25);
    const double upper = quantile(values, 0.75);
    const double fence = values.size() <= kFew ? kFenceOfFew : kFence;
    const double reach = fence * std::max(upper - lower, floor);
    Bulk bulk{std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity()};
    for (const double value : values) {
        if (value >= lower - reach && value <= upper + reach) {
            bulk = {std::min(bulk.least, value), std::max(bulk.most, value)};
        }
    }
    return bulk;
}

void CombinationMapScale::follow(const std::vector<CombinationList::Item>& items,
                                 const std::optional<TargetWindow>& target) {
    std::vector<double> inverses;
    std::vector<double> percents;
    for (const CombinationList::Item& item : items) {
        if (item.hasPlace()) {
            inverses.push_back(std::clamp(item.inverse, -kMostInverseDistance, kMostInverseDistance));
            percents.push_back(item.antiSquat);
        }
    }
    if (inverses.empty()) {
        return;
    }
    Bulk across = bulkOf(inverses, kInverseFloor);
    Bulk up = bulkOf(percents, kAntiSquatFloor);
    if (target) {
        across = stretched(across, target->inverseFar(), target->inverseNear(), 4 * kInverseFloor);
        up = stretched(up, target->antiSquatLow, target->antiSquatHigh, 4 * kAntiSquatFloor);
    }
    constexpr double kNoFloor = -std::numeric_limits<double>::infinity();
    inverse_.follow(across.least, across.most, 1.0, kNoFloor);
    antiSquat_.follow(up.least, up.most, 1.0, kNoFloor);
}

void CombinationMapScale::forget() {
    inverse_.forget();
    antiSquat_.forget();
}

double CombinationMapScale::x(double inverse) const {
    return plot_.left() + (mostInverse() - inverse) / (mostInverse() - leastInverse()) * plot_.width();
}

double CombinationMapScale::y(double antiSquat) const {
    return plot_.top() +
           (mostAntiSquat() - antiSquat) / (mostAntiSquat() - leastAntiSquat()) * plot_.height();
}

double CombinationMapScale::inverseAt(double x) const {
    return mostInverse() - (x - plot_.left()) / plot_.width() * (mostInverse() - leastInverse());
}

double CombinationMapScale::antiSquatAt(double y) const {
    return mostAntiSquat() - (y - plot_.top()) / plot_.height() * (mostAntiSquat() - leastAntiSquat());
}

bool CombinationMapScale::holds(const CombinationList::Item& item) const {
    return item.inverse >= leastInverse() && item.inverse <= mostInverse() &&
           item.antiSquat >= leastAntiSquat() && item.antiSquat <= mostAntiSquat();
}

QRectF CombinationMapScale::boxOf(const TargetWindow& target) const {
    // Far outside, a double still holds the place, but a painter does not.
    const double left = std::max(x(target.inverseNear()), plot_.left());
    const double right = std::min(x(target.inverseFar()), plot_.right());
    const double top = std::max(y(target.antiSquatHigh), plot_.top());
    const double bottom = std::min(y(target.antiSquatLow), plot_.bottom());
    return left < right && top < bottom ? QRectF(QPointF(left, top), QPointF(right, bottom)) : QRectF();
}

std::vector<AxisTick> CombinationMapScale::distanceTicks(double unit, const QFontMetricsF& metrics) const {
    std::vector<AxisTick> ticks;
    const auto offer = [&](double inverse, const QString& label) {
        const double at = x(inverse);
        const double half = metrics.horizontalAdvance(label) / 2;
        const bool inside = at >= plot_.left() - 0.5 && at <= plot_.right() + 0.5;
        const double left = std::min(at - half, plot_.right() + kLabelOverhang - 2 * half);
        const bool free = std::ranges::all_of(ticks, [&](const AxisTick& tick) {
            return left + 2 * half + kTickRoom < tick.labelLeft || left - kTickRoom > tick.labelRight;
        });
        if (inside && free) {
            ticks.push_back({inverse, at, left, left + 2 * half, label});
        }
    };
    if (reachesInfinity()) {
        offer(0.0, QString(QChar(0x221e)));
    }
    for (const auto& digits : kRoundDigits) {
        for (double scale = 0.01; scale < 2000.0; scale *= 10.0) {
            for (const int digit : digits) {
                const double shown = digit * scale;
                for (const double sign : {1.0, -1.0}) {
                    if (digit != 0) {
                        const double step = std::abs(shown - std::round(shown)) < 1e-9 ? 1.0 : 0.1;
                        offer(sign / (shown * unit), tickText(sign * shown, step));
                    }
                }
            }
        }
    }
    std::ranges::sort(ticks, {}, &AxisTick::position);
    return ticks;
}

std::vector<AxisTick> CombinationMapScale::antiSquatTicks(const QFontMetricsF& metrics) const {
    const double span = mostAntiSquat() - leastAntiSquat();
    const double rows = std::max(1.0, plot_.height() / (kRowRoom * metrics.height()));
    const double step = niceStep(span / rows);
    std::vector<AxisTick> ticks;
    for (double index = std::ceil(leastAntiSquat() / step - 1e-9); index * step <= mostAntiSquat() + 1e-9;
         index += 1.0) {
        const QString label = tickText(index * step, step);
        const double width = metrics.horizontalAdvance(label);
        ticks.push_back({index * step, y(index * step), plot_.left() - width, plot_.left(), label});
    }
    return ticks;
}

}  // namespace bolthole
