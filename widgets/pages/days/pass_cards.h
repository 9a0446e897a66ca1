// The passes as the card of a chart: one after the other, or against a number.
#pragma once

#include <vector>

#include "widgets/curves/chart_axis.h"
#include "widgets/curves/chart_data.h"
#include "widgets/pages/days/pass_book.h"
#include "widgets/pages/days/pass_measures.h"

namespace bolthole {

/// A pass to be drawn.
struct PlottedPass {
    std::size_t row = 0;  ///< of Car::passes
    double at = 0;        ///< along the axis: in passes, or in the measure's unit
};

/// A card over its axis.
struct PassChart {
    ChartAxis axis;
    ChartCard card;
};

/// The mark of a pass by its surface: a ring for the street, a square for a prepped track, a triangle for an
/// unprepped one, a hollow diamond where it was not said. Pale where it is struck.
[[nodiscard]] PointMark surfaceMark(const std::optional<SurfaceKind>& kind, bool isStruck);

/// The timed passes in `rows` in a row, a step each, days half a step further apart. Stretches run alike on
/// one surface and day have their letter, what changed before them, the mean of all their repeats and where
/// the true one lies. The last series has the passes, in the order of `rows`.
[[nodiscard]] PassChart passesInARow(const PassBook& book, const std::vector<std::size_t>& rows);
/// Timed passes against a number, which `missing` more of them lack: a letter at each cluster of one run. The
/// last series has the passes in the order given.
[[nodiscard]] PassChart passesAgainst(const PassBook& book, const std::vector<PlottedPass>& passes,
                                      PassMeasure measure, int missing);

}  // namespace bolthole
