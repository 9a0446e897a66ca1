// What the passes teach the launch model: its least known numbers fitted to the sixty-foot times, with what
// was entered as prior.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "geometry/car/car.h"
#include "geometry/edits/edit.h"
#include "geometry/fit/robust_fit.h"
#include "geometry/fit/season.h"

namespace bolthole {

/// Standard uncertainty of a clock's sixty-foot time, s: it reads to a thousandth, but beam and rollout do
/// not repeat so well. A judgement, no source.
inline constexpr double kClockUncertainty = 0.010;
/// What the passes of a surface scatter by before any was run, s: 0.02, a factor of two either way being
/// within one standard deviation. A judgement, no source.
inline constexpr ScatterPrior kPassScatter{.middle = 0.02, .spread = 0.7};

/// A number before and after.
struct FittedNumber {
    LaunchNumber number = LaunchNumber::friction;
    std::string surface{};  ///< friction's
    double before = 0;      ///< as in NumberPrior
    double beforeU = 0;     ///< standard
    double after = 0;
    double afterU = 0;  ///< standard

    /// How much of what is not known of it the passes took away, percent: 100 (1 - (after_u/before_u)^2).
    [[nodiscard]] double toldPercent() const { return 100 * (1 - afterU * afterU / (beforeU * beforeU)); }
};

/// A pass against the model.
struct FittedPass {
    std::size_t row = 0;      ///< of Car::passes
    std::size_t surface = 0;  ///< index into LaunchFit::surfaces
    double run = 0;           ///< s, by the clock
    double fitted = 0;        ///< s, by the model fitted to all
    double weight = 0;        ///< 1: counted in full; near 0: taken for a mistake
    double predicted = 0;     ///< s, by the model fitted to all the others
    double predictedU = 0;    ///< standard, s: model, scatter of its surface and clock

    [[nodiscard]] double residual() const { return run - fitted; }
    /// Whether it was run within what was predicted at 95 %.
    [[nodiscard]] bool isInside() const;
};

/// A surface and how its passes scatter.
struct FittedSurface {
    std::string name{};
    std::size_t passes = 0;
    double scatter = 0;  ///< standard, s, beside the clock's
};

/// Why there is no fit, or that there is one.
enum class FitEnd {
    notDone,    ///< nothing was attempted
    missing,    ///< the car on the bench lacks numbers: LaunchFit::missing
    noPass,     ///< no pass has a time, is not struck and can be computed: LaunchFit::unused says why
    cancelled,  ///< given up
    done
};

/// Starts pessimistic: numbers and passes are empty unless it is done.
struct LaunchFit {
    FitEnd end = FitEnd::notDone;
    std::vector<MissingInput> missing{};
    std::vector<UnusedPass> unused{};
    std::vector<FittedNumber> numbers{};
    std::vector<FittedPass> passes{};  ///< in the order of Car::passes
    std::vector<FittedSurface> surfaces{};
    std::size_t lastSurface = 0;  ///< that of the last pass used: whose friction goes into the car
    long launches = 0;            ///< computed on the way

    /// How many passes were run within what was predicted for them without themselves.
    [[nodiscard]] std::size_t inside() const;
    /// The number, friction's of that surface; null where it was not fitted.
    [[nodiscard]] const FittedNumber* find(LaunchNumber number, std::size_t surface = 0) const;
};

struct LaunchFitOptions {
    int threads = 2;
    /// Asked now and then from any thread; true: give up.
    std::function<bool()> isCancelled{};
    /// Told now and then from one thread: 0 to 1, never less than before.
    std::function<void(double)> progress{};
    std::optional<double> lossWidth = kLossWidth;  ///< as in FitOptions
};

/// Fits. Every pass is a measurement of its launch's sixty foot, standard uncertainty kClockUncertainty and
/// the scatter of its surface, which is estimated; passes that are struck or have no time change nothing.
/// Predictions without a pass come from the model made linear at the fit, then launched. The same whatever
/// the number of threads. The car must have passed findFaults().
[[nodiscard]] LaunchFit fitLaunch(const Car& car, const LaunchFitOptions& options = {});

/// What takes the fit over into the car: every number but exact ones, rounded to what a person would write;
/// of frictions that of `surface`, or of the last pass's. The fit must be done.
[[nodiscard]] CorrectLaunch takeOver(const LaunchFit& fit, std::optional<std::size_t> surface = std::nullopt);

}  // namespace bolthole
