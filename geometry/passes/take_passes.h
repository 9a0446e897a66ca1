// Passes that come all at once, as out of a table.
#pragma once

#include <string>
#include <vector>

#include "geometry/car/car.h"

namespace bolthole {

/// Puts `passes`, oldest first, in the place of all that `car` has. Gives why not, of the first pass that
/// findFault() refuses or of too many, and then leaves the car alone.
[[nodiscard]] std::string takePasses(Car& car, const std::vector<Pass>& passes);

/// What that was, for the undo list: "Take in 12 passes".
[[nodiscard]] std::string describeTaken(const Car& before, const std::vector<Pass>& passes);

}  // namespace bolthole
