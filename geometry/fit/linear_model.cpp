#include "geometry/fit/linear_model.h"

#include <algorithm>
#include <boost/math/tools/minima.hpp>
#include <cmath>

#include "geometry/algebra/dense.h"

namespace bolthole {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

namespace {

constexpr double kFarthestScatter = 4;  // spreads from the prior's middle that are searched
constexpr int kScatterBits = 20;
// The posterior's mean square: places to either side of its top, how many of its widths they reach, and the
// step of its logarithm by which the width is found.
constexpr int kScatterPlaces = 10;
constexpr double kScatterReach = 5;
constexpr double kCurvatureStep = 0.05;

}  // namespace

double varianceOf(const FitData& data, const std::vector<double>& scatter, std::size_t measurement) {
    const double own = scatter[data.group[measurement]];
    return data.reading * data.reading + own * own;
}

LinearModel::LinearModel(const FitData& data, const RobustFit& fit, const FitOptions& options)
    : data_(data), slopes_(fit.slopes), options_(options), from_(static_cast<Index>(data.count())) {
    for (Index row = 0; row < from_.size(); ++row) {
        from_[row] = data.measured[static_cast<std::size_t>(row)] - fit.predicted[row] +
                     slopes_.row(row).dot(fit.unknowns);
    }
    shares_.assign(data.count(), 1);
    if (options.lossWidth) {
        for (std::size_t row = 0; row < data.count(); ++row) {
            const double misfit = data.measured[row] - fit.predicted[static_cast<Index>(row)];
            const double z = std::abs(misfit) / std::sqrt(varianceOf(data, fit.scatter, row));
            shares_[row] = z > kMistake ? std::pow(kMistake / z, 4) : 1;
        }
    }
}

double LinearModel::scatterOf(std::size_t group, const std::vector<double>& scatter, std::size_t but) const {
    const ScatterSearch search = searchOf(group, scatter, but);
    return std::exp(
        boost::math::tools::brent_find_minima([&](double logarithm) { return badness(search, logarithm); },
                                              search.low(), search.high(), kScatterBits)
            .first);
}

double LinearModel::meanScatterOf(std::size_t group, const std::vector<double>& scatter, double likeliest,
                                  std::size_t but) const {
    const ScatterSearch search = searchOf(group, scatter, but);
    const double middle = std::log(likeliest);
    const double least = badness(search, middle);
    const double curvature =
        (badness(search, middle - kCurvatureStep) - 2 * least + badness(search, middle + kCurvatureStep)) /
        (kCurvatureStep * kCurvatureStep);
    // Where it hardly bends the prior alone says how wide it is.
    const double width = curvature > 0 ? std::min(std::sqrt(2 / curvature), search.spread) : search.spread;
    double squares = 0;
    double all = 0;
    for (int place = -kScatterPlaces; place <= kScatterPlaces; ++place) {
        const double logarithm = middle + kScatterReach * width * place / kScatterPlaces;
        const double weight = std::exp((least - badness(search, logarithm)) / 2);
        squares += weight * std::exp(2 * logarithm);
        all += weight;
    }
    return std::sqrt(squares / all);
}

std::pair<VectorXd, MatrixXd> LinearModel::solve(const std::vector<double>& scatter,
                                                 const std::vector<double>& weights, std::size_t but) const {
    const Index size = slopes_.cols();
    MatrixXd normal = MatrixXd::Identity(size, size);
    VectorXd pull = VectorXd::Zero(size);
    for (std::size_t row = 0; row < data_.count(); ++row) {
        if (row != but) {
            add(row, varianceOf(data_, scatter, row) / weights[row], normal, pull);
        }
    }
    const CholeskyFactors factors(normal);
    return {factors.solve(pull), factors.inverse()};
}

double LinearModel::ScatterSearch::low() const {
    return middle - kFarthestScatter * spread;
}

double LinearModel::ScatterSearch::high() const {
    return middle + kFarthestScatter * spread;
}

LinearModel::ScatterSearch LinearModel::searchOf(std::size_t group, const std::vector<double>& scatter,
                                                 std::size_t but) const {
    const Index size = slopes_.cols();
    ScatterSearch search{group,
                         but,
                         std::log(options_.scatter.middle),
                         options_.scatter.spread,
                         MatrixXd::Identity(size, size),
                         VectorXd::Zero(size)};
    for (std::size_t row = 0; row < data_.count(); ++row) {
        if (data_.group[row] != group && row != but) {
            add(row, varianceOf(data_, scatter, row) / shares_[row], search.others, search.pull);
        }
    }
    return search;
}

// Twice the negative logarithm of the scatter's posterior density, but for a constant.
double LinearModel::badness(const ScatterSearch& search, double logarithm) const {
    const double own = std::exp(logarithm);
    MatrixXd normal = search.others;
    VectorXd pull = search.pull;
    double sum = std::pow((logarithm - search.middle) / search.spread, 2);
    for (std::size_t row = 0; row < data_.count(); ++row) {
        if (data_.group[row] == search.group && row != search.but) {
            const double variance = (data_.reading * data_.reading + own * own) / shares_[row];
            add(row, variance, normal, pull);
            sum += std::log(variance) + std::pow(from_[static_cast<Index>(row)], 2) / variance;
        }
    }
    const CholeskyFactors factors(normal);
    return sum + factors.logDeterminant() - pull.dot(factors.solve(pull).col(0));
}

// To the lower half of the normal equations.
void LinearModel::add(std::size_t row, double variance, MatrixXd& normal, VectorXd& pull) const {
    const VectorXd slope = slopes_.row(static_cast<Index>(row));
    normal.selfadjointView<Eigen::Lower>().rankUpdate(slope, 1 / variance);
    pull += slope * (from_[static_cast<Index>(row)] / variance);
}

}  // namespace bolthole
