// Units the tests are written in.
#pragma once

#include <limits>

#include "geometry/units/units.h"

namespace bolthole {

inline constexpr double kInch = kMetresPerInch;                               // m
inline constexpr double kFoot = 12 * kMetresPerInch;                          // m
inline constexpr double kDegree = kRadiansPerDegree;                          // rad
inline constexpr double kPoundForce = kKilogramsPerPound * kStandardGravity;  // N, exact
inline constexpr double kPoundPerInch = kPoundForce / kMetresPerInch;         // N/m
inline constexpr double kEndless = std::numeric_limits<double>::infinity();

}  // namespace bolthole
