#include "geometry/fit/robust_fit.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <unsupported/Eigen/NonLinearOptimization>
#include <utility>

#include "geometry/algebra/dense.h"
#include "geometry/fit/linear_model.h"

namespace bolthole {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr int kMostEvaluations = 60;
/// How closely a minimum is found: parts of the cost and of the unknowns' size that a step must still gain.
struct Closeness {
    double cost;
    double unknowns;
};
constexpr Closeness kNear{1e-3, 1e-2};   // on the way
constexpr Closeness kClose{1e-5, 1e-4};  // while scatter still moves: about a hundredth of an uncertainty
constexpr Closeness kThere{1e-10, 1e-8};
constexpr int kMostRounds = 8;         // of fit and scatter in turn
constexpr double kSameScatter = 0.03;  // of its logarithm; itself it is known to a quarter or so
constexpr double kNormalPerMad =
    1.4826;                        // standard deviation of a normal distribution over its median deviation
constexpr int kMostWidenings = 4;  // of the covariance, each with the points of the one before
constexpr double kSameVariance = 0.05;     // a part of it by which it must still move
constexpr double kMiddleWeight = 1.0 / 3;  // of the unscented transform's middle point; a judgement
// The row of values of an unknown that is scanned, in prior uncertainties.
constexpr double kScanReach = 2.5;
constexpr double kScanStep = 0.5;

/// The root of rho: what Levenberg and Marquardt square. With its derivative by z.
struct LossRoot {
    double value = 0;
    double slope = 1;
};
LossRoot lossRoot(double z, const std::optional<double>& width) {
    if (!width) {
        return {z, 1};
    }
    const double ratio = z * z / (*width * *width);
    constexpr double kTiny = 1e-8;
    if (ratio < kTiny) {
        return {z, 1};
    }
    const double root = std::copysign(*width * std::sqrt(std::log1p(ratio)), z);
    return {root, z / (root * (1 + ratio))};
}

/// rho'(z^2).
double lossWeight(double z, const std::optional<double>& width) {
    return width ? 1 / (1 + z * z / (*width * *width)) : 1;
}

/// What Eigen's minimizer asks for: residuals of the measurements, then of the priors.
class Residuals {
  public:
    Residuals(const FitData& data, FitModel& model, const FitOptions& options, const VectorXd& deviations,
              Index unknowns)
        : data_(data), model_(model), options_(options), deviations_(deviations), unknowns_(unknowns) {}

    /// Whether the model gave up: Eigen's search does not heed it where it starts.
    [[nodiscard]] bool isGivenUp() const { return givenUp_; }
    [[nodiscard]] const MatrixXd& slopes() const { return slopes_; }
    [[nodiscard]] int inputs() const { return static_cast<int>(unknowns_); }
    [[nodiscard]] int values() const { return static_cast<int>(measurements() + unknowns_); }

    int operator()(const VectorXd& at, VectorXd& residuals) {
        if (!model_.predict(at, predicted_)) {
            givenUp_ = true;
            return kStop;
        }
        for (Index row = 0; row < measurements(); ++row) {
            residuals[row] = lossRoot(misfit(row), options_.lossWidth).value;
        }
        residuals.tail(unknowns_) = at;
        return 0;
    }

    int df(const VectorXd& at, MatrixXd& jacobian) {
        if (!model_.predict(at, predicted_) || !model_.slopes(at, slopes_)) {
            givenUp_ = true;
            return kStop;
        }
        for (Index row = 0; row < measurements(); ++row) {
            const double slope = lossRoot(misfit(row), options_.lossWidth).slope;
            jacobian.row(row) = -slope / deviations_[row] * slopes_.row(row);
        }
        jacobian.bottomRows(unknowns_) = MatrixXd::Identity(unknowns_, unknowns_);
        return 0;
    }

  private:
    static constexpr int kStop = -1;

    [[nodiscard]] Index measurements() const { return static_cast<Index>(data_.count()); }
    [[nodiscard]] double misfit(Index row) const {
        return (data_.measured[static_cast<std::size_t>(row)] - predicted_[row]) / deviations_[row];
    }

    const FitData& data_;
    FitModel& model_;
    const FitOptions& options_;
    const VectorXd& deviations_;
    Index unknowns_;
    bool givenUp_ = false;
    VectorXd predicted_;
    MatrixXd slopes_;
};

/// From the unknowns at hand to the minimum; the slopes are those of the last step's beginning. False: given
/// up.
bool minimize(const FitData& data, FitModel& model, const FitOptions& options, const VectorXd& deviations,
              const Closeness& closeness, VectorXd& unknowns, MatrixXd& slopes) {
    Residuals residuals(data, model, options, deviations, unknowns.size());
    Eigen::LevenbergMarquardt<Residuals> search(residuals);
    search.parameters.maxfev = kMostEvaluations;
    search.parameters.ftol = closeness.cost;
    search.parameters.xtol = closeness.unknowns;
    search.parameters.factor = 1;  // the first step goes no farther than about one standard uncertainty
    search.minimize(unknowns);
    slopes = residuals.slopes();
    return !residuals.isGivenUp();
}

/// One fit on its way.
class Fitter {
  public:
    Fitter(const FitData& data, FitModel& model, const FitOptions& options, Index unknowns)
        : data_(data), model_(model), options_(options) {
        fit_.unknowns = VectorXd::Zero(unknowns);
        fit_.scatter =
            options.knownScatter.value_or(std::vector<double>(data.groups, options.scatter.middle));
    }

    RobustFit run() {
        const bool isFitted = options_.knownScatter.has_value() || (start() && alternate());
        fit_.done = isFitted && fit(fit_.scatter, kThere) && model_.slopes(fit_.unknowns, fit_.slopes);
        if (fit_.done) {
            weigh();
            takeMeanScatter();
            fit_.covariance = covariance();
            const VectorXd reach = fit_.covariance.diagonal().cwiseSqrt();
            fit_.done = model_.slopesOver(fit_.unknowns, reach, fit_.slopes);
            fit_.covariance = covariance();
            fit_.done = fit_.done && widen();
        }
        return std::move(fit_);
    }

  private:
    [[nodiscard]] bool fit(const std::vector<double>& scatter, const Closeness& closeness) {
        VectorXd deviations(static_cast<Index>(data_.count()));
        for (std::size_t row = 0; row < data_.count(); ++row) {
            deviations[static_cast<Index>(row)] = std::sqrt(varianceOf(data_, scatter, row));
        }
        return minimize(data_, model_, options_, deviations, closeness, fit_.unknowns, fit_.slopes) &&
               model_.predict(fit_.unknowns, fit_.predicted);
    }
    [[nodiscard]] double misfit(std::size_t row) const {
        return data_.measured[row] - fit_.predicted[static_cast<Index>(row)];
    }
    // The loss has many valleys while the unknowns are far off and the scatter small: it is narrowed step by
    // step.
    [[nodiscard]] bool start() {
        for (const double scatter : options_.starts) {
            if (!fit(std::vector<double>(data_.groups, scatter), kNear)) {
                return false;
            }
        }
        if (options_.starts.empty() && !fit(fit_.scatter, kNear)) {
            return false;
        }
        return tryScanned() && takeScatter();
    }
    // Sets out once more, from the best of the scanned values, and stays there where that is the deeper
    // valley.
    [[nodiscard]] bool tryScanned() {
        if (options_.scanned.empty()) {
            return true;
        }
        const double scatter = options_.starts.empty() ? fit_.scatter.front() : options_.starts.back();
        const VectorXd found = fit_.unknowns;
        const double cost = costAt(found, scatter);
        fit_.unknowns = scanned(scatter);
        if (!fit(std::vector<double>(data_.groups, scatter), kNear)) {
            return false;
        }
        if (!(costAt(fit_.unknowns, scatter) < cost)) {
            fit_.unknowns = found;
        }
        return model_.predict(fit_.unknowns, fit_.predicted);
    }
    [[nodiscard]] VectorXd scanned(double scatter) {
        VectorXd best = VectorXd::Zero(fit_.unknowns.size());
        double least = costAt(best, scatter);
        for (const Index unknown : options_.scanned) {
            VectorXd tried = best;
            for (double value = -kScanReach; value <= kScanReach; value += kScanStep) {
                tried[unknown] = value;
                const double cost = costAt(tried, scatter);
                if (cost < least) {
                    least = cost;
                    best = tried;
                }
            }
        }
        return best;
    }
    // What is minimized, with one scatter for all groups; infinite where the model gave up.
    [[nodiscard]] double costAt(const VectorXd& unknowns, double scatter) {
        if (!model_.predict(unknowns, fit_.predicted)) {
            return std::numeric_limits<double>::infinity();
        }
        double cost = unknowns.squaredNorm();
        for (std::size_t row = 0; row < data_.count(); ++row) {
            cost += std::pow(
                lossRoot(misfit(row) / std::hypot(data_.reading, scatter), options_.lossWidth).value, 2);
        }
        return cost;
    }
    [[nodiscard]] bool takeScatter() {
        std::vector<double> misfits;
        for (std::size_t row = 0; row < data_.count(); ++row) {
            misfits.push_back(std::abs(misfit(row)));
        }
        std::ranges::sort(misfits);
        const double median = (misfits[misfits.size() / 2] + misfits[(misfits.size() - 1) / 2]) / 2;
        fit_.scatter.assign(data_.groups, std::max(kNormalPerMad * median, data_.reading));
        return true;
    }
    [[nodiscard]] bool alternate() {
        for (int round = 0; round < kMostRounds; ++round) {
            const LinearModel linear(data_, fit_, options_);
            double moved = 0;
            for (std::size_t group = 0; group < data_.groups; ++group) {
                const double scatter = linear.scatterOf(group, fit_.scatter);
                moved = std::max(moved, std::abs(std::log(scatter / fit_.scatter[group])));
                fit_.scatter[group] = scatter;
            }
            if (!fit(fit_.scatter, kClose)) {
                return false;
            }
            if (moved < kSameScatter) {
                break;
            }
        }
        return true;
    }
    void takeMeanScatter() {
        meanScatter_ = fit_.scatter;
        for (std::size_t group = 0; group < data_.groups && !options_.knownScatter; ++group) {
            meanScatter_[group] =
                LinearModel(data_, fit_, options_).meanScatterOf(group, fit_.scatter, fit_.scatter[group]);
        }
    }
    [[nodiscard]] MatrixXd covariance() const {
        return LinearModel(data_, fit_, options_).solve(meanScatter_, fit_.weights).second;
    }
    // The covariance again and again with the model made linear over all that it leaves possible.
    [[nodiscard]] bool widen() {
        for (int round = 0; round < kMostWidenings; ++round) {
            const MatrixXd factor = CholeskyFactors(fit_.covariance).lower();
            MatrixXd spread;
            if (!spreadOver(factor, spread)) {
                return false;
            }
            const VectorXd before = fit_.covariance.diagonal();
            fit_.covariance = covarianceOver(factor, spread);
            const VectorXd ratio = fit_.covariance.diagonal().cwiseQuotient(before);
            if ((ratio.array() - 1).abs().maxCoeff() < kSameVariance) {
                break;
            }
        }
        return true;
    }
    // Predictions at the middle and, two a column of the covariance's factor, at points to either side of it
    // (the unscented transform: S. J. Julier, J. K. Uhlmann, "Unscented filtering and nonlinear estimation",
    // Proceedings of the IEEE 92, 2004; from memory), off their mean; each by the root of its weight.
    [[nodiscard]] bool spreadOver(const MatrixXd& factor, MatrixXd& spread) {
        const Index size = factor.cols();
        const double reach = std::sqrt(static_cast<double>(size) / (1 - kMiddleWeight));
        spread.resize(static_cast<Index>(data_.count()), 2 * size + 1);
        VectorXd weights(2 * size + 1);
        VectorXd predicted;
        for (Index column = 0; column <= 2 * size; ++column) {
            VectorXd place = fit_.unknowns;
            if (column < 2 * size) {
                place += (column < size ? reach : -reach) * factor.col(column % size);
            }
            if (!model_.predict(place, predicted)) {
                return false;
            }
            spread.col(column) = predicted;
            weights[column] =
                column < 2 * size ? (1 - kMiddleWeight) / (2 * static_cast<double>(size)) : kMiddleWeight;
        }
        spread.colwise() -= (spread * weights).eval();
        spread = (spread * weights.cwiseSqrt().asDiagonal()).eval();
        return true;
    }
    // What the line through those points leaves of their spread counts as one more error, the same for all
    // measurements that bend alike; taken into the inverse by Woodbury's identity.
    [[nodiscard]] MatrixXd covarianceOver(const MatrixXd& factor, const MatrixXd& spread) const {
        const Index size = factor.cols();
        MatrixXd points = MatrixXd::Zero(size, 2 * size + 1);
        points.leftCols(size) = factor / std::numbers::sqrt2;
        points.middleCols(size, size) = -factor / std::numbers::sqrt2;
        const MatrixXd slopes =
            CholeskyFactors(fit_.covariance).solve(product(points, spread.transpose())).transpose();
        const MatrixXd nonlinear = spread - product(slopes, points);
        VectorXd inverse(spread.rows());
        for (Index row = 0; row < inverse.size(); ++row) {
            const auto measurement = static_cast<std::size_t>(row);
            inverse[row] = fit_.weights[measurement] / varianceOf(data_, meanScatter_, measurement);
        }
        const MatrixXd weighted = inverse.asDiagonal() * slopes;
        const MatrixXd nonlinearWeighted = product(nonlinear.transpose(), weighted);
        const MatrixXd inner = MatrixXd::Identity(nonlinear.cols(), nonlinear.cols()) +
                               product(nonlinear.transpose(), inverse.asDiagonal() * nonlinear);
        const MatrixXd normal =
            MatrixXd::Identity(size, size) + product(slopes.transpose(), weighted) -
            product(nonlinearWeighted.transpose(), CholeskyFactors(inner).solve(nonlinearWeighted));
        return CholeskyFactors(normal).inverse();
    }
    void weigh() {
        fit_.weights.clear();
        for (std::size_t row = 0; row < data_.count(); ++row) {
            fit_.weights.push_back(lossWeight(misfit(row) / std::sqrt(varianceOf(data_, fit_.scatter, row)),
                                              options_.lossWidth));
        }
    }

    const FitData& data_;
    FitModel& model_;
    const FitOptions& options_;
    std::vector<double> meanScatter_;  // with what is possible of it: for uncertainties
    RobustFit fit_;
};

}  // namespace

RobustFit fitRobustly(const FitData& data, FitModel& model, const FitOptions& options) {
    if (data.count() == 0 || model.unknowns() == 0) {
        return {};
    }
    return Fitter(data, model, options, model.unknowns()).run();
}

LeftOut leaveOut(const FitData& data, const RobustFit& fit, std::size_t measurement,
                 const FitOptions& options) {
    const LinearModel linear(data, fit, options);
    const std::size_t group = data.group[measurement];
    std::vector<double> scatter = fit.scatter;
    std::vector<double> meanScatter = fit.scatter;
    if (!options.knownScatter) {
        scatter[group] = linear.scatterOf(group, fit.scatter, measurement);
        meanScatter[group] = linear.meanScatterOf(group, fit.scatter, scatter[group], measurement);
    }
    LeftOut left;
    left.unknowns = linear.solve(scatter, fit.weights, measurement).first;
    const MatrixXd covariance = linear.solve(meanScatter, fit.weights, measurement).second;
    // How the others move the unknowns, from where the fit found them: where the model is not linear, the
    // minimum of what is linear lies beside the model's own.
    left.unknowns += fit.unknowns - linear.solve(fit.scatter, fit.weights).first;
    const VectorXd slope = fit.slopes.row(static_cast<Index>(measurement));
    left.variance = slope.dot(covariance * slope);
    left.scatter = meanScatter[group];
    return left;
}

}  // namespace bolthole
