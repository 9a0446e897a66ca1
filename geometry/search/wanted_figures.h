// What is wanted of a car, as limits on six figures, and by how much a car misses them.
#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <vector>

#include "geometry/choices/choice_figures.h"

namespace bolthole {

/// The figures a WantedWindow speaks of, in the order of WantedFigures.
enum class WantedFigure : std::size_t {
    distance,   ///< 1/distance of the instant center at ride, 1/m: runs through infinity without a break
    height,     ///< its height above the ground at ride, m
    antiSquat,  ///< at ride, percent
    change,     ///< anti-squat at full bump minus at full droop, percent
    pinion,     ///< change of the pinion's inclination at ride against now, rad, nose up +
    joint,      ///< the largest working angle of either joint in travel, rad
    count
};
inline constexpr std::size_t kWantedFigures = static_cast<std::size_t>(WantedFigure::count);
/// One number for each WantedFigure; NaN: does not exist.
using WantedFigures = std::array<double, kWantedFigures>;

/// What one figure may be, both ends included; infinite where nothing is wanted.
struct WantedLimit {
    double low = 0;
    double high = 0;
    /// How much of it counts as much as of the others when misses are compared: 10 % of anti-squat, 2 in of
    /// height, 1 degree, a tenth of the wanted 1/distance. Judgements, common practice, no source.
    double scale = 1;

    [[nodiscard]] bool isFree() const;
    /// How far outside, in scales; 0 inside, infinite for NaN where something is wanted. Rounding in the last
    /// millionth of the scale counts as inside.
    [[nodiscard]] double outside(double value) const;
};
using WantedLimits = std::array<WantedLimit, kWantedFigures>;

/// The limits of a window. With neither distance entered, any distance will do.
[[nodiscard]] WantedLimits limitsOf(const WantedWindow& wanted);
[[nodiscard]] WantedFigures wantedFiguresOf(const HoleChoice& choice);

/// One figure that lies outside.
struct WantedMiss {
    WantedFigure figure = WantedFigure::count;
    double value = 0;   ///< what it is, as in WantedFigures
    double limit = 0;   ///< what it should be at least, or at most
    double scaled = 0;  ///< how far outside, in scales
};
/// All that lies outside, worst first.
[[nodiscard]] std::vector<WantedMiss> missesOf(const WantedFigures& figures, const WantedLimits& limits);
/// How far outside a set of figures is altogether: the root of the sum of squares, in scales.
[[nodiscard]] double missSize(const WantedFigures& figures, const WantedLimits& limits);

/// What misses and by how much: "anti-squat 6 % too low", "instant center 4.2 in too near".
[[nodiscard]] std::string wordsFor(const WantedMiss& miss, Units units);
/// The figure's name and which of its limits it lies at: "anti-squat at its low limit".
[[nodiscard]] std::string limitWords(WantedFigure figure, bool atHigh);

}  // namespace bolthole
