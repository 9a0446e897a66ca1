// The numbers of a launch that nobody knows well, and what a car makes of them.
#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <vector>

#include "geometry/dynamics/launch_inputs.h"
#include "geometry/units/units.h"

namespace bolthole {

/// A kind of number that passes teach; friction is one a surface.
enum class LaunchNumber { friction, torqueScale, stallSpeed, frontDampingScale, rearDampingScale, peakSlip };
inline constexpr std::size_t kLaunchNumbers = 6;

// Standard uncertainties of what was entered, where the file has none of its own: parts of the table for
// scales. A judgement, no source.
inline constexpr double kFrictionPrior = 0.2;
inline constexpr double kScalePrior = 0.15;
inline constexpr double kStallPrior = 200 * kRpm;  ///< rad/s
inline constexpr double kPeakSlipPrior = 3;        ///< percent

/// One number before anything was learned.
struct NumberPrior {
    LaunchNumber number = LaunchNumber::friction;
    std::size_t surface = 0;  ///< friction's: index into surfaces
    double value = 0;         ///< friction and scales bare, rad/s, percent
    double uncertainty = 0;   ///< standard, above 0
};

/// The numbers of one launch. Scales multiply tables as entered.
struct LaunchNumbers {
    double friction = 1;
    double torqueScale = 1;
    double stallSpeed = 0;  ///< rad/s; a converter's alone
    double frontDampingScale = 1;
    double rearDampingScale = 1;
    double peakSlip = 0;  ///< percent

    [[nodiscard]] double& of(LaunchNumber number);
};

/// The numbers that stand in the inputs; every scale 1.
[[nodiscard]] LaunchNumbers numbersOf(const LaunchInputs& inputs);

/// `inputs` with those numbers, each held within what a launch can be computed with: a search may try
/// anything.
[[nodiscard]] LaunchInputs withNumbers(const LaunchInputs& inputs, const LaunchNumbers& numbers);

}  // namespace bolthole
