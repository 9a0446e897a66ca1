// What the Brackets page says of each hole: room to the edge and to the next hole.
#pragma once

#include <vector>

#include "geometry/car/car.h"
#include "widgets/pages/fact_card.h"

namespace bolthole {

/// A row a hole.
[[nodiscard]] std::vector<Fact> bracketFacts(const Bracket& bracket, Units units);
/// What stands under them.
[[nodiscard]] QString bracketNote(const Bracket& bracket);

}  // namespace bolthole
