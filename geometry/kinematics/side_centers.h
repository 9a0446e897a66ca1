// The side-view instant center of each side by itself, where left and right are set apart.
#pragma once

#include <limits>
#include <string_view>

#include "geometry/car/car.h"
#include "geometry/kinematics/linkage.h"
#include "geometry/kinematics/trace.h"

namespace bolthole {

/// Why a side has no instant center of its own.
enum class SideCenterState {
    there,     ///< it has one
    parallel,  ///< its links are parallel: at infinity
    tooFew,    ///< fewer than two of its links, or equations, count in side view
    notSolved  ///< the car can't be computed at ride
};

/// The instant center of one side. Measured as the car's own: ahead of the rear contact patch along the
/// ground and above the ground, m; NaN where there is none.
struct SideCenter {
    SideCenterState state = SideCenterState::notSolved;
    double ahead = std::numeric_limits<double>::quiet_NaN();
    double above = std::numeric_limits<double>::quiet_NaN();
    double carX = std::numeric_limits<double>::quiet_NaN();  ///< car frame, m
    double carZ = std::numeric_limits<double>::quiet_NaN();
};

/// Both sides, and the axle's own from all links together.
struct SideCenters {
    bool apart = false;  ///< some link that counts in side view differs from left to right
    SideCenter left;
    SideCenter right;
    SideCenter axle;
};

/// The instant centers at `station`, a usable one of `car`. Of a side: where the side-view lines of its rods
/// cross as they stand at that pose; a ladder bar's own pivot; on a torque arm's line straight above and
/// below its slide. Links in the middle count for both sides, crosswise rods and guides for neither; of more
/// than two equations the one point that fits them best, by least squares. It is what the axle's own would be
/// with the other side built like this one and the locator left out.
[[nodiscard]] SideCenters sideCenters(const Car& car, const Station& station);

/// Why there is none, in words: "its links are parallel: infinitely far"; empty where there is one.
[[nodiscard]] std::string describe(SideCenterState state);

}  // namespace bolthole
