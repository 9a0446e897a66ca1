// What one rod's length does to the axle at ride: the length difference of left and right that preloads a
// car, and how the housing stands for it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "geometry/car/car.h"
#include "geometry/units/units.h"

namespace bolthole {

/// One rod on one side of the car, in the order of Car::links, left before right.
struct RodSide {
    int link = 0;
    Side side = Side::center;  ///< left, right or center, never both

    bool operator==(const RodSide&) const = default;
};
/// Every rod there is, each side of a mirrored pair by itself.
[[nodiscard]] std::vector<RodSide> rodSides(const Car& car);

/// How the axle stands at ride for another length of one rod, against how it stands now. The body is held
/// level: what the springs carry differently for it is no figure here.
struct RodEffect {
    double pinion = 0;   ///< rad, nose up +
    double yaw = 0;      ///< rad, axle's left end back +
    double forward = 0;  ///< m, axle's center
    double left = 0;     ///< m
    /// The largest mismatch of the links, m, less what it is now: in an over-held axle a longer rod is taken
    /// up by bushings and brackets.
    double bind = 0;
};
/// The effect, or why there is none.
struct RodEffectResult {
    std::optional<RodEffect> effect;
    std::string refusal;  ///< in one sentence; empty if there is one
};
/// Makes `rod` longer by `change` (m, minus: shorter) and assembles the car anew; every other rod keeps its
/// length. A mirrored pair is taken apart for it. The car must have passed findFaults(), and `rod` be one of
/// rodSides().
[[nodiscard]] RodEffectResult rodEffect(const Car& car, const RodSide& rod, double change, Units units);

/// By how much the left rod of a pair that is set apart is longer than the right one, m; nothing where the
/// link is no half of such a pair.
[[nodiscard]] std::optional<double> lengthDifference(const Car& car, int link);

}  // namespace bolthole
