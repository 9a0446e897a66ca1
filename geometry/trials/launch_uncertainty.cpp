#include "geometry/trials/launch_uncertainty.h"

#include <limits>
#include <vector>

#include "geometry/uncertainty/propagation.h"

namespace bolthole {

namespace {

struct FigureDraws {
    std::vector<double> now;
    std::vector<double> baseline;
    std::vector<double> difference;

    void add(const std::optional<double>& with, const std::optional<double>& without) {
        if (with) {
            now.push_back(*with);
        }
        if (without) {
            baseline.push_back(*without);
        }
        if (with && without) {
            difference.push_back(*with - *without);
        }
    }
};

/// Of enough draws; else nothing is known.
Coverage covered(std::vector<double>& draws) {
    constexpr double kUnknown = std::numeric_limits<double>::quiet_NaN();
    return draws.size() < kLeastDraws ? Coverage{.uncertainty = kUnknown, .low = kUnknown, .high = kUnknown}
                                      : coverageOf(draws);
}

}  // namespace

std::optional<LaunchUncertainties> drawLaunchUncertainties(const LaunchInputs& now,
                                                           const LaunchInputs* baseline,
                                                           std::span<const LaunchError> errors,
                                                           const std::function<bool()>& isCancelled) {
    LaunchSimulator simulator;
    LaunchRun run;
    const auto read = [&](const LaunchInputs& inputs, const LaunchError& error) {
        const LaunchInputs wrong = withErrors(inputs, error);
        simulator.run(wrong, {.every = kReadingStep}, run);
        return run.end == LaunchEnd::done ? readLaunch(wrong, run) : LaunchReading{};
    };
    std::array<FigureDraws, kLaunchFigures> draws;
    for (const LaunchError& error : errors) {
        if (isCancelled && isCancelled()) {
            return std::nullopt;
        }
        const LaunchReading with = read(now, error);
        const LaunchReading without = baseline == nullptr ? LaunchReading{} : read(*baseline, error);
        for (std::size_t figure = 0; figure < kLaunchFigures; ++figure) {
            draws[figure].add(with.figures[figure], without.figures[figure]);
        }
    }
    LaunchUncertainties uncertainties;
    for (std::size_t figure = 0; figure < kLaunchFigures; ++figure) {
        const Coverage present = covered(draws[figure].now);
        uncertainties[figure] = {.now = present.uncertainty,
                                 .low = present.low,
                                 .high = present.high,
                                 .baseline = covered(draws[figure].baseline).uncertainty,
                                 .difference = covered(draws[figure].difference).uncertainty};
    }
    return uncertainties;
}

}  // namespace bolthole
