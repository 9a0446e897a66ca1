// The car as it stands among its hole combinations.
#pragma once

#include "geometry/combinations/combination_figures.h"

namespace bolthole {

/// The car as it stands, as a combination: its holes, its lengths as they are, whatever treatment others get.
/// The car must have passed findFaults().
[[nodiscard]] HoleCombination combinationAsItStands(const Car& car);

}  // namespace bolthole
