// What four scales say, and what stands on the car beside: totals, shares, CG, loads put on and taken off,
// and how far pads that are not level throw the corners.
#pragma once

#include <Eigen/Core>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "geometry/car/car.h"
#include "geometry/weights/wheel_rates.h"

namespace bolthole {

/// Standard uncertainty of one pad scale's reading, kg; common practice, no source.
inline constexpr double kScaleUncertainty = 0.5;

/// The figures of four corner weights.
struct WeightFigures {
    double total = 0;                             ///< kg
    double front = 0;                             ///< kg
    double rear = 0;                              ///< kg
    double left = 0;                              ///< kg
    double right = 0;                             ///< kg
    double diagonal = 0;                          ///< kg, right front and left rear: the cross weight
    double frontPercent = 0;                      ///< of the total
    double leftPercent = 0;                       ///< of the total
    double diagonalPercent = 0;                   ///< of the total
    double cgAhead = 0;                           ///< m, CG ahead of the rear axle: L front/total
    std::optional<double> cgLeft = std::nullopt;  ///< m, CG left of the middle; nothing without both tracks
};
/// The total must be above 0. CG fore and aft as in R. N. Jazar, Vehicle Dynamics, 1st ed., ch. 2; sideways
/// by moments about the middle: (LF - RF) tf/2 + (LR - RR) tr/2 over the total, both axles centered on the
/// car.
[[nodiscard]] WeightFigures weightFigures(const CornerWeights& corners, const Stance& stance);

/// What a tank or bottle holds when full.
struct Fill {
    double volume = 0;   ///< m^3
    double density = 0;  ///< kg/m^3, as entered

    bool operator==(const Fill&) const = default;
};

/// Something with a name that may stand on the car: driver, fuel, a bottle, tools. `id` as for Hole. Its
/// place is entered and stays, whatever a tank's level does to it.
struct Ballast {
    int id = -1;
    std::string name;
    double mass = 0;                               ///< kg; not used where there is a fill
    std::optional<Fill> fill = std::nullopt;       ///< in place of a mass
    Eigen::Vector3d at = Eigen::Vector3d::Zero();  ///< m, car frame
    double weighed = 0;  ///< part of it aboard when the scales were read, 0 to 1: a tank's level
    double aboard = 1;   ///< part of it aboard now

    /// kg, all of it.
    [[nodiscard]] double full() const { return fill ? fill->volume * fill->density : mass; }

    bool operator==(const Ballast&) const = default;
};

/// A mass put on the car (+) or taken off it (-), kg, at a point of the car frame, m.
struct MassAt {
    double mass = 0;
    Eigen::Vector3d at = Eigen::Vector3d::Zero();
};
/// What came and went since the scales were read, ballast that did not change left out.
[[nodiscard]] std::vector<MassAt> changesSinceWeighed(std::span<const Ballast> ballast);

/// From `low` to `high`: known no closer.
struct Bounds {
    double low = 0;
    double high = 0;
};

/// A car with other ballast than it was weighed with.
struct BallastedCar {
    double total = 0;                                  ///< kg
    double front = 0;                                  ///< kg
    double rear = 0;                                   ///< kg
    double frontPercent = 0;                           ///< of the total
    double cgAhead = 0;                                ///< m ahead of the rear axle
    std::optional<double> cgLeft = std::nullopt;       ///< m left of the middle; nothing without both tracks
    std::optional<Bounds> leftPercent = std::nullopt;  ///< of the total; nothing without both tracks
    std::optional<CornerWeights> corners = std::nullopt;  ///< kg; nothing without tracks and rates
};
struct BallastResult {
    std::optional<BallastedCar> car;
    std::string refusal;  ///< why there is none, in one sentence; empty if there is one
};
/// Redistributes ballast that came and went over the wheels, by statics: the body is rigid and stays level,
/// so that each mass m at (x, y) changes the front axle by m x/L and the tires' moments by m y. How the two
/// axles share m y, no balance says. With rates they share it as their stiffness in roll, and the corners
/// follow: each half its axle's change, and its share of m y over the track. Without rates one axle or the
/// other may hold all of it, which is what bounds the left side's part; corners and diagonal are not known
/// then. Refuses changes that leave an axle or corner less than nothing.
[[nodiscard]] BallastResult withBallast(const CornerWeights& weighed, const Stance& stance,
                                        std::span<const MassAt> changes);

/// Heights of the four pads' tops over any common level, m.
struct PadHeights {
    double leftFront = 0;
    double rightFront = 0;
    double leftRear = 0;
    double rightRear = 0;

    bool operator==(const PadHeights&) const = default;
};

/// How far pads are from level and what that does to the readings. A reading is the level car's and this. The
/// total stays right (common practice, no source; to first order, derived).
struct PadFigures {
    double warp = 0;  ///< m the left front pad stands above the plane of the other three; a diagonal's height
    double slope = 0;                           ///< rad, fore and aft, front pads high +
    std::optional<double> lean = std::nullopt;  ///< rad, sideways, left pads high +; nothing without tracks
    /// kg by which the warp throws each corner. Nothing without tracks and rates.
    std::optional<CornerWeights> byWarp = std::nullopt;
    double frontBySlope = 0;  ///< kg the slope gives the front axle, halves to each tire
    std::optional<double> leftByLean =
        std::nullopt;  ///< kg the lean gives the left side; nothing without tracks

    /// The largest shift of a corner by the warp, kg; nothing where it is not known.
    [[nodiscard]] std::optional<double> worst() const;
};
/// Derived. A body that is stiff itself leans between its ends, which the pads twist against each other by
/// the angle w/t: the moment Kf Kr/(Kf + Kr) w/t goes to each corner over its track. With equal tracks and no
/// bar, tires in series, that is w over the sum of 1/k of the four corners. Where tracks differ, the warp is
/// the twist times their mean. A slope a takes total h a/L off the high end, a lean as much off the high
/// side, over the mean track. `cgHeight`: m.
[[nodiscard]] PadFigures padFigures(const PadHeights& pads, const CornerWeights& read, double cgHeight,
                                    const Stance& stance);

}  // namespace bolthole
