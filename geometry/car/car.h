// The car as plain data: what a person measured, nothing derived.
//
// Frame (after ISO 8855:2011): x forward, y left, z up. The origin lies on the ground, in the center plane,
// straight under the rear axle's centerline with the car at its measured ride height. The frame is fixed in
// the chassis. Every point of the axle, holes included, is given in this frame with the axle at its measured
// pose: center at (0, 0, rear tire radius), no rotation. Units are SI: m, rad, kg.
#pragma once

#include <Eigen/Core>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "geometry/car/bracket.h"
#include "geometry/car/entered.h"
#include "geometry/car/part.h"
#include "geometry/car/pass.h"
#include "geometry/units/units.h"

namespace bolthole {

/// How a link holds the axle; the equations stand in geometry/kinematics/linkage.h.
enum class LinkKind {
    rod,     ///< two rod ends or bushings: a four-link bar, a third link, a track bar
    pivot,   ///< an arm rigid with the axle, pinned at its front: a ladder bar
    slider,  ///< an arm rigid with the axle, its front free fore and aft: a torque arm
    guide    ///< an ideal lateral locator on the axle: the center of a Watts linkage
};

/// What a rod does: the two uppers and lowers run fore and aft, a crosswise rod (track bar) locates sideways.
enum class Role { lower, upper, crosswise };

/// The threaded adjustment of a rod.
struct Adjuster {
    double pitch = 0;  ///< thread pitch, m
    int threadedEnds =
        2;  ///< 2: left- and right-hand ends that counter-turn; 1: one end, taken off and turned
    std::optional<double> shortest = std::nullopt;  ///< the length the rod can be set to at least, m
    std::optional<double> longest = std::nullopt;   ///< and at most, m
    std::optional<double> engagement =
        std::nullopt;  ///< thread held in each threaded end, m, at `engagementAt`
    std::optional<double> engagementAt =
        std::nullopt;  ///< the rod's length when that was measured, m; absent: as built
    std::optional<double> leastEngagement = std::nullopt;  ///< the thread that must stay held in each end, m

    bool operator==(const Adjuster&) const = default;
};

/// One link, or a mirrored pair of them. `id` as for Hole.
struct Link {
    int id = -1;
    std::string name;
    LinkKind kind = LinkKind::rod;
    Side side = Side::both;
    Bracket chassis;
    Bracket axle;
    std::optional<double> length;  ///< rods: as built, m; absent: fitted to the holes in use
    std::optional<Adjuster> adjuster;
    std::optional<Role> role;  ///< overrides what roleOf() finds
    std::optional<double> rodEndLimit =
        std::nullopt;                             ///< how far a rod end may lean off its bolt's square, rad
    std::optional<double> rating = std::nullopt;  ///< what its weakest part may carry, N, as entered
    Uncertainties uncertainties{};

    [[nodiscard]] const Bracket& bracket(End end) const { return end == End::chassis ? chassis : axle; }
    [[nodiscard]] Bracket& bracket(End end) { return end == End::chassis ? chassis : axle; }

    bool operator==(const Link&) const = default;
};

/// The travel that is swept. The front axle moves by frontRatio times the rear's travel.
struct TravelRange {
    double bump = 0.1016;   ///< m above ride, >= 0
    double droop = 0.1016;  ///< m below ride, >= 0
    int steps = 81;         ///< rows of the sweep, both ends included
    double frontRatio = 1.0;

    bool operator==(const TravelRange&) const = default;
};

/// Pinion, driveshaft and transmission output.
struct Driveline {
    double pinionAngle = 0;  ///< inclination of the pinion's axis at the measured pose, rad, nose up +
    Eigen::Vector3d pinionJoint = Eigen::Vector3d::Zero();  ///< center of the rear joint, on the axle, m
    double outputAngle = 0;  ///< inclination of the transmission's output axis, rad, rising forward +
    Eigen::Vector3d outputJoint = Eigen::Vector3d::Zero();  ///< center of the front joint, on the chassis, m
    std::optional<double> jointLimit = std::nullopt;        ///< largest working angle of either joint, rad
    EnteredShaft shaft{};                                   ///< what more is known of the driveshaft
    Uncertainties uncertainties{};

    bool operator==(const Driveline&) const = default;
};

/// What the person wants: a window of instant-center distance and anti-squat at ride. Distances ahead of the
/// rear contact patch, m; behind it they are negative, and absent means infinitely far. A window lies from
/// `icNear` to `icFar` along 1/distance, so it may run through infinity to behind the axle without a break.
struct TargetWindow {
    std::optional<double> icNear = std::nullopt;
    std::optional<double> icFar = std::nullopt;
    double antiSquatLow = 0;  ///< percent
    double antiSquatHigh = 0;
    // More that may be wanted when a target is searched for; the hole board's window goes without.
    OptionalNumber icLow = std::nullopt;   ///< least height of the instant center at ride, m
    OptionalNumber icHigh = std::nullopt;  ///< and the most
    OptionalNumber changeLow =
        std::nullopt;  ///< least of anti-squat at full bump minus at full droop, percent
    OptionalNumber changeHigh = std::nullopt;    ///< and the most
    OptionalNumber pinionChange = std::nullopt;  ///< most the pinion may turn at ride, rad, either way
    OptionalNumber joint = std::nullopt;         ///< largest working angle of either joint in travel, rad

    /// 1/distance of the two sides, 1/m.
    [[nodiscard]] double inverseNear() const { return icNear ? 1.0 / *icNear : 0.0; }
    [[nodiscard]] double inverseFar() const { return icFar ? 1.0 / *icFar : 0.0; }

    bool operator==(const TargetWindow&) const = default;
};

struct Car;

/// A state of the car kept under a name, to come back to or to compare with. Its car keeps no states itself.
/// `id` as for Hole.
struct KeptSetup {
    int id = -1;
    std::string name;
    std::string date;  ///< as ISO 8601 writes it: 2026-11-25
    std::string note;
    std::shared_ptr<const Car> car;  ///< never null

    bool operator==(const KeptSetup& other) const;
};

/// A whole car, as measured.
struct Car {
    std::string title;
    std::string notes;
    Units units = Units::inch;
    std::optional<Body> body = std::nullopt;          ///< what its outline is drawn as
    double wheelbase = 0;                             ///< m
    double rearTireRadius = 0;                        ///< loaded, m
    double frontTireRadius = 0;                       ///< loaded, m
    std::optional<double> frontTrack = std::nullopt;  ///< m, between the middles of the contact patches
    std::optional<double> rearTrack = std::nullopt;   ///< m
    CornerWeights cornerWeights;                      ///< as weighed; balanceOf() says what stands on it now
    DriverSeat cornersAre = DriverSeat::aboard;       ///< whether the driver sat in for them
    /// Above the ground at the measured pose, m, as entered. balanceOf() says which height is in use.
    double cgHeight = 0;
    CgHeightSource cgHeightFrom = CgHeightSource::entered;
    EnteredLift lift{};
    EnteredWeighing weighing{};
    std::vector<EnteredBallast> ballast{};
    EnteredWheelRates wheelRates{};
    std::vector<SuspensionPart> springs{};  ///< springs, shocks, bump stops and straps
    EnteredLaunch launch{};
    EnteredBrakes brakes{};
    EnteredTools tools{};
    Uncertainties uncertainties{};  ///< of the numbers of the car itself, not of its parts
    TravelRange travel;
    std::vector<Link> links;
    std::optional<Driveline> driveline;
    std::optional<TargetWindow> target;
    std::vector<KeptSetup> kept;
    std::optional<int> baseline;  ///< index of the kept setup that is the baseline
    std::string
        stateName;  ///< what the state on the bench was called when it was kept, if it came from there
    std::string stateNote;       ///< and the note it was kept with
    std::vector<Pass> passes{};  ///< of the test days, oldest first

    /// The setup that is the baseline, or null.
    [[nodiscard]] const KeptSetup* baselineSetup() const {
        return baseline ? &kept[static_cast<std::size_t>(*baseline)] : nullptr;
    }

    // Written out in car.cpp, else compiled anew in every room that copies a car.
    Car();
    Car(const Car&);
    Car(Car&&) noexcept;
    Car& operator=(const Car&);
    Car& operator=(Car&&) noexcept;
    ~Car();
    bool operator==(const Car&) const;
};

/// Limits of the car file; a car outside them is refused, never trimmed.
inline constexpr std::size_t kMaxLinks = 16;
inline constexpr std::size_t kMaxHoles = 64;
inline constexpr std::size_t kMaxKept = 2'000;
inline constexpr std::size_t kMaxPasses = 10'000;
inline constexpr std::size_t kMaxBallast = 32;
inline constexpr std::size_t kMaxSprings = 32;
inline constexpr int kMinSteps = 2;
inline constexpr int kMaxSteps = 100'000;
inline constexpr double kMaxLength = 100.0;  ///< m

/// How many rods or bolts a link stands for: 2 for `both` sides, else 1.
[[nodiscard]] inline int sidesOf(const Link& link) {
    return sidesOf(link.side);
}

/// The car without its kept setups and passes: what is kept, and what is compared.
[[nodiscard]] Car withoutKept(const Car& car);

/// Distance between the holes in use of `link` with the axle at its measured pose, m.
[[nodiscard]] double holeDistance(const Link& link);

/// Length the link is built to, m: the written one, or the distance between the holes in use.
[[nodiscard]] double builtLength(const Link& link);

/// Role of a link: the written one, or found from its holes in use. A rod is crosswise where its fore-aft
/// extent is under a third of its length, upper or lower by its axle hole against `axleCenterHeight` (m).
/// Common practice, no source. A guide counts as crosswise; pivots and sliders as lower or upper like rods.
[[nodiscard]] Role roleOf(const Link& link, double axleCenterHeight);

}  // namespace bolthole
