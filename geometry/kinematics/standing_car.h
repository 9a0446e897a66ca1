// The whole car as one body on two axles, in side view: what load transfer and lift limits are computed from.
#pragma once

#include "geometry/car/car.h"
#include "geometry/kinematics/trace.h"
#include "geometry/units/units.h"

namespace bolthole {

/// One body on two contact patches. All lengths along and above the ground both tires stand on; unsprung
/// weight is counted with the body.
struct StandingCar {
    double mass = 0;                    ///< kg
    double wheelbase = 0;               ///< m, between the contact patches
    double cgAhead = 0;                 ///< m, CG ahead of the rear contact patch
    double cgHeight = 0;                ///< m, CG above the ground
    double grade = 0;                   ///< rad, slope of the ground, + uphill
    double gravity = kStandardGravity;  ///< m/s^2

    /// Weight square to the ground, N.
    [[nodiscard]] double pressing() const;
    /// Weight along the ground, N, + pulls the car back.
    [[nodiscard]] double pulling() const;
    /// Load of the front axle with no force along the ground, N; the rear carries the rest of pressing().
    [[nodiscard]] double front() const { return pressing() * cgAhead / wheelbase; }
    [[nodiscard]] double rear() const { return pressing() - front(); }
    /// Load a force of `along` (N, + forward) at the patches moves from the front to the rear axle, N:
    /// F h / L.
    [[nodiscard]] double transfer(double along) const { return along * cgHeight / wheelbase; }

    bool operator==(const StandingCar&) const = default;
};

/// The car on the ground of one of its stations, its weight and CG from balanceOf(), on the level.
[[nodiscard]] StandingCar standingCar(const Car& car, const GroundLine& ground);

}  // namespace bolthole
