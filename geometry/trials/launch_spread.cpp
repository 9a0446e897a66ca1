#include "geometry/trials/launch_spread.h"

#include <limits>
#include <vector>

#include "geometry/uncertainty/propagation.h"

namespace bolthole {

namespace {

struct FigureDraws {
    std::vector<double> now;
    std::vector<double> before;
    std::vector<double> difference;

    void add(const std::optional<double>& with, const std::optional<double>& without) {
        if (with) {
            now.push_back(*with);
        }
        if (without) {
            before.push_back(*without);
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

std::optional<LaunchSpreads> drawLaunchSpreads(const LaunchInputs& now, const LaunchInputs* before,
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
        const LaunchReading without = before == nullptr ? LaunchReading{} : read(*before, error);
        for (std::size_t figure = 0; figure < kLaunchFigures; ++figure) {
            draws[figure].add(with.figures[figure], without.figures[figure]);
        }
    }
    LaunchSpreads spreads;
    for (std::size_t figure = 0; figure < kLaunchFigures; ++figure) {
        const Coverage present = covered(draws[figure].now);
        spreads[figure] = {.now = present.uncertainty,
                           .low = present.low,
                           .high = present.high,
                           .before = covered(draws[figure].before).uncertainty,
                           .difference = covered(draws[figure].difference).uncertainty};
    }
    return spreads;
}

}  // namespace bolthole
