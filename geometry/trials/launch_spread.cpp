#include "geometry/trials/launch_spread.h"

#include <cmath>
#include <vector>

namespace bolthole {

namespace {

/// Mean and spread of numbers as they come (B. P. Welford, "Note on a Method for Calculating Corrected Sums
/// of Squares and Products", Technometrics 4, 1962; from memory).
class RunningSpread {
  public:
    void add(double value) {
        ++count_;
        const double off = value - mean_;
        mean_ += off / static_cast<double>(count_);
        squares_ += off * (value - mean_);
    }
    [[nodiscard]] double deviation() const {
        return count_ < kLeastDraws ? std::numeric_limits<double>::quiet_NaN()
                                    : std::sqrt(squares_ / static_cast<double>(count_ - 1));
    }

  private:
    std::size_t count_ = 0;
    double mean_ = 0;
    double squares_ = 0;
};

struct FigureDraws {
    RunningSpread now;
    RunningSpread before;
    RunningSpread difference;

    void add(const std::optional<double>& with, const std::optional<double>& without) {
        if (with) {
            now.add(*with);
        }
        if (without) {
            before.add(*without);
        }
        if (with && without) {
            difference.add(*with - *without);
        }
    }
};

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
        spreads[figure] = {draws[figure].now.deviation(), draws[figure].before.deviation(),
                           draws[figure].difference.deviation()};
    }
    return spreads;
}

}  // namespace bolthole
