// The command fit: what the passes teach the launch model, and each pass predicted without itself.
#pragma once

#include "app/commands/launch_command.h"

namespace bolthole {

inline constexpr Option kPassesOption{"--passes", {}, {}};

/// A row a number, or with --passes a row a pass that was used, oldest first. Cannot run where the car lacks
/// numbers of a launch or no pass can be used: a line each of what is missing or why. The car must have
/// passed findFaults().
[[nodiscard]] LaunchOutcome runFit(const Request& request, const Car& car);

}  // namespace bolthole
