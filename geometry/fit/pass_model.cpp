#include "geometry/fit/pass_model.h"

#include <utility>

#include "geometry/dynamics/launch_limits.h"
#include "geometry/dynamics/launch_run.h"
#include "geometry/units/parallel.h"

namespace bolthole {

namespace {

// Rows are not wanted: one at the release will do.
constexpr LaunchOptions kTimesOnly{.every = 10};

}  // namespace

PassModel::PassModel(const Season& season, int threads, std::function<bool()> isCancelled,
                     std::function<void(long)> launched)
    : season_(season),
      threads_(threads),
      isCancelled_(std::move(isCancelled)),
      launched_(std::move(launched)) {}

Eigen::Index PassModel::unknowns() const {
    return static_cast<Eigen::Index>(season_.priors.size());
}

LaunchInputs PassModel::inputsAt(std::size_t launch, const Eigen::VectorXd& unknowns) const {
    const SeasonLaunch& base = season_.launches[launch];
    LaunchNumbers numbers = numbersOf(base.inputs);
    for (std::size_t index = 0; index < season_.priors.size(); ++index) {
        const NumberPrior& prior = season_.priors[index];
        const bool isOthers = prior.number == LaunchNumber::friction && prior.surface != base.surface;
        if (!isOthers) {
            numbers.of(prior.number) =
                prior.value + prior.uncertainty * unknowns[static_cast<Eigen::Index>(index)];
        }
    }
    return withNumbers(base.inputs, numbers);
}

bool PassModel::launchEach(const std::vector<std::size_t>& launches,
                           const std::vector<Eigen::VectorXd>& unknowns,
                           std::vector<std::optional<double>>& times) {
    times.assign(launches.size(), std::nullopt);
    std::atomic<std::size_t> next = 0;
    std::atomic<bool> givenUp = false;
    const auto work = [&] {
        LaunchSimulator simulator;
        LaunchRun run;
        for (std::size_t index = next++; index < launches.size() && !givenUp; index = next++) {
            if (isCancelled_ && isCancelled_()) {
                givenUp = true;
                return;
            }
            simulator.run(inputsAt(launches[index], unknowns[index]), kTimesOnly, run);
            if (run.end == LaunchEnd::done) {
                times[index] = run.figures.sixtyFoot;
            }
        }
    };
    inParallel(threads_, work);
    if (launched_) {
        launched_(static_cast<long>(launches.size()));
    }
    return !givenUp;
}

bool PassModel::predict(const Eigen::VectorXd& unknowns, Eigen::VectorXd& predicted) {
    if (last_.size() != unknowns.size() || last_ != unknowns || lastTimes_.empty()) {
        std::vector<std::size_t> launches(season_.launches.size());
        for (std::size_t launch = 0; launch < launches.size(); ++launch) {
            launches[launch] = launch;
        }
        last_ = unknowns;
        if (!launchEach(launches, std::vector<Eigen::VectorXd>(launches.size(), unknowns), lastTimes_)) {
            lastTimes_.clear();
            return false;
        }
    }
    predicted.resize(static_cast<Eigen::Index>(season_.passes.size()));
    for (std::size_t pass = 0; pass < season_.passes.size(); ++pass) {
        predicted[static_cast<Eigen::Index>(pass)] =
            lastTimes_[season_.passes[pass].launch].value_or(kMostTime);
    }
    return true;
}

bool PassModel::slopes(const Eigen::VectorXd& unknowns, Eigen::MatrixXd& slopes) {
    return slopesOver(unknowns, Eigen::VectorXd::Zero(unknowns.size()), slopes);
}

bool PassModel::slopesOver(const Eigen::VectorXd& unknowns, const Eigen::VectorXd& reach,
                           Eigen::MatrixXd& slopes) {
    const Eigen::VectorXd width = reach.cwiseMax(kStep);
    Eigen::VectorXd middle;
    if (!predict(unknowns, middle)) {
        return false;
    }
    // A launch after the other, of each unknown that it hangs on a step down and a step up.
    struct Step {
        std::size_t launch;
        Eigen::Index unknown;
    };
    std::vector<Step> steps;
    std::vector<std::size_t> launches;
    std::vector<Eigen::VectorXd> places;
    for (std::size_t launch = 0; launch < season_.launches.size(); ++launch) {
        for (std::size_t index = 0; index < season_.priors.size(); ++index) {
            const NumberPrior& prior = season_.priors[index];
            if (prior.number == LaunchNumber::friction && prior.surface != season_.launches[launch].surface) {
                continue;
            }
            steps.push_back({launch, static_cast<Eigen::Index>(index)});
            for (const double way : {-1.0, 1.0}) {
                launches.push_back(launch);
                places.push_back(unknowns);
                places.back()[steps.back().unknown] += way * width[steps.back().unknown];
            }
        }
    }
    std::vector<std::optional<double>> times;
    if (!launchEach(launches, places, times)) {
        return false;
    }
    Eigen::MatrixXd byLaunch =
        Eigen::MatrixXd::Zero(static_cast<Eigen::Index>(season_.launches.size()), this->unknowns());
    for (std::size_t index = 0; index < steps.size(); ++index) {
        const std::optional<double>& low = times[2 * index];
        const std::optional<double>& high = times[2 * index + 1];
        const std::optional<double>& here = lastTimes_[steps[index].launch];
        double& slope = byLaunch(static_cast<Eigen::Index>(steps[index].launch), steps[index].unknown);
        const double step = width[steps[index].unknown];
        if (low && high) {
            slope = (*high - *low) / (2 * step);
        } else if (here && high) {
            slope = (*high - *here) / step;
        } else if (low && here) {
            slope = (*here - *low) / step;
        }
    }
    slopes.resize(static_cast<Eigen::Index>(season_.passes.size()), this->unknowns());
    for (std::size_t pass = 0; pass < season_.passes.size(); ++pass) {
        slopes.row(static_cast<Eigen::Index>(pass)) =
            byLaunch.row(static_cast<Eigen::Index>(season_.passes[pass].launch));
    }
    return true;
}

}  // namespace bolthole
