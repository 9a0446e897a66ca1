// What the figures are called in tables.
#pragma once

#include <QString>

#include "geometry/kinematics/trace.h"
#include "geometry/units/text.h"

namespace bolthole {

/// A figure's name in a table's row: "Anti-squat". Empty for the travels, which are where, not what.
[[nodiscard]] QString figureWords(Figure figure);

/// The name with its unit: "Anti-squat, %".
[[nodiscard]] QString figureWords(Figure figure, Units units);

/// The CG height in use and where it comes from, which belongs wherever anti-squat is: "22 in, as entered",
/// "22 in, a starting number".
[[nodiscard]] QString cgHeightWords(const Car& car, NumberStyle style);

/// A length of the car as a tape reads it, without unit: in inch the fraction its field shows too, whatever
/// the style's step, or hundredths where the style is decimal; else tenths of a mm. kDash where there is
/// none.
[[nodiscard]] QString tapeLengthText(double length, NumberStyle style);

/// What the figure is.
[[nodiscard]] Quantity quantityOf(Figure figure);

}  // namespace bolthole
