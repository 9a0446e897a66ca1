// What a launch comes to in a few figures: those of its run, and those that are read off its rows.
#pragma once

#include <array>
#include <cstddef>
#include <optional>

#include "geometry/dynamics/launch_run.h"
#include "geometry/units/units.h"

namespace bolthole {

enum class LaunchFigure : std::size_t {
    sixtyFoot,    ///< s on the clock
    fromRelease,  ///< s from the release to 60 ft
    leastLoad,    ///< N on the rear tires, least from kAfterTheHit to 60 ft
    /// Percent of the grip that thrust leaves, 1 - thrust / (friction x load), least over the rows from
    /// kAfterTheHit to 60 ft; 0 where the tires slip more than at their most thrust: nothing is left then.
    gripLeft,
    toppedOut,       ///< s, first time the front passes its droop
    frontUp,         ///< s, first time the front tires carry nothing
    largestSlip,     ///< percent, from the release to 60 ft
    separation,      ///< m the body rises over the rear axle at the most, to 60 ft
    separationRate,  ///< m/s, the fastest of that between two rows
    count
};
inline constexpr std::size_t kLaunchFigures = static_cast<std::size_t>(LaunchFigure::count);

/// How far apart rows are for a LaunchReading, s: closer than a wheel can hop.
inline constexpr double kReadingStep = 0.005;

/// Figures of one launch; absent: it did not happen, or the launch ended before.
struct LaunchReading {
    std::array<std::optional<double>, kLaunchFigures> figures{};

    [[nodiscard]] const std::optional<double>& operator[](LaunchFigure figure) const {
        return figures[static_cast<std::size_t>(figure)];
    }
};

/// Reads them off a run of `inputs` with rows kReadingStep apart.
[[nodiscard]] LaunchReading readLaunch(const LaunchInputs& inputs, const LaunchRun& run);

/// N: the rear load that `thrust` needs of tires with that friction. What the load is over it is grip left.
[[nodiscard]] inline double neededLoad(const LaunchInputs& inputs, double thrust) {
    return thrust / inputs.tires.friction;
}

/// In what a figure is written.
[[nodiscard]] Quantity quantityOf(LaunchFigure figure);

}  // namespace bolthole
