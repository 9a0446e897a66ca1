// What a person enters for the launch in time, beside what the car file already has. Every number may be
// absent; launchInputsOf() says which one a launch misses. Units are SI; the car file's keys stand with them.
#pragma once

#include <optional>
#include <vector>

namespace bolthole {

/// One way of a shock, bump or rebound: what it resists with at each speed of the table, a row a click.
struct DampingRows {
    std::vector<double> clicks{};              ///< rising; one a row of `force`
    std::vector<std::vector<double>> force{};  ///< N, against the motion, + ; one at each speed
    double at = 0;                             ///< the click in use

    bool operator==(const DampingRows&) const = default;
};

/// A shock on the dynamometer. JSON: `damping`.
struct Damping {
    std::vector<double> speeds{};  ///< m/s, of the shaft, rising, above 0
    DampingRows bump{};
    DampingRows rebound{};

    bool operator==(const Damping&) const = default;
};

/// One row of a torque curve.
struct TorquePoint {
    double speed = 0;   ///< rad/s
    double torque = 0;  ///< N m, at the flywheel

    bool operator==(const TorquePoint&) const = default;
};

/// JSON: `launch.tire`. Both tires of an end are alike.
struct TireSetup {
    std::optional<double> peakSlip = std::nullopt;    ///< percent; absent: 10
    std::optional<double> sliding = std::nullopt;     ///< percent of the peak's friction; absent: 85
    std::optional<double> relaxation = std::nullopt;  ///< m; absent: 0.3
    std::optional<double> lag = std::nullopt;         ///< s; absent: 0.005
    std::optional<double> damping = std::nullopt;     ///< N s/m, one tire, up and down; absent: 100

    bool operator==(const TireSetup&) const = default;
};

/// JSON: `launch.engine`.
struct EngineSetup {
    std::vector<TorquePoint> torque{};                 ///< speeds rising
    std::optional<double> inertia = std::nullopt;      ///< kg m^2, all that turns with the crankshaft
    std::optional<double> launchSpeed = std::nullopt;  ///< rad/s; `launch_rpm`
    std::optional<double> revLimit = std::nullopt;     ///< rad/s; `rev_limit`

    bool operator==(const EngineSetup&) const = default;
};

enum class CouplingKind { converter, clutch };

/// JSON: `launch.coupling`.
struct CouplingSetup {
    std::optional<CouplingKind> kind = std::nullopt;
    std::optional<double> stallSpeed = std::nullopt;     ///< rad/s; `stall_rpm`, of a converter
    std::optional<double> couplingRatio = std::nullopt;  ///< turbine over engine speed; absent: 0.88
    std::optional<double> capacity = std::nullopt;       ///< N m, of a clutch

    bool operator==(const CouplingSetup&) const = default;
};

/// JSON: `launch.front`.
struct FrontSetup {
    std::optional<double> droop = std::nullopt;        ///< m of travel to topping out, above 0
    std::optional<double> bump = std::nullopt;         ///< m of travel to bottoming, above 0
    std::optional<double> motionRatio = std::nullopt;  ///< shaft over wheel; absent: 1
    std::optional<Damping> damping = std::nullopt;     ///< of one wheel's shock; absent: none resists

    bool operator==(const FrontSetup&) const = default;
};

/// JSON: the new keys of `launch`.
struct LaunchSetup {
    std::optional<double> frontUnsprungMass = std::nullopt;  ///< kg; `front_unsprung_mass`
    std::optional<double> pitchInertia = std::nullopt;       ///< kg m^2; `pitch_inertia`, of the sprung mass
    std::optional<double> housingInertia = std::nullopt;     ///< kg m^2; `housing_inertia`; absent: 0
    std::optional<double> wheelInertia = std::nullopt;       ///< kg m^2; `wheel_inertia`, both rear wheels
    std::optional<double> frontWheelInertia =
        std::nullopt;  ///< kg m^2; `front_wheel_inertia`, both; absent: 0
    std::optional<double> drivelineInertia = std::nullopt;  ///< kg m^2; `driveline_inertia`; absent: 0
    std::optional<double> release = std::nullopt;           ///< s; absent: 0.05
    std::optional<double> rollout = std::nullopt;           ///< m; absent: 0
    TireSetup tire{};
    EngineSetup engine{};
    CouplingSetup coupling{};
    FrontSetup front{};

    bool operator==(const LaunchSetup&) const = default;
};

}  // namespace bolthole
