#include "geometry/trials/launch_trials.h"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <limits>
#include <tuple>
#include <utility>

#include "geometry/units/parallel.h"

namespace bolthole {

namespace {

// Rows are not wanted: one at the release will do.
constexpr LaunchOptions kFiguresOnly{.every = 10};
// s: half the last digit of a time slip; nobody can tell times that close apart. Common practice, no source.
constexpr double kSameTimes = 0.0005;
constexpr double kNoGain = std::numeric_limits<double>::infinity();

/// The figures of one setup: as entered, then of every draw.
struct SetupRuns {
    LaunchEnd end = LaunchEnd::notRun;
    LaunchFigures entered{};
    std::vector<LaunchFigures> drawn{};
};

using FigureOf = std::optional<double> LaunchFigures::*;

TrialFigure compared(const SetupRuns& before, const SetupRuns& after, FigureOf figure) {
    TrialFigure result;
    if (before.entered.*figure && after.entered.*figure) {
        result.change = *(after.entered.*figure) - *(before.entered.*figure);
    }
    std::vector<double> changes;
    for (std::size_t draw = 0; draw < std::min(before.drawn.size(), after.drawn.size()); ++draw) {
        const std::optional<double>& from = before.drawn[draw].*figure;
        const std::optional<double>& to = after.drawn[draw].*figure;
        if (from && to) {
            changes.push_back(*to - *from);
        }
    }
    if (changes.size() < 2) {
        return result;
    }
    const auto count = static_cast<double>(changes.size());
    double mean = 0;
    double squares = 0;
    for (const double change : changes) {
        mean += change / count;
    }
    for (const double change : changes) {
        squares += (change - mean) * (change - mean);
    }
    result.uncertainty = std::sqrt(squares / (count - 1));
    return result;
}

double chanceOf(const SetupRuns& before, const SetupRuns& after) {
    constexpr double kNever = std::numeric_limits<double>::infinity();
    double helped = 0;
    for (std::size_t draw = 0; draw < before.drawn.size(); ++draw) {
        const double from = before.drawn[draw].sixtyFoot.value_or(kNever);
        const double to = after.drawn[draw].sixtyFoot.value_or(kNever);
        helped += to < from - kSameTimes ? 1.0 : to > from + kSameTimes ? 0.0 : 0.5;
    }
    return before.drawn.empty() ? 0 : helped / static_cast<double>(before.drawn.size());
}

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
        result.present = simulateLaunch(*entered.inputs, kFiguresOnly);
        if (!result.present.figures.sixtyFoot) {
            return result;
        }
        errors_ = drawLaunchErrors(options_.draws, cgHeightUncertainty(car_));
        std::vector<PaddockChange> changes = paddockChanges(car_);
        setups_.push_back(std::move(entered.inputs));
        for (const PaddockChange& change : changes) {
            const EditResult edited = bolthole::apply(car_, change.edit);
            setups_.push_back(edited.refusal.empty() ? launchInputsOf(edited.car).inputs : std::nullopt);
        }
        runAll();
        result.complete = !isCancelled();
        for (std::size_t index = 0; index < changes.size(); ++index) {
            result.trials.push_back(judge(std::move(changes[index]), runs_[index + 1]));
        }
        sort(result.trials);
        return result;
    }

  private:
    [[nodiscard]] bool isCancelled() const { return options_.isCancelled && options_.isCancelled(); }

    void runAll() {
        runs_.resize(setups_.size());
        std::atomic<std::size_t> next = 0;
        inParallel(options_.threads, [&] {
            LaunchSimulator simulator;
            LaunchRun run;
            for (std::size_t index = next++; index < setups_.size() && !isCancelled(); index = next++) {
                if (setups_[index]) {
                    runSetup(*setups_[index], simulator, run, runs_[index]);
                }
                if (options_.progress) {
                    options_.progress(static_cast<double>(index + 1) / static_cast<double>(setups_.size()));
                }
            }
        });
    }

    void runSetup(const LaunchInputs& inputs, LaunchSimulator& simulator, LaunchRun& run,
                  SetupRuns& runs) const {
        const auto figuresOf = [&](const LaunchInputs& launched) {
            simulator.run(launched, kFiguresOnly, run);
            return run.end == LaunchEnd::done ? run.figures : LaunchFigures{};
        };
        runs.entered = figuresOf(inputs);
        runs.end = run.end;
        runs.drawn.resize(errors_.size());
        for (std::size_t draw = 0; draw < errors_.size() && !isCancelled(); ++draw) {
            runs.drawn[draw] = figuresOf(withErrors(inputs, errors_[draw]));
        }
    }

    [[nodiscard]] LaunchTrial judge(PaddockChange change, const SetupRuns& runs) const {
        const SetupRuns& before = runs_.front();
        LaunchTrial trial{.change = std::move(change), .end = runs.end};
        if (runs.drawn.size() < before.drawn.size()) {
            return trial;
        }
        trial.sixtyFoot = runs.entered.sixtyFoot;
        trial.sixtyFootChange = compared(before, runs, &LaunchFigures::sixtyFoot);
        trial.leastRearLoad = compared(before, runs, &LaunchFigures::leastRearLoad);
        trial.toppedOut = compared(before, runs, &LaunchFigures::toppedOut);
        trial.chance = chanceOf(before, runs);
        return trial;
    }

    static void sort(std::vector<LaunchTrial>& trials) {
        std::ranges::stable_sort(trials, {}, [](const LaunchTrial& trial) {
            return std::tuple(-trial.chance, trial.sixtyFootChange.change.value_or(kNoGain));
        });
    }

    Car car_;
    TrialOptions options_;
    std::vector<LaunchError> errors_;
    std::vector<std::optional<LaunchInputs>> setups_;  // the car as it stands first
    std::vector<SetupRuns> runs_;                      // as the setups
};

}  // namespace

LaunchTrials tryChanges(const Car& car, const TrialOptions& options) {
    return Trier(car, options).run();
}

}  // namespace bolthole
