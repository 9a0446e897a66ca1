// Words of a fit: what its numbers are called and how they are written.
#pragma once

#include <QString>

#include "geometry/car/car.h"
#include "geometry/fit/launch_fit.h"

namespace bolthole {

/// "Friction", with more than one surface "Friction, north lane"; "Torque".
[[nodiscard]] QString fittedWords(const FittedNumber& number, bool hasSurfaces);
/// A value with its ± at 95 %, and its unit: "1.18 ± 0.03", "104 ± 7 %", "3610 ± 120 rpm".
[[nodiscard]] QString fittedText(LaunchNumber number, double value, double uncertainty);
/// How much of it the passes told: "94 %"; "all" is never said.
[[nodiscard]] QString toldText(const FittedNumber& number);
/// "12 of 14 inside their ±, 13 expected".
[[nodiscard]] QString insideWords(const LaunchFit& fit);
/// How past predictions fared, and whether the numbers as they stand agree with what the passes teach: for
/// pages that predict with them. Empty where there is no fit.
[[nodiscard]] QString faredWords(const LaunchFit& fit);
/// Why there is no fit, for a person; empty where it is done.
[[nodiscard]] QString noFitWords(const LaunchFit& fit, const Car& car);
/// Passes that were left out, a line for each reason; empty where none was.
[[nodiscard]] QString unusedWords(const LaunchFit& fit, const Car& car);

}  // namespace bolthole
