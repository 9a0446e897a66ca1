// Everything the equations of a launch take, as plain numbers. SI; frame and signs of geometry/car/car.h.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "geometry/car/bracket.h"
#include "geometry/car/car.h"
#include "geometry/car/damping.h"
#include "geometry/car/part.h"
#include "geometry/kinematics/linkage.h"
#include "geometry/kinematics/standing_car.h"

namespace bolthole {

/// The masses, and where they stand at rest.
struct LaunchBodies {
    double total = 0;              ///< kg
    double frontLoad = 0;          ///< N, both front tires at rest: the scales
    double cgAhead = 0;            ///< m, whole car's CG ahead of the origin
    double cgHeight = 0;           ///< m, whole car's CG above the ground
    double rearUnsprung = 0;       ///< kg, at the axle's center
    double frontUnsprung = 0;      ///< kg, at the front wheels' center
    double pitchInertia = 0;       ///< kg m^2, of the sprung mass about its own center
    double housingInertia = 0;     ///< kg m^2, turns with the axle housing
    double wheelInertia = 0;       ///< kg m^2, both rear wheels
    double frontWheelInertia = 0;  ///< kg m^2, both front wheels
    double drivelineInertia = 0;   ///< kg m^2, turns with the turbine
    double wheelbase = 0;          ///< m
    double rearRadius = 0;         ///< m, loaded, at rest
    double frontRadius = 0;        ///< m, loaded, at rest
    double gravity = kStandardGravity;
};

/// Both tires of an end are alike.
struct LaunchTires {
    double friction = 0;      ///< most thrust over load
    double peakSlip = 0.10;   ///< slip at which that is
    double sliding = 0.85;    ///< part of it left at large slip
    double relaxation = 0.3;  ///< m
    double lag = 0.005;       ///< s
    double damping = 100;     ///< N s/m, one tire, up and down
    double rearRate = 0;      ///< N/m, one tire
    double frontRate = 0;     ///< N/m, one tire
};

struct LaunchEngine {
    std::vector<TorquePoint> torque{};  ///< speeds rising; flat beyond the ends
    double inertia = 0;                 ///< kg m^2
    double launchSpeed = 0;             ///< rad/s
    double revLimit = 0;                ///< rad/s
};

struct LaunchCoupling {
    CouplingKind kind = CouplingKind::converter;
    double stallSpeed = 0;        ///< rad/s, converter
    double couplingRatio = 0.88;  ///< converter
    double torqueRatio = 1;       ///< converter, at stall
    double capacity = 0;          ///< N m, clutch
};

struct LaunchFront {
    double wheelRate = 0;    ///< N/m, one wheel
    double droop = 0;        ///< m to topping out
    double bump = 0;         ///< m to bottoming
    double motionRatio = 1;  ///< shaft over wheel
    std::optional<Damping> damping = std::nullopt;
};

/// A spring, shock, bump stop or strap of the rear, or a mirrored pair, by its holes in use.
struct LaunchPart {
    PartKind kind = PartKind::spring;
    Side side = Side::both;
    Eigen::Vector3d onChassis = Eigen::Vector3d::Zero();  ///< m, car frame
    Eigen::Vector3d onAxle = Eigen::Vector3d::Zero();     ///< m, from the axle's center, measured pose
    std::optional<double> rate = std::nullopt;            ///< N/m
    std::optional<double> freeLength = std::nullopt;      ///< m
    std::optional<double> closedLength = std::nullopt;    ///< m
    std::optional<double> openLength = std::nullopt;      ///< m
    double push = 0;                                      ///< N
    std::optional<Damping> damping = std::nullopt;
};

/// A whole launch.
struct LaunchInputs {
    LaunchBodies bodies{};
    LaunchTires tires{};
    LaunchEngine engine{};
    LaunchCoupling coupling{};
    LaunchFront front{};
    double gear = 1;
    double axleRatio = 1;
    double efficiency = 1;  ///< of what goes to the wheels, above 0
    double release = 0.05;  ///< s
    double rollout = 0;     ///< m
    Linkage linkage{};
    std::vector<LaunchPart> parts{};
    /// N/m, one wheel: in place of parts where none of them carries the car.
    std::optional<double> rearWheelRate = std::nullopt;
    TravelRange travel{};  ///< where the axle is expected to move; nothing stops there
};

/// What keeps the numbers from being computed with, in one sentence; empty: nothing. Masses, inertias, radii
/// and rates that divide must be above 0, everything finite.
[[nodiscard]] std::string refusal(const LaunchInputs& inputs);

/// A number that a launch misses or can't use.
struct MissingInput {
    std::string path;    ///< its place in the car file: "launch.engine.inertia"
    std::string reason;  ///< what was expected there
    std::string what{};  ///< what is missing: "the rev limit"; empty where `reason` is no want of a number
};
struct LaunchInputsResult {
    std::optional<LaunchInputs> inputs;
    std::vector<MissingInput> missing;  ///< empty where there are inputs
};
/// What was entered of `car` makes a launch, or what is missing for one. The car must have passed
/// findFaults(). Solves nothing.
[[nodiscard]] LaunchInputsResult launchInputsOf(const Car& car);

}  // namespace bolthole
