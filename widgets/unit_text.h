// Unit marks as the widgets need them.
#pragma once

#include <QString>

#include "geometry/text.h"

namespace bolthole {

/// unitMark() as a QString: "in", "mm", "lb", "kg", "°", "%", or "".
[[nodiscard]] inline QString unitText(Quantity quantity, Units units) {
    const std::string_view mark = unitMark(quantity, units);
    return QString::fromUtf8(mark.data(), static_cast<qsizetype>(mark.size()));
}

}  // namespace bolthole
