// Everything doubtful in a car, in one list: links, travel, plates, weights, driveline, springs.
#pragma once

#include <vector>

#include "geometry/car/faults.h"

namespace bolthole {

/// From here on two readings of one length are a slip of one of them, m: half an inch, a judgement. So is
/// what stands after the length's ±, which their difference makes.
inline constexpr double kReadingsFarApart = 0.0127;

/// What looks wrong or risky in a car that findFaults() passed: a written length that disagrees with the
/// holes by more than a sixteenth of an inch and what that would shift (unless some rod fits other holes of
/// its brackets: then a bolt was moved), an adjuster past its entered limits, a hole that breaks a rule of
/// its bracket's plate, a target window nothing can lie in, travel the links do not reach, sides that nothing
/// holds.
[[nodiscard]] std::vector<Warning> findWarnings(const Car& car);

}  // namespace bolthole
