// The launch as statics: what a steady thrust at the rear patches does to tire loads, attitude and roll. No
// figure here knows of shock, damping or the hit of a clutch.
#pragma once

#include <functional>
#include <optional>

#include "geometry/car/car.h"
#include "geometry/kinematics/standing_car.h"
#include "geometry/weights/wheel_rates.h"

namespace bolthole {

inline constexpr double kSixtyFeet = 18.288;  // m, exact

/// Acceleration that covers 60 ft in `seconds` (above 0) if it stays constant, m/s^2. The clock starts when
/// the front tire leaves the beam, with the car already rolling: at rest it stood `rollout` (m, 0 or more)
/// before. From t = sqrt(2 (d + s)/a) - sqrt(2 s/a): a = 2 (sqrt(d + s) - sqrt(s))^2/t^2 (derived). An
/// estimate only: no car launches evenly.
[[nodiscard]] double accelerationFromSixtyFoot(double seconds, double rollout);

/// What a launch does to the axles.
struct LaunchLoads {
    double thrust = 0;            ///< N, both rear patches: m a, and what the grade pulls back
    double transfer = 0;          ///< N moved from the front to the rear axle: F h / L
    double front = 0;             ///< N, front axle
    double rear = 0;              ///< N, rear axle
    double liftAcceleration = 0;  ///< m/s^2 at which the front wheels leave the ground
    bool wheelsUp =
        false;  ///< past that: the rear axle carries all, and the body turns over it until it slows
};
/// Axle loads at a steady `acceleration` (m/s^2, not negative). R. N. Jazar, Vehicle Dynamics, 1st ed.,
/// eqs 2.87-2.88, p. 50: on the level the front wheels leave the ground at a/g = a2/h, a2 the CG's distance
/// ahead of the rear axle.
[[nodiscard]] LaunchLoads launchLoads(const StandingCar& car, double acceleration);

/// The most the rear tires hold, m/s^2, with `friction` the ratio of thrust to load: F = mu N, N = N0 + F h/L
/// with N0 the load without thrust. Never past the front wheels' lift.
[[nodiscard]] double gripAcceleration(const StandingCar& car, double friction);

/// The most thrust the rear tires hold through an open differential, N. It gives both the same torque, so the
/// grip ends at twice what the lighter tire holds: F = 2 mu N, N the lighter tire's load at that thrust
/// (derived). `lighterTire`: that load (N) at a thrust (N); `locked`: the thrust both tires' whole grip
/// makes, which an open differential never exceeds.
[[nodiscard]] double openGripThrust(double friction, double locked,
                                    const std::function<double(double)>& lighterTire);

/// Where the springs leave the body under a steady thrust, against ride. One rate each way, no bump stop, no
/// shock.
struct LaunchAttitude {
    double rearTravel = 0;   ///< m, rear axle against the body, bump + (squat), droop - (separation)
    double frontTravel = 0;  ///< m, front axle
    double rearRise = 0;     ///< m, body over the ground at the rear axle, the tires' give included, up +
    double frontRise = 0;    ///< m, at the front axle
    double pitch = 0;        ///< rad, body against the ground, nose down +
    bool frontToppedOut = false;  ///< the front hangs on its stop
};
/// With the rear axle at `rearTravel` (m), the front where its springs leave it and `moved` newtons gone from
/// the front tires to the rear ones, which give by that; `frontDroop` (m), where given, is all the front can
/// drop.
[[nodiscard]] LaunchAttitude attitudeAt(const StandingCar& car, double rearTravel, double moved,
                                        const WheelRates& front, const WheelRates& rear,
                                        std::optional<double> frontDroop = std::nullopt);
/// D. Barton, J. Fieldhouse, Automotive Chassis Engineering (Springer 2018), sec. 3.11, eqs 3.63-3.69: the
/// rear springs give k x = F (h/L - e/d), with e/d = `swingArmSlope`; nothing in front takes thrust, so its
/// springs give F h/L. Nothing with the front wheels up.
[[nodiscard]] std::optional<LaunchAttitude> launchAttitude(const StandingCar& car, const LaunchLoads& loads,
                                                           double swingArmSlope, const WheelRates& front,
                                                           const WheelRates& rear);

/// Anti-squat above which the body rises over the ground at the rear axle under power, percent: the springs
/// separate by F (e/d - h/L)/(2 k) where the tires give F h/(2 L k_tire), so 100 (1 + k/k_tire) (derived of
/// launchAttitude()). At 100 % the springs stay as they are and the body sinks with the tires.
[[nodiscard]] double risingAntiSquat(const WheelRates& rear);

/// Torque of the driveshaft at a thrust (N, both tires): F r / ratio, N m. `axleRatio`: turns of the shaft
/// for one of the wheels. What spins up wheels and axle is left out.
[[nodiscard]] double driveshaftTorque(double thrust, double tireRadius, double axleRatio);

/// What the driveshaft's torque and the launch leave on each tire.
struct LaunchSides {
    double leftFront = 0;   ///< N
    double rightFront = 0;  ///< N
    double leftRear = 0;    ///< N; a negative rear load: that tire would leave the ground
    double rightRear = 0;   ///< N
    double bodyRoll = 0;    ///< rad, against standing, left side up +
    bool frontTireUp =
        false;  ///< one front tire or both off the ground: the rear springs alone hold the rest
};
/// Four tire loads and the body's roll under `torque` (N m) of the driveshaft. `standing`: the corner weights
/// at rest, kg. Nothing without tracks and rates.
///
/// Derived; signs about x, left side up +. An engine that turns as nearly all do, clockwise seen from the
/// front, has its shaft press the axle's left end down: -T on the axle and +T on the body, which roll apart.
/// With m what the front springs take of it, the body rolls m/Kf (front, tires included) and is held by the
/// rear springs with Kr (roll - axle's roll) = T - m; the axle, on tires that give g, rolls -m g. So
///   m = T / (1 + Kr (1/Kf + g)),  roll = (T - m)/Kr - m g.
/// m moves to the left rear and right front tires, m/track at each, from the other two, as T pulls on nothing
/// outside the car. A front tire carries no less than nothing: beyond, its axle's moment stays what its load
/// allows. With g = 0 this is m = T Kf/(Kf + Kr), as in T. D. Gillespie, Fundamentals of Vehicle Dynamics
/// (SAE 1992), ch. 2, from memory. The links are taken to roll the axle by nothing of their own.
[[nodiscard]] std::optional<LaunchSides> launchSides(const StandingCar& car, const LaunchLoads& loads,
                                                     const CornerWeights& standing, double torque,
                                                     const Stance& stance);

/// The preload of the rear springs that cancels one driveshaft torque, no other.
struct Preload {
    double moment = 0;  ///< N m by which the right rear spring's force times its lever outweighs the left's
    double rearShift = 0;   ///< N it puts on the right rear tire and takes from the left, standing
    double frontShift = 0;  ///< N it puts on the left front and takes from the right
    double lean = 0;        ///< rad, roll of the body it makes standing: right side up, so not above 0
};
/// Derived: springs preloaded by a moment M press the body -M and the axle +M about x, the torque's own pair
/// with the sign turned. So M = T cancels both the body's roll and the tires' difference, and standing it
/// shows as launchSides() with the opposite sign: m/track at each tire, which with a front end stiff against
/// the rear comes near T/track, a difference of 2 T/track between the rear tires. Nothing without tracks and
/// rates.
[[nodiscard]] std::optional<Preload> cancelingPreload(double torque, const Stance& stance);

/// By how much the right rear spring must push harder than the left, N, to make a preload `moment` (N m) with
/// the springs `base` (m) apart: 2 M / base.
[[nodiscard]] double springDifference(double moment, double base);

}  // namespace bolthole
