// Bayesian least squares with Cauchy's loss, on models whose answers are known.
#include "geometry/fit/robust_fit.h"

#include <gmock/gmock.h>

#include <Eigen/Dense>
#include <cmath>
#include <random>

#include "tests/support/made_season.h"

namespace bolthole {
namespace {

using Eigen::MatrixXd;
using Eigen::VectorXd;

/// predicted = start + slopes * unknowns, bent by `curvature` of the square of each.
class TestModel : public FitModel {
  public:
    TestModel(VectorXd start, MatrixXd slopes, double curvature = 0)
        : start_(std::move(start)), slopes_(std::move(slopes)), curvature_(curvature) {}

    [[nodiscard]] Eigen::Index unknowns() const override { return slopes_.cols(); }
    bool predict(const VectorXd& unknowns, VectorXd& predicted) override {
        predicted = start_ + slopes_ * (unknowns + curvature_ * unknowns.cwiseAbs2());
        return --left_ != 0;
    }
    bool slopes(const VectorXd& unknowns, MatrixXd& slopes) override {
        slopes = slopes_ * (VectorXd::Ones(unknowns.size()) + 2 * curvature_ * unknowns).asDiagonal();
        return true;
    }
    void giveUpAfter(int predictions) { left_ = predictions; }

  private:
    VectorXd start_;
    MatrixXd slopes_;
    double curvature_;
    int left_ = -1;
};

MatrixXd drawSlopes(SeasonRandom& random, Eigen::Index rows, Eigen::Index columns) {
    MatrixXd slopes(rows, columns);
    for (double& slope : slopes.reshaped()) {
        slope = random.normal();
    }
    return slopes;
}

FitData dataOf(const VectorXd& measured, double reading) {
    FitData data{.groups = 1, .reading = reading};
    data.measured.assign(measured.begin(), measured.end());
    data.group.assign(data.measured.size(), 0);
    return data;
}

FitOptions plainOptions(double scatter) {
    return {.lossWidth = std::nullopt, .knownScatter = std::vector<double>{scatter}};
}

}  // namespace

// One unknown, prior N(0, 1), n readings of variance v: the posterior is normal with precision 1 + n/v and
// mean (sum y / v) over it (A. Gelman et al., "Bayesian Data Analysis", 3rd ed., sec. 2.5; from memory).
TEST(RobustFit, OneUnknownIsTheNormalPosterior) {
    const std::vector<double> readings{1.4, 0.9, 1.7, 1.1};
    TestModel model(VectorXd::Zero(4), MatrixXd::Ones(4, 1));
    FitData data{.measured = readings, .group = {0, 0, 0, 0}, .groups = 1, .reading = 0.3};
    const double variance = 0.3 * 0.3 + 0.4 * 0.4;
    const RobustFit fit = fitRobustly(data, model, plainOptions(0.4));
    ASSERT_TRUE(fit.done);
    EXPECT_NEAR(fit.unknowns[0], 5.1 / variance / (1 + 4 / variance), 1e-9);
    EXPECT_NEAR(fit.covariance(0, 0), 1 / (1 + 4 / variance), 1e-12);
}

// The general linear case in closed form, (J^T J / v + I)^-1 J^T y / v, solved by another decomposition.
TEST(RobustFit, LinearModelsAreSolvedInClosedForm) {
    SeasonRandom random(7);
    for (int number = 0; number < 50; ++number) {
        const MatrixXd slopes = drawSlopes(random, 9, 4);
        const VectorXd start = drawSlopes(random, 9, 1);
        const VectorXd measured = drawSlopes(random, 9, 1);
        TestModel model(start, slopes);
        const RobustFit fit = fitRobustly(dataOf(measured, 0.6), model, plainOptions(0.8));
        ASSERT_TRUE(fit.done);
        const MatrixXd normal = slopes.transpose() * slopes + MatrixXd::Identity(4, 4);  // v = 0.36 + 0.64
        const VectorXd expected = normal.fullPivLu().solve(slopes.transpose() * (measured - start));
        EXPECT_LT((fit.unknowns - expected).norm(), 1e-8);
        EXPECT_LT((fit.covariance - normal.inverse()).norm(), 1e-12);
    }
}

// Without one measurement the linear model gives what a fit without it gives.
TEST(RobustFit, LeavingOneOutIsFittingWithoutIt) {
    SeasonRandom random(8);
    const MatrixXd slopes = drawSlopes(random, 8, 3);
    const VectorXd measured = drawSlopes(random, 8, 1);
    TestModel model(VectorXd::Zero(8), slopes);
    const FitData data = dataOf(measured, 0.5);
    const FitOptions options = plainOptions(0.5);
    const RobustFit whole = fitRobustly(data, model, options);
    for (std::size_t row = 0; row < 8; ++row) {
        const auto at = static_cast<Eigen::Index>(row);
        MatrixXd fewerSlopes(7, 3);
        VectorXd fewer(7);
        for (Eigen::Index from = 0, to = 0; from < 8; ++from) {
            if (from != at) {
                fewerSlopes.row(to) = slopes.row(from);
                fewer[to++] = measured[from];
            }
        }
        TestModel fewerModel(VectorXd::Zero(7), fewerSlopes);
        const RobustFit refit = fitRobustly(dataOf(fewer, 0.5), fewerModel, options);
        const LeftOut left = leaveOut(data, whole, row, options);
        EXPECT_LT((left.unknowns - refit.unknowns).norm(), 1e-8);
        const VectorXd slope = slopes.row(at);
        EXPECT_NEAR(left.variance, slope.dot(refit.covariance * slope), 1e-12);
        EXPECT_EQ(left.scatter, 0.5);
    }
}

// Gradient of the cost is nothing at the minimum, the loss and a bent model included: differences of the cost
// as the header writes it.
TEST(RobustFit, TheCostIsLeastWhereItSaysSo) {
    SeasonRandom random(9);
    const MatrixXd slopes = drawSlopes(random, 12, 3);
    const VectorXd measured = 2 * drawSlopes(random, 12, 1);
    TestModel model(VectorXd::Zero(12), slopes, 0.05);
    const FitData data = dataOf(measured, 0.4);
    const RobustFit fit = fitRobustly(data, model, {.knownScatter = std::vector<double>{0.3}});
    ASSERT_TRUE(fit.done);
    const auto cost = [&](const VectorXd& at) {
        VectorXd predicted;
        model.predict(at, predicted);
        double sum = at.squaredNorm();
        for (Eigen::Index row = 0; row < 12; ++row) {
            const double square = std::pow(measured[row] - predicted[row], 2) / 0.25;
            sum += kLossWidth * kLossWidth * std::log(1 + square / (kLossWidth * kLossWidth));
        }
        return sum;
    };
    for (Eigen::Index unknown = 0; unknown < 3; ++unknown) {
        const VectorXd step = 1e-4 * VectorXd::Unit(3, unknown);
        EXPECT_NEAR((cost(fit.unknowns + step) - cost(fit.unknowns - step)) / 2e-4, 0, 1e-3);
        EXPECT_GT(cost(fit.unknowns + 100 * step), cost(fit.unknowns));
        EXPECT_GT(cost(fit.unknowns - 100 * step), cost(fit.unknowns));
    }
}

// Scatter with hardly any prior, many repeats of one thing and a flat unknown: the sample's own deviation,
// less what reading takes (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.6).
TEST(RobustFit, ScatterOfManyRepeatsIsTheirDeviation) {
    SeasonRandom random(10);
    VectorXd measured(400);
    for (double& value : measured) {
        value = 0.3 * random.normal();
    }
    TestModel model(VectorXd::Zero(400), MatrixXd::Constant(400, 1, 100));  // a prior 100 wide tells nothing
    const FitOptions options{
        .lossWidth = std::nullopt, .scatter = {.middle = 0.3, .spread = 5}, .starts = {1}};
    const RobustFit fit = fitRobustly(dataOf(measured, 0.05), model, options);
    ASSERT_TRUE(fit.done);
    const double mean = measured.mean();
    const double deviation = std::sqrt((measured.array() - mean).square().sum() / 399);
    EXPECT_NEAR(std::hypot(fit.scatter[0], 0.05), deviation, 0.002 * deviation);
}

// Of few repeats scatter is hardly known, and everything more uncertain for it: with nothing known before,
// the mean square is S/(n - 3), S the sum of squares about the mean (a scaled inverse chi-square of n - 1
// degrees; A. Gelman et al., "Bayesian Data Analysis", 3rd ed., sec. 3.2 and app. A; from memory). Of many as
// well.
TEST(RobustFit, ScatterCountsByItsMeanSquare) {
    for (const Eigen::Index count : {12, 500}) {
        SeasonRandom random(12);
        VectorXd measured(count);
        for (double& value : measured) {
            value = 0.3 * random.normal();
        }
        TestModel model(VectorXd::Zero(count), MatrixXd::Constant(count, 1, 100));
        const FitOptions options{
            .lossWidth = std::nullopt, .scatter = {.middle = 0.3, .spread = 5}, .starts = {1}};
        const RobustFit fit = fitRobustly(dataOf(measured, 1e-6), model, options);
        ASSERT_TRUE(fit.done);
        const double squares = (measured.array() - measured.mean()).square().sum();
        const auto repeats = static_cast<double>(count);
        const double meanSquare = squares / (repeats - 3);
        EXPECT_NEAR(fit.covariance(0, 0), meanSquare / repeats / 1e4, 0.01 * meanSquare / repeats / 1e4)
            << count;
        EXPECT_LT(fit.scatter[0] * fit.scatter[0], meanSquare);
    }
}

// Each group has its own.
TEST(RobustFit, GroupsScatterByThemselves) {
    SeasonRandom random(11);
    FitData data{.groups = 2, .reading = 0.01};
    for (int row = 0; row < 300; ++row) {
        const auto group = static_cast<std::size_t>(row % 2);
        data.measured.push_back((group == 0 ? 0.1 : 0.4) * random.normal());
        data.group.push_back(group);
    }
    TestModel model(VectorXd::Zero(300), MatrixXd::Ones(300, 1));
    const RobustFit fit =
        fitRobustly(data, model, {.scatter = {.middle = 0.2, .spread = 2}, .starts = {1, 0.3}});
    ASSERT_TRUE(fit.done);
    EXPECT_NEAR(fit.scatter[0], 0.1, 0.015);
    EXPECT_NEAR(fit.scatter[1], 0.4, 0.06);
}

// A gross mistake moves the answer little, wherever it lies; least squares would
// be carried away.
TEST(RobustFit, OneMistakeHardlyCounts) {
    SeasonRandom random(12);
    const MatrixXd slopes = drawSlopes(random, 14, 3);
    const VectorXd truth = drawSlopes(random, 3, 1);
    VectorXd measured = slopes * truth;
    for (double& value : measured) {
        value += 0.1 * random.normal();
    }
    TestModel model(VectorXd::Zero(14), slopes);
    const FitOptions options{.scatter = {.middle = 0.1, .spread = 0.7}, .starts = {3, 1, 0.3}};
    const RobustFit clean = fitRobustly(dataOf(measured, 0.02), model, options);
    for (Eigen::Index row = 0; row < 14; ++row) {
        VectorXd missed = measured;
        missed[row] += 5;
        const RobustFit fit = fitRobustly(dataOf(missed, 0.02), model, options);
        ASSERT_TRUE(fit.done);
        EXPECT_LT(fit.weights[static_cast<std::size_t>(row)], 0.01);
        for (Eigen::Index unknown = 0; unknown < 3; ++unknown) {
            const double u = std::sqrt(fit.covariance(unknown, unknown));
            EXPECT_LT(std::abs(fit.unknowns[unknown] - truth[unknown]), 3 * u) << "mistake in " << row;
            EXPECT_NEAR(fit.unknowns[unknown], clean.unknowns[unknown], 1.5 * u) << "mistake in " << row;
        }
    }
}

TEST(RobustFit, NothingToFitIsNotDone) {
    TestModel none(VectorXd::Zero(2), MatrixXd::Zero(2, 0));
    EXPECT_FALSE(fitRobustly(dataOf(VectorXd::Zero(2), 1), none).done);
    TestModel empty(VectorXd::Zero(0), MatrixXd::Zero(0, 2));
    EXPECT_FALSE(fitRobustly(dataOf(VectorXd::Zero(0), 1), empty).done);
}

TEST(RobustFit, AModelMayGiveUpAtAnyTime) {
    for (int after = 1; after < 12; ++after) {
        TestModel model(VectorXd::Zero(4), MatrixXd::Ones(4, 1), 0.1);
        model.giveUpAfter(after);
        EXPECT_FALSE(fitRobustly(dataOf(VectorXd::Ones(4), 0.1), model, {.starts = {1, 0.3}}).done) << after;
    }
}

}  // namespace bolthole
