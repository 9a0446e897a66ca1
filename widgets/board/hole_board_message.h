// What the hole board says in whole sentences: why there is nothing to see, and how combinations are ordered.
#pragma once

#include <QString>

#include "widgets/board/hole_board.h"

namespace bolthole {

/// Instead of map and table.
struct BoardMessage {
    QString text;             ///< empty: there is something to see
    bool mayCompute = false;  ///< offer to compute all the same
};

/// `computingTime`: computingTimeInWords() where the board asks before it computes.
[[nodiscard]] BoardMessage boardMessage(const BoardState& board, const QString& computingTime);

/// How long the board's combinations would take on this machine, "about 20 s": a few of them are solved and
/// timed.
[[nodiscard]] QString computingTimeInWords(const BoardState& board);
/// "about 20 s", to one digit.
[[nodiscard]] QString aboutSeconds(double seconds);

/// How rankCombinations() orders, and where the table is sorted otherwise (`sortedBy`: the column's title),
/// by what.
[[nodiscard]] QString orderInWords(bool hasTarget, bool hasDriveline, const QString& sortedBy);

}  // namespace bolthole
