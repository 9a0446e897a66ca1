// The launch of a pass by the fitted model.
#pragma once

#include <cstddef>
#include <optional>

#include "geometry/car/car.h"
#include "geometry/dynamics/launch_run.h"
#include "geometry/fit/launch_fit.h"

namespace bolthole {

/// Launches the pass in `row` of Car::passes as its setup, with every number as it is after the fit and,
/// where the fit has one, its own surface's friction. Nothing for a pass that no fit can use (seasonOf()) and
/// for a launch that does not get to 60 ft. The fit must be done; it need not have used the pass.
[[nodiscard]] std::optional<LaunchRun> fittedLaunch(const Car& car, const LaunchFit& fit, std::size_t row);

}  // namespace bolthole
