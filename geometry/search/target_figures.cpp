#include "geometry/search/target_figures.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/units/say.h"
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

std::size_t asIndex(TargetFigure figure) {
    return static_cast<std::size_t>(figure);
}

TargetLimit between(const OptionalNumber& low, const OptionalNumber& high, double scale) {
    return {low.value_or(-kInfinite), high.value_or(kInfinite), scale};
}

TargetLimit distanceLimit(const TargetWindow& target) {
    if (!target.icNear && !target.icFar) {
        return {-kInfinite, kInfinite, kLeastDistanceScale};
    }
    const double middle = (target.inverseFar() + target.inverseNear()) / 2;
    return {target.inverseFar(), target.inverseNear(),
            std::max(kLeastDistanceScale, kDistanceShare * std::abs(middle))};
}

}  // namespace

bool TargetLimit::isFree() const {
    return low == -kInfinite && high == kInfinite;
}

double TargetLimit::outside(double value) const {
    if (isFree()) {
        return 0;
    }
    if (std::isnan(value)) {
        return kInfinite;
    }
    const double out = std::max({low - value, value - high, 0.0}) / scale;
    return out <= kInside ? 0.0 : out;
}

TargetLimits limitsOf(const TargetWindow& target) {
    const double pinion = target.pinionChange.value_or(kInfinite);
    return {distanceLimit(target),
            between(target.icLow, target.icHigh, kHeightScale),
            TargetLimit{target.antiSquatLow, target.antiSquatHigh, kPercentScale},
            between(target.changeLow, target.changeHigh, kPercentScale),
            TargetLimit{-pinion, pinion, kAngleScale},
            between(std::nullopt, target.joint, kAngleScale)};
}

TargetFigures targetFiguresOf(const HoleCombination& combination) {
    TargetFigures figures{};
    if (!combination.assembled) {
        figures.fill(kAbsent);
        return figures;
    }
    figures[asIndex(TargetFigure::distance)] = inverseDistance(combination);
    figures[asIndex(TargetFigure::height)] = combination[Figure::icZ];
    figures[asIndex(TargetFigure::antiSquat)] = combination[Figure::antiSquat];
    figures[asIndex(TargetFigure::change)] = combination.antiSquatBump - combination.antiSquatDroop;
    figures[asIndex(TargetFigure::pinion)] = combination.pinionChange;
    figures[asIndex(TargetFigure::joint)] =
        std::isnan(combination.worstRearJoint)
            ? combination.worstFrontJoint
            : std::fmax(combination.worstFrontJoint, combination.worstRearJoint);
    return figures;
}

std::vector<TargetMiss> missesOf(const TargetFigures& figures, const TargetLimits& limits) {
    std::vector<TargetMiss> misses;
    for (std::size_t index = 0; index < kTargetFigures; ++index) {
        const double out = limits[index].outside(figures[index]);
        if (out > 0) {
            const bool low = figures[index] < limits[index].low;
            misses.push_back({static_cast<TargetFigure>(index), figures[index],
                              low ? limits[index].low : limits[index].high, out});
        }
    }
    std::ranges::stable_sort(misses, std::ranges::greater(), &TargetMiss::scaled);
    return misses;
}

double missSize(const TargetFigures& figures, const TargetLimits& limits) {
    double sum = 0;
    for (std::size_t index = 0; index < kTargetFigures; ++index) {
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
    return isNothing(text) ? say("a hair") : withUnit(text, quantity, units);
}

std::string place(double inverse, Units units) {
    if (inverse == 0) {
        return say("infinitely far");
    }
    const std::string distance =
        withUnit(figureText(std::abs(1 / inverse), Quantity::length, units), Quantity::length, units);
    return inverse > 0 ? say("%1 ahead", distance) : say("%1 behind the axle", distance);
}

std::string distanceWords(const TargetMiss& miss, Units units) {
    if (miss.value > 0 && miss.limit > 0) {
        const double by = 1 / miss.value - 1 / miss.limit;
        const std::string size = amount(by, Quantity::length, units);
        return by < 0 ? say("instant center %1 too near", size) : say("instant center %1 too far", size);
    }
    return say("instant center %1, %2 wanted", place(miss.value, units), place(miss.limit, units));
}

}  // namespace

std::string wordsFor(const TargetMiss& miss, Units units) {
    const double by = miss.value - miss.limit;
    const auto lowOrHigh = [&](std::string_view low, std::string_view high, Quantity quantity) {
        return say(by < 0 ? low : high, amount(by, quantity, units));
    };
    const bool absent = std::isnan(miss.value);
    switch (miss.figure) {
        case TargetFigure::distance:
            return distanceWords(miss, units);
        case TargetFigure::height:
            return absent ? say("no instant center at a finite height")
                          : lowOrHigh(phrase("instant center %1 too low"),
                                      phrase("instant center %1 too high"), Quantity::length);
        case TargetFigure::antiSquat:
            return lowOrHigh(phrase("anti-squat %1 too low"), phrase("anti-squat %1 too high"),
                             Quantity::percent);
        case TargetFigure::change:
            return absent ? say("full travel not reached")
                          : lowOrHigh(phrase("anti-squat's change through travel %1 too low"),
                                      phrase("anti-squat's change through travel %1 too high"),
                                      Quantity::percent);
        case TargetFigure::pinion:
            return absent ? say("pinion change not known")
                          : say("pinion turns %1 too far", amount(by, Quantity::angle, units));
        default:
            break;
    }
    return absent ? say("joint angles not known: no driveline")
                  : say("a joint's angle %1 too large", amount(by, Quantity::angle, units));
}

std::string limitWords(TargetFigure figure, bool atHigh) {
    switch (figure) {
        case TargetFigure::distance:
            return atHigh ? say("instant center at its near limit") : say("instant center at its far limit");
        case TargetFigure::height:
            return atHigh ? say("instant center's height at its high limit")
                          : say("instant center's height at its low limit");
        case TargetFigure::antiSquat:
            return atHigh ? say("anti-squat at its high limit") : say("anti-squat at its low limit");
        case TargetFigure::change:
            return atHigh ? say("anti-squat's change at its high limit")
                          : say("anti-squat's change at its low limit");
        case TargetFigure::pinion:
            return say("pinion change at its limit");
        default:
            break;
    }
    return say("joint angle at its limit");
}

}  // namespace bolthole
