// How far a car moves before the clock starts.
#pragma once

#include <cmath>

namespace bolthole {

/// How far a wheel of `radius` rolls from where its tread first breaks a beam at `beamHeight` above the
/// ground to where it leaves it: the chord of the tire at that height, 2 sqrt(2 R b - b^2) (derived). All m;
/// the beam not above the tire. A car staged with the beam just broken has this rollout at most.
[[nodiscard]] inline double rolloutPastBeam(double radius, double beamHeight) {
    return 2 * std::sqrt(2 * radius * beamHeight - beamHeight * beamHeight);
}

/// Height of the beam where no rollout was entered, m: 1 9/16 in, common practice, no source.
inline constexpr double kUsualBeamHeight = 1.5625 * 0.0254;

}  // namespace bolthole
