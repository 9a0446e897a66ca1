// Density altitude against the standard atmosphere's own table and an independent equation of moist air.
#include <gtest/gtest.h>

#include <array>
#include <cmath>

#include "geometry/passes/air.h"

namespace bolthole {
namespace {

struct Level {
    double altitude;  // m, geopotential
    double kelvin;
    double hectopascals;
    double density;  // kg/m^3
};

// ICAO Doc 7488, Manual of the ICAO Standard Atmosphere, 3rd ed. 1993, the table by geopotential altitude,
// which ISO 2533 and the U.S. Standard Atmosphere 1976 share (pressures at 1000 and 2000 m read; the others,
// every density among them, from memory).
constexpr std::array kTable{Level{0, 288.15, 1013.25, 1.22500}, Level{1000, 281.65, 898.746, 1.11164},
                            Level{2000, 275.15, 794.952, 1.00649}, Level{3000, 268.65, 701.085, 0.909122},
                            Level{5000, 255.65, 540.199, 0.736116}};

TEST(StandardAtmosphere, ADensityOfTheTableStandsAtItsAltitude) {
    for (const Level& level : kTable) {
        const Answer<double> altitude = densityAltitude(level.density);
        ASSERT_TRUE(altitude) << level.altitude;
        EXPECT_NEAR(*altitude, level.altitude, 0.1);  // the table's last digit is a tenth of a meter at most
    }
}

TEST(StandardAtmosphere, DryAirOfTheTableStandsAtItsAltitude) {
    for (const Level& level : kTable) {
        const PassAir air{level.kelvin - 273.15, level.hectopascals, 0};
        EXPECT_NEAR(moistAirDensity(*air.temperature, *air.pressure, 0), level.density, 6e-6);
        const Answer<double> altitude = densityAltitude(air);
        ASSERT_TRUE(altitude) << level.altitude;
        EXPECT_NEAR(*altitude, level.altitude, 0.1);
    }
}

/// Density of moist air, kg/m^3, by the CIPM-2007 equation: Picard, Davis, Glaeser & Fujii, Revised formula
/// for the density of moist air, Metrologia 45 (2008) 149-155, eq. 1 and appendix A; constants read as
/// others quote them. Kelvin, Pa, humidity from 0 to 1; 400 parts in a million of carbon dioxide.
double cipmDensity(double celsius, double pascals, double humidity) {
    const double kelvin = celsius + 273.15;
    const double saturation =
        std::exp(1.2378847e-5 * kelvin * kelvin - 1.9121316e-2 * kelvin + 33.93711047 - 6.3431645e3 / kelvin);
    const double enhancement = 1.00062 + 3.14e-8 * pascals + 5.6e-7 * celsius * celsius;
    const double vapor = humidity * enhancement * saturation / pascals;
    const double ratio = pascals / kelvin;
    const double compressibility =
        1 -
        ratio * (1.58123e-6 - 2.9331e-8 * celsius + 1.1043e-10 * celsius * celsius +
                 (5.707e-6 - 2.051e-8 * celsius) * vapor + (1.9898e-4 - 2.376e-6 * celsius) * vapor * vapor) +
        ratio * ratio * (1.83e-11 - 0.765e-8 * vapor * vapor);
    constexpr double kDryMass = 28.96546e-3;
    constexpr double kVaporMass = 18.01528e-3;
    constexpr double kGas = 8.314472;
    return pascals * kDryMass / (compressibility * kGas * kelvin) * (1 - vapor * (1 - kVaporMass / kDryMass));
}

// The two share neither the vapor's formula nor the gas's: they agree within 0.1 percent where CIPM-2007 is
// meant to hold (15 to 27 deg C, 600 to 1100 hPa) and a little beyond.
TEST(MoistAir, AgreesWithTheEquationOfTheMetrologists) {
    for (const double celsius : {10.0, 20.0, 30.0}) {
        for (const double hectopascals : {800.0, 950.0, 1030.0}) {
            for (const double humidity : {0.0, 40.0, 100.0}) {
                const double reference = cipmDensity(celsius, hectopascals * 100, humidity / 100);
                EXPECT_NEAR(moistAirDensity(celsius, hectopascals, humidity), reference, 1e-3 * reference)
                    << celsius << " deg C, " << hectopascals << " hPa, " << humidity << " %";
            }
        }
    }
}

// How much humidity takes off, alone: by both the same within a hundredth of it.
TEST(MoistAir, HumidityTakesOffWhatTheEquationOfTheMetrologistsSays) {
    const double ours = moistAirDensity(30, 1000, 0) - moistAirDensity(30, 1000, 80);
    const double reference = cipmDensity(30, 1e5, 0) - cipmDensity(30, 1e5, 0.8);
    EXPECT_GT(reference, 0.01);
    EXPECT_NEAR(ours, reference, 0.01 * reference);
}

// Triple point of water, 611.657 Pa at 0.01 deg C, and 1013.25 hPa at 99.97 deg C are known; the formula is
// for -45 to 60 deg C. At 20 deg C 23.39 hPa (IAPWS; from memory).
TEST(MoistAir, SaturationPressure) {
    EXPECT_NEAR(saturationPressure(0.01), 6.11657, 0.002 * 6.11657);
    EXPECT_NEAR(saturationPressure(20), 23.39, 0.005 * 23.39);
}

// U.S. National Weather Service, Density Altitude (read): virtual temperature, then 145366 (1 - (17.326 p /
// T)^0.235) ft with p in inches of mercury and T in degrees Rankine; its rounded constants agree with ours
// within 10 m.
TEST(DensityAltitude, AgreesWithTheWeatherServicesFormula) {
    const PassAir air{31, 985, 55};
    const double vapor = 0.55 * saturationPressure(31);
    const double virtualKelvin = (31 + 273.15) / (1 - vapor / 985 * (1 - 0.622));
    const double rankine = 1.8 * (virtualKelvin - 273.15) + 32 + 459.69;
    const double inches = 985 / 33.8639;
    const double feet = 145366 * (1 - std::pow(17.326 * inches / rankine, 0.235));
    const Answer<double> altitude = densityAltitude(air);
    ASSERT_TRUE(altitude);
    EXPECT_NEAR(*altitude, feet * 0.3048, 10);
}

TEST(DensityAltitude, IsNotGuessed) {
    EXPECT_FALSE(densityAltitude(PassAir{20, 1000, std::nullopt}));
    EXPECT_FALSE(densityAltitude(PassAir{20, std::nullopt, 50}));
    EXPECT_EQ(densityAltitude(PassAir{}).reason, "needs the air's temperature, pressure and humidity");
    EXPECT_FALSE(densityAltitude(0.1)) << "no such air below 11 km";
}

}  // namespace
}  // namespace bolthole
