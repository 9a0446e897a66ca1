#include "geometry/algebra/dense.h"

#include <gtest/gtest.h>

#include <Eigen/LU>
#include <cmath>

#include "geometry/algebra/symmetric_modes.h"

namespace bolthole {
namespace {

using Eigen::MatrixXd;

constexpr double kRounding = 1e-12;

MatrixXd somePositive(Eigen::Index size) {
    std::srand(7);
    const MatrixXd any = MatrixXd::Random(size, size);
    return any * any.transpose() + 0.1 * MatrixXd::Identity(size, size);
}

TEST(Dense, ProductIsRowsTimesColumns) {
    MatrixXd left(2, 3);
    left << 1, 2, 3, 4, 5, 6;
    MatrixXd right(3, 2);
    right << 7, 8, 9, 10, 11, 12;
    MatrixXd sums(2, 2);  // row by row, by hand
    sums << 7 + 18 + 33, 8 + 20 + 36, 28 + 45 + 66, 32 + 50 + 72;
    EXPECT_EQ(product(left, right), sums);
}

// The example of Wikipedia, "Cholesky decomposition", from memory; its L is whole numbers, so anyone can
// multiply it out.
TEST(Dense, CholeskyFactorsOfAWorkedExample) {
    MatrixXd matrix(3, 3);
    matrix << 4, 12, -16, 12, 37, -43, -16, -43, 98;
    MatrixXd lower(3, 3);
    lower << 2, 0, 0, 6, 1, 0, -8, 5, 3;
    const CholeskyFactors factors(matrix);
    EXPECT_TRUE(factors.lower().isApprox(lower, kRounding));
    EXPECT_NEAR(factors.logDeterminant(), std::log(36), kRounding);
    EXPECT_TRUE(factors.solve(matrix).isApprox(MatrixXd::Identity(3, 3), kRounding));
}

TEST(Dense, CholeskyFactorsSolveAsEigensLu) {
    for (const Eigen::Index size : {1, 2, 7, 40}) {
        const MatrixXd matrix = somePositive(size);
        const CholeskyFactors factors(matrix);
        const Eigen::FullPivLU<MatrixXd> other(matrix);
        EXPECT_TRUE(factors.inverse().isApprox(other.inverse(), 1e-9)) << size;
        EXPECT_NEAR(factors.logDeterminant(), std::log(std::abs(other.determinant())), 1e-9) << size;
    }
}

TEST(Dense, CholeskyFactorsOfWhatIsNotPositiveAreNoNumbers) {
    MatrixXd matrix(2, 2);
    matrix << 1, 2, 2, 1;  // eigenvalues 3 and -1
    EXPECT_TRUE(CholeskyFactors(matrix).inverse().array().isNaN().all());
}

TEST(Dense, AFactorTimesItselfIsTheCovariance) {
    const MatrixXd whole = somePositive(9);
    const MatrixXd thin = MatrixXd::Random(9, 4);
    for (const MatrixXd& covariance : {whole, MatrixXd(thin * thin.transpose())}) {  // the second is singular
        const MatrixXd factor = factorOf(covariance);
        EXPECT_TRUE((factor * factor.transpose()).isApprox(covariance, kRounding));
    }
}

TEST(SymmetricModes, AreStretchedByTheirValuesTheLargestFirst) {
    for (int round = 0; round < 50; ++round) {
        const Eigen::Matrix4d any = Eigen::Matrix4d::Random();
        const Eigen::Matrix4d matrix = any * any.transpose();
        const SymmetricModes<4> modes(matrix);
        for (Eigen::Index mode = 0; mode < 4; ++mode) {
            EXPECT_TRUE(
                (matrix * modes.vector(mode)).isApprox(modes.values()[mode] * modes.vector(mode), 1e-9));
            EXPECT_TRUE(mode == 0 || modes.values()[mode] <= modes.values()[mode - 1]);
        }
        EXPECT_NEAR(modes.values().prod(), matrix.determinant(), 1e-9);
    }
}

TEST(SymmetricModes, WhatNothingHoldsStaysWhereItIs) {
    Eigen::Matrix2d matrix;
    matrix << 1, 1, 1, 1;  // holds the sum alone
    const Eigen::Vector2d solution = SymmetricModes<2>(matrix).shortestSolution({3, 3}, 1e-12);
    EXPECT_TRUE(solution.isApprox(Eigen::Vector2d(1.5, 1.5), kRounding));
}

}  // namespace
}  // namespace bolthole
