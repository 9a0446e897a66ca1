#include "geometry/car/pass_fields.h"

#include <array>
#include <charconv>
#include <chrono>
#include <cmath>

#include "geometry/units/say.h"
#include "geometry/units/text.h"

namespace bolthole {

namespace {

constexpr std::string_view kExpectedDate = phrase("a date as 2026-11-20");
constexpr double kKilometresPerMile = 1.609344;
constexpr double kMetresPerFoot = 0.3048;

constexpr std::array<PassFieldRule, static_cast<std::size_t>(PassField::count)> kPassRules{{
    {PassField::surfaceTemperature, "surface.temperature", phrase("surface temperature"), "surface",
     PassUnit::celsius, -40, 120, false},
    {PassField::airTemperature, "air.temperature", phrase("air temperature"), "air", PassUnit::celsius, -60,
     60, false},
    {PassField::airPressure, "air.pressure", phrase("air pressure"), "air", PassUnit::hectopascal, 300, 1100,
     false},
    {PassField::humidity, "air.humidity", phrase("humidity"), "humidity", PassUnit::percent, 0, 100, false},
    {PassField::leftFrontPressure, "pressures.left_front", phrase("left front tire pressure"), "left_front",
     PassUnit::kilopascal, 0, 1000, false},
    {PassField::rightFrontPressure, "pressures.right_front", phrase("right front tire pressure"),
     "right_front", PassUnit::kilopascal, 0, 1000, false},
    {PassField::leftRearPressure, "pressures.left_rear", phrase("left rear tire pressure"), "left_rear",
     PassUnit::kilopascal, 0, 1000, false},
    {PassField::rightRearPressure, "pressures.right_rear", phrase("right rear tire pressure"), "right_rear",
     PassUnit::kilopascal, 0, 1000, false},
    {PassField::launchRpm, "launch_rpm", phrase("launch rpm"), "launch_rpm", PassUnit::rpm, 0, 30000, true},
    {PassField::sixtyFoot, "sixty_foot", phrase("60 ft time"), "sixty_foot", PassUnit::second, 0, 1000, true},
    {PassField::threeThirty, "times.330ft", phrase("330 ft time"), "330ft", PassUnit::second, 0, 1000, true},
    {PassField::eighth, "times.eighth", phrase("1/8 mile time"), "eighth", PassUnit::second, 0, 1000, true},
    {PassField::eighthSpeed, "times.eighth_speed", phrase("1/8 mile speed"), "eighth",
     PassUnit::kilometresPerHour, 0, 1000, true},
    {PassField::quarter, "times.quarter", phrase("1/4 mile time"), "quarter", PassUnit::second, 0, 1000,
     true},
    {PassField::quarterSpeed, "times.quarter_speed", phrase("1/4 mile speed"), "quarter",
     PassUnit::kilometresPerHour, 0, 1000, true},
}};

std::string_view kindOf(PassUnit unit) {
    switch (unit) {
        case PassUnit::celsius:
            return phrase("a temperature");
        case PassUnit::hectopascal:
        case PassUnit::kilopascal:
            return phrase("a pressure");
        case PassUnit::second:
            return phrase("a time");
        case PassUnit::kilometresPerHour:
            return phrase("a speed");
        default:
            return phrase("a number");
    }
}

// The decimal of so many digits that is nearest.
double rounded(double value, int digits) {
    std::array<char, 40> text;
    const auto printed = std::to_chars(text.data(), text.data() + text.size(), value,
                                       std::chars_format::scientific, digits - 1);
    double result = value;
    std::from_chars(text.data(), printed.ptr, result);
    return result;
}

double plainFromShown(double shown, PassUnit unit) {
    switch (unit) {
        case PassUnit::celsius:
            return (shown - 32.0) / 1.8;
        case PassUnit::kilopascal:
            return shown * kPascalsPerPsi / 1000.0;
        case PassUnit::kilometresPerHour:
            return shown * kKilometresPerMile;
        case PassUnit::metre:
            return shown * kMetresPerFoot;
        default:
            return shown;
    }
}

/// The number of a pass or a const one.
template <class PassT>
auto& slotOf(PassT& pass, PassField field) {
    switch (field) {
        case PassField::surfaceTemperature:
            return pass.surface.temperature;
        case PassField::airTemperature:
            return pass.air.temperature;
        case PassField::airPressure:
            return pass.air.pressure;
        case PassField::humidity:
            return pass.air.humidity;
        case PassField::leftFrontPressure:
            return pass.pressures.leftFront;
        case PassField::rightFrontPressure:
            return pass.pressures.rightFront;
        case PassField::leftRearPressure:
            return pass.pressures.leftRear;
        case PassField::rightRearPressure:
            return pass.pressures.rightRear;
        case PassField::launchRpm:
            return pass.launchRpm;
        case PassField::sixtyFoot:
            return pass.sixtyFoot;
        case PassField::threeThirty:
            return pass.times.threeThirty;
        case PassField::eighth:
            return pass.times.eighth;
        case PassField::eighthSpeed:
            return pass.times.eighthSpeed;
        case PassField::quarter:
            return pass.times.quarter;
        default:
            return pass.times.quarterSpeed;
    }
}

// The number that some digits of `text` spell, or -1 where one is none.
int digitsAt(std::string_view text, std::size_t from, std::size_t count) {
    int number = 0;
    for (std::size_t at = from; at < from + count; ++at) {
        if (at >= text.size() || text[at] < '0' || text[at] > '9') {
            return -1;
        }
        number = 10 * number + (text[at] - '0');
    }
    return number;
}

std::string expectedNot(const std::string& expected, const std::string& text) {
    constexpr std::size_t kMostShown = 40;
    return say("expected %1, found '%2'", expected, text.substr(0, kMostShown));
}

PassFault faultOfNumbers(const Pass& pass) {
    for (const PassFieldRule& rule : kPassRules) {
        const OptionalNumber& value = numberOf(pass, rule.field);
        if (const std::string expected = value ? refusal(rule.field, *value) : std::string();
            !expected.empty()) {
            const std::string shown = std::isfinite(*value) ? plainDecimal(*value) : say("no number");
            return {std::string(rule.path), say("expected %1, found %2", expected, shown)};
        }
    }
    return {};
}

}  // namespace

std::string_view suffixOf(PassUnit unit, Units units) {
    const bool inch = units == Units::inch;
    switch (unit) {
        case PassUnit::celsius:
            return inch ? "_f" : "_c";
        case PassUnit::hectopascal:
            return "_hpa";
        case PassUnit::percent:
            return "_pct";
        case PassUnit::kilopascal:
            return inch ? "_psi" : "_kpa";
        case PassUnit::second:
            return "_s";
        case PassUnit::kilometresPerHour:
            return inch ? "_mph" : "_km_h";
        case PassUnit::metre:
            return inch ? "_ft" : "_m";
        case PassUnit::rpm:
            break;
    }
    return "";
}

std::string_view markOf(PassUnit unit, Units units) {
    const bool inch = units == Units::inch;
    switch (unit) {
        case PassUnit::celsius:
            return inch ? "\u00B0F" : "\u00B0C";
        case PassUnit::hectopascal:
            return "hPa";
        case PassUnit::percent:
            return "%";
        case PassUnit::kilopascal:
            return inch ? "psi" : "kPa";
        case PassUnit::second:
            return "s";
        case PassUnit::kilometresPerHour:
            return inch ? "mph" : "km/h";
        case PassUnit::metre:
            return inch ? "ft" : "m";
        case PassUnit::rpm:
            break;
    }
    return "rpm";
}

double toShown(double inFile, PassUnit unit, Units units) {
    if (units == Units::metric) {
        return inFile;
    }
    switch (unit) {
        case PassUnit::celsius:
            return inFile * 1.8 + 32.0;
        case PassUnit::kilopascal:
            return inFile * 1000.0 / kPascalsPerPsi;
        case PassUnit::kilometresPerHour:
            return inFile / kKilometresPerMile;
        case PassUnit::metre:
            return inFile / kMetresPerFoot;
        default:
            return inFile;
    }
}

double fromShown(double shown, PassUnit unit, Units units) {
    const double exact = units == Units::metric ? shown : plainFromShown(shown, unit);
    if (exact == shown || !std::isfinite(exact)) {
        return exact;
    }
    const std::string wanted = plainDecimal(shown);
    constexpr int kDigitsOfDouble = 17;
    for (int digits = 1; digits < kDigitsOfDouble; ++digits) {
        const double candidate = rounded(exact, digits);
        if (plainDecimal(toShown(candidate, unit, units)) == wanted) {
            return candidate;
        }
    }
    return exact;
}

std::span<const PassFieldRule> passFieldRules() {
    return kPassRules;
}

const PassFieldRule& ruleOf(PassField field) {
    return kPassRules[static_cast<std::size_t>(field)];
}

OptionalNumber& numberOf(Pass& pass, PassField field) {
    return slotOf(pass, field);
}

const OptionalNumber& numberOf(const Pass& pass, PassField field) {
    return slotOf(pass, field);
}

std::string refusal(PassField field, double value, Units units) {
    const PassFieldRule& rule = ruleOf(field);
    const bool reaches = rule.aboveLeast ? value > rule.least : value >= rule.least;
    if (reaches && value <= rule.most) {
        return {};
    }
    const auto shown = [&](double limit) {
        return plainDecimal(std::round(toShown(limit, rule.unit, units) * 10) / 10);
    };
    const std::string_view text =
        rule.aboveLeast ? phrase("%1 above %2 and up to %3 %4") : phrase("%1 from %2 to %3 %4");
    return say(text, say(kindOf(rule.unit)), shown(rule.least), shown(rule.most), markOf(rule.unit, units));
}

std::string refuseDate(std::string_view text) {
    const int year = digitsAt(text, 0, 4);
    const int month = digitsAt(text, 5, 2);
    const int day = digitsAt(text, 8, 2);
    const bool spelled = text.size() == 10 && text[4] == '-' && text[7] == '-';
    if (!spelled || year < 0 || month < 0 || day < 0) {
        return say(kExpectedDate);
    }
    const std::chrono::year_month_day date{std::chrono::year(year),
                                           std::chrono::month(static_cast<unsigned>(month)),
                                           std::chrono::day(static_cast<unsigned>(day))};
    return date.ok() ? std::string() : say(kExpectedDate);
}

std::string refuseTime(std::string_view text) {
    const int hour = digitsAt(text, 0, 2);
    const int minute = digitsAt(text, 3, 2);
    const bool hasSeconds = text.size() == 8;
    const int second = hasSeconds ? digitsAt(text, 6, 2) : 0;
    const bool spelled =
        (text.size() == 5 || hasSeconds) && text[2] == ':' && (!hasSeconds || text[5] == ':');
    const bool fits = hour >= 0 && hour < 24 && minute >= 0 && minute < 60 && second >= 0 && second < 60;
    return spelled && fits ? std::string() : say("a time as 14:05 or 14:05:30");
}

PassFault findFault(const Pass& pass, std::size_t setups) {
    if (pass.number < kLeastPassNumber || pass.number > kMostPassNumber) {
        return {"number", say("expected a whole number from %1 to %2, found %3", kLeastPassNumber,
                              kMostPassNumber, pass.number)};
    }
    if (const std::string expected = refuseDate(pass.date); !expected.empty()) {
        return {"date", expectedNot(expected, pass.date)};
    }
    if (const std::string expected = pass.time.empty() ? std::string() : refuseTime(pass.time);
        !expected.empty()) {
        return {"time", expectedNot(expected, pass.time)};
    }
    if (pass.setup && (*pass.setup < 0 || static_cast<std::size_t>(*pass.setup) >= setups)) {
        return {"setup",
                setups == 0 ? say("expected no index, as nothing is kept, found %1", *pass.setup)
                            : say("expected the index of a kept setup, a whole number from 0 to %1, found %2",
                                  setups - 1, *pass.setup)};
    }
    if (pass.recording) {
        if (const TableFault fault = refusal(*pass.recording); !fault.reason.empty()) {
            return {"recording." + fault.path, fault.reason};
        }
    }
    return faultOfNumbers(pass);
}

}  // namespace bolthole
