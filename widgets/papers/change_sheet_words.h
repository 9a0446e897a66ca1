// What the change sheet says, in words and figures; where it says it is the layout's affair.
#pragma once

#include <QString>
#include <QStringList>
#include <array>
#include <vector>

#include "geometry/compare/comparison.h"
#include "geometry/units/text.h"

namespace bolthole {

/// The boxes to tick in front of a row: none, one, or one a side.
enum class Ticks { none, one, left, right, both };

/// A row of a table: a text a column.
struct SheetRow {
    QStringList cells;
    Ticks ticks = Ticks::none;
};

/// A table with its heading; left out where it has no rows.
struct SheetTable {
    QString title;
    QString aside;  ///< after the title, on its line where it fits
    QStringList columns;
    std::vector<SheetRow> rows;
    std::vector<int> boldColumns;   ///< what to set
    std::vector<int> rightColumns;  ///< numbers

    /// Whether any row has boxes to tick.
    [[nodiscard]] bool hasTicks() const;
};

/// One thing to check again: what, and what is expected.
struct SheetCheck {
    QString what;
    QString expected;
};

/// One figure at ride, bump and droop, in the order of kTravelPositions: before, after, change.
struct FigureLine {
    QString name;
    std::array<std::array<QString, 3>, 3> cells;
    std::array<bool, 3> tells{};   ///< whether the change says something there
    std::array<bool, 3> isSure{};  ///< that, and it is more than the measurements may be off
};

/// Everything written on a change sheet.
struct SheetWords {
    bool differs = false;  ///< false: nothing does
    QStringList problems;  ///< what is wrong with the after, or why a car can't be assembled
    SheetTable bolts;      ///< from hole to hole
    SheetTable lengths;    ///< from length to length, and the adjusters' turns
    SheetTable numbers;    ///< tires, heights, weights, driveline
    SheetTable holes;      ///< holes in use that stand elsewhere under the same name
    SheetTable unshared;   ///< links only one of the cars has
    std::vector<SheetCheck> checks;
    std::vector<FigureLine> figures;  ///< those that tell somewhere, the largest change at ride on top
    QStringList accuracy;             ///< the uncertainty of the changes at ride, a sentence each
    QString quiet;                    ///< the rest, named in one sentence; empty: there is no rest
    bool hasFarAway = false;          ///< whether some figure shows as infinitely far
    QString pinionExpected;           ///< at ride, with unit; empty without a driveline
    QString shaftExpected;
};

/// Writes it. Lengths of rods and holes as a tape shows them, in the style; computed figures as
/// fineFigureText() writes them, an instant center beyond kFarAway as infinity.
[[nodiscard]] SheetWords sheetWordsOf(const Comparison& comparison, NumberStyle style);

/// What is said above the bolts to move.
inline constexpr const char* kBeforeBolts = QT_TRANSLATE_NOOP(
    "Bolthole",
    "Car on rated stands, wheels chocked. Take weight off the link and hold the axle before its bolt comes "
    "out: with "
    "a link out the axle can roll, and the pinion can drop or snap up.");

/// Turns as a hand turns them, to quarters: "1 1/2 turns longer", "less than 1/4 turn shorter". `turns`: +
/// longer.
[[nodiscard]] QString quarterTurns(double turns, bool isLonger);

}  // namespace bolthole
