// The uncertainty of a figure, as text: what stands after ±, and the interval where ± would mislead.
#pragma once

#include <string>

#include "geometry/units/text.h"

namespace bolthole {

/// How the figure beside it is written: by figureText() or by fineFigureText().
enum class Fineness { plain, fine };

/// The coverage factor first order takes for 95 %: 1.96, the normal distribution's (JCGM 100, table G.1).
inline constexpr double kCoverage95 = 1.959963984540054;

/// What stands after "±" on screen and paper: kCoverage95 times the standard `uncertainty` (SI), in the
/// figure's unit, without sign or unit. At most two significant digits (JCGM 100:2008, 7.2.6), never more
/// decimals than the figure has; what would show as nothing but zeros is rounded up to the last of these
/// decimals (the same clause allows it). Empty for NaN, infinity, and where nothing is uncertain.
[[nodiscard]] std::string halfWidthText(double uncertainty, Quantity quantity, Units units,
                                        Fineness fineness = Fineness::plain);

/// "± 4"; empty where halfWidthText() is.
[[nodiscard]] std::string uncertaintyText(double uncertainty, Quantity quantity, Units units,
                                          Fineness fineness = Fineness::plain);

/// An interval, SI, without unit: "52 to 71", "3.1 to 4.4". Decimals as figureText() has them; none from ten
/// units wide on. Empty if an end is not finite.
[[nodiscard]] std::string intervalText(double low, double high, Quantity quantity, Units units);

/// Whether an interval lies more than twice as far to one side of `value` as to the other (a judgement), so
/// that a ± would promise what it does not hold. Not with an end that is no number.
[[nodiscard]] bool isLopsided(double value, double low, double high);

}  // namespace bolthole
