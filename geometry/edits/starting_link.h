// Links to start from, and links made into others: another kind, another side.
//
// Where the points stand is common practice, no source: places such links usually have, scaled to the car's
// wheelbase and rear tire. Nobody measured them.
#pragma once

#include "geometry/car/car.h"

namespace bolthole {

/// Links that cars usually have.
enum class LinkPattern {
    lower,          ///< a pair, a little wider at the axle
    parallelLower,  ///< a pair in planes along the car
    splayedUpper,   ///< a pair that runs together at the axle and so holds it sideways
    parallelUpper,  ///< a pair in planes along the car
    thirdLink,      ///< one upper in the middle
    ladderBar,      ///< a pair of arms rigid with the axle, pinned at their fronts
    torqueArm,      ///< one arm in the middle, its front free fore and aft
    trackBar,       ///< a rod across the car, from the body at left to the axle at right
    wattsGuide,     ///< the center of a Watts linkage behind the axle
    count
};

/// A link with one hole at each end, in whole quarter inches or 5 mm after the car's units, scaled to its
/// wheelbase and rear tire radius, no length written, its points starting numbers. Its name is one the car
/// does not have yet.
[[nodiscard]] Link startingLink(const Car& car, LinkPattern pattern);

/// A length as a tape shows it, m: whole quarter inches or 5 mm, which the car file writes short.
[[nodiscard]] double asTaped(double length, Units units);

/// `link` made one of another kind. What such a link can't have is dropped (length, adjuster, rod-end limit).
/// A rod's chassis end becomes an arm's front; an arm that becomes a rod ends under the axle; a guide has no
/// points an arm or rod could use, so those start anew.
[[nodiscard]] Link turnedInto(const Car& car, const Link& link, LinkKind kind);

/// `link` on another side. Left and right mirror each other; what comes to stand in the middle, unless it is
/// crosswise, goes to the center plane, and what leaves it to where such pairs usually stand.
[[nodiscard]] Link movedTo(const Car& car, const Link& link, Side side);

}  // namespace bolthole
