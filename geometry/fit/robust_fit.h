// Bayesian least squares with a robust loss: a few unknowns that are known roughly before, told by
// measurements of which some may be gross mistakes and whose scatter is not known. Knows nothing of cars.
//
// Unknowns are counted in standard uncertainties from what was known before: 0 is the prior's middle, 1 its
// standard uncertainty; priors of different unknowns are independent. What was known before enters as one
// more measurement of each unknown (A. Gelman et al., "Bayesian Data Analysis", 3rd ed., ch. 14, "Including
// numerical prior information"; from memory). Minimized is
//   sum of rho((measured - predicted)^2 / variance) + sum of unknown^2,   rho(s) = c^2 log(1 + s/c^2),
// Cauchy's loss, by Eigen's LevenbergMarquardt (a translation of MINPACK's lmder). c is kLossWidth.
#pragma once

#include <Eigen/Core>
#include <cstddef>
#include <optional>
#include <vector>

namespace bolthole {

/// Width of Cauchy's loss in standard deviations, at which 95 % of least squares' efficiency is left where
/// scatter is normal (P. W. Holland, R. E. Welsch, "Robust regression using iteratively reweighted
/// least-squares", Communications in Statistics A6, 1977; from memory).
inline constexpr double kLossWidth = 2.385;

/// Predicts all measurements from the unknowns.
class FitModel {
  public:
    virtual ~FitModel() = default;
    /// How many unknowns there are.
    [[nodiscard]] virtual Eigen::Index unknowns() const = 0;
    /// One value a measurement, into `predicted`. False: given up.
    virtual bool predict(const Eigen::VectorXd& unknowns, Eigen::VectorXd& predicted) = 0;
    /// Their derivatives, a row a measurement, a column an unknown. False: given up.
    virtual bool slopes(const Eigen::VectorXd& unknowns, Eigen::MatrixXd& slopes) = 0;
    /// The same on the average over `reach` to either side of each unknown, which is how far it may be off:
    /// where the model is not linear within that, the slope at one place says too much or too little of what
    /// is known. A model that is linear has nothing to add.
    virtual bool slopesOver(const Eigen::VectorXd& unknowns, const Eigen::VectorXd& /*reach*/,
                            Eigen::MatrixXd& slopes) {
        return this->slopes(unknowns, slopes);
    }
};

/// What was measured.
struct FitData {
    std::vector<double> measured{};
    std::vector<std::size_t> group{};  ///< of each: measurements of a group scatter alike
    std::size_t groups = 0;
    double reading = 0;  ///< standard uncertainty of reading one of them, beside its group's scatter; above 0

    [[nodiscard]] std::size_t count() const { return measured.size(); }
};

/// What is known of a group's scatter before: its logarithm is normal. Both in units of what is measured, the
/// spread a factor's logarithm.
struct ScatterPrior {
    double middle = 1;
    double spread = 1;
};

struct FitOptions {
    /// Nothing: plain least squares.
    std::optional<double> lossWidth = kLossWidth;
    ScatterPrior scatter{};
    /// Standard deviations of the groups where they are known: then nothing is estimated of them.
    std::optional<std::vector<double>> knownScatter = std::nullopt;
    /// Scatters that the search starts from, large to small: with the first even a bad start is no mistake.
    std::vector<double> starts{};
    /// Unknowns that may tell nothing where they stand and much elsewhere: grip, where the tires hold anyway.
    /// Slopes can't find the way there, so the search also starts from the best of a row of values of each.
    std::vector<Eigen::Index> scanned{};
};

/// What came of it. Starts pessimistic.
struct RobustFit {
    bool done = false;            ///< false: given up, or nothing to fit; then nothing else may be used
    Eigen::VectorXd unknowns;     ///< the minimum
    Eigen::MatrixXd covariance;   ///< of the unknowns: see below
    Eigen::VectorXd predicted;    ///< at the minimum
    Eigen::MatrixXd slopes;       ///< there
    std::vector<double> scatter;  ///< standard, of each group, the likeliest
    std::vector<double> weights;  ///< of each measurement: 1 in full, near 0 a mistake
};

/// Fits. The covariance is the inverse of A^T S^-1 A + I: the posterior's, the model made linear over all
/// that the covariance itself leaves possible (posterior linearization: A. F. Garcia-Fernandez et al.,
/// "Posterior linearization filter", IEEE Transactions on Signal Processing 63, 2015; from memory), in turn
/// until it stays. A are the slopes of that line, S the measurements' variances, over the weights of the loss
/// rho'(s), and what the line leaves of its nonlinearity. Where the model is linear that is the
/// Gauss-Newton form (Gelman et al., ch. 4, normal approximation; from memory). A group's scatter counts in
/// it by the root of its mean square over its posterior. A posterior with a second top, or one that bends
/// along a single unknown as much as it is wide, is wider than this says.
///
/// A group's scatter is where its posterior density is greatest, the unknowns integrated out of the model
/// made linear at the minimum (marginal likelihood; H. D. Patterson, R. Thompson, "Recovery of inter-block
/// information when block sizes are unequal", Biometrika 58, 1971; from memory): with few measurements least
/// squares' own residuals are too small. Measurements farther out than kMistake standard deviations count the
/// less, the farther they are. Fit and scatter follow in turn until neither moves.
[[nodiscard]] RobustFit fitRobustly(const FitData& data, FitModel& model, const FitOptions& options = {});
inline constexpr double kMistake = 3;

/// What the other measurements say of one.
struct LeftOut {
    Eigen::VectorXd unknowns;  ///< from the others alone, the model linear, their weights kept
    double variance = 0;       ///< of what the unknowns predict for it
    double scatter = 0;        ///< its group's, from the others alone: the root of its mean square
};
[[nodiscard]] LeftOut leaveOut(const FitData& data, const RobustFit& fit, std::size_t measurement,
                               const FitOptions& options = {});

}  // namespace bolthole
