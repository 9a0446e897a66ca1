// Small texts as the widgets need them: unit marks, signs, capitals.
#pragma once

#include <QString>
#include <algorithm>
#include <cmath>
#include <string_view>

#include "geometry/units/text.h"

namespace bolthole {

inline constexpr QChar kMinus(0x2212);
inline constexpr QChar kInfinity(0x221E);
/// Stands for a figure that does not exist.
inline constexpr QChar kDash(0x2014);

/// The core's text as the toolkit's.
[[nodiscard]] inline QString fromView(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

/// A length with its unit, finely; kDash where it does not exist.
[[nodiscard]] inline QString lengthText(double length, Units units) {
    return std::isfinite(length)
               ? QString::fromStdString(
                     withUnit(fineFigureText(length, Quantity::length, units), Quantity::length, units))
               : QString(kDash);
}
/// An angle (rad) in degrees, finely; kDash where it does not exist.
[[nodiscard]] inline QString angleText(double angle) {
    return std::isfinite(angle)
               ? QString::fromStdString(withUnit(fineFigureText(angle, Quantity::angle, Units::inch),
                                                 Quantity::angle, Units::inch))
               : QString(kDash);
}

/// A number with so many digits that count, never as a power of ten.
[[nodiscard]] inline QString digitsText(double value, int digits) {
    if (value == 0 || !std::isfinite(value)) {
        return std::isfinite(value) ? QStringLiteral("0") : QString(kDash);
    }
    const double step =
        std::pow(10.0, digits - 1 - static_cast<int>(std::floor(std::log10(std::abs(value)))));
    return QString::fromStdString(plainDecimal(std::round(value * step) / step));
}

/// unitMark() as a QString: "in", "mm", "lb", "kg", "°", "%", or "".
[[nodiscard]] inline QString unitText(Quantity quantity, Units units) {
    const std::string_view mark = unitMark(quantity, units);
    return QString::fromUtf8(mark.data(), static_cast<qsizetype>(mark.size()));
}

/// A number's text with '+' before what is above zero; what shows as nothing but zeros, or a dash, gets no
/// sign.
[[nodiscard]] inline QString signedText(const QString& number) {
    const bool isSomething =
        std::any_of(number.begin(), number.end(), [](QChar c) { return c >= u'1' && c <= u'9'; });
    return isSomething && !number.startsWith(QChar(0x2212)) ? QLatin1Char('+') + number : number;
}

/// The text with a capital at its start.
[[nodiscard]] inline QString capitalized(QString text) {
    if (!text.isEmpty()) {
        text[0] = text[0].toUpper();
    }
    return text;
}

}  // namespace bolthole
