// How stiff a tire is at the pressure it has.
#pragma once

#include <optional>

#include "geometry/car/entered.h"

namespace bolthole {

/// Whether the rate was read at two pressures, so that it is known at others.
[[nodiscard]] bool isReadAtTwoPressures(const EnteredRates& rates);

/// N/m, one tire at the pressure it has now: along the straight line through the rates read at two pressures
/// (vertical stiffness rises with pressure nearly along a line: J. Y. Wong, "Theory of Ground Vehicles", ch.
/// 1, 4th ed., Wiley, 2008, from memory), never below a tenth of the softer reading, a judgement. Else as
/// read; nothing where no rate was.
[[nodiscard]] std::optional<double> tireRateNow(const EnteredRates& rates);

}  // namespace bolthole
