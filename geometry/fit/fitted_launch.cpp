#include "geometry/fit/fitted_launch.h"

#include <algorithm>
#include <cassert>

#include "geometry/fit/launch_numbers.h"
#include "geometry/fit/season.h"

namespace bolthole {

std::optional<LaunchRun> fittedLaunch(const Car& car, const LaunchFit& fit, std::size_t row) {
    assert(fit.end == FitEnd::done);
    const Season season = seasonOf(car);
    const auto pass = std::ranges::find(season.passes, row, &SeasonPass::row);
    if (pass == season.passes.end()) {
        return std::nullopt;
    }
    const LaunchInputs& inputs = season.launches[pass->launch].inputs;
    LaunchNumbers numbers = numbersOf(inputs);
    for (const FittedNumber& number : fit.numbers) {
        if (number.number != LaunchNumber::friction || number.surface == season.surfaces[pass->surface]) {
            numbers.of(number.number) = number.after;
        }
    }
    LaunchRun run = simulateLaunch(withNumbers(inputs, numbers));
    return run.end == LaunchEnd::done ? std::optional(std::move(run)) : std::nullopt;
}

}  // namespace bolthole
