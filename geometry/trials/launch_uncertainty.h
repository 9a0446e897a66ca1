// The uncertainty of a launch's figures, and how they differ from another's: from paired draws.
#pragma once

#include <array>
#include <functional>
#include <limits>
#include <optional>
#include <span>

#include "geometry/dynamics/launch_reading.h"
#include "geometry/trials/launch_errors.h"

namespace bolthole {

/// Standard uncertainties of one figure, in its own unit, SI; NaN: fewer than kLeastDraws draws have it.
struct LaunchFigureUncertainty {
    double now = std::numeric_limits<double>::quiet_NaN();
    /// Where 95 of 100 draws of `now` lie; as coverageOf(). It need not lie evenly about the figure: a tire
    /// that holds as entered spins in some draws.
    double low = std::numeric_limits<double>::quiet_NaN();
    double high = std::numeric_limits<double>::quiet_NaN();
    double baseline = std::numeric_limits<double>::quiet_NaN();
    /// Of `now` less `baseline`, both with the same errors: what both share cancels.
    double difference = std::numeric_limits<double>::quiet_NaN();
};
inline constexpr std::size_t kLeastDraws = 10;

using LaunchUncertainties = std::array<LaunchFigureUncertainty, kLaunchFigures>;

/// Runs `now`, and `baseline` where there is one, with each of `errors` (the standard deviation of what comes
/// out; JCGM 101:2008, cl. 7.6). Nothing where `isCancelled` says so between two launches.
[[nodiscard]] std::optional<LaunchUncertainties> drawLaunchUncertainties(
    const LaunchInputs& now, const LaunchInputs* baseline, std::span<const LaunchError> errors,
    const std::function<bool()>& isCancelled = {});

}  // namespace bolthole
