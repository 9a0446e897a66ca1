#include "geometry/trials/launch_trials.h"

#include <algorithm>
#include <atomic>
#include <limits>
#include <tuple>
#include <utility>

#include "geometry/units/parallel.h"

namespace bolthole {

namespace {

constexpr double kTraitRows = 0.002;  // s between the rows that traits are read off
constexpr double kNoGain = std::numeric_limits<double>::infinity();

class Trier {
  public:
    Trier(const Car& car, const TrialOptions& options) : car_(withoutKept(car)), options_(options) {}

    LaunchTrials run() {
        LaunchTrials result;
        LaunchInputsResult entered = launchInputsOf(car_);
        if (!entered.inputs) {
            result.missing = std::move(entered.missing);
            return result;
        }
        result.present = simulateLaunch(*entered.inputs, {.every = kTraitRows});
        if (!result.present.figures.sixtyFoot) {
            return result;
        }
        result.weight = entered.inputs->bodies.total * entered.inputs->bodies.gravity;
        errors_ = drawLaunchErrors(options_.draws, errorSizesOf(car_));
        std::vector<PaddockChange> changes = paddockChanges(car_, treatmentFor(car_, options_.lengths));
        setups_.push_back({std::move(entered.inputs)});
        for (const PaddockChange& change : changes) {
            const EditResult edited = bolthole::apply(car_, change.edit);
            setups_.push_back({edited.refusal.empty() ? launchInputsOf(edited.car).inputs : std::nullopt});
        }
        inParallel(options_.threads, [this] { work(); });
        result.complete = !isCancelled();
        result.traits = setups_.front().traits;
        judgeAll(std::move(changes), result);
        return result;
    }

  private:
    struct Setup {
        std::optional<LaunchInputs> inputs;
        SetupRuns runs{};
        LaunchTraits traits{};
    };

    [[nodiscard]] bool isCancelled() const { return options_.isCancelled && options_.isCancelled(); }

    // On each thread: takes the next setup until there is none.
    void work() {
        PairedLauncher launcher(errors_, kTraitRows);
        for (std::size_t index = next_++; index < setups_.size() && !isCancelled(); index = next_++) {
            Setup& setup = setups_[index];
            if (setup.inputs) {
                launcher.launchEntered(*setup.inputs, setup.runs);
                setup.traits = traitsOf(launcher.present(), *setup.inputs);
                launcher.launchDrawn(*setup.inputs, options_.isCancelled, setup.runs);
            }
            if (options_.progress) {
                options_.progress(static_cast<double>(index + 1) / static_cast<double>(setups_.size()));
            }
        }
    }

    [[nodiscard]] LaunchTrial judge(PaddockChange change, const Setup& setup, double weight) const {
        const Setup& present = setups_.front();
        LaunchTrial trial{.change = std::move(change), .end = setup.runs.end};
        if (setup.runs.drawn.size() < present.runs.drawn.size()) {
            return trial;
        }
        trial.sixtyFoot = setup.runs.entered.sixtyFoot;
        trial.sixtyFootChange = compared(present.runs, setup.runs, &LaunchFigures::sixtyFoot);
        trial.leastRearLoad = compared(present.runs, setup.runs, &LaunchFigures::leastRearLoad);
        trial.toppedOut = compared(present.runs, setup.runs, &LaunchFigures::toppedOut);
        trial.chance = chanceOfGain(present.runs, setup.runs);
        trial.differs = canTellApart(present.runs, setup.runs);
        trial.traits = setup.traits;
        trial.reasons = reasonsFor(present.traits, setup.traits, weight);
        return trial;
    }

    // In the order they are shown, with the groups of those that can't be told apart.
    void judgeAll(std::vector<PaddockChange> changes, LaunchTrials& result) const {
        struct Judged {
            LaunchTrial trial;
            const SetupRuns* runs;
        };
        std::vector<Judged> judged;
        for (std::size_t index = 0; index < changes.size(); ++index) {
            const Setup& setup = setups_[index + 1];
            judged.push_back({judge(std::move(changes[index]), setup, result.weight), &setup.runs});
        }
        std::ranges::stable_sort(judged, {}, [](const Judged& one) {
            return std::tuple(-one.trial.chance, one.trial.sixtyFootChange.change.value_or(kNoGain));
        });
        int group = 0;
        for (std::size_t first = 0; first < judged.size(); ++first) {
            if (judged[first].trial.group >= 0) {
                continue;
            }
            for (std::size_t other = first; other < judged.size(); ++other) {
                if (judged[other].trial.group < 0 &&
                    !canTellApart(*judged[first].runs, *judged[other].runs)) {
                    judged[other].trial.group = group;
                }
            }
            judged[first].trial.group = group++;
        }
        for (Judged& one : judged) {
            result.trials.push_back(std::move(one.trial));
        }
    }

    Car car_;
    TrialOptions options_;
    std::vector<LaunchError> errors_;
    std::vector<Setup> setups_;  // the car as it stands first
    std::atomic<std::size_t> next_ = 0;
};

}  // namespace

LaunchTrials tryChanges(const Car& car, const TrialOptions& options) {
    return Trier(car, options).run();
}

}  // namespace bolthole
