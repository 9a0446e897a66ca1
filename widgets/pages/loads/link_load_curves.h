// What the curves of every joint's load through the travel show.
#pragma once

#include "geometry/statics/launch_case.h"
#include "geometry/units/text.h"
#include "widgets/curves/curve_chart.h"

namespace bolthole {

/// A curve a joint: tension to the right of zero, compression to the left. Sides whose curves coincide are
/// one curve; of sides that differ the right one is dashed.
[[nodiscard]] ChartCard linkLoadCard(const Car& car, const Trace& trace, const LinkFigures& figures,
                                     Units units);

/// The chart such a card stands in, with its key at the right; it belongs to `parent`.
[[nodiscard]] CurveChart* newLinkLoadChart(QWidget* parent);

}  // namespace bolthole
