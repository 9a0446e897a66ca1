// What to try next: what each single change makes of the launch, and how sure that is.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "geometry/dynamics/launch_run.h"
#include "geometry/trials/launch_errors.h"
#include "geometry/trials/paddock_changes.h"

namespace bolthole {

/// How a figure differs from the car's as it stands, + more. Absent: one of the two has none.
struct TrialFigure {
    std::optional<double> change = std::nullopt;
    /// Standard, from paired draws; absent where fewer than two draws have the figure both ways.
    std::optional<double> uncertainty = std::nullopt;
};

/// One change and what comes of it. Starts pessimistic.
struct LaunchTrial {
    PaddockChange change{};
    LaunchEnd end = LaunchEnd::notRun;               ///< why its launch ended
    std::optional<double> sixtyFoot = std::nullopt;  ///< s
    TrialFigure sixtyFootChange{};                   ///< s
    TrialFigure leastRearLoad{};                     ///< N
    TrialFigure toppedOut{};                         ///< s
    /// That it makes the 60 ft shorter, 0 to 1: the part of the draws in which it does, times that nobody can
    /// tell apart half (JCGM 101:2008, cl. 7). A draw in which only the changed car gets there counts for it,
    /// and the other way.
    double chance = 0;
};

struct LaunchTrials {
    bool complete = false;                ///< false: cancelled, or the car as it stands can't be launched
    std::vector<MissingInput> missing{};  ///< what the car lacks
    LaunchRun present{};                  ///< the car as it stands
    std::vector<LaunchTrial> trials{};    ///< greatest chance first, then the greatest gain
};

struct TrialOptions {
    std::size_t draws = 40;
    int threads = 2;
    /// Asked now and then from any thread; true: give up.
    std::function<bool()> isCancelled{};
    /// Told now and then from any thread: 0 to 1.
    std::function<void(double)> progress{};
};

/// Runs every change of paddockChanges(). The same whatever the number of threads. The car must have passed
/// findFaults().
[[nodiscard]] LaunchTrials tryChanges(const Car& car, const TrialOptions& options = {});

}  // namespace bolthole
