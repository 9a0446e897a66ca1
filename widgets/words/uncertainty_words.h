// The uncertainty of a figure, in words: beside the figures, under the pointer, before against after.
#pragma once

#include <QString>
#include <vector>

#include "geometry/units/uncertainty_text.h"
#include "widgets/state/bench_state.h"

namespace bolthole {

/// uncertaintyText() as a QString.
[[nodiscard]] QString uncertaintyWords(double uncertainty, Quantity quantity, Units units,
                                       Fineness fineness = Fineness::plain);

/// Of a figure at ride that first order does not tell, from the car's cloud: "0.0 to 0.8". Not of the instant
/// center's place.
[[nodiscard]] QString drawnUncertaintyWords(const IcCloud& cloud, Figure figure, Units units);

/// Beside a figure of a station of the trace that `uncertainty` belongs to, without unit, to first order: "±
/// 9"; of the instant center's place also "40 to 71" or "40 to ∞". Empty where it is not known.
[[nodiscard]] QString stationUncertaintyWords(const TraceUncertainty& uncertainty, const Station& station,
                                              Figure figure, Units units,
                                              Fineness fineness = Fineness::plain);

/// Beside a figure at the bench's cursor, without unit: "± 9"; where first order fails there and the drawn
/// interval is known, "160 to 210". Empty where it is not to be seen or not known.
[[nodiscard]] QString cursorUncertaintyWords(const BenchState& state, Figure figure);

/// Beside the instant center at the cursor: "± 4.1 × ± 0.9 in", "40 to 71 × 12 to 20 in", "anywhere from 40
/// in to infinity". Empty where it is not to be seen or not known.
[[nodiscard]] QString centerUncertaintyWords(const BenchState& state);

/// The starting numbers that a figure at ride rests on, so that it has no ±.
[[nodiscard]] std::vector<FieldId> startsBehind(const TraceUncertainty& uncertainty, Figure figure);
/// Whether there are any, at a station of the trace that `uncertainty` belongs to; then "no ±" stands beside
/// it.
[[nodiscard]] bool restsOnStarts(const TraceUncertainty& uncertainty, const Station& station, Figure figure);

/// Whether what stands beside the instant center was drawn at random, not computed to first order.
[[nodiscard]] bool isDrawn(const BenchState& state, Figure figure);

/// What ± means and which readings it assumes: for tool tips and under the papers' figures. "95 in 100 …".
[[nodiscard]] QString uncertaintyMeaning(const Car& car, Units units);

/// uncertaintyMeaning() for a figure at the cursor, with whether it was drawn or computed.
[[nodiscard]] QString uncertaintyTip(const BenchState& state, Figure figure);

/// Said of a change within what the measurements may be off.
[[nodiscard]] QString cannotTellWords();

}  // namespace bolthole
