// What the wall chart says, in words and figures; where it says it is the layout's affair.
#pragma once

#include <QString>
#include <QStringList>
#include <vector>

#include "geometry/units/text.h"
#include "widgets/papers/wall_chart_combinations.h"
#include "widgets/words/starting_words.h"

namespace bolthole {

/// An instant center farther off than this is written as at infinity, m: its distance is not known to any
/// useful figure. A judgement, common practice, no source.
inline constexpr double kFarAway = 25.4;
/// What "∞" means on paper: "links parallel in side view, or the instant center over 1000 in away.", in
/// meters where the car is metric.
[[nodiscard]] QString farAwayWords(Units units);

/// A rod's length, and what must be done to get there: "upper 16 5/8 in" and "+1 1/4 turns", "new link", or
/// nothing where it stays as built.
struct LengthWords {
    QString length;
    QString work;

    /// Both on one line.
    [[nodiscard]] QString whole() const {
        return work.isEmpty() ? length : length + QStringLiteral(", ") + work;
    }
};

/// A part of a line: figures, or words set smaller; the height of digits in such type, mm at scale 1.
struct TextRun {
    QString text;
    double digits = 0;
};

/// One cell.
struct CellWords {
    bool assembled = false;
    QString antiSquat;  ///< without the percent sign; a dash where the combination can't be assembled
    std::vector<TextRun> instantCenter;  ///< "58 × 14 in"; empty where the combination can't be assembled
    QString droop;                       ///< "droop 131"
    QString bump;
    std::vector<LengthWords> lengths;
    QStringList problems;  ///< a few words each
};

/// A label over a figure.
struct FactWords {
    QString label;
    QString value;
};

/// One bracket of a row's or column's heading: "chassis" and "top".
struct HoleWords {
    QString label;  ///< empty where the axis has one bracket only
    QString hole;
};

/// Makes the words of one chart. Keeps references to the car and the combinations.
class ChartWords {
  public:
    /// `powers`: which holes for how much power; empty: not said.
    ChartWords(const Car& car, const ChartCombinations& chart, LengthTreatment lengths, NumberStyle style,
               QString powers);

    [[nodiscard]] const Car& car() const { return car_; }
    [[nodiscard]] CellWords cell(int row, int column) const;
    /// The holes of one step of an axis, in order of its brackets.
    [[nodiscard]] std::vector<HoleWords> holes(const HoleAxis& axis, int index) const;
    /// "LOWER, axle hole".
    [[nodiscard]] QString title(const HoleAxis& axis) const;
    /// The lengths that go with a row, or with a column.
    [[nodiscard]] std::vector<LengthWords> rowLengths(int row) const;
    [[nodiscard]] std::vector<LengthWords> columnLengths(int column) const;

    /// What the figures rest on that nobody measured; empty: nothing.
    [[nodiscard]] QString starting() const { return startingHeading(car_); }
    /// The car: wheelbase, heights, tires, weights.
    [[nodiscard]] std::vector<FactWords> facts() const;
    /// How lengths are treated and what stays as bolted, then how they are rounded: a line each.
    [[nodiscard]] QStringList treatment() const;
    /// The uncertainty of the figures as bolted today, and what ± rests on; empty where that is not known.
    [[nodiscard]] QString accuracy() const;
    /// How to read a cell, a sentence each.
    [[nodiscard]] QStringList legend() const;
    /// What every rod is built to now, and what holds for all combinations; a line each.
    [[nodiscard]] QStringList rodLines() const;
    /// "100 to 119", "to 79", "from 160".
    [[nodiscard]] QString shade(int step) const;

    /// What a person calls a link, and a hole.
    [[nodiscard]] QString linkName(int link) const;
    [[nodiscard]] QString holeName(int link, End end, int hole) const;

  private:
    [[nodiscard]] QString lengthText(double metres) const;
    [[nodiscard]] LengthWords lengthOf(const HoleCombination& combination, int link) const;
    [[nodiscard]] std::vector<LengthWords> lengthsAt(const HoleCombination* combination,
                                                     LengthPosition place) const;
    [[nodiscard]] QString roundingWords() const;
    [[nodiscard]] QString heldWords() const;
    [[nodiscard]] QString bracketWords(const ChartBracket& bracket) const;
    [[nodiscard]] std::vector<TextRun> instantCenter(const HoleCombination& combination) const;
    [[nodiscard]] QStringList problems(const HoleCombination& combination) const;
    [[nodiscard]] QString problem(const HoleCombination& combination, CombinationProblem which) const;
    [[nodiscard]] QString measure(double value, Quantity quantity) const;

    const Car& car_;
    const ChartCombinations& chart_;
    LengthTreatment lengths_;
    NumberStyle style_;
    QString powers_;
};

/// Turns as a hand turns them, to quarters, whatever their way: "1 1/2 turns"; empty for none.
[[nodiscard]] QString turnWords(double turns);

/// What everybody at the car must mind; at the foot of every sheet.
[[nodiscard]] QString cautionWords(const Car& car);

}  // namespace bolthole
