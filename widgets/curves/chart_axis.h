// The axis of a chart that is imposed: travel, roll, time, or passes in a row. All its cards share it.
#pragma once

#include <QFontMetricsF>
#include <QString>
#include <optional>
#include <vector>

#include "widgets/scales/travel_steps.h"

namespace bolthole {

/// A label given for a place on the imposed axis: a pass, a date. An empty one draws its line alone.
struct ImposedLabel {
    double at = 0;
    QString text;

    bool operator==(const ImposedLabel&) const = default;
};

/// A label below those of several places: the day of some passes. From one to the next, cut where it is
/// longer.
struct ImposedGroup {
    double from = 0;
    QString text;

    bool operator==(const ImposedGroup&) const = default;
};

/// What is imposed, its range, its labels and the steps of its keys.
struct ChartAxis {
    enum class Kind {
        number,  ///< any number with a unit: time, roll
        travel,  ///< bump is up; ticks, words and keys are those of travel_steps.h
        labels   ///< at given places only, each with its own label
    };
    Kind kind = Kind::number;
    bool isUpright = false;  ///< runs up, with the values across; else across, with the values up
    double low = 0;          ///< SI; below `high`
    double high = 1;
    double unit = 1;       ///< SI value of the shown unit
    QString unitText;      ///< "s", "°"
    QString name = {};     ///< before the value in words: "time", "roll"; may be empty
    int decimals = 2;      ///< in words
    double home = 0;       ///< where double click and R go; clamped to the range
    double snap = 3;       ///< px; nearer to home than this is home
    double step = 0.01;    ///< of the arrow keys, SI, for numbers
    double page = 0.1;     ///< of Page Up and Page Down
    int rows = 2;          ///< of travel
    bool isPoint = false;  ///< there is but one place, in the middle
    Units units = Units::inch;
    std::vector<ImposedLabel> labels = {};
    bool hasLines = true;                   ///< a line at every label
    std::vector<ImposedGroup> groups = {};  ///< a second row of labels, in the axis's order; not upright
    QString title = {};  ///< where labels alone don't say what they are of: below them, upright above them

    bool operator==(const ChartAxis&) const = default;

    [[nodiscard]] double clamp(double imposed) const;
    /// The range as travel_steps.h has it.
    [[nodiscard]] TravelSpan span() const { return {low, high, rows}; }
    /// "ride", "1.2 in bump"; "time 0.35 s"; the label there.
    [[nodiscard]] QString words(double imposed) const;
    /// Where a key takes the cursor. Upright: Up and Down; across: Left and Right by a step, to its next
    /// whole number; Page Up and Page Down by a page; Home and End to the ends; R or 0 home. Nothing: not
    /// such a key.
    [[nodiscard]] std::optional<double> afterKey(int key, double imposed) const;
};

/// Travel, upright, over a span.
[[nodiscard]] ChartAxis travelAxis(const TravelSpan& span, Units units);
/// Roll across, from -most to most, rad.
[[nodiscard]] ChartAxis rollAxis(double most);
/// Time across, s.
[[nodiscard]] ChartAxis timeAxis(double from, double to);
/// Places in a row across, each at its own number; half a place is kept free at either end.
[[nodiscard]] ChartAxis labelAxis(std::vector<ImposedLabel> labels);

/// A stretch of the screen, px, with the imposed along it: `low` lies at `from`, `high` at `to`.
struct ImposedRange {
    double low = 0;
    double high = 1;
    double from = 0;
    double to = 1;

    [[nodiscard]] double position(double imposed) const {
        return from + (imposed - low) / (high - low) * (to - from);
    }
    [[nodiscard]] double imposedAt(double position) const {
        return to == from ? low : low + (position - from) / (to - from) * (high - low);
    }
    bool operator==(const ImposedRange&) const = default;
};

/// Ticks for what `at` shows of the axis, in the axis's order; no two labels touch.
[[nodiscard]] std::vector<ImposedLabel> imposedTicks(const ChartAxis& axis, const ImposedRange& at,
                                                     const QFontMetricsF& metrics);

}  // namespace bolthole
