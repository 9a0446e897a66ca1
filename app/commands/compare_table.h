// Two cars side by side as a table: CSV after RFC 4180.
#pragma once

#include <string>

#include "geometry/compare/comparison.h"
#include "geometry/uncertainty/trace_uncertainty.h"

namespace bolthole {

/// The comparison as CSV (RFC 4180, CRLF) in long form, `figure,at,before,after,change`: every figure at
/// ride, full bump and full droop; then at ride the holes in use of the links both cars have, the lengths of
/// their rods and the turns of their adjusters (+ longer); every number of the cars; and the links that only
/// one has, with "present" where it is. The unit stands in the figure's name. What a car does not have is an
/// empty field, and so is a change where there is no number on both sides. '.' is the decimal point whatever
/// the locale.
///
/// With `uncertainties`, two more columns: `change_u`, the standard uncertainty of a figure's change, what
/// both cars have in common counting as measured once; and `apart`, "yes" where the change can be told from
/// none and "no" where it can't (see cannotTellApart()). Empty in the rows of what is no figure, and where
/// not known.
struct ComparedUncertainties {
    TraceUncertainty before;  ///< at ride, full droop, full bump
    TraceUncertainty after;
};
[[nodiscard]] std::string compareTable(const Comparison& comparison, Units units,
                                       const ComparedUncertainties* uncertainties = nullptr);

}  // namespace bolthole
