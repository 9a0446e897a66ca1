// What a shock resists with, from its table.
#pragma once

#include <string>

#include "geometry/dynamics/kinked_line.h"
#include "geometry/dynamics/launch_setup.h"

namespace bolthole {

/// What is wrong with the table and what was expected, with the place below it: {"bump.force", "expected
/// ..."}. Both empty: nothing. Speeds and clicks rise, speeds are above 0, each row has a force of 0 or more
/// for each speed, at most kMaxDampingSpeeds and kMaxDampingClicks of them.
struct DampingFault {
    std::string path;
    std::string reason;
};
[[nodiscard]] DampingFault refusal(const Damping& damping);
inline constexpr std::size_t kMaxDampingSpeeds = 64;
inline constexpr std::size_t kMaxDampingClicks = 100;

/// Force that pushes the ends of the shock apart, N, by the speed at which it gets shorter, m/s: bump at
/// speeds above 0, rebound, which pulls, below. Straight lines between the points of the table and between
/// clicks, through 0 at 0, past the last speed on with the last slope, never past the end clicks. The table
/// must have no refusal.
[[nodiscard]] KinkedLine dampingLine(const Damping& damping);

}  // namespace bolthole
