// The numbers of a pass: their names, units, limits and paths in the file, in one table that the file's
// reader, the log's columns, the words of a change and the entry form share.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "geometry/car/pass.h"
#include "geometry/units/units.h"

namespace bolthole {

/// Names every number of a pass that may be missing, in the order of the log's columns.
enum class PassField {
    surfaceTemperature,
    airTemperature,
    airPressure,
    humidity,
    leftFrontPressure,
    rightFrontPressure,
    leftRearPressure,
    rightRearPressure,
    launchRpm,
    sixtyFoot,
    threeThirty,
    eighth,
    eighthSpeed,
    quarter,
    quarterSpeed,
    count
};

/// What the numbers of a pass are measured in, as the file has them.
enum class PassUnit {
    celsius,            ///< deg F where inch is shown
    hectopascal,        ///< in both
    percent,            ///< in both
    kilopascal,         ///< psi where inch is shown
    rpm,                ///< in both
    second,             ///< in both
    kilometresPerHour,  ///< mph where inch is shown
    metre               ///< ft where inch is shown
};

/// Suffix of a log column: "_c" or "_f", "_hpa", "_pct", "_kpa" or "_psi", "_s", "_km_h" or "_mph", "_m" or
/// "_ft"; empty for rpm, which the column's name says.
[[nodiscard]] std::string_view suffixOf(PassUnit unit, Units units);

/// Unit mark after a number for a person: "\u00B0F", "psi", "rpm".
[[nodiscard]] std::string_view markOf(PassUnit unit, Units units);

/// A number of the file as `units` show it. The factors are exact: mile 1609.344 m, foot 0.3048 m, psi
/// 6894.757293168361 Pa, deg F = 1.8 deg C + 32 (NIST SP 811, Appendix B, factors from memory).
[[nodiscard]] double toShown(double inFile, PassUnit unit, Units units);

/// The number of the file that `shown` means: the shortest decimal that toShown() turns back into it, to the
/// 12 digits plainDecimal() writes. So 32 psi stays 32 psi, and 220 kPa that was shown in psi becomes 220 kPa
/// again.
[[nodiscard]] double fromShown(double shown, PassUnit unit, Units units);

/// What is known of a number of a pass.
struct PassFieldRule {
    PassField field;
    std::string_view path;    ///< in the pass's object: "air.temperature"
    std::string_view words;   ///< for a person, by say(): "left front tire pressure"
    std::string_view column;  ///< of the log, without its unit: "left_front"
    PassUnit unit;
    double least;  ///< in the file's unit
    double most;
    bool aboveLeast;  ///< whether `least` itself is not allowed
};

/// One rule a field, in the order of PassField.
[[nodiscard]] std::span<const PassFieldRule> passFieldRules();
[[nodiscard]] const PassFieldRule& ruleOf(PassField field);

/// The number itself, in the file's unit.
[[nodiscard]] OptionalNumber& numberOf(Pass& pass, PassField field);
[[nodiscard]] const OptionalNumber& numberOf(const Pass& pass, PassField field);

/// What is allowed for the number where `value` (file's unit) is not: "a temperature from -60 to 60 °C", in
/// the units named. Empty: allowed.
[[nodiscard]] std::string refusal(PassField field, double value, Units units = Units::metric);

/// Why a text is no date or time of a pass: what was expected; empty: it is one. A date is a day of the
/// Gregorian calendar as ISO 8601 writes it, 2026-11-20; a time 14:05 or 14:05:30.
[[nodiscard]] std::string refuseDate(std::string_view text);
[[nodiscard]] std::string refuseTime(std::string_view text);

/// Limits of a pass's number within its day.
inline constexpr int kLeastPassNumber = 1;
inline constexpr int kMostPassNumber = 1'000'000;

/// What is wrong with a pass, at its place in the pass's object.
struct PassFault {
    std::string path;    ///< "times.eighth"
    std::string reason;  ///< what was expected and what was found
};

/// The first thing wrong with a pass of a car that keeps `setups` setups; an empty reason: nothing.
[[nodiscard]] PassFault findFault(const Pass& pass, std::size_t setups);

}  // namespace bolthole
