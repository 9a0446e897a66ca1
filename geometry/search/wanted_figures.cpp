#include "geometry/search/wanted_figures.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/units/text.h"

namespace bolthole {

namespace {

constexpr double kInfinite = std::numeric_limits<double>::infinity();
constexpr double kHeightScale = 2 * kMetresPerInch;
constexpr double kPercentScale = 10;
constexpr double kAngleScale = kRadiansPerDegree;
constexpr double kDistanceShare = 0.1;
constexpr double kLeastDistanceScale = 0.01;  // 1/m: a tenth of what a center 10 m off has
constexpr double kInside = 1e-6;              // scales

std::size_t asIndex(WantedFigure figure) {
    return static_cast<std::size_t>(figure);
}

WantedLimit between(const OptionalNumber& low, const OptionalNumber& high, double scale) {
    return {low.value_or(-kInfinite), high.value_or(kInfinite), scale};
}

WantedLimit distanceLimit(const WantedWindow& wanted) {
    if (!wanted.icNear && !wanted.icFar) {
        return {-kInfinite, kInfinite, kLeastDistanceScale};
    }
    const double middle = (wanted.inverseFar() + wanted.inverseNear()) / 2;
    return {wanted.inverseFar(), wanted.inverseNear(),
            std::max(kLeastDistanceScale, kDistanceShare * std::abs(middle))};
}

}  // namespace

bool WantedLimit::isFree() const {
    return low == -kInfinite && high == kInfinite;
}

double WantedLimit::outside(double value) const {
    if (isFree()) {
        return 0;
    }
    if (std::isnan(value)) {
        return kInfinite;
    }
    const double out = std::max({low - value, value - high, 0.0}) / scale;
    return out <= kInside ? 0.0 : out;
}

WantedLimits limitsOf(const WantedWindow& wanted) {
    const double pinion = wanted.pinionChange.value_or(kInfinite);
    return {distanceLimit(wanted),
            between(wanted.icLow, wanted.icHigh, kHeightScale),
            WantedLimit{wanted.antiSquatLow, wanted.antiSquatHigh, kPercentScale},
            between(wanted.changeLow, wanted.changeHigh, kPercentScale),
            WantedLimit{-pinion, pinion, kAngleScale},
            between(std::nullopt, wanted.joint, kAngleScale)};
}

WantedFigures wantedFiguresOf(const HoleChoice& choice) {
    WantedFigures figures{};
    if (!choice.assembled) {
        figures.fill(kAbsent);
        return figures;
    }
    figures[asIndex(WantedFigure::distance)] = inverseDistance(choice);
    figures[asIndex(WantedFigure::height)] = choice[Figure::icZ];
    figures[asIndex(WantedFigure::antiSquat)] = choice[Figure::antiSquat];
    figures[asIndex(WantedFigure::change)] = choice.antiSquatBump - choice.antiSquatDroop;
    figures[asIndex(WantedFigure::pinion)] = choice.pinionChange;
    figures[asIndex(WantedFigure::joint)] = std::isnan(choice.worstRearJoint)
                                                ? choice.worstFrontJoint
                                                : std::fmax(choice.worstFrontJoint, choice.worstRearJoint);
    return figures;
}

std::vector<WantedMiss> missesOf(const WantedFigures& figures, const WantedLimits& limits) {
    std::vector<WantedMiss> misses;
    for (std::size_t index = 0; index < kWantedFigures; ++index) {
        const double out = limits[index].outside(figures[index]);
        if (out > 0) {
            const bool low = figures[index] < limits[index].low;
            misses.push_back({static_cast<WantedFigure>(index), figures[index],
                              low ? limits[index].low : limits[index].high, out});
        }
    }
    std::ranges::stable_sort(misses, std::ranges::greater(), &WantedMiss::scaled);
    return misses;
}

double missSize(const WantedFigures& figures, const WantedLimits& limits) {
    double sum = 0;
    for (std::size_t index = 0; index < kWantedFigures; ++index) {
        const double out = limits[index].outside(figures[index]);
        sum += out * out;
    }
    return std::sqrt(sum);
}

namespace {

bool isNothing(const std::string& text) {
    return text.find_first_of("123456789") == std::string::npos;
}

// As figures are read; what that would show as nothing, a digit finer.
std::string amount(double value, Quantity quantity, Units units) {
    std::string text = figureText(std::abs(value), quantity, units);
    if (isNothing(text)) {
        text = fineFigureText(std::abs(value), quantity, units);
    }
    return isNothing(text) ? "a hair" : withUnit(text, quantity, units);
}

std::string place(double inverse, Units units) {
    if (inverse == 0) {
        return "infinitely far";
    }
    const std::string distance =
        withUnit(figureText(std::abs(1 / inverse), Quantity::length, units), Quantity::length, units);
    return distance + (inverse > 0 ? " ahead" : " behind the axle");
}

std::string distanceWords(const WantedMiss& miss, Units units) {
    if (miss.value > 0 && miss.limit > 0) {
        const double by = 1 / miss.value - 1 / miss.limit;
        return "instant center " + amount(by, Quantity::length, units) + (by < 0 ? " too near" : " too far");
    }
    return "instant center " + place(miss.value, units) + ", " + place(miss.limit, units) + " wanted";
}

}  // namespace

std::string wordsFor(const WantedMiss& miss, Units units) {
    const double by = miss.value - miss.limit;
    const std::string sense = by < 0 ? " too low" : " too high";
    const bool absent = std::isnan(miss.value);
    switch (miss.figure) {
        case WantedFigure::distance:
            return distanceWords(miss, units);
        case WantedFigure::height:
            return absent ? "no instant center at a finite height"
                          : "instant center " + amount(by, Quantity::length, units) + sense;
        case WantedFigure::antiSquat:
            return "anti-squat " + amount(by, Quantity::percent, units) + sense;
        case WantedFigure::change:
            return absent
                       ? "full travel not reached"
                       : "anti-squat's change through travel " + amount(by, Quantity::percent, units) + sense;
        case WantedFigure::pinion:
            return absent ? "pinion change not known"
                          : "pinion turns " + amount(by, Quantity::angle, units) + " too far";
        default:
            break;
    }
    return absent ? "joint angles not known: no driveline"
                  : "a joint's angle " + amount(by, Quantity::angle, units) + " too large";
}

std::string limitWords(WantedFigure figure, bool atHigh) {
    const std::string end = atHigh ? " at its high limit" : " at its low limit";
    switch (figure) {
        case WantedFigure::distance:
            return std::string("instant center at its ") + (atHigh ? "near" : "far") + " limit";
        case WantedFigure::height:
            return "instant center's height" + end;
        case WantedFigure::antiSquat:
            return "anti-squat" + end;
        case WantedFigure::change:
            return "anti-squat's change" + end;
        case WantedFigure::pinion:
            return "pinion change at its limit";
        default:
            break;
    }
    return "joint angle at its limit";
}

}  // namespace bolthole
