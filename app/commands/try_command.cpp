#include "app/commands/try_command.h"

#include <optional>

#include "app/commands/csv_text.h"
#include "geometry/trials/launch_trials.h"
#include "geometry/units/csv.h"
#include "geometry/units/parallel.h"
#include "geometry/units/text.h"

namespace bolthole {

namespace {

std::string trialNumber(const std::optional<double>& value, double unit = 1) {
    return value ? "," + plainDecimal(*value / unit) : ",";
}

std::string trialsTable(const LaunchTrials& trials, Units units) {
    const bool inch = units == Units::inch;
    const double force = inch ? kNewtonsPerPoundForce : 1;
    std::string table = "change,sixty_foot_s,change_s,change_u,chance_pct,least_rear_load_change_" +
                        std::string(inch ? "lb" : "N") + ",topped_out_change_s,bolts" + std::string(kLineEnd);
    for (const LaunchTrial& trial : trials.trials) {
        table += csvField(trial.change.words) + trialNumber(trial.sixtyFoot) +
                 trialNumber(trial.sixtyFootChange.change) + trialNumber(trial.sixtyFootChange.uncertainty) +
                 trialNumber(trial.chance, 0.01) + trialNumber(trial.leastRearLoad.change, force) +
                 trialNumber(trial.toppedOut.change) + "," + std::to_string(trial.change.bolts) +
                 std::string(kLineEnd);
    }
    return table;
}

}  // namespace

LaunchOutcome runTrials(const Car& car) {
    const LaunchTrials trials = tryChanges(car, {.threads = machineThreads()});
    if (!trials.missing.empty()) {
        return cannotLaunch(trials.missing);
    }
    if (std::string why = endOfLaunch(trials.present, car); !why.empty()) {
        return {LaunchOutcome::End::cannotRun, {}, {std::move(why)}};
    }
    if (!trials.complete) {
        return {
            LaunchOutcome::End::cannotRun, {}, {"launch: 60 ft are not reached, so nothing can be compared"}};
    }
    return {LaunchOutcome::End::done, trialsTable(trials, car.units), {}};
}

}  // namespace bolthole
