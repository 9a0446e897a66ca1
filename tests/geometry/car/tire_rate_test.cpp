// The tire's rate by its pressure.
#include "geometry/car/tire_rate.h"

#include <gtest/gtest.h>

namespace bolthole {
namespace {

constexpr double kPsi = 6894.757293168361;  // NIST SP 811, Appendix B (from memory)

EnteredRates twoReadings() {
    EnteredRates rates;
    rates.tire = 190e3;
    rates.tirePressure = 16 * kPsi;
    rates.otherTire = 220e3;
    rates.otherPressure = 20 * kPsi;
    rates.pressure = 16 * kPsi;
    return rates;
}

}  // namespace

TEST(TireRate, FollowsTheLineThroughItsReadings) {
    EnteredRates rates = twoReadings();
    EXPECT_DOUBLE_EQ(*tireRateNow(rates), 190e3);
    rates.pressure = 20 * kPsi;
    EXPECT_NEAR(*tireRateNow(rates), 220e3, 1e-6);
    rates.pressure = 18 * kPsi;
    EXPECT_NEAR(*tireRateNow(rates), 205e3, 1e-6);
    rates.pressure = 14 * kPsi;
    EXPECT_NEAR(*tireRateNow(rates), 175e3, 1e-6);
}

TEST(TireRate, IsAsReadWhereOneReadingOrThePressureIsMissing) {
    for (OptionalNumber EnteredRates::*missing : {&EnteredRates::tirePressure, &EnteredRates::otherTire,
                                                  &EnteredRates::otherPressure, &EnteredRates::pressure}) {
        EnteredRates rates = twoReadings();
        rates.pressure = 19 * kPsi;
        rates.*missing = std::nullopt;
        EXPECT_EQ(tireRateNow(rates), 190e3);
    }
    EnteredRates same = twoReadings();
    same.otherPressure = same.tirePressure;
    EXPECT_FALSE(isReadAtTwoPressures(same));
    EXPECT_EQ(tireRateNow(same), 190e3);
    EXPECT_FALSE(tireRateNow(EnteredRates{}).has_value());
}

TEST(TireRate, StaysAboveNothingFarBelowItsReadings) {
    EnteredRates rates = twoReadings();
    rates.tire = 100e3;
    rates.pressure = 1 * kPsi;
    EXPECT_DOUBLE_EQ(*tireRateNow(rates), 10e3);
}

}  // namespace bolthole
