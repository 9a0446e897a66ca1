// The target of a car, as limits on six figures, and by how much a car misses them.
#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <vector>

#include "geometry/combinations/combination_figures.h"

namespace bolthole {

/// The figures a TargetWindow speaks of, in the order of TargetFigures.
enum class TargetFigure : std::size_t {
    distance,   ///< 1/distance of the instant center at ride, 1/m: runs through infinity without a break
    height,     ///< its height above the ground at ride, m
    antiSquat,  ///< at ride, percent
    change,     ///< anti-squat at full bump minus at full droop, percent
    pinion,     ///< change of the pinion's inclination at ride against now, rad, nose up +
    joint,      ///< the largest working angle of either joint in travel, rad
    count
};
inline constexpr std::size_t kTargetFigures = static_cast<std::size_t>(TargetFigure::count);
/// One number for each TargetFigure; NaN: does not exist.
using TargetFigures = std::array<double, kTargetFigures>;

/// What one figure may be, both ends included; infinite where there is no target.
struct TargetLimit {
    double low = 0;
    double high = 0;
    /// How much of it counts as much as of the others when misses are compared: 10 % of anti-squat, 2 in of
    /// height, 1 degree, a tenth of the target 1/distance. Judgements, common practice, no source.
    double scale = 1;

    [[nodiscard]] bool isFree() const;
    /// How far outside, in scales; 0 inside, infinite for NaN where there is a target. Rounding in the last
    /// millionth of the scale counts as inside.
    [[nodiscard]] double outside(double value) const;
};
using TargetLimits = std::array<TargetLimit, kTargetFigures>;

/// The limits of a window. With neither distance entered, any distance will do.
[[nodiscard]] TargetLimits limitsOf(const TargetWindow& target);
[[nodiscard]] TargetFigures targetFiguresOf(const HoleCombination& combination);

/// One figure that lies outside.
struct TargetMiss {
    TargetFigure figure = TargetFigure::count;
    double value = 0;   ///< what it is, as in TargetFigures
    double limit = 0;   ///< what it should be at least, or at most
    double scaled = 0;  ///< how far outside, in scales
};
/// All that lies outside, worst first.
[[nodiscard]] std::vector<TargetMiss> missesOf(const TargetFigures& figures, const TargetLimits& limits);
/// How far outside a set of figures is altogether: the root of the sum of squares, in scales.
[[nodiscard]] double missSize(const TargetFigures& figures, const TargetLimits& limits);

/// What misses and by how much: "anti-squat 6 % too low", "instant center 4.2 in too near".
[[nodiscard]] std::string wordsFor(const TargetMiss& miss, Units units);
/// The figure's name and which of its limits it lies at: "anti-squat at its low limit".
[[nodiscard]] std::string limitWords(TargetFigure figure, bool atHigh);

}  // namespace bolthole
