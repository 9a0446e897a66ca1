// Products and factors of matrices of any size, compiled here once: in each room that asks Eigen for one,
// they would take it seconds. Knows nothing of cars. Sizes that do not match are our own bugs, and asserted
// by Eigen.
#pragma once

#include <Eigen/Core>

namespace bolthole {

/// `left` times `right`.
[[nodiscard]] Eigen::MatrixXd product(const Eigen::MatrixXd& left, const Eigen::MatrixXd& right);

/// Cholesky's factors of a symmetric, positive definite matrix, of which the lower half alone is read. NaN
/// where it is not positive definite.
class CholeskyFactors {
  public:
    explicit CholeskyFactors(const Eigen::MatrixXd& matrix);

    /// L, with L L^T the matrix; 0 above its diagonal.
    [[nodiscard]] const Eigen::MatrixXd& lower() const { return lower_; }
    /// The matrix's inverse times `right`, which has as many rows.
    [[nodiscard]] Eigen::MatrixXd solve(const Eigen::MatrixXd& right) const;
    /// The matrix's inverse.
    [[nodiscard]] Eigen::MatrixXd inverse() const;
    /// Natural logarithm of the matrix's determinant.
    [[nodiscard]] double logDeterminant() const;

  private:
    Eigen::MatrixXd lower_;
};

/// A matrix F with F F^T the covariance (or correlation), square, which may be singular: F times independent
/// normal draws of deviation 1 is drawn with it.
[[nodiscard]] Eigen::MatrixXd factorOf(const Eigen::MatrixXd& covariance);

}  // namespace bolthole
