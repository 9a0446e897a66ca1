// Braking with the rear brakes on the axle: what the links make of it at the rear springs.
#pragma once

#include <optional>

#include "geometry/car/faults.h"
#include "geometry/kinematics/standing_car.h"
#include "geometry/weights/wheel_rates.h"

namespace bolthole {

/// Rear anti-lift, percent: how much of what braking takes off the rear tires the links take in place of the
/// springs. 100: the rear neither rises nor sinks; above it the rear is pulled down while its tires unload;
/// below 0 the links lift it further. `rearShare`: the rear brakes' part of the whole brake force, 0 to 1;
/// `swingArmSlope`: e/d of the swing arm from the rear contact patch, the one of anti-squat.
///
/// The brakes sit on the axle (outboard): caliper and wheel are one body with the housing, as the pinion and
/// the wheel are under drive, so the links react at the same swing arm. Derived: braking with F in all moves
/// F h/L off the rear axle. The axle's balance about the instant center (d ahead, e up) with the patch's
/// forces, share F rearward and F h/L less load, leaves the springs (d F h/L - e share F) / d less to carry.
/// Of F h/L the links hence take share (e/d) / (h/L). The same in W. F. Milliken, D. L. Milliken, Race Car
/// Vehicle Dynamics (SAE 1995), ch. 17, from memory.
[[nodiscard]] double rearAntiLift(double swingArmSlope, double cgHeight, double wheelbase, double rearShare);

/// What a steady braking does.
struct BrakeLoads {
    double transfer = 0;          ///< N moved from the rear to the front axle
    double front = 0;             ///< N, front axle
    double rear = 0;              ///< N, rear axle
    double rearBrake = 0;         ///< N, brake force of both rear tires
    double antiLift = 0;          ///< percent
    bool rearUp = false;          ///< the rear tires left the ground: past that nothing here is steady
    bool rearLocksFirst = false;  ///< the rear tires need more grip than the front ones
};
/// Axle loads and anti-lift at a steady `deceleration` (m/s^2, not negative). On a grade the climb brakes
/// too.
[[nodiscard]] BrakeLoads brakeLoads(const StandingCar& car, double deceleration, double rearShare,
                                    double swingArmSlope);

/// Travel of the rear axle under those loads, m, bump + : the springs give k x = -F h/L (1 - anti-lift).
/// Linear, as launchAttitude(). Nothing with the rear tires up.
[[nodiscard]] std::optional<double> brakeTravel(const BrakeLoads& loads, const WheelRates& rear);

/// Why an anti-lift (percent) is doubtful; nothing where it is not. Above 100 the axle can hop on the brakes,
/// below 0 the rear rises more than without links. Common practice, no source.
[[nodiscard]] std::optional<Finding> antiLiftWarning(double antiLift);

}  // namespace bolthole
