// What to check again after a change, with what is expected there.
#pragma once

#include <QStringList>
#include <vector>

#include "widgets/papers/change_sheet_words.h"

namespace bolthole {

/// What to go over once everything is turned, in the order it is done at the car. Expected values are those
/// of the after, rounded as figureText() does; a figure a car does not have is left out. The list itself is
/// common practice, no source.
[[nodiscard]] std::vector<SheetCheck> checksOf(const Comparison& comparison, NumberStyle style);

/// What is wrong with the after (see CombinationProblem), and why a car can't be assembled; a sentence each.
[[nodiscard]] QStringList problemsOf(const Comparison& comparison, Units units);

}  // namespace bolthole
