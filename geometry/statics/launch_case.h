// Everything a launch and a stop make of a car, out of what was entered: thrust, axle and tire loads,
// attitude, roll, braking and what every link carries. What a number is missing for is said with the number.
//
// Statics on level ground, as geometry/statics/launch.h, geometry/statics/braking.h and
// geometry/statics/link_loads.h have it.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "geometry/car/numbers.h"
#include "geometry/kinematics/trace.h"
#include "geometry/statics/braking.h"
#include "geometry/statics/entered_setup.h"
#include "geometry/statics/launch.h"
#include "geometry/statics/link_loads.h"
#include "geometry/weights/entered_figures.h"

namespace bolthole {

/// A figure, or why there is none.
template <class T>
struct Known {
    std::optional<T> value = std::nullopt;
    std::string refusal;           ///< why there is none, in one sentence; empty if there is one
    std::vector<FieldId> missing;  ///< the numbers whose entry would help; may be empty

    Known() = default;
    Known(T known) : value(std::move(known)) {}  // NOLINT(google-explicit-constructor)
    /// None, for the reason another figure has none.
    template <class Other>
    static Known because(const Known<Other>& other) {
        return none(other.refusal, other.missing);
    }
    static Known none(const std::string& why, const std::vector<FieldId>& fields = {}) {
        Known known;
        known.refusal = why;
        known.missing = fields;
        return known;
    }

    explicit operator bool() const { return value.has_value(); }
    const T& operator*() const { return *value; }
    const T* operator->() const { return &*value; }
};

/// What keeps a thrust below what the engine would make of it.
enum class ThrustCap {
    none,  ///< nothing
    grip,  ///< the rear tires hold no more
    lift   ///< the tires would hold more, but beyond it the front wheels leave the ground
};

/// Where the shift of load onto the left rear tire comes from.
enum class ShiftSource {
    entered,   ///< a number somebody typed
    computed,  ///< from the driveshaft's torque, tracks and rates, as launchSides()
    even       ///< not known: both tires are taken to carry the same
};

/// How far the car rolled before the clock of a 60-ft time started.
struct Rollout {
    double distance = 0;  ///< m
    /// Whether it was entered; else it is the front tire's chord at kUsualBeamHeight, by its loaded radius,
    /// which is a little short of the tread's.
    bool isEntered = false;
};

/// The thrust a launch is computed with.
struct LaunchThrust {
    LaunchFrom from = LaunchFrom::acceleration;
    double acceleration = 0;  ///< m/s^2
    double force = 0;         ///< N, both rear tires
    ThrustCap cap = ThrustCap::none;
    std::optional<double> byEngine = std::nullopt;  ///< N, what torque and ratios alone would make
    std::optional<double> byGrip = std::nullopt;    ///< N, the most the tires hold, where friction is entered
    std::optional<Rollout> rollout = std::nullopt;  ///< of a 60-ft time
    /// Of an open differential, beside byGrip: what the lighter tire's load was computed with.
    std::optional<ShiftSource> lighterFrom = std::nullopt;

    /// An acceleration was entered or timed that the entered friction does not allow.
    [[nodiscard]] bool isBeyondGrip() const {
        constexpr double kRounding = 1e-9;
        return byGrip && force > *byGrip * (1 + kRounding);
    }
};

/// What the link loads are computed with.
struct LinkCase {
    LoadCase load;
    ShiftSource shift = ShiftSource::even;
    std::vector<SuspensionPart> parts;  ///< at least one of them carries
    /// m between the upright springs that stand for springs nobody measured; absent: they were measured.
    std::optional<double> standIn = std::nullopt;
    bool baseIsEntered = false;  ///< whether that distance was; else it is kStandInShare of the rear track
    bool pinionIsKnown = false;  ///< false: no driveline, and the driveshaft's torque is taken to act level
    double factor = 1;           ///< what loads are multiplied by against a rating
    bool factorIsEntered = false;
};
/// Distance of stand-in springs over the rear track; a judgement, common practice, no source.
inline constexpr double kStandInShare = 0.8;

/// One joint in travel: both ends and bracket holes of a rod, or the one point of anything else.
struct JointLoads {
    int link = 0;
    Side side = Side::center;
    bool isRod = true;
    WorstLoad worst;
    double atRide = 0;                         ///< N: rods tension +, compression -; anything else the amount
    std::optional<double> use = std::nullopt;  ///< of the link's rating, factor included; 1: all of it
};
/// What every link carries through the travel.
struct LinkFigures {
    std::vector<JointLoads> joints;  ///< in the order of Linkage::constraints
    LinkLoadSweep sweep;             ///< over the stations of the trace

    /// Whether some joint's load is one possible share, not determined by statics.
    [[nodiscard]] bool hasShared() const;
};

/// Braking at the entered deceleration.
struct BrakeFigures {
    BrakeLoads loads;
    double deceleration = 0;  ///< m/s^2
    Known<double> travel;     ///< m of the rear axle, bump +
};

/// The whole of it.
struct LaunchCase {
    std::string problem;  ///< why nothing can be computed; not empty: nothing else holds
    CarBalance balance;
    StandingCar standing;      ///< at ride
    double swingArmSlope = 0;  ///< e/d at ride; NaN: there is none
    FullStance stance;
    CornerWeights corners;  ///< kg, standing now, as far as that is known

    Known<LaunchThrust> thrust;
    Known<LaunchLoads> loads;
    Known<LaunchAttitude> attitude;
    Known<double> shaftTorque;  ///< N m
    Known<LaunchSides> sides;
    Known<Preload> preload;
    Known<double> springDifference;  ///< N
    Known<double> antiLift;          ///< percent
    Known<BrakeFigures> braking;
    Known<LinkCase> linkCase;
    Known<LinkFigures> links;
};

/// Computes all of it for `car`, which must have passed findFaults(), with its own `trace` and
/// `stance` = fullStanceOf(car).
[[nodiscard]] LaunchCase launchCaseOf(const Car& car, const Trace& trace, const FullStance& stance);

/// The link loads of a car in a case, by its own linkage and trace; `car` may be bolted to other holes than
/// the case was made for.
[[nodiscard]] LinkFigures linkFigures(const Car& car, const Trace& trace, const LinkCase& with);

/// The joint whose load is largest, or null where there are no joints.
[[nodiscard]] const JointLoads* largestOf(const std::vector<JointLoads>& joints);
/// The joint that takes most of its rating, or null where no link with a load has one.
[[nodiscard]] const JointLoads* mostUsedOf(const std::vector<JointLoads>& joints);

/// Every number some figure is missing, each once, in the order the figures stand.
[[nodiscard]] std::vector<FieldId> missingOf(const LaunchCase& launch);

/// "lower (left)": the link's name and, of a pair, the side.
[[nodiscard]] std::string jointWords(const Car& car, int link, Side side);

}  // namespace bolthole
