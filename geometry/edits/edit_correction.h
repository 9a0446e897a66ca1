// How what the passes taught changes a car; part of apply() and describe() in geometry/edits/edit.h, which is
// what others call.
#pragma once

#include <string>

#include "geometry/edits/edit.h"

namespace bolthole {

/// Changes `car`, or gives the reason why not and leaves it alone.
[[nodiscard]] std::string applyTo(Car& car, const CorrectLaunch& edit);

/// The edit in a person's words: "Take over from the passes: friction 1.18, torque x 1.04".
[[nodiscard]] std::string describeCorrection(const CorrectLaunch& edit);

}  // namespace bolthole
