// What looks like a slip of the pen in a pass.
#pragma once

#include <string>
#include <vector>

#include "geometry/car/pass.h"

namespace bolthole {

/// A sentence without its full stop about the first number of a pass that is outside what cars on a drag
/// strip have (a judgement, no source), in its own unit: "60 ft of 19.5 s: hardly a car takes that"; empty:
/// none. A 60 ft a third off that of the last pass of the log that counts on the same surface is one, too;
/// the pass itself may stand in the log already.
[[nodiscard]] std::string slipIn(const Pass& pass, const std::vector<Pass>& log);

}  // namespace bolthole
