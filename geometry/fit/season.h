// The passes of a car as launches: which of them can be computed, on what surfaces, and what is known of the
// launch's numbers before.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "geometry/car/car.h"
#include "geometry/dynamics/launch_inputs.h"
#include "geometry/fit/launch_numbers.h"

namespace bolthole {

/// A pass that counts and can be computed.
struct SeasonPass {
    std::size_t row = 0;      ///< of Car::passes
    double sixtyFoot = 0;     ///< s, as run
    std::size_t surface = 0;  ///< index into Season::surfaces
    std::size_t launch = 0;   ///< index into Season::launches
};
/// A launch that one pass or several stand for: one setup, launch speed and surface.
struct SeasonLaunch {
    LaunchInputs inputs{};
    std::size_t surface = 0;
};
/// A pass with a time that is not struck and yet can't be used.
struct UnusedPass {
    std::size_t row = 0;
    std::string reason{};  ///< a sentence without its full stop
};

struct Season {
    std::vector<MissingInput> missing{};  ///< what the car on the bench lacks for a launch
    std::vector<std::string> surfaces{};  ///< by name, in the order of their first pass
    std::vector<SeasonLaunch> launches{};
    std::vector<SeasonPass> passes{};
    std::vector<UnusedPass> unused{};
    std::vector<NumberPrior> priors{};  ///< frictions first, a surface each, then the others there are
};

/// What a pass's surface is called: its own name, else its kind, else "unnamed surface".
[[nodiscard]] std::string surfaceNameOf(const Pass& pass);

/// Collects the passes that count. Each runs as its kept setup, with the pass's launch rpm where it has one;
/// a number of launch and wheel rates that the setup lacks is the bench's, for it was entered since.
/// Friction, stall speed and peak slip are the bench's for all passes: what was typed last is best known;
/// torque and damping tables are each setup's own. Tire pressures, air and track are not in the launch model
/// and play no part. A number whose own uncertainty is entered as 0 is known, and no prior stands for it. The
/// car must have passed findFaults().
[[nodiscard]] Season seasonOf(const Car& car);

}  // namespace bolthole
