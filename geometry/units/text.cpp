#include "geometry/units/text.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdlib>

namespace bolthole {

namespace {

constexpr std::string_view kMinus = "\u2212";
constexpr std::string_view kEmDash = "\u2014";
constexpr double kFractionReach = 1e-7;  // in; how near a fraction a length is one but for rounding
constexpr std::string_view kAbout = "\u2248 ";
constexpr long kTapeFraction = 32;    // what a tape is read to
constexpr double kTapeLeast = 0.125;  // in; below, a fraction of a tape says too little
constexpr int kThousandths = 3;
constexpr int kExactDecimals = 6;  // in
constexpr long kFinestFraction = 64;
constexpr double kLargestMixed = 1e6;      // in; beyond, fractions help nobody
constexpr std::size_t kFixedSize = 400;    // holds the largest double with 15 decimals
constexpr int kSignificantDigits = 12;     // of plainDecimal()
constexpr int kPlainDecimals = 15;         // of plainDecimal(); at 1e-4 these are the 12 digits
constexpr double kLargestExpanded = 1e12;  // plainDecimal(): from here the last digits are zeros

void trimZeros(std::string& number) {
    if (number.find('.') == std::string::npos) {
        return;
    }
    number.erase(number.find_last_not_of('0') + 1);
    if (number.back() == '.') {
        number.pop_back();
    }
}

void dropZeroSign(std::string& number) {
    if (number.front() == '-' && number.find_first_not_of("-0.") == std::string::npos) {
        number.erase(0, 1);
    }
}

std::string fixedText(double value, int decimals) {
    std::array<char, kFixedSize> buffer;
    const auto [end, error] = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value,
                                            std::chars_format::fixed, decimals);
    std::string number(buffer.data(), end);
    dropZeroSign(number);
    return number;
}

int fieldDecimals(Quantity quantity, Units units) {
    const bool inch = units == Units::inch;
    switch (quantity) {
        case Quantity::length:
            return inch ? kThousandths : 2;
        case Quantity::mass:
            return inch ? 1 : 2;
        case Quantity::ratio:
        case Quantity::density:
            return 4;
        case Quantity::time:
        case Quantity::inertia:
        case Quantity::damping:
            return 3;
        case Quantity::force:
        case Quantity::torque:
        case Quantity::rollRate:
        case Quantity::speed:
            return 1;
        case Quantity::count:
            return 0;
        default:
            return 2;
    }
}

int figureDecimals(Quantity quantity, Units units) {
    switch (quantity) {
        case Quantity::length:
            return units == Units::inch ? 1 : 0;
        case Quantity::angle:
        case Quantity::volume:
        case Quantity::pressure:
            return 1;
        case Quantity::rate:
            return units == Units::inch ? 0 : 1;
        case Quantity::ratio:
        case Quantity::density:
        case Quantity::time:
        case Quantity::inertia:
        case Quantity::damping:
            return 2;
        default:
            return 0;
    }
}

/// Of an inertia no more than five digits, whatever its unit: no swing and no estimate tells more.
int meantDecimals(int decimals, double number, Quantity quantity) {
    if (quantity != Quantity::inertia || std::abs(number) < 10) {
        return decimals;
    }
    constexpr int kDigits = 5;
    const int before = static_cast<int>(std::floor(std::log10(std::abs(number)))) + 1;
    return std::clamp(kDigits - before, 0, decimals);
}

/// The value in shown units. Divides by the inch as 127/5000 m, so that whole fractions come out exactly.
double shown(double value, Quantity quantity, Units units) {
    if (quantity == Quantity::length) {
        return units == Units::inch ? value * 5000.0 / 127.0 : value * 1000.0;
    }
    return value / shownUnit(quantity, units);
}

/// `parts` of an inch's `under` as a mixed fraction in lowest terms: "12 3/8", "-3/8", "0".
std::string mixedText(long parts, long under) {
    const std::ldiv_t whole = std::ldiv(std::labs(parts), under);
    long over = whole.rem;
    while (over != 0 && over % 2 == 0) {
        over /= 2;
        under /= 2;
    }
    std::string text = parts < 0 ? "-" : "";
    if (whole.quot != 0 || over == 0) {
        text += std::to_string(whole.quot);
    }
    if (over != 0) {
        text += (whole.quot != 0 ? " " : "") + std::to_string(over) + "/" + std::to_string(under);
    }
    return text;
}

/// "12 3/8" for lengths that are 64ths, in inch; nothing for others.
std::optional<std::string> mixedFraction(double inches) {
    if (std::abs(inches) > kLargestMixed) {
        return std::nullopt;
    }
    const long parts = std::lround(inches * kFinestFraction);
    const double off = inches - static_cast<double>(parts) / kFinestFraction;
    return std::abs(off) > kFractionReach ? std::nullopt : std::optional(mixedText(parts, kFinestFraction));
}

std::string trimmed(double number, int decimals) {
    std::string text = fixedText(number, decimals);
    trimZeros(text);
    return text;
}

/// A length in inch as read: its fraction, or the nearest a tape has.
std::string tapeText(double inches, InchStyle style) {
    const bool isDecimal = style == InchStyle::decimal;
    if (std::optional<std::string> fraction = isDecimal ? std::nullopt : mixedFraction(inches)) {
        return *std::move(fraction);
    }
    const double size = std::abs(inches);
    if (isDecimal || size < kTapeLeast || size > kLargestMixed) {
        const double thousandths = std::round(inches * 1000) / 1000;
        const bool isWhole = std::abs(thousandths - inches) <= kFractionReach;
        return std::string(isWhole ? "" : kAbout) + trimmed(inches, kThousandths);
    }
    return std::string(kAbout) + mixedText(std::lround(inches * kTapeFraction), kTapeFraction);
}

std::string readableText(double value, Quantity quantity, Units units, int decimals) {
    if (!std::isfinite(value)) {
        return std::string(kEmDash);
    }
    std::string number = fixedText(shown(value, quantity, units), decimals);
    if (number.front() == '-') {
        number.replace(0, 1, kMinus);
    }
    return number;
}

/// Digits after the point that make kSignificantDigits, for 1e-4 <= magnitude < kLargestExpanded.
int decimalsFor(double magnitude) {
    int decimals = kSignificantDigits - 1;
    for (double power = 10.0; magnitude >= power; power *= 10.0) {
        --decimals;
    }
    for (double power = 1.0; decimals < kPlainDecimals && magnitude < power; power /= 10.0) {
        ++decimals;
    }
    return decimals;
}

/// A number of more than kSignificantDigits whole digits: the rest as zeros.
std::string expandedText(double value) {
    std::array<char, 32> buffer;
    const auto [end, error] = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value,
                                            std::chars_format::scientific, kSignificantDigits - 1);
    const std::string_view text(buffer.data(), static_cast<std::size_t>(end - buffer.data()));
    const std::size_t mark = text.find('e');
    std::string digits(text.substr(0, mark));
    std::erase(digits, '.');
    int exponent = 0;
    std::from_chars(text.data() + mark + 2, end, exponent);  // past "e+"
    const std::size_t sign = value < 0 ? 1 : 0;
    digits.resize(sign + static_cast<std::size_t>(exponent) + 1, '0');
    return digits;
}

}  // namespace

std::string_view unitMark(Quantity quantity, Units units) {
    const bool inch = units == Units::inch;
    switch (quantity) {
        case Quantity::length:
            return inch ? "in" : "mm";
        case Quantity::mass:
            return inch ? "lb" : "kg";
        case Quantity::angle:
            return "\u00B0";
        case Quantity::percent:
            return "%";
        case Quantity::force:
            return inch ? "lb" : "N";
        case Quantity::torque:
            return inch ? "lb-ft" : "N\u00B7m";
        case Quantity::rate:
            return inch ? "lb/in" : "N/mm";
        case Quantity::rollRate:
            return inch ? "lb-ft/\u00B0" : "N\u00B7m/\u00B0";
        case Quantity::volume:
            return inch ? "gal" : "L";
        case Quantity::density:
            return inch ? "lb/gal" : "kg/L";
        case Quantity::time:
            return "s";
        case Quantity::speed:
            return "rpm";
        case Quantity::inertia:
            return inch ? "lb\u00B7ft\u00B2" : "kg\u00B7m\u00B2";
        case Quantity::shaftSpeed:
            return inch ? "in/s" : "mm/s";
        case Quantity::damping:
            return inch ? "lb-s/in" : "N\u00B7s/mm";
        case Quantity::pressure:
            return inch ? "psi" : "kPa";
        default:
            return "";
    }
}

std::string withUnit(std::string number, Quantity quantity, Units units) {
    const std::string_view mark = unitMark(quantity, units);
    if (!mark.empty() && quantity != Quantity::angle) {
        number += ' ';
    }
    return number.append(mark);
}

std::string fieldText(double value, Quantity quantity, NumberStyle style) {
    if (!std::isfinite(value)) {
        return {};
    }
    const double number = shown(value, quantity, style.units);
    return quantity == Quantity::length && style.units == Units::inch
               ? tapeText(number, style.inches)
               : trimmed(number, meantDecimals(fieldDecimals(quantity, style.units), number, quantity));
}

std::string exactText(double value, Quantity quantity, NumberStyle style) {
    if (!std::isfinite(value) || quantity != Quantity::length || style.units != Units::inch) {
        return fieldText(value, quantity, style);
    }
    const double inches = shown(value, quantity, style.units);
    std::optional<std::string> fraction =
        style.inches == InchStyle::decimal ? std::nullopt : mixedFraction(inches);
    return fraction ? *std::move(fraction) : trimmed(inches, kExactDecimals);
}

std::string figureText(double value, Quantity quantity, Units units) {
    return readableText(value, quantity, units, figureDecimals(quantity, units));
}

std::string fineFigureText(double value, Quantity quantity, Units units) {
    return readableText(value, quantity, units, figureDecimals(quantity, units) + 1);
}

std::string plainDecimal(double value) {
    if (!std::isfinite(value)) {
        return {};
    }
    const double magnitude = std::abs(value);
    if (magnitude >= kLargestExpanded) {
        return expandedText(value);
    }
    std::array<char, 40> buffer;
    char* end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::fixed,
                              decimalsFor(magnitude))
                    .ptr;
    if (std::find(buffer.data(), end, '.') != end) {
        while (end[-1] == '0') {
            --end;
        }
        end -= end[-1] == '.' ? 1 : 0;
    }
    const bool negativeZero = end - buffer.data() == 2 && buffer[0] == '-' && buffer[1] == '0';
    return negativeZero ? "0" : std::string(buffer.data(), end);
}

bool isBlank(const std::string& name) {
    return name.find_first_not_of(" \t\r\n") == std::string::npos;
}

}  // namespace bolthole
