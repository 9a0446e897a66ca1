// What a shock resists with, from its table.
#pragma once

#include "geometry/car/damping.h"
#include "geometry/dynamics/kinked_line.h"

namespace bolthole {

/// Force that pushes the ends of the shock apart, N, by the speed at which it gets shorter, m/s: bump at
/// speeds above 0, rebound, which pulls, below. Straight lines between the points of the table and between
/// clicks, through 0 at 0, past the last speed on with the last slope, never past the end clicks. The table
/// must have no refusal; a way without a click is taken at its first.
[[nodiscard]] KinkedLine dampingLine(const Damping& damping);

}  // namespace bolthole
