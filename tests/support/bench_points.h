// What window tests point at and wait for.
#pragma once

#include "widgets/state/bench_state.h"

namespace bolthole {

/// The first chassis hole of the first link.
inline constexpr PointId kLowerFront{PointId::Kind::hole, 0, End::chassis, 0};

/// How long something may take in the background, ms, on a machine that does other work.
inline constexpr int kPatience = 30'000;

}  // namespace bolthole
