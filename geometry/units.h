// Exact conversion factors between the units of the screen, the car file and the core.
//
// Inside geometry/ everything is SI: metres, radians, kilograms, newtons. The factors are exact by definition
// (international inch and pound of 1959; NIST SP 811, Appendix B, factors from memory).
#pragma once

#include <numbers>

namespace bolthole {

inline constexpr double kMetresPerInch = 0.0254;
inline constexpr double kMetresPerMillimetre = 0.001;
inline constexpr double kKilogramsPerPound = 0.45359237;
inline constexpr double kRadiansPerDegree = std::numbers::pi / 180.0;

/// The unit family a car is shown in; the file's own numbers stay mm, deg and kg.
enum class Units { inch, metric };

/// What kind of quantity a number is; decides how it is shown, typed and converted.
enum class Quantity { length, angle, mass, percent, ratio, count };

/// SI value of one unit as the car file writes it: mm, deg, kg; 1 for percent, ratios and counts.
[[nodiscard]] constexpr double fileUnit(Quantity quantity) {
    switch (quantity) {
        case Quantity::length:
            return kMetresPerMillimetre;
        case Quantity::angle:
            return kRadiansPerDegree;
        default:
            return 1.0;
    }
}

/// SI value of one unit as the screen and the tables show it: in or mm, deg, lb or kg; 1 otherwise.
[[nodiscard]] constexpr double shownUnit(Quantity quantity, Units units) {
    const bool inch = units == Units::inch;
    if (quantity == Quantity::length) {
        return inch ? kMetresPerInch : kMetresPerMillimetre;
    }
    if (quantity == Quantity::mass) {
        return inch ? kKilogramsPerPound : 1.0;
    }
    return fileUnit(quantity);
}

/// Metres from the car file's millimetres. Divides, so that the nearest double to the decimal is kept.
[[nodiscard]] constexpr double fromMillimetres(double millimetres) {
    return millimetres / 1000.0;
}

}  // namespace bolthole
