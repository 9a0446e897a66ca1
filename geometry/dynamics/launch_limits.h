// Numbers of the launch's equations that nobody enters.
#pragma once

#include "geometry/statics/launch.h"
#include "geometry/units/units.h"

namespace bolthole {

/// How steep a part of the rear is past its closed or open length, N/m, each; and the front past its droop or
/// bump, both wheels together. A judgement, no source.
inline constexpr double kPartStopRate = 1e6;
inline constexpr double kFrontStopRate = 2e6;
/// Speed over which the rev limiter takes all torque away; and below which the engine has stalled, rad/s. A
/// judgement, no source.
inline constexpr double kLimiterBand = 100 * kRpm;
inline constexpr double kStalledSpeed = 300 * kRpm;
/// The run ends where the clock has stopped and this time is past, s; or at the latest then.
inline constexpr double kLeastTime = 2.5;
inline constexpr double kMostTime = 6.0;
/// Least rear load is looked for from here on: the hit is over, s.
inline constexpr double kAfterTheHit = 0.3;

}  // namespace bolthole
