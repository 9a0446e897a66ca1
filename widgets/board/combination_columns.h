// The columns of the hole board's table: what they are called, how a combination reads in them, how they
// sort.
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "widgets/board/combination_list.h"

namespace bolthole {

/// One column. `link` and `end` say which, where there is one for each bracket or rod.
struct CombinationColumn {
    enum class Kind {
        rank,
        names,  ///< all holes together, where there are too many brackets for a column each in front
        hole,   ///< hole in use of a bracket that has several: link, end
        instantCenter,
        antiSquat,
        uncertainty,  ///< ± of anti-squat
        toldApart,    ///< whether its anti-squat can be told from that of the holes in use
        antiSquatTravel,
        pinion,
        pinionChange,
        axleShift,
        frontJoint,
        rearJoint,
        rod,  ///< length of a rod and the turns to get there: link
        bolts,
        adjusters,
        problem
    };
    Kind kind = Kind::rank;
    int link = -1;
    End end = End::chassis;

    bool operator==(const CombinationColumn&) const = default;
};

/// The columns a car needs, left to right: first rank, holes and problem, which stay in sight. Pinion and
/// joints only where it has a driveline.
[[nodiscard]] std::vector<CombinationColumn> combinationColumns(const Car& car);
/// How many of them stay in sight while the others scroll.
[[nodiscard]] int frozenCount(const std::vector<CombinationColumn>& columns);

/// The brackets that give a combination its names, in their order: "lower axle / upper front".
[[nodiscard]] QString bracketNames(const Car& car);

/// What stands above a column, and what it is in a sentence or two, with how it sorts where that is not
/// plain.
[[nodiscard]] QString columnTitle(const CombinationColumn& column, const Car& car, Units units);
[[nodiscard]] QString columnHelp(const CombinationColumn& column, const Car& car);

/// The item `at` of `list` in a column; empty where the board has moved on.
[[nodiscard]] QString columnText(const CombinationColumn& column, const CombinationList& list,
                                 std::size_t at);
/// What a column sorts by; NaN sorts last either way.
[[nodiscard]] double columnKey(const CombinationColumn& column, const CombinationList& list, std::size_t at);
/// Whether the column is set flush right.
[[nodiscard]] bool isNumeric(const CombinationColumn& column);
/// What its figure is made of; nothing for a column of names, counts or words.
[[nodiscard]] std::optional<CombinationList::Basis> basisOf(const CombinationColumn& column);
/// A text as wide as most in the column, for its width at first.
[[nodiscard]] QString widestText(const CombinationColumn& column, const CombinationList& list);

/// What it takes to change a rod's length by so much, m: "2.3 turns longer", "new link"; empty for none, and
/// where nobody would make a new one, as the car's tape tells no difference.
[[nodiscard]] QString rodWorkText(const Car& car, const Link& rod, double lengthChange);
/// "58.2 × 14.0", "∞", or an em dash without an instant center.
[[nodiscard]] QString instantCenterText(const HoleCombination& combination, Units units);
/// A combination in a few words: holes, instant center, anti-squat, problems.
[[nodiscard]] QString combinationInWords(const CombinationList& list, std::size_t at);

}  // namespace bolthole
