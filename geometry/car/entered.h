// What a person entered beside the links: weighing, ballast, rates, driveshaft, launch and brakes. Every
// number may be absent, and an absent one is not known: nothing here has a default that stands for a
// measurement. What can be computed of it is told in geometry/weights/entered_figures.h. Units are SI, points
// in the car frame of geometry/car/car.h.
#pragma once

#include <Eigen/Core>
#include <array>
#include <optional>
#include <string>
#include <vector>

#include "geometry/car/damping.h"
#include "geometry/car/uncertainties.h"

namespace bolthole {

/// What the car's outline is drawn as; nothing is computed of it.
enum class Body { sedan, coupe, wagon, pickup, roadster };

/// Four scale readings, kg.
struct CornerWeights {
    double leftFront = 0;
    double rightFront = 0;
    double leftRear = 0;
    double rightRear = 0;

    [[nodiscard]] double total() const { return leftFront + rightFront + leftRear + rightRear; }
    [[nodiscard]] double front() const { return leftFront + rightFront; }

    bool operator==(const CornerWeights&) const = default;
};

/// A number that may not be known.
using OptionalNumber = std::optional<double>;

/// Four numbers, one a wheel, each of which may be missing.
struct EnteredCorners {
    OptionalNumber leftFront = std::nullopt;
    OptionalNumber rightFront = std::nullopt;
    OptionalNumber leftRear = std::nullopt;
    OptionalNumber rightRear = std::nullopt;

    /// How many of the four there are.
    [[nodiscard]] int count() const {
        return int{leftFront.has_value()} + int{rightFront.has_value()} + int{leftRear.has_value()} +
               int{rightRear.has_value()};
    }
    /// All four, or nothing.
    [[nodiscard]] std::optional<CornerWeights> whole() const {
        return count() < 4 ? std::nullopt
                           : std::optional(CornerWeights{*leftFront, *rightFront, *leftRear, *rightRear});
    }

    bool operator==(const EnteredCorners&) const = default;
};

/// A point, coordinate by coordinate.
struct EnteredPoint {
    std::array<OptionalNumber, 3> at{};  ///< m, car frame: forward, left, up

    /// All three, or nothing.
    [[nodiscard]] std::optional<Eigen::Vector3d> whole() const {
        return at[0] && at[1] && at[2] ? std::optional(Eigen::Vector3d(*at[0], *at[1], *at[2]))
                                       : std::nullopt;
    }

    bool operator==(const EnteredPoint&) const = default;
};

/// Whether the driver sat in the car.
enum class DriverSeat { aboard, out };
/// The two ends of the car.
enum class CarEnd { front, rear };
/// Where a CG height comes from. Shown wherever anti-squat is.
enum class CgHeightSource {
    entered,  ///< a number somebody typed, from wherever
    lift,     ///< the lift method
    estimate  ///< no measurement of this car
};

/// The driver, weighed on another scale.
struct EnteredDriver {
    OptionalNumber mass = std::nullopt;  ///< kg
    EnteredPoint at{};

    bool operator==(const EnteredDriver&) const = default;
};

/// Whole axles on another scale: a truck scale, a weighbridge ticket.
struct EnteredTicket {
    OptionalNumber front = std::nullopt;        ///< kg
    OptionalNumber rear = std::nullopt;         ///< kg
    OptionalNumber total = std::nullopt;        ///< kg
    OptionalNumber uncertainty = std::nullopt;  ///< kg, standard, of one reading
    DriverSeat driver = DriverSeat::aboard;

    bool operator==(const EnteredTicket&) const = default;
};

/// Everything weighed beside the corner weights themselves.
struct EnteredWeighing {
    EnteredCorners other{};                          ///< kg, the readings with the driver the other way
    OptionalNumber scaleUncertainty = std::nullopt;  ///< kg, standard, of one pad's reading
    EnteredDriver driver{};
    EnteredCorners pads{};  ///< m, heights of the pads' tops over any common level
    EnteredTicket ticket{};

    bool operator==(const EnteredWeighing&) const = default;
};

/// What is taken of a load where the file says nothing, percent: none of it was weighed, all of it is aboard.
inline constexpr double kBallastWeighed = 0;
inline constexpr double kBallastAboard = 100;

/// Something with a name that may stand on the car: fuel, a bottle, tools. Either its mass, or volume and
/// density of what fills it. `id` as for Hole.
struct EnteredBallast {
    int id = -1;
    std::string name{};
    OptionalNumber mass = std::nullopt;     ///< kg, all of it
    OptionalNumber volume = std::nullopt;   ///< m^3, full
    OptionalNumber density = std::nullopt;  ///< kg/m^3
    EnteredPoint at{};
    double weighed = kBallastWeighed;  ///< percent of it aboard when the scales were read: a tank's level
    double aboard = kBallastAboard;    ///< percent of it aboard now
    Uncertainties uncertainties{};

    bool operator==(const EnteredBallast&) const = default;
};

/// The lift method as it was carried out; its level weights are the corner weights with the driver so.
struct EnteredLift {
    CarEnd raised = CarEnd::front;
    OptionalNumber height = std::nullopt;   ///< m the tires of that end stood above the other end's
    CarEnd read = CarEnd::front;            ///< which axle was weighed with the car raised
    OptionalNumber reading = std::nullopt;  ///< kg, both its tires
    DriverSeat driver = DriverSeat::aboard;

    bool operator==(const EnteredLift&) const = default;
};

/// Rates of one end of the car; see WheelRates.
struct EnteredRates {
    OptionalNumber wheel = std::nullopt;  ///< N/m
    OptionalNumber tire = std::nullopt;   ///< N/m
    OptionalNumber roll = std::nullopt;   ///< N m/rad
    /// Pa, over the air around: that `tire` was read at; another one, with the rate read at it; and what the
    /// tires have now. See tireRateNow().
    OptionalNumber tirePressure = std::nullopt;
    OptionalNumber otherPressure = std::nullopt;
    OptionalNumber otherTire = std::nullopt;  ///< N/m
    OptionalNumber pressure = std::nullopt;

    bool operator==(const EnteredRates&) const = default;
};
struct EnteredWheelRates {
    EnteredRates front{};
    EnteredRates rear{};

    bool operator==(const EnteredWheelRates&) const = default;
};

/// A slip yoke as it stands at ride; see SlipYoke.
struct EnteredSlip {
    OptionalNumber engagement = std::nullopt;       ///< m
    OptionalNumber leastEngagement = std::nullopt;  ///< m
    OptionalNumber inward = std::nullopt;           ///< m

    bool operator==(const EnteredSlip&) const = default;
};

/// The driveshaft beyond its end joints; see ShaftSetup.
struct EnteredShaft {
    EnteredPoint carrierJoint{};                    ///< behind the carrier bearing; absent: one piece
    OptionalNumber frontYokeOffset = std::nullopt;  ///< rad; absent: in phase
    OptionalNumber rearYokeOffset = std::nullopt;   ///< rad
    OptionalNumber windUp = std::nullopt;           ///< rad, nose up
    OptionalNumber engineSpeed = std::nullopt;      ///< rad/s, the highest
    OptionalNumber gear = std::nullopt;             ///< ratio it is reached in
    EnteredSlip slip{};

    bool operator==(const EnteredShaft&) const = default;
};

/// What a launch is computed from.
enum class LaunchFrom {
    acceleration,  ///< entered, in g
    sixtyFoot,     ///< the time for the first 60 ft
    torque         ///< engine torque and ratios, capped by what the tires hold
};
/// How the drive tires take up their thrust; a tire, both ends alike. See the launch in time.
struct EnteredTire {
    OptionalNumber peakSlip = std::nullopt;    ///< percent, at the most thrust
    OptionalNumber sliding = std::nullopt;     ///< percent of the most thrust that is left far beyond it
    OptionalNumber relaxation = std::nullopt;  ///< m rolled until the tread has followed
    OptionalNumber lag = std::nullopt;         ///< s
    OptionalNumber damping = std::nullopt;     ///< N s/m, upright

    bool operator==(const EnteredTire&) const = default;
};
struct EnteredEngine {
    std::vector<TorquePoint> torque{};          ///< by speed, rising; empty: not known
    OptionalNumber inertia = std::nullopt;      ///< kg m^2
    OptionalNumber launchSpeed = std::nullopt;  ///< rad/s, held before the release
    OptionalNumber revLimit = std::nullopt;     ///< rad/s

    bool operator==(const EnteredEngine&) const = default;
};
/// How the axle shares its torque between the rear tires.
enum class Differential {
    open,     ///< the same torque to both
    limited,  ///< more to the tire that holds more, by its clutches or gears
    locked    ///< both turn alike: a spool, a locker
};
/// What stands between engine and transmission.
enum class CouplingKind { converter, clutch };
struct EnteredCoupling {
    std::optional<CouplingKind> kind = std::nullopt;
    OptionalNumber stallSpeed = std::nullopt;  ///< rad/s, a converter's
    OptionalNumber ratio = std::nullopt;       ///< turbine over engine speed where it multiplies no more
    OptionalNumber capacity = std::nullopt;    ///< N m, a clutch's

    bool operator==(const EnteredCoupling&) const = default;
};
/// The front suspension, one wheel of two alike.
struct EnteredFront {
    OptionalNumber droop = std::nullopt;        ///< m of travel
    OptionalNumber bump = std::nullopt;         ///< m of travel
    OptionalNumber motionRatio = std::nullopt;  ///< m of its shock for each m of travel
    std::optional<Damping> damping = std::nullopt;

    bool operator==(const EnteredFront&) const = default;
};
struct EnteredLaunch {
    LaunchFrom from = LaunchFrom::acceleration;
    OptionalNumber acceleration = std::nullopt;  ///< g
    OptionalNumber sixtyFoot = std::nullopt;     ///< s
    OptionalNumber engineTorque = std::nullopt;  ///< N m, at the flywheel
    OptionalNumber converter = std::nullopt;     ///< torque converter's multiplication; absent: 1
    OptionalNumber gear = std::nullopt;          ///< ratio of the gear it launches in
    OptionalNumber efficiency = std::nullopt;    ///< percent; absent: 100
    OptionalNumber friction = std::nullopt;      ///< most thrust over load of the rear tires
    std::optional<Differential> differential = std::nullopt;
    OptionalNumber axleRatio = std::nullopt;     ///< turns of the driveshaft for one of the wheels
    OptionalNumber springBase = std::nullopt;    ///< m between the rear springs
    OptionalNumber leftShift = std::nullopt;     ///< N the left rear tire carries over half the axle's load
    OptionalNumber unsprungMass = std::nullopt;  ///< kg, axle, wheels and brakes
    OptionalNumber loadFactor = std::nullopt;    ///< what link loads are multiplied by against a rating
    // What the launch in time takes beside these.
    OptionalNumber frontUnsprungMass = std::nullopt;  ///< kg
    OptionalNumber pitchInertia = std::nullopt;       ///< kg m^2, of the sprung mass about its own center
    OptionalNumber housingInertia = std::nullopt;     ///< kg m^2, of the axle housing
    OptionalNumber wheelInertia = std::nullopt;       ///< kg m^2, both rear wheels
    OptionalNumber frontWheelInertia = std::nullopt;  ///< kg m^2, both front wheels
    OptionalNumber drivelineInertia = std::nullopt;   ///< kg m^2, on the turbine's side
    OptionalNumber release = std::nullopt;            ///< s until brakes or clutch have let go
    OptionalNumber rollout = std::nullopt;            ///< m the front wheel moves before the clock starts
    EnteredTire tire{};
    EnteredEngine engine{};
    EnteredCoupling coupling{};
    EnteredFront front{};

    bool operator==(const EnteredLaunch&) const = default;
};

/// Standard uncertainties of what is measured with; absent: as geometry/uncertainty/uncertain_inputs.h has
/// them. The scales have theirs in EnteredWeighing.
struct EnteredTools {
    OptionalNumber tape = std::nullopt;         ///< m, of one length or coordinate
    OptionalNumber calipers = std::nullopt;     ///< m
    OptionalNumber angleFinder = std::nullopt;  ///< rad
    // Of what points are measured from, m: one error that all of them share. Absent: exact.
    OptionalNumber floor = std::nullopt;        ///< heights
    OptionalNumber centerPlane = std::nullopt;  ///< lateral places
    OptionalNumber originLine = std::nullopt;   ///< places forward of the rear axle

    bool operator==(const EnteredTools&) const = default;
};

struct EnteredBrakes {
    OptionalNumber rearShare = std::nullopt;     ///< percent of the whole brake force
    OptionalNumber deceleration = std::nullopt;  ///< g

    bool operator==(const EnteredBrakes&) const = default;
};

}  // namespace bolthole
