// A hole that is not drilled yet, on the bench as if it were.
#pragma once

#include "geometry/edits/edit.h"

namespace bolthole {

/// The links that get such a hole: the one asked for, and the one on the car's other side that goes with it.
[[nodiscard]] std::vector<int> linksToDrill(const Car& car, int link);

/// The car with the hole added, bolted nowhere yet: on the other side's link with that one's own y. Refuses
/// what AddHole refuses.
[[nodiscard]] CarResult withHoleAdded(const Car& car, const PlanHole& edit);
/// The holes of the car that comes of it, with the new one in use.
[[nodiscard]] HoleUse useWithNewHole(const Car& withHole, const PlanHole& edit);
/// What PlanHole does.
[[nodiscard]] CarResult planHole(const Car& car, const PlanHole& edit);

}  // namespace bolthole
