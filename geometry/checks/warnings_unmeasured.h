// Warnings that come of numbers nobody measured. Part of findWarnings(), which is what others call.
#pragma once

#include <vector>

#include "geometry/car/faults.h"

namespace bolthole {

/// Makes every warning Severity::unmeasured that would be Severity::wrong and is about a starting number, or
/// about a link, a spring or the driveline with one among what it is computed of, and says so. Dangers stay:
/// they hold until the number is measured.
void softenUnmeasured(const Car& car, std::vector<Warning>& warnings);

}  // namespace bolthole
