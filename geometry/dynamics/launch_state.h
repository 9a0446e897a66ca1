// What moves in a launch: the numbers that are integrated.
#pragma once

#include <array>
#include <cstddef>

namespace bolthole {

/// Places in a LaunchState. Against the ground: the car frame's origin, forward and up, and its pitch about
/// y, nose down +; against the chassis: rear travel along the linkage and front travel, bump +; the rates of
/// these five; then the rear wheels' spin, rolling forward +, the tread's deflection and the engine's speed.
/// m, rad, s.
enum LaunchCoordinate : std::size_t {
    kForward,
    kUp,
    kPitch,
    kRearTravel,
    kFrontTravel,
    kForwardRate,
    kUpRate,
    kPitchRate,
    kRearRate,
    kFrontRate,
    kWheelSpin,
    kTread,
    kEngineSpeed
};
inline constexpr std::size_t kLaunchStateSize = kEngineSpeed + 1;
using LaunchState = std::array<double, kLaunchStateSize>;

}  // namespace bolthole
