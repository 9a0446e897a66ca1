#include "geometry/fit/launch_fit.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "geometry/fit/pass_model.h"
#include "geometry/units/say.h"
#include "geometry/units/uncertainty_text.h"

namespace bolthole {

namespace {

// s, of everything but the clock: where the search starts, and what the loss is narrowed to before scatter is
// estimated.
constexpr double kFirstScatters[] = {0.3, 0.1, 0.03};
// How often a fit launches its passes, roughly, for each unknown: for progress alone.
constexpr double kUsualRounds = 30;
constexpr double kAlmost = 0.97;

/// Turns launches done into progress that never falls and never ends before the end.
class Progress {
  public:
    Progress(const LaunchFitOptions& options, const Season& season)
        : tell_(options.progress),
          expected_(kUsualRounds * static_cast<double>(season.priors.size() * season.launches.size() + 1)) {}

    void launched(long count) {
        launches_ += count;
        if (tell_) {
            tell_(kAlmost * (1 - std::exp(-2 * static_cast<double>(launches_) / expected_)));
        }
    }
    void end() const {
        if (tell_) {
            tell_(1);
        }
    }
    [[nodiscard]] long launches() const { return launches_; }

  private:
    const std::function<void(double)>& tell_;
    double expected_;
    long launches_ = 0;
};

/// Takes launches out that no pass stands for any more.
void keepLaunchesInUse(Season& season) {
    std::vector<SeasonLaunch> kept;
    std::vector<std::optional<std::size_t>> places(season.launches.size());
    for (SeasonPass& pass : season.passes) {
        std::optional<std::size_t>& place = places[pass.launch];
        if (!place) {
            place = kept.size();
            kept.push_back(std::move(season.launches[pass.launch]));
        }
        pass.launch = *place;
    }
    season.launches = std::move(kept);
}

/// Takes passes out that the launch as entered does not get to sixty foot: what it says of them is nothing.
bool dropUnlaunched(Season& season, const LaunchFitOptions& options, Progress& progress) {
    PassModel model(season, options.threads, options.isCancelled,
                    [&progress](long count) { progress.launched(count); });
    std::vector<std::size_t> launches;
    for (std::size_t launch = 0; launch < season.launches.size(); ++launch) {
        launches.push_back(launch);
    }
    const Eigen::VectorXd entered = Eigen::VectorXd::Zero(model.unknowns());
    std::vector<std::optional<double>> times;
    if (!model.launchEach(launches, std::vector<Eigen::VectorXd>(launches.size(), entered), times)) {
        return false;
    }
    std::erase_if(season.passes, [&](const SeasonPass& pass) {
        const bool isLost = !times[pass.launch];
        if (isLost) {
            season.unused.push_back(
                {pass.row, say("its launch, computed as entered, does not get to 60 ft")});
        }
        return isLost;
    });
    std::ranges::sort(season.unused, {}, &UnusedPass::row);
    keepLaunchesInUse(season);
    return true;
}

/// One fit of a season.
class Fitting {
  public:
    Fitting(Season season, const LaunchFitOptions& options)
        : season_(std::move(season)), options_(options), progress_(options, season_) {}

    LaunchFit run() {
        result_.missing = season_.missing;
        if (!season_.missing.empty()) {
            return ended(FitEnd::missing);
        }
        if (!dropUnlaunched(season_, options_, progress_)) {
            return ended(FitEnd::cancelled);
        }
        if (season_.passes.empty() || season_.priors.empty()) {
            return ended(FitEnd::noPass);
        }
        PassModel model(season_, options_.threads, options_.isCancelled,
                        [this](long count) { progress_.launched(count); });
        const FitData data = dataOf();
        const FitOptions fitOptions{.lossWidth = options_.lossWidth,
                                    .scatter = kPassScatter,
                                    .starts = {std::begin(kFirstScatters), std::end(kFirstScatters)},
                                    .scanned = frictions()};
        const RobustFit fit = fitRobustly(data, model, fitOptions);
        if (!fit.done || !predictEach(data, fit, fitOptions, model)) {
            return ended(FitEnd::cancelled);
        }
        writeNumbers(fit);
        writeSurfaces(fit);
        progress_.end();
        return ended(FitEnd::done);
    }

  private:
    LaunchFit ended(FitEnd end) {
        result_.end = end;
        result_.unused = season_.unused;
        result_.launches = progress_.launches();
        if (end != FitEnd::done) {
            result_.passes.clear();
        }
        return std::move(result_);
    }

    // Where the tires hold anyway friction tells nothing, and a little below everything.
    [[nodiscard]] std::vector<Eigen::Index> frictions() const {
        std::vector<Eigen::Index> found;
        for (std::size_t index = 0; index < season_.priors.size(); ++index) {
            if (season_.priors[index].number == LaunchNumber::friction) {
                found.push_back(static_cast<Eigen::Index>(index));
            }
        }
        return found;
    }

    [[nodiscard]] FitData dataOf() const {
        FitData data{.groups = season_.surfaces.size(), .reading = kClockUncertainty};
        for (const SeasonPass& pass : season_.passes) {
            data.measured.push_back(pass.sixtyFoot);
            data.group.push_back(pass.surface);
        }
        return data;
    }

    bool predictEach(const FitData& data, const RobustFit& fit, const FitOptions& fitOptions,
                     PassModel& model) {
        std::vector<LeftOut> others;
        std::vector<std::size_t> launches;
        std::vector<Eigen::VectorXd> places;
        for (std::size_t pass = 0; pass < season_.passes.size(); ++pass) {
            if (options_.isCancelled && options_.isCancelled()) {
                return false;
            }
            others.push_back(leaveOut(data, fit, pass, fitOptions));
            launches.push_back(season_.passes[pass].launch);
            places.push_back(others.back().unknowns);
        }
        std::vector<std::optional<double>> times;
        if (!model.launchEach(launches, places, times)) {
            return false;
        }
        for (std::size_t pass = 0; pass < season_.passes.size(); ++pass) {
            const auto row = static_cast<Eigen::Index>(pass);
            // The linear model's where what the others say does not get to sixty foot.
            const double linear = fit.predicted[row] + fit.slopes.row(row).dot(places[pass] - fit.unknowns);
            const LeftOut& left = others[pass];
            result_.passes.push_back({.row = season_.passes[pass].row,
                                      .surface = season_.passes[pass].surface,
                                      .run = season_.passes[pass].sixtyFoot,
                                      .fitted = fit.predicted[row],
                                      .weight = fit.weights[pass],
                                      .predicted = times[pass].value_or(linear),
                                      .predictedU = std::sqrt(left.variance + left.scatter * left.scatter +
                                                              kClockUncertainty * kClockUncertainty)});
        }
        result_.lastSurface = season_.passes.back().surface;
        return true;
    }

    void writeNumbers(const RobustFit& fit) {
        for (std::size_t index = 0; index < season_.priors.size(); ++index) {
            const NumberPrior& prior = season_.priors[index];
            const auto at = static_cast<Eigen::Index>(index);
            const bool isFriction = prior.number == LaunchNumber::friction;
            result_.numbers.push_back({.number = prior.number,
                                       .surface = isFriction ? season_.surfaces[prior.surface] : "",
                                       .before = prior.value,
                                       .beforeU = prior.uncertainty,
                                       .after = prior.value + prior.uncertainty * fit.unknowns[at],
                                       .afterU = prior.uncertainty * std::sqrt(fit.covariance(at, at))});
        }
    }

    void writeSurfaces(const RobustFit& fit) {
        for (std::size_t surface = 0; surface < season_.surfaces.size(); ++surface) {
            const auto count =
                static_cast<std::size_t>(std::ranges::count(season_.passes, surface, &SeasonPass::surface));
            result_.surfaces.push_back({season_.surfaces[surface], count, fit.scatter[surface]});
        }
    }

    Season season_;
    const LaunchFitOptions& options_;
    Progress progress_;
    LaunchFit result_;
};

double rounded(double value, double perUnit) {
    return std::round(value * perUnit) / perUnit;
}

// Of what is written into the car.
constexpr double kThousandths = 1000;  // frictions and scales
constexpr double kTenths = 10;         // percent

}  // namespace

bool FittedPass::isInside() const {
    return std::abs(run - predicted) <= kCoverage95 * predictedU;
}

std::size_t LaunchFit::inside() const {
    return static_cast<std::size_t>(std::ranges::count_if(passes, &FittedPass::isInside));
}

const FittedNumber* LaunchFit::find(LaunchNumber number, std::size_t surface) const {
    for (const FittedNumber& each : numbers) {
        const bool isSurface = number != LaunchNumber::friction ||
                               (surface < surfaces.size() && each.surface == surfaces[surface].name);
        if (each.number == number && isSurface) {
            return &each;
        }
    }
    return nullptr;
}

LaunchFit fitLaunch(const Car& car, const LaunchFitOptions& options) {
    return Fitting(seasonOf(car), options).run();
}

CorrectLaunch takeOver(const LaunchFit& fit, std::optional<std::size_t> surface) {
    CorrectLaunch edit;
    if (const FittedNumber* friction = fit.find(LaunchNumber::friction, surface.value_or(fit.lastSurface))) {
        edit.friction = rounded(friction->after, kThousandths);
    }
    if (const FittedNumber* stall = fit.find(LaunchNumber::stallSpeed)) {
        edit.stallSpeed = std::round(stall->after / kRpm) * kRpm;
    }
    if (const FittedNumber* slip = fit.find(LaunchNumber::peakSlip)) {
        edit.peakSlip = rounded(slip->after, kTenths);
    }
    for (const auto& [number, place] : {std::pair(LaunchNumber::torqueScale, &edit.torqueScale),
                                        std::pair(LaunchNumber::frontDampingScale, &edit.frontDampingScale),
                                        std::pair(LaunchNumber::rearDampingScale, &edit.rearDampingScale)}) {
        if (const FittedNumber* scale = fit.find(number)) {
            *place = rounded(scale->after, kThousandths);
        }
    }
    return edit;
}

}  // namespace bolthole
