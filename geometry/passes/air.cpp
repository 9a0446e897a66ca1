#include "geometry/passes/air.h"

#include <cmath>

#include "geometry/units/say.h"

namespace bolthole {

namespace {

constexpr double kZeroCelsius = 273.15;     // K
constexpr double kGasConstant = 287.05287;  // J/(kg K), of dry air
constexpr double kGravity = 9.80665;        // m/s^2
constexpr double kSeaTemperature = 288.15;  // K
constexpr double kSeaPressure = 101325.0;   // Pa
constexpr double kLapse = 0.0065;           // K/m
constexpr double kLowest = -5000.0;         // m
constexpr double kHighest = 11000.0;        // m
constexpr double kPascalsPerHectopascal = 100.0;
constexpr double kMoleRatio = 0.62198;  // of water vapor to dry air

}  // namespace

double saturationPressure(double celsius) {
    return 6.112 * std::exp(17.62 * celsius / (243.12 + celsius));
}

double moistAirDensity(double celsius, double hectopascals, double humidityPercent) {
    const double vapor = humidityPercent / 100.0 * saturationPressure(celsius);
    const double virtualTemperature =
        (celsius + kZeroCelsius) / (1.0 - (1.0 - kMoleRatio) * vapor / hectopascals);
    return hectopascals * kPascalsPerHectopascal / (kGasConstant * virtualTemperature);
}

Answer<double> densityAltitude(double density) {
    // Below 11 km density goes with (1 - L H / T0)^(g / (R L) - 1).
    const double seaDensity = kSeaPressure / (kGasConstant * kSeaTemperature);
    const double exponent = kGravity / (kGasConstant * kLapse) - 1.0;
    const double altitude = kSeaTemperature / kLapse * (1.0 - std::pow(density / seaDensity, 1.0 / exponent));
    if (!(altitude >= kLowest && altitude <= kHighest)) {
        return Answer<double>::none(say("the air is as thick nowhere from -5 to 11 km"));
    }
    return altitude;
}

Answer<double> densityAltitude(const PassAir& air) {
    if (!air.temperature || !air.pressure || !air.humidity) {
        return Answer<double>::none(say("needs the air's temperature, pressure and humidity"));
    }
    return densityAltitude(moistAirDensity(*air.temperature, *air.pressure, *air.humidity));
}

}  // namespace bolthole
