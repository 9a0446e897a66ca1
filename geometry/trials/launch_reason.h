// Why one launch is quicker than another: what of it differs, read off its events and rows.
#pragma once

#include <optional>
#include <vector>

#include "geometry/dynamics/launch_run.h"

namespace bolthole {

/// What of a launch decides. SI; absent: it did not happen.
struct LaunchTraits {
    std::optional<double> sixtyFoot = std::nullopt;  ///< s
    std::optional<double> toppedOut = std::nullopt;  ///< s, the nose
    std::optional<double> frontUp = std::nullopt;    ///< s, the front tires
    std::optional<double> leastLoad = std::nullopt;  ///< N, rear tires, from kAfterTheHit to 60 ft
    double hitLoad = 0;                              ///< N, largest of the rear tires up to kAfterTheHit
    double spinning = 0;  ///< s of the way to 60 ft in which the tires slip more than kSpinning allows
};
/// The tires spin where they slip more than this many times what they push most at. A judgement, no source.
inline constexpr double kSpinning = 2;

/// Read off a launch with rows every few milliseconds. Of one that got nowhere: what there is.
[[nodiscard]] LaunchTraits traitsOf(const LaunchRun& run, const LaunchInputs& inputs);

/// One thing that differs.
struct ReasonPart {
    enum class Kind {
        noseStops,      ///< s, when the nose tops out; absent: never
        frontTiresUp,   ///< s, when the front tires leave the ground; absent: never
        leastRearLoad,  ///< N
        hitLoad,        ///< N
        spinning        ///< s
    };
    Kind kind = Kind::noseStops;
    std::optional<double> before = std::nullopt;
    std::optional<double> after = std::nullopt;
    double weight = 0;  ///< how telling: 1 is worth a sentence
};

/// What differs enough to be said, the most telling first. Times count from 5 ms on, loads from 1 percent of
/// the car's weight (`weight`, N) on; a judgement, no source.
[[nodiscard]] std::vector<ReasonPart> reasonsFor(const LaunchTraits& before, const LaunchTraits& after,
                                                 double weight);

}  // namespace bolthole
