// Eigenvalues and eigenvectors of a small symmetric matrix, such as the one of normal equations.
#pragma once

#include <Eigen/Core>
#include <Eigen/SVD>

namespace bolthole {

/// Of a symmetric matrix none of whose eigenvalues is negative, but for rounding: `kSize` of them. They are
/// its singular values then, which take a tenth of the time to compile. In the matrix's units.
template <int kSize>
class SymmetricModes {
  public:
    using Matrix = Eigen::Matrix<double, kSize, kSize>;
    using Vector = Eigen::Matrix<double, kSize, 1>;

    explicit SymmetricModes(const Matrix& matrix)
        : factors_(matrix, Eigen::ComputeFullU | Eigen::ComputeFullV) {}

    /// The eigenvalues, the largest first.
    [[nodiscard]] const Vector& values() const { return factors_.singularValues(); }
    /// The eigenvector of value `mode`, of length 1.
    [[nodiscard]] auto vector(Eigen::Index mode) const { return factors_.matrixV().col(mode); }
    /// The shortest of the vectors x with matrix * x nearest to `right`, where eigenvalues of at most
    /// `unheld` times the largest count as none.
    [[nodiscard]] Vector shortestSolution(const Vector& right, double unheld) const {
        Vector solution = Vector::Zero();
        for (Eigen::Index mode = 0; mode < kSize && values()[mode] > unheld * values()[0]; ++mode) {
            solution += vector(mode) * (vector(mode).dot(right) / values()[mode]);
        }
        return solution;
    }

  private:
    Eigen::JacobiSVD<Matrix, Eigen::NoQRPreconditioner> factors_;
};

}  // namespace bolthole
