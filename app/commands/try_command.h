// The command try: what each single change that can be made between two passes does to the launch.
#pragma once

#include "app/commands/launch_command.h"

namespace bolthole {

/// A row a change, the one most likely to help first; in the car's units. The car must have passed
/// findFaults().
[[nodiscard]] LaunchOutcome runTrials(const Car& car);

}  // namespace bolthole
