// Exact conversion factors between the units of the screen, the car file and the core.
//
// Inside geometry/ everything is SI: metres, radians, kilograms, newtons. The factors are exact by definition
// (international inch and pound of 1959; NIST SP 811, Appendix B, factors from memory).
#pragma once

#include <limits>
#include <numbers>

namespace bolthole {

inline constexpr double kMetresPerInch = 0.0254;
inline constexpr double kMetresPerMillimetre = 0.001;
inline constexpr double kKilogramsPerPound = 0.45359237;
inline constexpr double kRadiansPerDegree = std::numbers::pi / 180.0;
inline constexpr double kNewtonsPerPoundForce = 4.4482216152605;
inline constexpr double kCubicMetresPerGallon = 0.003785411784;  // U.S. gallon, 231 cubic inches
inline constexpr double kCubicMetresPerLiter = 0.001;
inline constexpr double kRpm = std::numbers::pi / 30.0;  // rad/s
inline constexpr double kPascalsPerPsi = kNewtonsPerPoundForce / (kMetresPerInch * kMetresPerInch);

/// The unit family a car is shown in; the file's own numbers stay mm, deg and kg.
enum class Units { inch, metric };

/// What kind of quantity a number is; decides how it is shown, typed and converted.
enum class Quantity {
    length,
    angle,
    mass,
    percent,
    ratio,
    count,
    force,
    torque,
    rate,      ///< of a spring: force for each length
    rollRate,  ///< torque for each angle
    volume,
    density,
    time,
    speed,       ///< of a shaft: turns a minute
    inertia,     ///< against turning
    damping,     ///< force for each speed
    shaftSpeed,  ///< of a shock: length for each time
    pressure     ///< of a tire, over the air around it
};

/// SI value of one unit as the car file writes it: mm, deg, kg, N, N m, N/mm, N m/deg, L, kg/L, s, rpm, kg
/// m^2, N s/mm, kPa; 1 for percent, ratios and counts.
[[nodiscard]] constexpr double fileUnit(Quantity quantity) {
    switch (quantity) {
        case Quantity::length:
        case Quantity::shaftSpeed:
            return kMetresPerMillimetre;
        case Quantity::angle:
            return kRadiansPerDegree;
        case Quantity::rate:
        case Quantity::damping:
            return 1.0 / kMetresPerMillimetre;
        case Quantity::rollRate:
            return 1.0 / kRadiansPerDegree;
        case Quantity::volume:
            return kCubicMetresPerLiter;
        case Quantity::density:
            return 1.0 / kCubicMetresPerLiter;
        case Quantity::pressure:
            return 1000.0;
        case Quantity::speed:
            return kRpm;
        default:
            return 1.0;
    }
}

/// SI value of one unit as the screen and the tables show it in inch: in, lb, lbf, lbf ft, lbf/in, lbf
/// ft/deg, U.S. gal, lb/gal, lb ft^2, lbf s/in, psi; what has no such unit as the car file writes it.
[[nodiscard]] constexpr double inchUnit(Quantity quantity) {
    constexpr double kPoundFeet = kNewtonsPerPoundForce * 12.0 * kMetresPerInch;
    switch (quantity) {
        case Quantity::length:
        case Quantity::shaftSpeed:
            return kMetresPerInch;
        case Quantity::mass:
            return kKilogramsPerPound;
        case Quantity::force:
            return kNewtonsPerPoundForce;
        case Quantity::torque:
            return kPoundFeet;
        case Quantity::rate:
        case Quantity::damping:
            return kNewtonsPerPoundForce / kMetresPerInch;
        case Quantity::inertia:
            return kKilogramsPerPound * 144.0 * kMetresPerInch * kMetresPerInch;
        case Quantity::rollRate:
            return kPoundFeet / kRadiansPerDegree;
        case Quantity::volume:
            return kCubicMetresPerGallon;
        case Quantity::density:
            return kKilogramsPerPound / kCubicMetresPerGallon;
        case Quantity::pressure:
            return kPascalsPerPsi;
        default:
            return fileUnit(quantity);
    }
}

/// SI value of one unit as the screen and the tables show it; in metric as the car file writes it.
[[nodiscard]] constexpr double shownUnit(Quantity quantity, Units units) {
    return units == Units::inch ? inchUnit(quantity) : fileUnit(quantity);
}

/// Metres from the car file's millimetres. Divides, so that the nearest double to the decimal is kept.
[[nodiscard]] constexpr double fromMillimetres(double millimetres) {
    return millimetres / 1000.0;
}

/// Standard acceleration of free fall, m/s^2 (ISO 80000-3, from memory).
inline constexpr double kStandardGravity = 9.80665;

/// A figure that does not exist, such as the instant center of parallel links.
inline constexpr double kNaN = std::numeric_limits<double>::quiet_NaN();

}  // namespace bolthole
