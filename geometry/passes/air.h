// How thick the air of a pass was, told as an altitude.
#pragma once

#include "geometry/car/pass.h"
#include "geometry/passes/answer.h"

namespace bolthole {

/// Pressure of water vapor over water where the air holds all it can, hPa, at `celsius`: 6.112 exp(17.62 t /
/// (243.12 + t)), t from -45 to 60 deg C. WMO-No. 8, Guide to Meteorological Instruments and Methods of
/// Observation, 7th ed. 2008, Annex 4.B, without its factor for pressure, half a percent of it at most.
[[nodiscard]] double saturationPressure(double celsius);

/// Density of moist air, kg/m^3: `hectopascals` over R times the virtual temperature, which is the
/// temperature of dry air as light at the same pressure, T / (1 - (1 - 0.62198) e/p) with e the vapor's
/// pressure (WMO-No. 8, ch. 4; from memory). R = 287.05287 J/(kg K) as below.
[[nodiscard]] double moistAirDensity(double celsius, double hectopascals, double humidityPercent);

/// Geopotential altitude at which the standard atmosphere is as thick, m, inverted from its layer below 11 km
/// where temperature falls by 6.5 K each km: 15 deg C and 1013.25 hPa at 0, g = 9.80665 m/s^2 (ICAO Doc 7488,
/// Manual of the ICAO Standard Atmosphere, 3rd ed. 1993; constants from memory). No answer outside -5 to 11
/// km.
[[nodiscard]] Answer<double> densityAltitude(double density);

/// The same for the air of a pass. No answer where temperature, pressure or humidity was not entered: none of
/// them is guessed.
[[nodiscard]] Answer<double> densityAltitude(const PassAir& air);

}  // namespace bolthole
