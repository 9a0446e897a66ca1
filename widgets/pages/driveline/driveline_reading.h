// The driveline of what is on the bench, computed once for the picture, the curves and the cards of figures.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "geometry/statics/driveline_figures.h"
#include "widgets/kit/unit_text.h"
#include "widgets/state/bench_state.h"

namespace bolthole {

/// The driveline at one travel, coasting and with the housing wound up.
struct DrivelineRow {
    double travel = 0;    ///< m
    bool usable = false;  ///< false: the links do not reach here, both others are meaningless
    DrivelineFigures coasting;
    DrivelineFigures woundUp;  ///< as coasting where no wind-up is entered
};

/// Everything the driveline page shows. Of the solved car, so that it belongs to the trace.
struct DrivelineReading {
    std::string problem;  ///< why nothing of it can be computed, one sentence; empty: all below is there
    Driveline line;
    ShaftSetup setup;
    std::optional<double> windUp;  ///< as entered, rad, nose up
    std::optional<DrivelineReader> reader;
    Station rideStation;
    DrivelineRow ride;
    DrivelineSweep coasting;
    DrivelineSweep woundUp;
    PinionSettings settings;         ///< that cancel coasting at ride
    PinionSettings settingsWoundUp;  ///< that cancel wound up at ride
    std::vector<DrivelineRow> rows;  ///< full droop first, at most kMostDrivelineRows

    [[nodiscard]] bool isThere() const { return reader.has_value(); }
    /// The row at any solved pose.
    [[nodiscard]] DrivelineRow rowAt(const Station& station) const;
};

/// More rows than this are not drawn: a screen has no more lines. The sweeps look at all of them.
inline constexpr std::size_t kMostDrivelineRows = 801;

/// Reads the driveline off `state`. Where it has none, or none that can be computed, only `problem` is set.
[[nodiscard]] DrivelineReading readDriveline(const BenchState& state);

/// The same of any car that passed findFaults(), through its travel in few steps: for what its figures are,
/// not for their curves.
[[nodiscard]] DrivelineReading readDrivelineBriefly(const Car& car);

/// "front joint", "carrier joint" (behind the carrier bearing), "rear joint".
[[nodiscard]] QString jointWords(std::size_t joint, std::size_t joints);

/// "2.75° nose up", "0.50° nose down", "level"; `angle` in rad.
[[nodiscard]] QString noseWords(double angle);

}  // namespace bolthole
