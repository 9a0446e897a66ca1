// The numbers and words of a pass as the page of the test days shows them.
#pragma once

#include <QString>

#include "geometry/car/car.h"
#include "geometry/car/pass_fields.h"
#include "geometry/passes/pass_runs.h"

namespace bolthole {

/// A number of a pass in `units`, without its unit: times to a thousandth of a second, pressures of tires to
/// a tenth of a psi or a whole kPa, everything else as it was typed, to a tenth. Empty: not entered.
[[nodiscard]] QString passNumberText(const OptionalNumber& inFile, PassField field, Units units);
/// The same with its unit: "18.5 psi".
[[nodiscard]] QString passNumberWords(const OptionalNumber& inFile, PassField field, Units units);
/// Mark of the unit a number of a pass is shown in.
[[nodiscard]] QString passUnitText(PassField field, Units units);
/// A difference of times with its sign: "−0.027".
[[nodiscard]] QString signedTime(double seconds);
/// A time or a half width: "0.022".
[[nodiscard]] QString timeText(double seconds);

/// "Nov 20, 2026" of "2026-11-20"; the text itself where it is no date.
[[nodiscard]] QString dayText(const std::string& date);
/// "street, north lane"; empty where nothing of it was entered. Without its temperature.
[[nodiscard]] QString surfaceText(const std::optional<SurfaceKind>& kind, const std::string& name);
/// What stands over the passes of a day: its date, place, surface, air and density altitude, read off `pass`.
[[nodiscard]] QString dayHeading(const Pass& pass, Units units);
/// "spun at the hit, paddle marks".
[[nodiscard]] QString seenText(const Pass& pass);
/// One thing that may be seen of a pass.
[[nodiscard]] QString seenWords(Seen seen);
/// The pressures of an axle: "17", or "17 / 18" where its tires differ; empty where none was entered.
[[nodiscard]] QString axlePressures(const OptionalNumber& left, const OptionalNumber& right, Units units);

/// The clicks of rebound a car's shocks are set to; the rear's are those of the first part that has any.
[[nodiscard]] OptionalNumber frontRebound(const Car& car);
[[nodiscard]] OptionalNumber rearRebound(const Car& car);
/// "4 / 8", an em dash for what was not entered; empty where neither was.
[[nodiscard]] QString clicksText(const Car& setup);

/// How a number of a pass is measured, in a sentence or two.
[[nodiscard]] QString howToMeasure(PassField field);
/// The name of a field with a capital, the unit left out.
[[nodiscard]] QString labelOf(PassField field);

}  // namespace bolthole
