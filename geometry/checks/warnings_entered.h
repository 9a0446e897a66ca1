// What looks wrong or risky in what was entered beside the links. Part of findWarnings() in
// geometry/edits/edit.h, which is what others call.
#pragma once

#include <vector>

#include "geometry/car/faults.h"
#include "geometry/kinematics/trace.h"

namespace bolthole {

/// Adds the warnings about weights, CG height, ballast, springs, brakes, launch and groups that are not
/// whole. `trace`: of `car`, which passed findFaults(), its ends of travel at least.
void addEnteredWarnings(const Car& car, const Trace& trace, std::vector<Warning>& warnings);
/// Adds those about the driveline; `trace` as above, with its travel between the ends.
void addDrivelineWarnings(const Car& car, const Trace& trace, std::vector<Warning>& warnings);

}  // namespace bolthole
