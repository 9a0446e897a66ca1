// The vertical travel axis that slider and curves share: range, rows, keys, ticks and words.
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "widgets/state/bench_state.h"

namespace bolthole {

/// The travel the axle can be shown at: `droop` at the bottom (<= 0), `bump` at the top (>= 0), m, in `rows`
/// even rows.
struct TravelSpan {
    double droop = -0.1;
    double bump = 0.1;
    int rows = 2;

    [[nodiscard]] double clamp(double travel) const;
    /// Distance of two rows, m.
    [[nodiscard]] double rowStep() const;
    bool operator==(const TravelSpan&) const = default;
};

/// Travel of the trace that is shown, or of the car where none could be computed.
[[nodiscard]] TravelSpan travelSpan(const BenchState& state);

/// A vertical stretch of the screen, px, with bump at the top.
struct TravelOnScreen {
    TravelSpan span;
    double top = 0;
    double bottom = 1;

    [[nodiscard]] double position(double travel) const;
    /// Travel at height `y`, clamped to the span; within three px of ride it is exactly 0.
    [[nodiscard]] double travelAt(double y) const;
};

/// Where a key takes the cursor: Up and Down one row, Page Up and Page Down ten, Home full bump, End full
/// droop, R ride. From between two rows, Up and Down go to the next row. Nothing: not a key for the cursor.
[[nodiscard]] std::optional<double> travelAfterKey(int key, double travel, const TravelSpan& span);

/// A tick of the travel axis.
struct TravelTick {
    double travel = 0;  ///< m
    QString label;      ///< "+4", "ride", "-2" with U+2212, in the shown unit
};

/// Round ticks at least `spacing` px apart, ride always among them, from droop to bump.
[[nodiscard]] std::vector<TravelTick> travelTicks(const TravelOnScreen& axis, Units units, double spacing);

/// Distance of travel ticks, px, at a text height: both the slider and the curves' grid use it.
[[nodiscard]] inline double travelTickSpacing(double textHeight) {
    return 1.7 * textHeight;
}

/// A stretch of travel the links do not reach, m.
struct OutOfReach {
    double from = 0;
    double to = 0;

    bool operator==(const OutOfReach&) const = default;
};

/// The stretches of a trace whose rows are not usable, each grown to the usable rows beside it.
[[nodiscard]] std::vector<OutOfReach> outOfReach(const Trace& trace);

/// "ride", "1.2 in bump", "30 mm droop".
[[nodiscard]] QString travelInWords(double travel, Units units);

}  // namespace bolthole
