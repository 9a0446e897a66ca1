// The model of a fit made linear at its minimum, and what scatter follows from it. Part of robust_fit.cpp.
#pragma once

#include <Eigen/Core>
#include <cstddef>
#include <utility>
#include <vector>

#include "geometry/fit/robust_fit.h"

namespace bolthole {

/// Variance of one measurement: its group's scatter and its own reading.
[[nodiscard]] double varianceOf(const FitData& data, const std::vector<double>& scatter,
                                std::size_t measurement);

/// Keeps `data`, `fit` and `options` by reference.
class LinearModel {
  public:
    LinearModel(const FitData& data, const RobustFit& fit, const FitOptions& options);

    static constexpr std::size_t kNone = static_cast<std::size_t>(-1);

    /// The group's scatter, those of the others as in `scatter`, without measurement `but`: where its
    /// posterior is greatest.
    [[nodiscard]] double scatterOf(std::size_t group, const std::vector<double>& scatter,
                                   std::size_t but = kNone) const;
    /// The same, but the root of its mean square over the posterior around `likeliest`, what scatterOf()
    /// gave: what a few measurements leave possible of it makes everything more uncertain. Some twenty times
    /// the work of one density.
    [[nodiscard]] double meanScatterOf(std::size_t group, const std::vector<double>& scatter,
                                       double likeliest, std::size_t but = kNone) const;
    /// The unknowns from weighted measurements but one, and their covariance.
    [[nodiscard]] std::pair<Eigen::VectorXd, Eigen::MatrixXd> solve(const std::vector<double>& scatter,
                                                                    const std::vector<double>& weights,
                                                                    std::size_t but = kNone) const;

  private:
    /// One group's scatter, everything else held.
    struct ScatterSearch {
        std::size_t group;
        std::size_t but;
        double middle;  // of the prior, a logarithm as the others
        double spread;
        Eigen::MatrixXd others;  // normal equations of all other groups and the priors
        Eigen::VectorXd pull;

        [[nodiscard]] double low() const;
        [[nodiscard]] double high() const;
    };
    [[nodiscard]] ScatterSearch searchOf(std::size_t group, const std::vector<double>& scatter,
                                         std::size_t but) const;
    [[nodiscard]] double badness(const ScatterSearch& search, double logarithm) const;
    void add(std::size_t row, double variance, Eigen::MatrixXd& normal, Eigen::VectorXd& pull) const;

    const FitData& data_;
    const Eigen::MatrixXd& slopes_;
    const FitOptions& options_;
    Eigen::VectorXd from_;  // what is measured over the linear model at the prior's middle
    std::vector<double> shares_;
};

}  // namespace bolthole
