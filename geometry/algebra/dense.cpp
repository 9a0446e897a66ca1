#include "geometry/algebra/dense.h"

#include <Eigen/Cholesky>
#include <Eigen/Eigenvalues>
#include <limits>

namespace bolthole {

Eigen::MatrixXd product(const Eigen::MatrixXd& left, const Eigen::MatrixXd& right) {
    return left * right;
}

CholeskyFactors::CholeskyFactors(const Eigen::MatrixXd& matrix) {
    const Eigen::LLT<Eigen::MatrixXd> factors(matrix);
    if (factors.info() == Eigen::Success) {
        lower_ = factors.matrixL();
    } else {
        lower_.setConstant(matrix.rows(), matrix.cols(), std::numeric_limits<double>::quiet_NaN());
    }
}

Eigen::MatrixXd CholeskyFactors::solve(const Eigen::MatrixXd& right) const {
    Eigen::MatrixXd solution = right;
    lower_.triangularView<Eigen::Lower>().solveInPlace(solution);
    lower_.transpose().triangularView<Eigen::Upper>().solveInPlace(solution);
    return solution;
}

Eigen::MatrixXd CholeskyFactors::inverse() const {
    return solve(Eigen::MatrixXd::Identity(lower_.rows(), lower_.cols()));
}

double CholeskyFactors::logDeterminant() const {
    return 2 * lower_.diagonal().array().log().sum();
}

Eigen::MatrixXd factorOf(const Eigen::MatrixXd& covariance) {
    const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> modes(covariance);
    return modes.eigenvectors() * modes.eigenvalues().cwiseMax(0).cwiseSqrt().asDiagonal();
}

}  // namespace bolthole
