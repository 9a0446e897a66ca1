// Propagation on models worked out by hand: what it promises of inputs without uncertainty, outputs that do
// not exist, correlated inputs, threads and seeds.
#include "geometry/uncertainty/propagation.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <utility>

#include "geometry/units/uncertainty_text.h"
#include "geometry/units/units.h"

namespace bolthole {
namespace {

using testing::Each;

using Equation = std::function<bool(std::span<const double>, std::span<double>)>;

class Equations final : public MeasurementModel {
  public:
    Equations(std::size_t outputs, Equation equation) : outputs_(outputs), equation_(std::move(equation)) {}
    [[nodiscard]] std::size_t outputs() const override { return outputs_; }
    bool evaluate(std::span<const double> x, std::span<double> y) override { return equation_(x, y); }

  private:
    std::size_t outputs_;
    Equation equation_;
};

Sensitivity differentiated(Equation equation, const std::vector<UncertainInput>& inputs,
                           std::size_t outputs = 1) {
    Equations model(outputs, std::move(equation));
    Sensitivity result;
    differentiate(model, inputs, result);
    return result;
}

Samples drawn(Equation equation, const std::vector<UncertainInput>& inputs, const SamplePlan& plan,
              std::size_t outputs = 1, const Eigen::MatrixXd& correlation = {}) {
    return drawSamples([&] { return std::make_unique<Equations>(outputs, equation); }, inputs, plan,
                       correlation);
}

std::vector<double> columnOf(const Samples& samples, Eigen::Index output = 0) {
    return {samples.col(output).begin(), samples.col(output).end()};
}

bool sum(std::span<const double> x, std::span<double> y) {
    y[0] = 0;
    for (const double value : x) {
        y[0] += value;
    }
    return true;
}

bool square(std::span<const double> x, std::span<double> y) {
    y[0] = x[0] * x[0];
    return true;
}

bool same(std::span<const double> x, std::span<double> y) {
    std::ranges::copy(x, y.begin());
    return true;
}

}  // namespace

TEST(Propagation, ChangesAreSlopesTimesUncertainties) {
    const auto line = [](std::span<const double> x, std::span<double> y) {
        y[0] = 3 * x[0] - 4 * x[1];
        y[1] = x[1];
        return true;
    };
    const Sensitivity result = differentiated(line, {{1, 0.5}, {2, 0.25}}, 2);
    EXPECT_TRUE(result.known);
    EXPECT_NEAR(result.change(0, 0), 1.5, 1e-12);
    EXPECT_NEAR(result.change(0, 1), -1.0, 1e-12);
    EXPECT_NEAR(result.uncertainty(0), std::hypot(1.5, 1.0), 1e-12);
    EXPECT_NEAR(result.share(0, 0), 2.25 / 3.25, 1e-12);
    EXPECT_NEAR(result.share(0, 1), 1 / 3.25, 1e-12);
    EXPECT_NEAR(result.nonlinearity(0), 0, 1e-20);
    const Eigen::MatrixXd covariance = covarianceOf(result);
    EXPECT_NEAR(covariance(0, 1), -0.25, 1e-12);
    EXPECT_NEAR(covariance(1, 1), 0.0625, 1e-12);
}

TEST(Propagation, CorrelatedInputsAddOrCancel) {
    const Sensitivity result = differentiated(sum, {{0, 3}, {0, 4}});
    Eigen::Matrix2d correlation;
    correlation << 1, 1, 1, 1;
    EXPECT_NEAR(std::sqrt(covarianceOf(result, correlation)(0, 0)), 7, 1e-12);
    correlation << 1, -1, -1, 1;
    EXPECT_NEAR(std::sqrt(covarianceOf(result, correlation)(0, 0)), 1, 1e-12);
}

TEST(Propagation, ExactInputsChangeNothing) {
    int evaluations = 0;
    const auto counted = [&evaluations](std::span<const double> x, std::span<double> y) {
        ++evaluations;
        return sum(x, y);
    };
    const Sensitivity result = differentiated(counted, {{1, 0}, {2, 0}});
    EXPECT_EQ(evaluations, 1);
    EXPECT_EQ(result.uncertainty(0), 0);
    EXPECT_TRUE(std::isnan(result.share(0, 0)));
    EXPECT_EQ(result.nonlinearity(0), 0);
}

TEST(Propagation, NonlinearityOfAParabolaIsWhatItAdds) {
    // y = x^2 at x = 10, u = 1: 20 of slope, 2 of second difference; half of 2^2 over 20^2.
    const Sensitivity result = differentiated(square, {{10, 1}});
    EXPECT_NEAR(result.change(0, 0), 20, 1e-12);
    EXPECT_NEAR(result.curvature(0, 0), 2, 1e-12);
    EXPECT_NEAR(result.nonlinearity(0), 2.0 / 400, 1e-12);
}

// y = x^2 with x normal has the variance 4 m^2 u^2 + 2 u^4, y = x1 x2 of independent inputs m1^2 u2^2 + m2^2
// u1^2 + u1^2 u2^2, and y = x^3 at 0 the terms c T = 0: all by hand.
TEST(Propagation, NextTermsAreThoseOfTheSeries) {
    Equations parabola(1, square);
    const std::vector<UncertainInput> one{{10, 2}};
    EXPECT_NEAR(nextOrderVariance(parabola, one)[0], 2 * 16, 1e-9);
    Equations product(1, [](std::span<const double> x, std::span<double> y) {
        y[0] = x[0] * x[1];
        return true;
    });
    const std::vector<UncertainInput> two{{5, 2}, {7, 3}};
    EXPECT_NEAR(nextOrderVariance(product, two)[0], 4 * 9, 1e-9);
}

// y = x1^2 x2: the terms of the note are half of each second derivative squared and c_i d^3y/(dx_i dx_j^2),
// all times the uncertainties: with x = (1, 1), u = (a, b): half (2a^2)^2 + (2ab)^2, then c_2 T_211 = 1 * 2 *
// a^2 b^2.
TEST(Propagation, NextTermsTakeThirdDerivatives) {
    Equations model(1, [](std::span<const double> x, std::span<double> y) {
        y[0] = x[0] * x[0] * x[1];
        return true;
    });
    const double a = 0.1;
    const double b = 0.2;
    const std::vector<UncertainInput> inputs{{1, a}, {1, b}};
    const double expected = 2 * std::pow(a, 4) + 4 * a * a * b * b + 2 * a * a * b * b;
    EXPECT_NEAR(nextOrderVariance(model, inputs)[0], expected, 1e-12);
}

TEST(Propagation, WhatDoesNotExistIsNotMadeUp) {
    const auto root = [](std::span<const double> x, std::span<double> y) {
        y[0] = x[0] < 1 ? kNaN : x[0];
        y[1] = x[0];
        return true;
    };
    const Sensitivity result = differentiated(root, {{1, 0.5}}, 2);
    EXPECT_TRUE(result.known);
    EXPECT_EQ(result.value[0], 1);
    EXPECT_TRUE(std::isnan(result.uncertainty(0)));
    EXPECT_TRUE(std::isnan(result.nonlinearity(0)));
    EXPECT_NEAR(result.uncertainty(1), 0.5, 1e-12);
    const Sensitivity none =
        differentiated([](std::span<const double>, std::span<double>) { return false; }, {{1, 0.5}});
    EXPECT_FALSE(none.known);
}

TEST(Propagation, StorageIsUsedAgain) {
    Equations small(1, sum);
    Sensitivity result = differentiated(same, {{1, 1}, {2, 1}, {3, 1}}, 3);
    const std::vector<UncertainInput> inputs{{4, 2}};
    differentiate(small, inputs, result);
    EXPECT_EQ(result.change.rows(), 1);
    EXPECT_EQ(result.change.cols(), 1);
    EXPECT_NEAR(result.uncertainty(0), 2, 1e-12);
}

TEST(Draws, AreTheSameOnAnyNumberOfThreads) {
    const std::vector<UncertainInput> inputs{{1, 1},
                                             {2, 0.5, Distribution::rectangular},
                                             {3, 0, Distribution::normal},
                                             {4, 2, Distribution::triangular}};
    const Samples one = drawn(same, inputs, {.samples = 5000, .seed = 9, .threads = 1}, 4);
    EXPECT_EQ(one, drawn(same, inputs, {.samples = 5000, .seed = 9, .threads = 2}, 4));
    EXPECT_EQ(one, drawn(same, inputs, {.samples = 5000, .seed = 9, .threads = 7}, 4));
    EXPECT_NE(one, drawn(same, inputs, {.samples = 5000, .seed = 10, .threads = 1}, 4));
    EXPECT_THAT(columnOf(one, 2), Each(3.0));
    // More samples begin with the fewer.
    const Samples more = drawn(same, inputs, {.samples = 9000, .seed = 9}, 4);
    EXPECT_EQ(more.topRows(5000), one);
}

// By the definitions: a rectangular distribution ends at sqrt 3 standard deviations, a triangular one at sqrt
// 6; 95 % lie within 0.95 sqrt 3 of the first and sqrt 6 (1 - sqrt 0.05) of the second.
TEST(Draws, FollowTheirDistributions) {
    const std::vector<UncertainInput> inputs{
        {0, 1}, {0, 1, Distribution::rectangular}, {0, 1, Distribution::triangular}};
    const Samples samples = drawn(same, inputs, {.samples = 200'000}, 3);
    const std::vector<double> ends{kCoverage95, 0.95 * std::sqrt(3.0),
                                   std::sqrt(6.0) * (1 - std::sqrt(0.05))};
    for (Eigen::Index input = 0; input < 3; ++input) {
        std::vector<double> values = columnOf(samples, input);
        const Coverage coverage = coverageOf(values);
        EXPECT_EQ(coverage.used, 200'000U);
        EXPECT_NEAR(coverage.mean, 0, 0.01);
        EXPECT_NEAR(coverage.uncertainty, 1, 0.01);
        EXPECT_NEAR(coverage.low, -ends[static_cast<std::size_t>(input)], 0.025);
        EXPECT_NEAR(coverage.high, ends[static_cast<std::size_t>(input)], 0.025);
    }
    EXPECT_LE(samples.col(1).cwiseAbs().maxCoeff(), std::sqrt(3.0));
    EXPECT_LE(samples.col(2).cwiseAbs().maxCoeff(), std::sqrt(6.0));
}

TEST(Draws, JointlyNormalInputsHaveTheirCorrelationEvenBesideAnExactOne) {
    const std::vector<UncertainInput> inputs{{0, 2}, {5, 0}, {0, 3, Distribution::rectangular}};
    Eigen::Matrix3d correlation = Eigen::Matrix3d::Identity();
    correlation(0, 2) = correlation(2, 0) = 0.8;
    const Samples samples = drawn(same, inputs, {.samples = 100'000}, 3, correlation);
    const Samples centered = samples.rowwise() - samples.colwise().mean();
    const Eigen::MatrixXd covariance = centered.transpose() * centered / 99'999;
    EXPECT_NEAR(std::sqrt(covariance(0, 0)), 2, 0.02);
    EXPECT_NEAR(std::sqrt(covariance(2, 2)), 3, 0.03);
    EXPECT_NEAR(covariance(0, 2) / 6, 0.8, 0.01);
    EXPECT_THAT(columnOf(samples, 1), Each(5.0));
    EXPECT_GT(samples.col(2).maxCoeff(), 3 * std::sqrt(3.0)) << "normal, whatever its own spread";
}

TEST(Draws, AnInputThatIsAnothersTwinMovesWithIt) {
    const std::vector<UncertainInput> inputs{{0, 1}, {0, 1}};
    const Samples samples = drawn(same, inputs, {.samples = 1000}, 2, Eigen::Matrix2d::Ones());
    EXPECT_LT((samples.col(0) - samples.col(1)).cwiseAbs().maxCoeff(), 1e-6);
}

TEST(Draws, LeaveAnEmptyRowWhereTheModelHasNone) {
    const auto upward = [](std::span<const double> x, std::span<double> y) {
        y[0] = x[0];
        return x[0] > 0;
    };
    std::vector<double> values = columnOf(drawn(upward, {{0, 1}}, {.samples = 20'000}));
    const Coverage coverage = coverageOf(values);
    EXPECT_NEAR(static_cast<double>(coverage.used), 10'000, 400);
    EXPECT_GT(coverage.low, 0);
}

TEST(Draws, StopWhenTold) {
    const SamplePlan plan{.samples = 10'000, .isCancelled = [] { return true; }};
    EXPECT_TRUE(drawn(sum, {{0, 1}}, plan).array().isNaN().all());
}

// JCGM 101, 7.7.2 (from memory): of M = 1000 sorted values and p = 0.95, q = 950, r = 25: from the 25th to
// the 975th.
TEST(CoverageInterval, IsTheProbabilisticallySymmetricOne) {
    std::vector<double> values;
    for (int value = 1000; value >= 1; --value) {
        values.push_back(value);
    }
    values.push_back(kNaN);
    const Coverage coverage = coverageOf(values);
    EXPECT_EQ(coverage.used, 1000U);
    EXPECT_NEAR(coverage.mean, 500.5, 1e-9);
    EXPECT_NEAR(coverage.uncertainty, std::sqrt(1000.0 * 1001 / 12), 1e-9);
    EXPECT_EQ(coverage.low, 25);
    EXPECT_EQ(coverage.high, 975);
}

TEST(CoverageInterval, OfAFewValuesIsAllOfThemAndOfOneNothing) {
    std::vector<double> two{3, 1};
    EXPECT_EQ(coverageOf(two).low, 1);
    EXPECT_EQ(coverageOf(two).high, 3);
    std::vector<double> one{3, kNaN};
    EXPECT_EQ(coverageOf(one).used, 1U);
    EXPECT_EQ(coverageOf(one).high, 0);
    std::vector<double> none;
    EXPECT_EQ(coverageOf(none).used, 0U);
}

// JCGM 101, 7.9.2: u = 2.0 with one digit tolerates 0.5, with two 0.05.
TEST(FirstOrderHolds, WithinHalfAUnitOfTheLastPlace) {
    const double reach = kCoverage95 * 2;
    EXPECT_TRUE(firstOrderHolds(10, 2, {.used = 100, .low = 10 - reach + 0.4, .high = 10 + reach}));
    EXPECT_FALSE(firstOrderHolds(10, 2, {.used = 100, .low = 10 - reach + 0.6, .high = 10 + reach}));
    EXPECT_FALSE(firstOrderHolds(10, 2, {.used = 100, .low = 10 - reach, .high = 10 + reach - 0.6}));
    EXPECT_FALSE(firstOrderHolds(10, 2, {.used = 100, .low = 10 - reach + 0.4, .high = 10 + reach}, 2));
    EXPECT_FALSE(firstOrderHolds(kNaN, 2, {.used = 100, .low = 0, .high = 1}));
    EXPECT_FALSE(firstOrderHolds(10, kNaN, {.used = 100, .low = 0, .high = 1}));
    EXPECT_FALSE(firstOrderHolds(10, 0, {.used = 100, .low = 10, .high = 10}));
}

}  // namespace bolthole
