#include "widgets/scales/distance_scale.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace bolthole {

namespace {

/// With fewer two-digit distances on the axis, three-digit ones are offered too.
constexpr std::size_t kEnoughCandidates = 8;

/// A distance that could be labelled: where it lies, and how round it is (1 roundest).
struct Candidate {
    double inverse = 0;  // 1/m
    double shown = 0;    // in the shown unit, infinite at infinity
    double roundness = 0;
};

/// How round a number of two or three digits is, by its digits alone.
double roundness(int digits) {
    if (digits % 100 == 0 || digits < 100) {
        const int lead = digits < 100 ? digits : digits / 10;
        switch (lead) {
            case 10:
            case 20:
            case 50:
                return 1.0;
            case 15:
            case 25:
            case 30:
            case 40:
            case 75:
                return 0.9;
            default:
                return lead % 10 == 0 ? 0.8 : lead % 5 == 0 ? 0.65 : 0.15;
        }
    }
    return digits % 50 == 0 ? 0.5 : digits % 10 == 0 ? 0.15 : digits % 5 == 0 ? 0.1 : 0.0;
}

/// Adds the round distances on the axis with two digits, or with three.
void addCandidates(const AxisOnScreen& axis, double unit, int firstDigits, int lastDigits,
                   std::vector<Candidate>& into) {
    // 0.1 to 100,000 shown units holds every distance that can be told from zero or infinity on the axis.
    for (double scale = firstDigits == 10 ? 0.01 : 0.001; scale < 2000.0; scale *= 10.0) {
        for (int digits = firstDigits; digits <= lastDigits; ++digits) {
            for (const double sign : {1.0, -1.0}) {
                const double shown = sign * digits * scale;
                const double inverse = 1.0 / (shown * unit);
                if (inverse >= axis.low && inverse <= axis.high) {
                    into.push_back({inverse, shown, roundness(digits)});
                }
            }
        }
    }
}

QString distanceText(double shown) {
    if (std::isinf(shown)) {
        return QString(QChar(0x221e));
    }
    const bool whole = std::abs(shown - std::round(shown)) < 1e-6 * std::abs(shown);
    return tickText(shown, whole ? 1.0 : 0.1);
}

/// How ticks are spread: how many, how far from the axis's ends (px), and how many grades of roundness a
/// whole spacing off the even place costs.
struct TickLayout {
    int count = 1;
    double inset = 0;
    double pull = 0;
};

/// The candidate that is roundest and nearest to `target` px.
Candidate bestNear(const std::vector<Candidate>& candidates, const AxisOnScreen& axis, double target,
                   double pullPerPixel) {
    const auto worth = [&](const Candidate& candidate) {
        return candidate.roundness - pullPerPixel * std::abs(axis.position(candidate.inverse) - target);
    };
    return *std::max_element(candidates.begin(), candidates.end(),
                             [&](const Candidate& a, const Candidate& b) { return worth(a) < worth(b); });
}

/// Ticks spread evenly over the axis, one of them at infinity where that is on the axis.
std::vector<AxisTick> spreadTicks(const std::vector<Candidate>& candidates, const AxisOnScreen& axis,
                                  const TickLayout& how, const QFontMetricsF& metrics) {
    const double width = axis.right - axis.left;
    const double spacing = how.count > 1 ? (width - 2 * how.inset) / (how.count - 1) : width;
    const double first = axis.left + how.inset;
    const bool reachesInfinity = axis.low <= 0 && axis.high >= 0;
    const int infinite =
        std::clamp(static_cast<int>(std::lround((axis.position(0.0) - first) / spacing)), 0, how.count - 1);
    std::vector<AxisTick> ticks;
    for (int i = 0; i < how.count; ++i) {
        Candidate chosen{0.0, std::numeric_limits<double>::infinity(), 1.0};
        if (!reachesInfinity || i != infinite) {
            chosen = bestNear(candidates, axis, first + i * spacing, how.pull / spacing);
        }
        ticks.push_back(placeTick(axis, chosen.inverse, distanceText(chosen.shown), metrics));
    }
    return ticks;
}

}  // namespace

double inverseDistance(const Station& station) {
    if (!station.usable) {
        return std::numeric_limits<double>::quiet_NaN();
    }
    const double distance = station[Figure::icX];
    if (std::isnan(distance)) {
        return 0.0;
    }
    return std::abs(distance) < 1e-6 ? std::numeric_limits<double>::quiet_NaN() : 1.0 / distance;
}

std::vector<AxisTick> distanceTicks(const AxisOnScreen& axis, double unit, const QFontMetricsF& metrics) {
    std::vector<Candidate> candidates;
    addCandidates(axis, unit, 10, 99, candidates);
    if (candidates.size() < kEnoughCandidates) {
        addCandidates(axis, unit, 100, 999, candidates);
    }
    if (axis.low <= 0 && axis.high >= 0) {
        candidates.push_back({0.0, std::numeric_limits<double>::infinity(), 1.0});
    }
    if (candidates.empty()) {
        return {};
    }
    const double width = axis.right - axis.left;
    for (int count = kMostTicks; count > 1; --count) {
        // Set in from the ends reads best; where that leaves too little room, toward the ends, then at them.
        for (const TickLayout& how : {TickLayout{count, 0.5 * width / count, 1.6},
                                      TickLayout{count, 0.04 * width, 1.6}, TickLayout{count, 0.0, 12.0}}) {
            std::vector<AxisTick> ticks = spreadTicks(candidates, axis, how, metrics);
            if (ticksFit(ticks)) {
                return ticks;
            }
        }
    }
    return spreadTicks(candidates, axis, {1, width / 2, 1.6}, metrics);
}

}  // namespace bolthole
