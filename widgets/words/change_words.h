// What was turned from one car to another, in words a person can carry to the car.
#pragma once

#include <QString>
#include <vector>

#include "geometry/compare/comparison.h"
#include "geometry/units/text.h"

namespace bolthole {

/// One thing that was changed.
struct ChangeLine {
    QString text;  ///< on one line
    QString more;  ///< what the line leaves out, a line each; empty: nothing
};

/// Bolts that go to another hole, rods with another length and the turns of their adjusters, links that only
/// one of the cars has, other numbers, and holes that stand elsewhere under the same name, in this order.
[[nodiscard]] std::vector<ChangeLine> changeLines(const Comparison& comparison, NumberStyle style);

/// "1.25 turns longer"; of a rod without an adjuster, that it is a new link.
[[nodiscard]] QString turnWords(const LengthMove& move);

/// The number with '+' or '−', in the style of fineFigureText(); what shows as nothing but zeros has no sign.
[[nodiscard]] QString signedFigure(double value, Quantity quantity, Units units);

/// From one number as it is shown to another, decimals and no fractions: what a reader gets who takes the
/// first from the second, with '+' or '−' and the decimals of the finer one. kDash where one of them is.
[[nodiscard]] QString textChange(const QString& before, const QString& after);

/// From one shown figure to another, with '+' or '−': the texts of fineFigureText() taken from each other, so
/// that they add up as they stand side by side. kDash where one does not exist.
[[nodiscard]] QString fineShownChange(double before, double after, Quantity quantity, Units units);

}  // namespace bolthole
