// The command launch: the first seconds after the release, as a table or in its figures.
#pragma once

#include <string>
#include <vector>

#include "app/commands/request.h"
#include "geometry/car/car.h"
#include "geometry/dynamics/launch_run.h"

namespace bolthole {

inline constexpr Option kEveryOption{"--every", "SECONDS", {}};
inline constexpr Option kSummaryOption{"--summary", {}, {}};

/// What the command came to.
struct LaunchOutcome {
    enum class End {
        done,
        cannotRun,  ///< inputs are missing, the car can't be assembled, or the run ended before its time
        badUse      ///< the option was
    };
    End end = End::done;
    std::string table{};                    ///< CSV; empty unless done
    std::vector<std::string> complaints{};  ///< a line each, without the file's name
};

/// Why a run of `car` ended before its time, in one line; empty: it did not.
[[nodiscard]] std::string endOfLaunch(const LaunchRun& run, const Car& car);
/// What is missing for a launch, a line each.
[[nodiscard]] LaunchOutcome cannotLaunch(const std::vector<MissingInput>& missing);

/// A row each --every seconds, or with --summary the figures; in the car's units. The car must have passed
/// findFaults().
[[nodiscard]] LaunchOutcome runLaunch(const Request& request, const Car& car);

}  // namespace bolthole
