// The axle in roll as a table: CSV after RFC 4180.
#pragma once

#include <string>

#include "geometry/kinematics/roll.h"
#include "geometry/uncertainty/roll_uncertainty.h"

namespace bolthole {

/// The rows of roll at ride as CSV (RFC 4180, CRLF): a header with the unit of lengths (_in or _mm), then a
/// row a roll, the body rolled farthest to the right first. A roll out of reach keeps its `roll_deg` only.
/// '.' is the decimal point whatever the locale. With an `uncertainty` of the same car and range, after all
/// these, for each RollFigure a column of its name and "_u": its standard uncertainty in its own unit, empty
/// where it is not known.
[[nodiscard]] std::string rollTable(const RollTrace& trace, Units units,
                                    const RollUncertainty* uncertainty = nullptr);

}  // namespace bolthole
