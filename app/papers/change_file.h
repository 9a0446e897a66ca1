// The change sheet for the command line.
#pragma once

#include <string>

#include "geometry/car/car.h"

namespace bolthole {

/// The sheet as PDF: dated today, in the after's units on their usual paper, the cars called by
/// their titles or, where those don't tell them apart, by their file names. Works without a display and
/// leaves standard error alone. Empty: it could not be painted.
[[nodiscard]] std::string makeChangeSheet(const Car& before, const Car& after, const std::string& beforeFile,
                                          const std::string& afterFile);

}  // namespace bolthole
