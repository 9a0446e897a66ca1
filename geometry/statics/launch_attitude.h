// Where the springs leave the body under a steady thrust, along the path that the links really make.
#pragma once

#include <optional>

#include "geometry/kinematics/standing_car.h"
#include "geometry/kinematics/trace.h"
#include "geometry/statics/launch.h"
#include "geometry/weights/wheel_rates.h"

namespace bolthole {

/// Slopes of the side-view swing arm against the ground the car stands on, rise over run toward the front.
struct ArmSlopes {
    double patch = 0;   ///< from the contact patch to the instant center
    double center = 0;  ///< from the axle's center
};

/// The swing arm at any travel, whatever way the body leans: the links know nothing of the ground.
class SwingArm {
  public:
    /// The car must have passed findFaults() and be assembled at ride. Keeps nothing of it by reference.
    explicit SwingArm(const Car& car);

    /// At a travel (m), on ground that rises toward the front by `ground` (rad) in the car frame. Nothing
    /// where the links do not reach or the arm has no slope.
    [[nodiscard]] std::optional<ArmSlopes> at(double travel, double ground);
    [[nodiscard]] const TravelRange& range() const { return range_; }

  private:
    TravelRange range_;
    double radius_;
    AxleSolver solver_;
    FigureReader reader_;
    Station station_;
};

/// What a rest under thrust is looked for with.
struct AttitudeCase {
    StandingCar standing;  ///< at ride
    LaunchLoads loads;     ///< of the steady thrust; front wheels on the ground
    double acceleration = 0;
    double rideGround = 0;  ///< rad, Figure::ground at ride
    WheelRates front;
    WheelRates rear;
    double unsprungMass = 0;                          ///< kg of the rear axle, wheels included; 0: left out
    std::optional<double> frontDroop = std::nullopt;  ///< m the front can drop from ride before it tops out
};

/// The rest; nothing where it would lie past the car's travel, or with the front wheels off the ground. Per
/// rear wheel
///   k z = (N - F s(z) + m_u a c(z))/2
/// with s and c the slopes of ArmSlopes at the travel z against the ground as the body leans by then, and N
/// the load moved to the rear, F h/L with h as the body has risen: for small movements Barton & Fieldhouse,
/// eqs 3.63-3.69 (see launchAttitude()). m_u a is the axle's own inertia, which the links do not push the
/// body with (virtual work of the axle on its path, derived; as LoadCase::unsprungMass in the link loads).
/// The front gives N to its springs until it tops out. Rates are constant; as in the book the weight stands
/// where it stood, though a body that leans back carries its CG along.
[[nodiscard]] std::optional<LaunchAttitude> attitudeOnPath(const AttitudeCase& with, SwingArm& arm);

}  // namespace bolthole
