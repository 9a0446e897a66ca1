// What is wrong with a hole combination, in words.
#pragma once

#include <QString>

#include "geometry/combinations/combination_figures.h"

namespace bolthole {

/// That a hole of it is not drilled yet, and what describeProblems() says; empty for nothing.
[[nodiscard]] QString problemText(const HoleCombination& combination, const Car& car, Units units);

}  // namespace bolthole
