// How wrong the numbers of a launch may be, drawn at random: the same errors for every setup that is
// compared, so that what all setups share cancels.
#pragma once

#include <cstddef>
#include <vector>

#include "geometry/car/car.h"
#include "geometry/dynamics/launch_inputs.h"
#include "geometry/units/units.h"

namespace bolthole {

// Standard uncertainties where a person entered none, parts of the number unless a unit is said. Judgement:
// how far such numbers lie apart from one source to another; common practice, no source.
inline constexpr double kFrictionError = 0.10;
inline constexpr double kTorqueError = 0.05;   ///< of the whole torque curve
inline constexpr double kDampingError = 0.15;  ///< of all forces of an end's shocks
inline constexpr double kInertiaError = 0.10;
inline constexpr double kStallError = 200 * kRpm;  ///< rad/s

/// One draw: factors that are 1 and differences that are 0 where nothing is wrong.
struct LaunchError {
    double friction = 1;
    double torque = 1;
    double rearDamping = 1;
    double frontDamping = 1;
    double pitchInertia = 1;
    double turningInertia = 1;  ///< of wheels, housing, driveline and engine alike
    double stallSpeed = 0;      ///< rad/s
    double cgHeight = 0;        ///< m
};

/// How far each is off, standard: parts of the number but for the last two.
struct LaunchErrorSizes {
    double friction = kFrictionError;
    double torque = kTorqueError;
    double rearDamping = kDampingError;
    double frontDamping = kDampingError;
    double pitchInertia = kInertiaError;
    double turningInertia = kInertiaError;
    double stallSpeed = kStallError;  ///< rad/s
    double cgHeight = 0;              ///< m
};
/// Of a car's numbers: what the person entered for one, else the sizes above; forces that are an estimate may
/// be off by half, 95 in 100. Of what turns the rear wheels' say the uncertainty of all of it, as they are
/// most of it. The car must have passed findFaults().
[[nodiscard]] LaunchErrorSizes errorSizesOf(const Car& car);

/// Standard uncertainty of the CG height in use, m: its own where entered, the estimate's, or what the lift's
/// readings make of it (first order, JCGM 100:2008, cl. 5.1.2). The car must have passed findFaults().
[[nodiscard]] double cgHeightUncertainty(const Car& car);

/// `count` draws, always the same ones: factors log-normal, so that none gets to 0, differences normal.
[[nodiscard]] std::vector<LaunchError> drawLaunchErrors(std::size_t count, const LaunchErrorSizes& sizes);

/// `inputs` with those errors.
[[nodiscard]] LaunchInputs withErrors(const LaunchInputs& inputs, const LaunchError& error);

}  // namespace bolthole
