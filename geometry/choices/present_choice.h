// The car as it stands among its hole choices.
#pragma once

#include "geometry/choices/choice_figures.h"

namespace bolthole {

/// The car as it stands, as a choice: its holes, its lengths as they are, whatever treatment others get. The
/// car must have passed findFaults().
[[nodiscard]] HoleChoice choiceAsItStands(const Car& car);

}  // namespace bolthole
