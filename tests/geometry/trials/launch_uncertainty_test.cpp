// The uncertainty of a launch's figures: against a library's statistics of the same draws.
#include "geometry/trials/launch_uncertainty.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <boost/math/statistics/univariate_statistics.hpp>
#include <cmath>

#include "geometry/car/numbers.h"
#include "geometry/edits/edit.h"
#include "tests/support/launch_car.h"
#include "tests/support/made_launch.h"

namespace bolthole {
namespace {

constexpr std::size_t kDraws = 24;

LaunchInputs launched() {
    return makeLaunch(CarGenerator(7).draw(Layout::triangulated));
}

LaunchInputs withStifferFront(LaunchInputs inputs) {
    inputs.front.damping->rebound.at = 8;
    return inputs;
}

// Boost.Math, univariate_statistics: the sample standard deviation.
TEST(LaunchUncertainty, IsTheSampleDeviationOfTheDraws) {
    const LaunchInputs now = withStifferFront(launched());
    const LaunchInputs baseline = launched();
    const std::vector<LaunchError> errors = drawLaunchErrors(kDraws, {.cgHeight = 0.02});
    const std::optional<LaunchUncertainties> uncertainties = drawLaunchUncertainties(now, &baseline, errors);
    ASSERT_TRUE(uncertainties);
    std::vector<double> with;
    std::vector<double> change;
    for (const LaunchError& error : errors) {
        const LaunchRun one = simulateLaunch(withErrors(now, error), {.every = kReadingStep});
        const LaunchRun other = simulateLaunch(withErrors(baseline, error), {.every = kReadingStep});
        ASSERT_TRUE(one.figures.sixtyFoot && other.figures.sixtyFoot);
        with.push_back(*one.figures.sixtyFoot);
        change.push_back(*one.figures.sixtyFoot - *other.figures.sixtyFoot);
    }
    const LaunchFigureUncertainty& uncertainty =
        (*uncertainties)[static_cast<std::size_t>(LaunchFigure::sixtyFoot)];
    EXPECT_NEAR(uncertainty.now, std::sqrt(boost::math::statistics::sample_variance(with)), 1e-12);
    EXPECT_NEAR(uncertainty.difference, std::sqrt(boost::math::statistics::sample_variance(change)), 1e-12);
    EXPECT_GT(uncertainty.now, 0.005) << "friction, torque and inertias move it";
    // JCGM 101:2008, 7.7.2: q the integer part of 0.95 x 24 + 0.5, 23, so the interval is from the 1st to the
    // 24th.
    std::ranges::sort(with);
    EXPECT_EQ(uncertainty.low, with.front());
    EXPECT_EQ(uncertainty.high, with.back());
}

TEST(LaunchUncertainty, WhatBothSetupsShareCancels) {
    const LaunchInputs now = launched();
    const std::optional<LaunchUncertainties> same =
        drawLaunchUncertainties(now, &now, drawLaunchErrors(kDraws, {.cgHeight = 0.02}));
    ASSERT_TRUE(same);
    const LaunchFigureUncertainty& uncertainty = (*same)[static_cast<std::size_t>(LaunchFigure::leastLoad)];
    EXPECT_GT(uncertainty.now, 1);
    EXPECT_EQ(uncertainty.difference, 0);
}

TEST(LaunchUncertainty, TooFewDrawsSayNothingAndACancelledOneGivesNothing) {
    const LaunchInputs now = launched();
    const std::optional<LaunchUncertainties> few =
        drawLaunchUncertainties(now, nullptr, drawLaunchErrors(4, {.cgHeight = 0.02}));
    ASSERT_TRUE(few);
    EXPECT_TRUE(std::isnan((*few)[0].now));
    EXPECT_TRUE(std::isnan((*few)[0].baseline));
    int asked = 0;
    EXPECT_FALSE(drawLaunchUncertainties(now, nullptr, drawLaunchErrors(kDraws, {.cgHeight = 0}),
                                         [&asked] { return ++asked > 3; }));
    EXPECT_EQ(asked, 4);
}

// What a person knows better, or worse, than such numbers are usually known counts in the draws.
TEST(LaunchErrors, TakeTheOwnPlusMinusWhereOneIsEntered) {
    Car car = launchCar(Layout::triangulated, 7);
    EXPECT_EQ(errorSizesOf(car).friction, kFrictionError);
    FieldId id{.field = Field::friction};
    car.launch.friction = 1.5;
    const double friction = numberAt(car, id).value_or(0);
    ASSERT_GT(friction, 0);
    id.uncertainty = true;
    car = apply(car, SetNumber{id, 0.02 * friction}).car;
    EXPECT_NEAR(errorSizesOf(car).friction, 0.02, 1e-12);
    const auto scatter = [](const std::vector<LaunchError>& draws) {
        double sum = 0;
        for (const LaunchError& draw : draws) {
            sum += std::log(draw.friction) * std::log(draw.friction);
        }
        return std::sqrt(sum / static_cast<double>(draws.size()));
    };
    EXPECT_NEAR(scatter(drawLaunchErrors(4000, errorSizesOf(car))), 0.02, 0.001);
    if (car.launch.front.damping) {
        car.launch.front.damping->isEstimate = true;
        EXPECT_GT(errorSizesOf(car).frontDamping, kDampingError);
    }
}

}  // namespace
}  // namespace bolthole
