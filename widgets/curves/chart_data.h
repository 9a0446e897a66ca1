// Curves as data: what the cards of a chart show, on the screen and on paper.
#pragma once

#include <QString>
#include <QStringList>
#include <limits>
#include <optional>
#include <vector>

#include "geometry/units/units.h"
#include "widgets/kit/theme.h"

namespace bolthole {

/// A color by its use; looked up whenever something is painted, so that a change of theme reaches it.
using ThemeColor = QColor Theme::*;

/// Least and most of some values; infinite the wrong way round while there is none.
struct Extent {
    double least = std::numeric_limits<double>::infinity();
    double most = -std::numeric_limits<double>::infinity();

    /// Grows to hold `value`; what is not finite is passed over.
    void take(double value);
    [[nodiscard]] bool holdsAny() const { return least <= most; }
};

/// A point of a series. A value that is NaN breaks the line. Between `low` and `high` the value may be: an
/// error bar where points are marked, else a band; an end may be infinite, NaN says nothing.
struct ChartPoint {
    double imposed = 0;   ///< in the axis's own unit (SI)
    double value = kNaN;  ///< in the card's own unit (SI)
    double low = kNaN;
    double high = kNaN;

    bool operator==(const ChartPoint&) const = default;
};

enum class ChartLine { none, solid, dashed, longDashes, fineDashes, dashDotted, dotted };
enum class ChartMark { none, circle, square, triangle, diamond };

/// How one point is marked.
struct PointMark {
    ChartMark mark = ChartMark::circle;
    bool isFilled = false;
    bool isPale = false;  ///< of a point that counts less than the others, or not at all
    ThemeColor color = &Theme::ink;
};

/// One curve, or one lot of points.
struct ChartSeries {
    QString name;  ///< for screen readers, and in the key; empty: no key, never spoken
    QStringList keyNames =
        {};  ///< in the key, the longest that fits, or else the last one cut; empty: the name, cut
    std::vector<ChartPoint> points = {};  ///< in the order the line runs
    ThemeColor color = &Theme::instantCenter;
    ChartLine line = ChartLine::solid;
    double width = 2.2;  ///< px
    ChartMark mark = ChartMark::none;
    bool isMarkFilled = false;
    bool marksPoints = false;           ///< a mark at every point, which can be hovered and clicked
    bool isGhost = false;               ///< of another state: without key and value, never hovered
    bool setsRange = true;              ///< the value axis shows all of it
    std::vector<PointMark> marks = {};  ///< one a point, instead of the series' own; empty: all alike
    QStringList pointWords = {};        ///< what a point tells, one a point; empty: name, place, value
};

/// A line across a card at a value: a reference, a limit.
struct ChartRule {
    double at = 0;  ///< in the card's own unit
    QString words = {};
    ThemeColor color = &Theme::border;
    ChartLine line = ChartLine::solid;
    double width = 1;
    bool setsRange = false;  ///< the value axis reaches it
};
/// A quiet line with nothing to say: zero, 100 %, infinity.
[[nodiscard]] ChartRule referenceRule(double at);
/// A line that must not be passed, in the color of problems.
[[nodiscard]] ChartRule limitRule(double at, const QString& words);

/// A stretch of the imposed axis: hatched where the car cannot be, shaded where something is the case.
struct ChartStretch {
    double from = 0;
    double to = 0;
    QString words = {};
    bool isHatched = true;

    bool operator==(const ChartStretch&) const = default;
};

/// A part of the imposed axis with a heading above the plot; where the imposed runs across.
struct ChartSection {
    double from = 0;
    double to = 0;
    QString title;       ///< large and in its middle; left out where it is too long for the section
    QString words = {};  ///< below the title, cut to the section
    ChartLine divider = ChartLine::none;  ///< the line between it and the section before
};

/// Words beside a place in the plot. Where others stand already they stand further right, as long as there is
/// room.
struct ChartNote {
    double imposed = 0;
    double value = 0;
    QString text;
};

/// Something that happens at an imposed value.
struct ChartEvent {
    double at = 0;
    QString word;
    ThemeColor color = &Theme::muted;
};

/// Fills what lies between two series of a card that share their imposed values, row by row.
struct ChartGap {
    std::size_t first = 0;
    std::size_t second = 1;
    ThemeColor color = &Theme::instantCenter;
};

/// How values lie along the value axis.
enum class ChartScale {
    plain,
    inverseDistance  ///< values are 1/distance (1/m), labels are distances; see distance_scale.h
};

/// One card. Values are SI, but on an `inverseDistance` scale.
struct ChartCard {
    QStringList titles;  ///< the longest that fits is shown
    QString unitText;
    double unit = 1;   ///< SI value of the shown unit
    int decimals = 2;  ///< of values at the cursor that are not given as text
    ChartScale scale = ChartScale::plain;
    double minimumSpan = 1e-3;  ///< of the value axis: a flat curve is not blown up to noise
    double least = -std::numeric_limits<double>::infinity();  ///< the axis follows no value beyond these
    double most = std::numeric_limits<double>::infinity();
    bool neverBelowLeast = false;  ///< no value lies below `least`, and the axis does not go there
    std::optional<Extent> extent;  ///< what the axis shows instead of what the series ask for
    bool isExtentExact = false;    ///< the axis ends where `extent` does, and keeps nothing of before
    double share = 1;              ///< of the room
    bool hasBaseline = false;      ///< every value has a line below it for what it was
    QString absent;                ///< said where no series has a value
    QString axisWords;             ///< how the value axis is spaced, along it where no curve runs through
    QString about;                 ///< how the card is to be read, in its tool tip
    bool restsOnStarts = false;    ///< on numbers that nobody measured, and says so
    QString subject;               ///< the value axis is taken afresh when this changes: a part's name
    std::vector<ChartSeries> series;
    std::vector<ChartRule> rules;
    std::vector<ChartStretch> stretches;
    std::vector<ChartEvent> events;
    std::vector<ChartGap> gaps;
    std::vector<ChartSection> sections;
    std::vector<ChartNote> notes;
};

/// What stands at the cursor for one series.
struct ChartValue {
    double value = kNaN;        ///< where its marker is, in the card's own unit; NaN: nowhere
    QString text = {};          ///< in the card's head
    QString plusMinus = {};     ///< "±0.3", quietly beside it where there is room
    QString other = {};         ///< the same in another state, quietly beside it
    QStringList baseline = {};  ///< what it was, on a line below; the longest that fits
    QString spoken = {};        ///< for screen readers; empty: nothing is said
};

/// The cards, each saying whether it rests on numbers that nobody measured.
[[nodiscard]] std::vector<ChartCard> withStartingMark(std::vector<ChartCard> cards, bool restsOnStarts);

/// What a card's value axis must show; nothing: it has no value.
[[nodiscard]] Extent extentOf(const ChartCard& card);
/// Whether any series but ghosts has a value.
[[nodiscard]] bool hasValues(const ChartCard& card);
/// The series' value at an imposed one, linear between its points, which must ascend or descend; NaN at a
/// break and outside.
[[nodiscard]] double valueAt(const ChartSeries& series, double imposed);
/// A value as the card's head shows it, without unit; a dash for NaN, the sign of infinity at 0 on a scale of
/// 1/distance.
[[nodiscard]] QString valueText(const ChartCard& card, double value);
/// A value of a series with its words; nothing is spoken of NaN.
[[nodiscard]] ChartValue chartValue(const ChartCard& card, const ChartSeries& series, double value);
/// The same at an imposed value.
[[nodiscard]] ChartValue valueWithWords(const ChartCard& card, const ChartSeries& series, double imposed);

}  // namespace bolthole
