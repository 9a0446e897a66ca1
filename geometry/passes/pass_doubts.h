// What looks like a slip of the pen in a pass.
#pragma once

#include <string>

#include "geometry/car/pass.h"

namespace bolthole {

/// A sentence without its full stop about the first number of a pass that is outside what cars on a drag
/// strip have (a judgement, no source), in its own unit: "60 ft of 19.5 s: hardly a car takes that"; empty:
/// none. `other`: the pass entered before on the same ground, or null; a 60 ft a third off it is one, too.
[[nodiscard]] std::string slipIn(const Pass& pass, const Pass* other);

}  // namespace bolthole
