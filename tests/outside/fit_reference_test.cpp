// Fits against Ceres on the same residuals: a model that bends, with a gross mistake among its measurements,
// and a season of launches.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "geometry/fit/launch_fit.h"
#include "geometry/fit/pass_model.h"
#include "geometry/fit/robust_fit.h"
#include "tests/outside/ceres_fit.h"
#include "tests/support/made_season.h"

namespace bolthole {
namespace {

/// Growth that levels off: b0 (1 - exp(-b1 x)), with both known within 20 percent before. The shape is that
/// of NIST's reference problem Misra1a (StRD, Nonlinear Regression); the numbers are ours.
class Growth : public FitModel {
  public:
    [[nodiscard]] Eigen::Index unknowns() const override { return 2; }
    bool predict(const Eigen::VectorXd& unknowns, Eigen::VectorXd& predicted) override {
        predicted = at(unknowns);
        return true;
    }
    bool slopes(const Eigen::VectorXd& unknowns, Eigen::MatrixXd& slopes) override {
        slopes.resize(kCount, 2);
        for (Eigen::Index row = 0; row < kCount; ++row) {
            const double fade = std::exp(-rate(unknowns) * place(row));
            slopes(row, 0) = 0.2 * kLevel * (1 - fade);
            slopes(row, 1) = 0.2 * kRate * level(unknowns) * place(row) * fade;
        }
        return true;
    }
    static Eigen::VectorXd at(const Eigen::VectorXd& unknowns) {
        Eigen::VectorXd predicted(kCount);
        for (Eigen::Index row = 0; row < kCount; ++row) {
            predicted[row] = level(unknowns) * (1 - std::exp(-rate(unknowns) * place(row)));
        }
        return predicted;
    }
    static constexpr Eigen::Index kCount = 14;

  private:
    static constexpr double kLevel = 2.4;
    static constexpr double kRate = 0.55;
    static double level(const Eigen::VectorXd& unknowns) { return kLevel * (1 + 0.2 * unknowns[0]); }
    static double rate(const Eigen::VectorXd& unknowns) { return kRate * (1 + 0.2 * unknowns[1]); }
    static double place(Eigen::Index row) { return 0.4 * static_cast<double>(row + 1); }
};

TEST(FitReference, ANonlinearModelWithAMistakeEndsWhereCeresDoes) {
    constexpr double kDeviation = 0.03;
    SeasonRandom random(7);
    const Eigen::VectorXd truth = Eigen::Vector2d(1.4, -0.9);
    const Eigen::VectorXd exact = Growth::at(truth);
    FitData data{.group = std::vector<std::size_t>(Growth::kCount, 0), .groups = 1, .reading = 0.01};
    for (const double value : exact) {
        data.measured.push_back(value + kDeviation * random.normal());
    }
    data.measured[5] += 0.6;
    Growth model;
    const RobustFit fit = fitRobustly(data, model, {.knownScatter = std::vector<double>{kDeviation}});
    ASSERT_TRUE(fit.done);
    const std::optional<Eigen::VectorXd> reference =
        fitByCeres({.measured = data.measured,
                    .deviation = std::vector<double>(Growth::kCount, std::hypot(kDeviation, data.reading)),
                    .lossWidth = kLossWidth,
                    .unknowns = 2,
                    .predict = Growth::at});
    ASSERT_TRUE(reference);
    EXPECT_LT((fit.unknowns - *reference).cwiseAbs().maxCoeff(), 1e-5)
        << "ours " << fit.unknowns.transpose() << ", Ceres' " << reference->transpose();
    EXPECT_LT(fit.weights[5], 0.1);
    EXPECT_GT(fit.unknowns.norm(), 0.5) << "the measurements must have moved it";
}

TEST(FitReference, ASeasonsNumbersAreThoseOfCeres) {
    SeasonRandom random(11);
    SeasonTruth truth;
    truth.friction = {1.05};
    truth.torqueScale = 0.92;
    const Car car = makeSeason(truth, 8, random);
    const LaunchFit fit = fitLaunch(car);
    ASSERT_EQ(fit.end, FitEnd::done);
    const Season season = seasonOf(car);
    PassModel model(season, 2, {}, [](long) {});
    CeresFitProblem problem{.lossWidth = kLossWidth, .unknowns = model.unknowns()};
    for (const SeasonPass& pass : season.passes) {
        problem.measured.push_back(pass.sixtyFoot);
        problem.deviation.push_back(std::hypot(kClockUncertainty, fit.surfaces[pass.surface].scatter));
    }
    problem.predict = [&model](const Eigen::VectorXd& unknowns) {
        Eigen::VectorXd predicted;
        EXPECT_TRUE(model.predict(unknowns, predicted));
        return predicted;
    };
    const std::optional<Eigen::VectorXd> reference = fitByCeres(problem);
    ASSERT_TRUE(reference);
    ASSERT_EQ(fit.numbers.size(), season.priors.size());
    for (std::size_t index = 0; index < fit.numbers.size(); ++index) {
        const NumberPrior& prior = season.priors[index];
        const double byCeres =
            prior.value + prior.uncertainty * (*reference)[static_cast<Eigen::Index>(index)];
        EXPECT_NEAR(fit.numbers[index].after, byCeres, 0.02 * prior.uncertainty)
            << "number " << static_cast<int>(prior.number);
    }
}

}  // namespace
}  // namespace bolthole
