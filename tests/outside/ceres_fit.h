// Least squares with Cauchy's loss and normal priors by Ceres Solver, on residuals that it differences
// itself.
//
// S. Agarwal, K. Mierle and others, "Ceres Solver", ceres-solver.org; used as the library Debian ships. Its
// CauchyLoss(a) is rho(s) = a^2 log(1 + s/a^2).
#pragma once

#include <Eigen/Core>
#include <functional>
#include <optional>
#include <vector>

namespace bolthole {

/// What is to be fitted. Unknowns are counted in standard uncertainties from their priors' middles.
struct CeresFitProblem {
    std::vector<double> measured{};
    std::vector<double> deviation{};  ///< standard, of each
    double lossWidth = 1;
    Eigen::Index unknowns = 0;
    /// One value a measurement.
    std::function<Eigen::VectorXd(const Eigen::VectorXd&)> predict{};
};

/// The minimum that is found from the priors' middles; nothing where Ceres did not converge.
[[nodiscard]] std::optional<Eigen::VectorXd> fitByCeres(const CeresFitProblem& problem);

}  // namespace bolthole
