// The sweep as a table: CSV after RFC 4180.
#pragma once

#include <string>

#include "geometry/kinematics/trace.h"
#include "geometry/uncertainty/trace_uncertainty.h"

namespace bolthole {

/// All rows of a trace as CSV (RFC 4180, CRLF): a header of column names with the unit of lengths (_in or
/// _mm), then a row a travel step from full droop. A figure that does not exist is an empty field; a step out
/// of reach keeps its travel and front travel only. '.' is the decimal point whatever the locale.
///
/// With an `uncertainty` of the same car, after all these, for every figure but the two travels, which are
/// imposed, a column of its name and "_u": its standard uncertainty in its own unit. Empty where the figure
/// does not exist or its uncertainty is not known.
[[nodiscard]] std::string sweepTable(const Trace& trace, const Car& car, Units units,
                                     const TraceUncertainty* uncertainty = nullptr);

}  // namespace bolthole
