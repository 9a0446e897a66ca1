// Uncertainties against the worked examples of the Guide and of its Supplement 1, by the same routines that a
// car's figures go through; and a car's first order against drawn samples.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <functional>
#include <memory>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "app/carfile/car_file.h"
#include "geometry/uncertainty/ic_cloud.h"
#include "geometry/uncertainty/propagation.h"
#include "geometry/uncertainty/trace_uncertainty.h"
#include "geometry/units/uncertainty_text.h"
#include "tests/support/demo_car.h"

namespace bolthole {
namespace {

using Equation = std::function<void(std::span<const double>, std::span<double>)>;

/// Any equation as a model.
class Equations final : public MeasurementModel {
  public:
    Equations(std::size_t outputs, Equation equation) : outputs_(outputs), equation_(std::move(equation)) {}
    [[nodiscard]] std::size_t outputs() const override { return outputs_; }
    bool evaluate(std::span<const double> x, std::span<double> y) override {
        equation_(x, y);
        return true;
    }

  private:
    std::size_t outputs_;
    Equation equation_;
};

std::vector<double> columnOf(const Samples& samples, Eigen::Index output) {
    return {samples.col(output).begin(), samples.col(output).end()};
}

// JCGM 100:2008, H.1, the end gauge: l = ls + d - ls (dalpha theta + alphas dtheta), lengths in nm. Model and
// inputs read in published reprints of the example; ls, d, alphas, dalpha, theta, dtheta.
void endGauge(std::span<const double> x, std::span<double> y) {
    y[0] = x[0] + x[1] - x[0] * (x[3] * x[4] + x[2] * x[5]);
}
const std::vector<UncertainInput> kEndGauge{{50'000'623, 25}, {215, 9.7},   {11.5e-6, 1.2e-6},
                                            {0, 0.58e-6},     {-0.1, 0.41}, {0, 0.029}};

// JCGM 100:2008, H.2: five simultaneous observations of V (V), I (mA) and phi (rad), read in a reprint.
constexpr std::array<std::array<double, 3>, 5> kObservations{{{5.007, 19.663, 1.0456},
                                                              {4.994, 19.639, 1.0438},
                                                              {5.005, 19.640, 1.0468},
                                                              {4.990, 19.685, 1.0428},
                                                              {4.999, 19.678, 1.0433}}};
// R = V/I cos phi, X = V/I sin phi, Z = V/I, ohm.
void impedance(std::span<const double> x, std::span<double> y) {
    const double ratio = x[0] / (x[1] * 1e-3);
    y[0] = ratio * std::cos(x[2]);
    y[1] = ratio * std::sin(x[2]);
    y[2] = ratio;
}

/// Means, standard uncertainties of the means and their correlation (JCGM 100, 5.2.3, equation 17).
struct Means {
    std::vector<UncertainInput> inputs;
    Eigen::MatrixXd correlation;
};
Means meansOfObservations() {
    Eigen::Matrix<double, 5, 3> data;
    for (int row = 0; row < 5; ++row) {
        for (int column = 0; column < 3; ++column) {
            data(row, column) =
                kObservations[static_cast<std::size_t>(row)][static_cast<std::size_t>(column)];
        }
    }
    const Eigen::RowVector3d mean = data.colwise().mean();
    data.rowwise() -= mean;
    const Eigen::Matrix3d covariance = data.transpose() * data / (5 * 4);
    Means means;
    const Eigen::Vector3d deviation = covariance.diagonal().cwiseSqrt();
    for (int column = 0; column < 3; ++column) {
        means.inputs.push_back({mean[column], deviation[column]});
    }
    means.correlation =
        deviation.cwiseInverse().asDiagonal() * covariance * deviation.cwiseInverse().asDiagonal();
    return means;
}

double correlationOf(const Eigen::MatrixXd& covariance, int one, int other) {
    return covariance(one, other) / std::sqrt(covariance(one, one) * covariance(other, other));
}

}  // namespace

// JCGM 100:2008, H.1.4 and H.1.6: terms 25, 9.7, 0, 0, 2.9, 16.6 nm; uc 32 nm. The last term is
// ls alphas u(dtheta) = 16.68 nm with the 0.029 that the example gives.
TEST(UncertaintyReference, EndGaugeFirstOrder) {
    Equations model(1, endGauge);
    Sensitivity sensitivity;
    differentiate(model, kEndGauge, sensitivity);
    EXPECT_NEAR(sensitivity.value[0], 50'000'838, 0.5);
    EXPECT_NEAR(std::abs(sensitivity.change(0, 0)), 25, 0.05);
    EXPECT_NEAR(std::abs(sensitivity.change(0, 1)), 9.7, 0.005);
    EXPECT_NEAR(sensitivity.change(0, 2), 0, 1e-6);
    EXPECT_NEAR(std::abs(sensitivity.change(0, 3)), 2.9, 0.05);
    EXPECT_NEAR(sensitivity.change(0, 4), 0, 1e-6);
    EXPECT_NEAR(std::abs(sensitivity.change(0, 5)), 16.7, 0.05);
    EXPECT_NEAR(sensitivity.uncertainty(0), 32, 0.5);
}

// JCGM 100:2008, H.1.7: the second-order terms that count are 11.7 nm, u(dalpha) u(theta), and 1.7 nm,
// u(alphas) u(dtheta); uc rises from 32 to 34 nm. With the rounded inputs above the first comes to 11.9 nm.
TEST(UncertaintyReference, EndGaugeSecondOrder) {
    Equations model(1, endGauge);
    Sensitivity sensitivity;
    differentiate(model, kEndGauge, sensitivity);
    const double added = nextOrderVariance(model, kEndGauge)[0];
    EXPECT_NEAR(std::sqrt(added), std::hypot(11.7, 1.7), 0.25);
    EXPECT_NEAR(std::sqrt(std::pow(sensitivity.uncertainty(0), 2) + added), 34, 0.5);
}

// The same by drawing, which knows nothing of series: 34 nm too. The variance of a product of two independent
// inputs of mean 0 is the product of theirs, so first and second order together are exact but for ls's share.
TEST(UncertaintyReference, EndGaugeDrawn) {
    const Samples samples =
        drawSamples([] { return std::make_unique<Equations>(1, endGauge); }, kEndGauge, {.samples = 400'000});
    std::vector<double> lengths = columnOf(samples, 0);
    EXPECT_NEAR(coverageOf(lengths).uncertainty, 34, 0.5);
}

// JCGM 100:2008, H.2.3 and H.2.4: R 127.732(71), X 219.847(295), Z 254.260(236) ohm, r(R,X) -0.588,
// r(R,Z) -0.485, r(X,Z) 0.993; of the means r(V,I) -0.36, r(V,phi) 0.86, r(I,phi) -0.65 (read in
// reprints of the example).
TEST(UncertaintyReference, ImpedanceOfCorrelatedMeans) {
    const Means means = meansOfObservations();
    EXPECT_NEAR(means.correlation(0, 1), -0.36, 0.005);
    EXPECT_NEAR(means.correlation(0, 2), 0.86, 0.005);
    EXPECT_NEAR(means.correlation(1, 2), -0.65, 0.005);
    Equations model(3, impedance);
    Sensitivity sensitivity;
    differentiate(model, means.inputs, sensitivity);
    const Eigen::MatrixXd covariance = covarianceOf(sensitivity, means.correlation);
    EXPECT_NEAR(sensitivity.value[0], 127.732, 5e-4);
    EXPECT_NEAR(sensitivity.value[1], 219.847, 5e-4);
    EXPECT_NEAR(sensitivity.value[2], 254.260, 5e-4);
    EXPECT_NEAR(std::sqrt(covariance(0, 0)), 0.071, 5e-4);
    EXPECT_NEAR(std::sqrt(covariance(1, 1)), 0.295, 1e-3);  // 0.2956; see the test below
    EXPECT_NEAR(std::sqrt(covariance(2, 2)), 0.236, 5e-4);
    EXPECT_NEAR(correlationOf(covariance, 0, 1), -0.588, 5e-4);
    EXPECT_NEAR(correlationOf(covariance, 0, 2), -0.485, 5.1e-4);
    EXPECT_NEAR(correlationOf(covariance, 1, 2), 0.993, 5e-4);
}

// H.2.4 takes R, X and Z of each of the five observations and their scatter instead: by its way the standard
// uncertainty of X's mean is 0.2956 ohm too, which the Guide prints as 0.295.
TEST(UncertaintyReference, ImpedanceOfEachObservation) {
    std::array<double, 5> reactance{};
    double mean = 0;
    for (std::size_t row = 0; row < 5; ++row) {
        std::array<double, 3> figures{};
        impedance(kObservations[row], figures);
        reactance[row] = figures[1];
        mean += figures[1] / 5;
    }
    double squares = 0;
    for (const double value : reactance) {
        squares += (value - mean) * (value - mean);
    }
    const Means means = meansOfObservations();
    Equations model(3, impedance);
    Sensitivity sensitivity;
    differentiate(model, means.inputs, sensitivity);
    const double uncertainty = std::sqrt(covarianceOf(sensitivity, means.correlation)(1, 1));
    EXPECT_NEAR(mean, 219.847, 5e-4);
    EXPECT_NEAR(uncertainty / std::sqrt(squares / (5 * 4)), 1, 1e-3);
}

// The same example drawn from the joint normal distribution of the means.
TEST(UncertaintyReference, ImpedanceDrawnFromCorrelatedMeans) {
    const Means means = meansOfObservations();
    const Samples samples = drawSamples([] { return std::make_unique<Equations>(3, impedance); },
                                        means.inputs, {.samples = 200'000}, means.correlation);
    const std::array<double, 3> expected{0.071, 0.295, 0.236};
    for (Eigen::Index output = 0; output < 3; ++output) {
        std::vector<double> values = columnOf(samples, output);
        const double standard = expected[static_cast<std::size_t>(output)];
        EXPECT_NEAR(coverageOf(values).uncertainty, standard, 0.01 * standard);
    }
    const Samples centered = samples.rowwise() - samples.colwise().mean();
    const Eigen::MatrixXd covariance = centered.transpose() * centered / 199'999;
    EXPECT_NEAR(correlationOf(covariance, 0, 1), -0.588, 0.01);
    EXPECT_NEAR(correlationOf(covariance, 1, 2), 0.993, 0.001);
}

namespace {

std::vector<UncertainInput> fourOf(Distribution distribution) {
    return std::vector<UncertainInput>(4, UncertainInput{0, 1, distribution});
}
void sumOfFour(std::span<const double> x, std::span<double> y) {
    y[0] = x[0] + x[1] + x[2] + x[3];
}
Coverage drawnSum(Distribution distribution) {
    const Samples samples = drawSamples([] { return std::make_unique<Equations>(1, sumOfFour); },
                                        fourOf(distribution), {.samples = 1'000'000});
    std::vector<double> values = columnOf(samples, 0);
    return coverageOf(values);
}

}  // namespace

// JCGM 101:2008, 9.2.2, Y = X1 + X2 + X3 + X4, each standard normal: u 2.0, 95 % from -3.92 to 3.92 by the
// Guide and by drawing (the values read in check-value collections, the clause from memory).
TEST(UncertaintyReference, FourNormalInputs) {
    Equations model(1, sumOfFour);
    Sensitivity sensitivity;
    differentiate(model, fourOf(Distribution::normal), sensitivity);
    EXPECT_NEAR(sensitivity.uncertainty(0), 2.0, 1e-12);
    EXPECT_NEAR(kCoverage95 * sensitivity.uncertainty(0), 3.92, 0.005);
    const Coverage drawn = drawnSum(Distribution::normal);
    EXPECT_NEAR(drawn.mean, 0, 0.01);
    EXPECT_NEAR(drawn.uncertainty, 2.0, 0.01);
    EXPECT_NEAR(drawn.low, -3.92, 0.02);
    EXPECT_NEAR(drawn.high, 3.92, 0.02);
    EXPECT_TRUE(firstOrderHolds(0, sensitivity.uncertainty(0), drawn, 2));
}

// JCGM 101:2008, 9.2.3, the same of rectangular inputs: u 2.0, 95 % from -3.88 to 3.88 by drawing, where
// first order says 3.92. Told apart when u is given with two digits, not with one.
TEST(UncertaintyReference, FourRectangularInputs) {
    const Coverage drawn = drawnSum(Distribution::rectangular);
    EXPECT_NEAR(drawn.uncertainty, 2.0, 0.01);
    EXPECT_NEAR(drawn.low, -3.88, 0.015);
    EXPECT_NEAR(drawn.high, 3.88, 0.015);
    EXPECT_TRUE(firstOrderHolds(0, 2.0, drawn, 2));
    EXPECT_FALSE(firstOrderHolds(0, 2.0, drawn, 3));
}

namespace {

const std::array<const char*, 5> kDemoCars{"long-roof-wagon", "light-coupe", "gully-roadster", "notch-sedan",
                                           "short-pickup"};

class UncertaintyOfEachDemoCar : public testing::TestWithParam<const char*> {};

}  // namespace

// JCGM 101:2008, cl. 8: where drawing finds the same interval, first order may be used. On every demo car the
// drawn standard deviation is first order's within 3 %; where many inputs add up (1/distance, anti-squat,
// swing arm) so are both ends of the interval within 7 % of the reach: anti-squat goes
// with 1/h, which with an h known to 2.6 % moves both ends by 1.96 times that, and 40,000 samples place an
// end within 1.5 % mostly. An angle finder's reading alone is rectangular: the pinion's interval is then
// shorter than first order says, never longer.
TEST_P(UncertaintyOfEachDemoCar, FirstOrderIsWhatIsDrawn) {
    const Car car = demoCar(GetParam());
    const TraceUncertainty uncertainty = computeUncertainty(car);
    const IcCloud cloud = drawCloud(car, {.samples = 40'000, .seed = 3});
    ASSERT_TRUE(uncertainty.known);
    ASSERT_GT(cloud.drawn, 39'900U);
    for (const std::size_t figure :
         {static_cast<std::size_t>(Figure::antiSquat), static_cast<std::size_t>(Figure::swingArmAngle),
          static_cast<std::size_t>(Figure::pinion), static_cast<std::size_t>(Figure::axleX),
          static_cast<std::size_t>(Figure::driveshaft), kInverseDistance}) {
        const double value = uncertainty.sensitivity.value[static_cast<Eigen::Index>(figure)];
        const double first = uncertainty.of(0, figure);
        if (std::isnan(value) || first == 0) {
            continue;  // no driveline
        }
        const Coverage& drawn = cloud.figures[figure];
        EXPECT_NEAR(drawn.uncertainty / first, 1, 0.03) << figure;
        const double reach = kCoverage95 * first;
        EXPECT_LT((value - drawn.low) / reach, 1.07) << figure;
        EXPECT_LT((drawn.high - value) / reach, 1.07) << figure;
        if (figure != static_cast<std::size_t>(Figure::pinion)) {
            EXPECT_GT((value - drawn.low) / reach, 0.93) << figure;
            EXPECT_GT((drawn.high - value) / reach, 0.93) << figure;
        }
    }
}

INSTANTIATE_TEST_SUITE_P(DemoCars, UncertaintyOfEachDemoCar, testing::ValuesIn(kDemoCars),
                         [](const auto& about) {
                             std::string name = about.param;
                             std::erase(name, '-');
                             return name;
                         });

// Where the center is far away the distance is no straight line in what was measured: with lines within a
// hundredth of parallel both tests of first order say so, while 1/distance still holds.
TEST(UncertaintyReference, FarCentersAreNotLeftToFirstOrder) {
    Car car = demoCar("long-roof-wagon");
    // Raises the chassis ends of the uppers until the links are nearly parallel.
    const auto inverseAt = [&](double rise) {
        Car changed = car;
        for (Link& link : changed.links) {
            if (roleOf(link, changed.rearTireRadius) == Role::upper) {
                for (Hole& hole : link.chassis.holes) {
                    hole.at.z() += rise;
                }
            }
        }
        return std::pair(1 / computeTrace(changed).ride[Figure::icX], changed);
    };
    double low = 0;
    double high = 0.2;
    ASSERT_GT(inverseAt(low).first, 0);
    ASSERT_LT(inverseAt(high).first, 0);
    const auto goal = 1 / 12.0;  // 12 m ahead
    for (int step = 0; step < 40; ++step) {
        const double middle = (low + high) / 2;
        (inverseAt(middle).first > goal ? low : high) = middle;
    }
    car = inverseAt(low).second;
    const TraceUncertainty uncertainty = computeUncertainty(car);
    const IcCloud cloud = drawCloud(car, {.samples = 40'000});
    EXPECT_TRUE(uncertainty.isNonlinearAtRide(Figure::icX));
    EXPECT_FALSE(cloud.holds(Figure::icX));
    EXPECT_FALSE(uncertainty.isNonlinearAtRide(Figure::antiSquat));
    EXPECT_NEAR(cloud.figures[kInverseDistance].uncertainty / uncertainty.inverseAtRide(), 1, 0.03);
    // The interval drawn is 1/s of that of 1/s; first order's reaches as far to either side.
    const double reach = kCoverage95 * uncertainty.inverseAtRide();
    EXPECT_NEAR(cloud.nearEnd, 1 / (goal + reach), 0.2);
    EXPECT_NEAR(cloud.farEnd, 1 / (goal - reach), 0.7);
}

}  // namespace bolthole
