// Numbers worked out of readings, against bodies whose figures are known in closed form.
#include "geometry/dynamics/worked_out.h"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <numbers>

namespace bolthole {
namespace {

constexpr double kG = 9.80665;

/// The standard uncertainty by varying each reading, as JCGM 100:2008, 5.1.3, note 2, has it.
double byVarying(const std::function<double(int, double)>& value, const std::vector<double>& steps) {
    double variance = 0;
    for (std::size_t at = 0; at < steps.size(); ++at) {
        const int reading = static_cast<int>(at);
        const double change = (value(reading, steps[at]) - value(reading, -steps[at])) / 2;
        variance += change * change;
    }
    return std::sqrt(variance);
}

TEST(TireRate, IsLoadOverHeight) {
    const ReadWith with{0.5, 0.0006, 0};
    const std::optional<WorkedOut> rate = tireRateOf(300, 400, 0.330, 0.325, with);
    ASSERT_TRUE(rate);
    EXPECT_NEAR(rate->value, 100 * kG / 0.005, 1e-6);
    const auto varied = [&](int reading, double by) {
        return tireRateOf(300 + (reading == 0 ? by : 0), 400 + (reading == 1 ? by : 0),
                          0.330 + (reading == 2 ? by : 0), 0.325 + (reading == 3 ? by : 0), with)
            ->value;
    };
    EXPECT_NEAR(rate->uncertainty, byVarying(varied, {0.5, 0.5, 0.0006, 0.0006}), 0.03 * rate->uncertainty);
    EXPECT_FALSE(tireRateOf(400, 300, 0.330, 0.325, with));
    EXPECT_FALSE(tireRateOf(300, 400, 0.325, 0.330, with));
}

// A uniform disc of radius R hung at its rim swings as a pendulum 3/2 R long; its inertia about its center is
// half m R^2 (Meriam & Kraige, Engineering Mechanics: Dynamics, 7th ed., Wiley, 2012, ch. 6, from memory).
TEST(WheelInertia, OfAUniformDiscHungAtItsRim) {
    constexpr double kRadius = 0.3;
    constexpr double kMass = 20;
    const double period = 2 * std::numbers::pi * std::sqrt(1.5 * kRadius / kG);
    const ReadWith with{0.1, 0.001, 0.1};
    const std::optional<WorkedOut> both = wheelInertiaOf(kMass, kRadius, 10 * period, with);
    ASSERT_TRUE(both);
    EXPECT_NEAR(both->value, 2 * 0.5 * kMass * kRadius * kRadius, 1e-9);
    const auto varied = [&](int reading, double by) {
        return wheelInertiaOf(kMass + (reading == 0 ? by : 0), kRadius + (reading == 1 ? by : 0),
                              10 * period + (reading == 2 ? by : 0), with)
            ->value;
    };
    EXPECT_NEAR(both->uncertainty, byVarying(varied, {0.1, 0.001, 0.1}), 1e-3 * both->uncertainty);
}

// A hoop hung at its rim swings as a pendulum as long as its diameter.
TEST(WheelInertia, OfAHoopHungAtItsRim) {
    const double period = 2 * std::numbers::pi * std::sqrt(2 * 0.2 / kG);
    EXPECT_NEAR(wheelInertiaOf(10, 0.2, 10 * period, {})->value, 2 * 10 * 0.04, 1e-9);
    EXPECT_FALSE(wheelInertiaOf(10, 0.2, 5, {})) << "shorter than any body's";
}

}  // namespace
}  // namespace bolthole
