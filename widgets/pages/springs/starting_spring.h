// What a newly added spring, shock, stop or strap starts from.
#pragma once

#include "geometry/edits/edit.h"

namespace bolthole {

/// A part of that kind, one on each side, where such parts usually stand: mounts over and beside the axle
/// tube by the car's rear tire radius and track (half the wheelbase where no track is known), in
/// whole quarter inches or 5 mm. Common practice, no source: a place to start measuring from. Rates and
/// lengths stay empty: nobody can guess those. All its numbers are starting numbers. Its name is one the car
/// does not have yet.
[[nodiscard]] SuspensionPart startingSpring(const Car& car, PartKind kind);

}  // namespace bolthole
