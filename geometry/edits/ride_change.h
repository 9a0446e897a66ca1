// Other tires or another ride height: what was measured once, moved to where it would be measured then.
#pragma once

#include "geometry/combinations/hole_combination.h"

namespace bolthole {

/// Tire radii and how far the ride height moves at each end.
struct RideChange {
    double rearTireRadius = 0;   ///< loaded, m, the new one
    double frontTireRadius = 0;  ///< loaded, m, the new one
    double rearLower = 0;        ///< m the body comes down over the rear axle (its axle's travel, bump +)
    double frontLower = 0;       ///< m the body comes down over the front axle

    bool operator==(const RideChange&) const = default;
};

/// The change that changes nothing.
[[nodiscard]] RideChange noChange(const Car& car);

/// The car as it would be measured after the change: the axle moved to that travel with the links as built,
/// the ground laid under both tires, and every point written in the frame that ground gives. Rods keep their
/// lengths (all are written then), pinion and output keep their place against housing and body, the CG its
/// place in the body (the corner weights are shared out anew so that it does, their total stays), bump and
/// droop stops stay where they are. Springs, ballast and the carrier joint go along; a height from lift or
/// estimate is written as entered, as those hold for the car as it stood. The other readings of the scales
/// stay: they were taken before.
///
/// The axle is moved square to the car: what a track bar shifts it sideways comes back when the re-based car
/// is assembled. A slider slides along x, so where the ground turns against the body, so does its way, by
/// that small angle. Refuses radii outside the car file's limits, travel the links do not reach, and a body
/// lowered past the bump or raised past the droop travel. The car must have passed findFaults().
[[nodiscard]] CarResult changeRide(const Car& car, const RideChange& change);

}  // namespace bolthole
