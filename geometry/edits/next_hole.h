// Where a hole that is added begins.
#pragma once

#include "geometry/car/bracket.h"
#include "geometry/units/units.h"

namespace bolthole {

/// A hole to add to a bracket, which has one: where the row of its last two would go on, or an inch or 25 mm
/// above where there is one alone; on no other hole, with a name no other has ("new", "new 2"), bolted
/// nowhere.
[[nodiscard]] Hole nextHole(const Bracket& bracket, Units units);

}  // namespace bolthole
