// What looks wrong or risky in what was entered beside the links. Part of findDoubts() in
// geometry/edits/edit.h, which is what others call.
#pragma once

#include <vector>

#include "geometry/car/faults.h"
#include "geometry/kinematics/trace.h"

namespace bolthole {

/// Adds the doubts about weights, CG height, loads, springs, brakes, launch and groups that are not whole.
/// `trace`: of `car`, which passed findFaults(), its ends of travel at least.
void addEnteredDoubts(const Car& car, const Trace& trace, std::vector<Doubt>& doubts);
/// Adds those about the driveline; `trace` as above, with its travel between the ends.
void addDrivelineDoubts(const Car& car, const Trace& trace, std::vector<Doubt>& doubts);

}  // namespace bolthole
