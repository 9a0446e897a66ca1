// What to try next: what each single change makes of the launch, and its uncertainty.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "geometry/dynamics/launch_run.h"
#include "geometry/trials/launch_errors.h"
#include "geometry/trials/launch_reason.h"
#include "geometry/trials/paddock_changes.h"
#include "geometry/trials/paired_runs.h"

namespace bolthole {

/// One change and what comes of it. Starts pessimistic.
struct LaunchTrial {
    PaddockChange change{};
    LaunchEnd end = LaunchEnd::notRun;               ///< why its launch ended
    std::optional<double> sixtyFoot = std::nullopt;  ///< s
    TrialFigure sixtyFootChange{};                   ///< s
    TrialFigure leastRearLoad{};                     ///< N
    TrialFigure toppedOut{};                         ///< s
    double chance = 0;                               ///< that it helps: chanceOfGain()
    bool differs = false;                            ///< canTellApart() from the car as it stands
    /// Changes of one number can't be told apart from the first of them: canTellApart() says no. Counted from
    /// 0 in the order of the list.
    int group = -1;
    LaunchTraits traits{};              ///< of its launch as entered
    std::vector<ReasonPart> reasons{};  ///< against the car as it stands, the most telling first
};

struct LaunchTrials {
    bool complete = false;                ///< false: cancelled, or the car as it stands can't be launched
    std::vector<MissingInput> missing{};  ///< what the car lacks
    LaunchRun present{};                  ///< the car as it stands
    LaunchTraits traits{};                ///< of that launch
    double weight = 0;                    ///< N, the car
    std::vector<LaunchTrial> trials{};    ///< greatest chance first, then the greatest gain
};

struct TrialOptions {
    /// What happens to the lengths where holes change; see treatmentFor().
    std::optional<LengthTreatment> lengths{};
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
