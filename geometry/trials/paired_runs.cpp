#include "geometry/trials/paired_runs.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/uncertainty/propagation.h"
#include "geometry/units/uncertainty_text.h"

namespace bolthole {

namespace {

constexpr double kNoRows = 10;  // s between rows: one at the release will do
constexpr double kNever = std::numeric_limits<double>::infinity();

LaunchFigures figuresOf(const LaunchRun& run) {
    return run.end == LaunchEnd::done ? run.figures : LaunchFigures{};
}

}  // namespace

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
    if (changes.size() >= 2) {
        const Coverage drawn = coverageOf(changes);
        result.uncertainty = drawn.uncertainty;
        result.low = drawn.low;
        result.high = drawn.high;
    }
    return result;
}

double chanceOfGain(const SetupRuns& before, const SetupRuns& after) {
    const std::size_t draws = std::min(before.drawn.size(), after.drawn.size());
    double helped = 0;
    for (std::size_t draw = 0; draw < draws; ++draw) {
        const double from = before.drawn[draw].sixtyFoot.value_or(kNever);
        const double to = after.drawn[draw].sixtyFoot.value_or(kNever);
        helped += to < from - kSameTimes ? 1.0 : to > from + kSameTimes ? 0.0 : 0.5;
    }
    return draws == 0 ? 0 : helped / static_cast<double>(draws);
}

bool canTellApart(const SetupRuns& one, const SetupRuns& other) {
    const TrialFigure difference = compared(one, other, &LaunchFigures::sixtyFoot);
    if (!difference.change) {
        return one.entered.sixtyFoot.has_value() != other.entered.sixtyFoot.has_value();
    }
    const double change = *difference.change;
    const double nearest = change < 0 ? -difference.high.value_or(change) : difference.low.value_or(change);
    const bool isBeyondItsUncertainty = std::abs(change) > kCoverage95 * difference.uncertainty.value_or(0);
    return std::abs(change) > kSameTimes &&
           (nearest > 0 || (isBeyondItsUncertainty && nearest > -kSameTimes));
}

void PairedLauncher::launchEntered(const LaunchInputs& inputs, SetupRuns& runs) {
    simulator_.run(inputs, {.every = every_}, run_);
    runs.entered = figuresOf(run_);
    runs.end = run_.end;
}

void PairedLauncher::launchDrawn(const LaunchInputs& inputs, const std::function<bool()>& isCancelled,
                                 SetupRuns& runs) {
    runs.drawn.clear();
    for (const LaunchError& error : errors_) {
        if (isCancelled && isCancelled()) {
            return;
        }
        simulator_.run(withErrors(inputs, error), {.every = kNoRows}, run_);
        runs.drawn.push_back(figuresOf(run_));
    }
}

}  // namespace bolthole
