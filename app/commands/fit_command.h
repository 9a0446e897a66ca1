// The command fit: what the passes teach the launch model, and each pass predicted without itself.
#pragma once

#include "app/commands/launch_command.h"

namespace bolthole {

inline constexpr Option kPassesOption{"--passes", {}, {}};
inline constexpr Option kRecordingsOption{"--recordings", {}, {}};

/// A row a number, or with --passes a row a pass that was used, oldest first, or with --recordings a row a
/// sample of each pass's recording, which stands beside the car's file, and what the fitted launch has there;
/// a recording that can't be had is complained of. Cannot run where the car lacks
/// numbers of a launch or no pass can be used: a line each of what is missing or why. The car must have
/// passed findFaults().
[[nodiscard]] LaunchOutcome runFit(const Request& request, const Car& car);

}  // namespace bolthole
