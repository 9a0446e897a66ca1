// Small texts as the widgets need them: unit marks, signs, capitals.
#pragma once

#include <QString>
#include <algorithm>

#include "geometry/text.h"

namespace bolthole {

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
