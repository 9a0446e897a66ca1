// Numbers as words, without Qt and independent of locale: the one place lengths and angles become text.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "geometry/units/units.h"

namespace bolthole {

/// How inches are written.
enum class InchStyle { sixteenths, thirtySeconds, decimal };

/// How numbers are shown: the car's units and, for inches, the style.
struct NumberStyle {
    Units units = Units::inch;
    InchStyle inches = InchStyle::sixteenths;

    bool operator==(const NumberStyle&) const = default;
};

/// Unit mark after a number: "in", "mm", "lb", "kg", "°", "%", "lb/in" and so on, or "".
[[nodiscard]] std::string_view unitMark(Quantity quantity, Units units);

/// The number and its unit: "12 3/8 in", "2.5°", "45 %"; the number alone where it has no unit.
[[nodiscard]] std::string withUnit(std::string number, Quantity quantity, Units units);

/// A measured number as it is shown, without unit. Lengths in inch as a fraction where they are one exactly,
/// down to 64ths; what is none shows the nearest 32nd of an inch, as a tape has it, after "≈": "≈ 21 11/32".
/// Below an eighth of an inch, and where the style is decimal, thousandths, also after "≈" where there is
/// more to the number. All else in decimals, trailing zeros left off: at most 2 in mm, 2 for angles, 1 for
/// lb, 2 for kg and percent, 4 for ratios, none for counts; an inertia with five digits at most. What has no
/// "≈" can be typed back and then shows the same again. The minus is '-', as on the keyboard. Empty for NaN
/// and infinity.
[[nodiscard]] std::string fieldText(double value, Quantity quantity, NumberStyle style);

/// The number to type on, as a field shows it while it is entered and in its tip: as fieldText(), but a
/// length in inch that is no fraction with six decimals at most, a fortieth of a micrometer.
[[nodiscard]] std::string exactText(double value, Quantity quantity, NumberStyle style);

/// A computed figure for reading, without unit: one decimal for lengths in inch, whole mm, one decimal for
/// angles, whole percent, pounds and kg, two decimals for ratios. The minus is U+2212. NaN and infinity give
/// an em dash.
[[nodiscard]] std::string figureText(double value, Quantity quantity, Units units);

/// A computed figure with one digit more, for tables.
[[nodiscard]] std::string fineFigureText(double value, Quantity quantity, Units units);

/// What came of reading a typed number.
struct TypedNumber {
    std::optional<double> value;  ///< SI
    std::string problem;          ///< why it was refused, in words; empty if value is set
};

/// Reads what a person types into a field: "12 3/8", "12-3/8", "12.375", "3/8", "-3/8", "314 mm", "1 ft 2 1/2
/// in", "12 3/8\"", "2°", "40 lb", "18 kg"; typographic minus, prime, degree and fraction signs too; and,
/// with spaces around the slash, a number divided by another: "26 3/4 / 2", "680 mm / 2". Without a unit the
/// shown unit of `units` is meant. Refused with a reason, never guessed: a comma ("type 12.5 or 12 1/2": it
/// could mean thousands or decimals), a fraction over 0, an improper mixed fraction, a fraction without a
/// unit where mm are shown, a unit of another kind, anything left over, an exponent, nan and inf. Fractions
/// and decimals of an inch give the double nearest to the length meant. Limits of the field are not applied.
[[nodiscard]] TypedNumber readTyped(std::string_view text, Quantity quantity, Units units);

/// 12 significant digits and 15 decimals at most, trailing zeros left off, '.' as decimal point, no exponent,
/// no negative zero; empty for NaN and infinity. For CSV.
[[nodiscard]] std::string plainDecimal(double value);

/// Whether a name has nothing but white space.
[[nodiscard]] bool isBlank(const std::string& name);

}  // namespace bolthole
