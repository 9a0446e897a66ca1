// What can be computed from what was entered: every group that is whole, as the calculations take it. A group
// with a number missing is nothing, never half of it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "geometry/car/car.h"
#include "geometry/units/say.h"
#include "geometry/weights/cg_height.h"
#include "geometry/weights/weight_warnings.h"
#include "geometry/weights/weights.h"
#include "geometry/weights/wheel_rates.h"

namespace bolthole {

/// Tracks and the rates entered for the wheels; a rate of the rear springs' own making is not among them.
[[nodiscard]] Stance stanceOf(const Car& car);

/// Why a load is not counted.
inline constexpr std::string_view kNoPlace = phrase("no place");
inline constexpr std::string_view kNoWeight = phrase("no weight");
/// Either of them, for say(); empty: it is counted.
[[nodiscard]] std::string_view missingOf(const EnteredBallast& load);
/// The loads that have a mass (or volume and density) and a place, the driver among them where the corner
/// weights were read without and `Weighing` knows weight and seat.
[[nodiscard]] std::vector<Ballast> ballastOf(const Car& car);

/// Everything that was weighed, as findWeightWarnings() takes it.
[[nodiscard]] Weighing weighingOf(const Car& car);

/// The lift, where height and reading are there and the corner weights with the driver in or out as he was.
[[nodiscard]] std::optional<LiftTest> liftOf(const Car& car);
/// The scale uncertainty entered, or kScaleUncertainty.
[[nodiscard]] LiftUncertainty liftUncertaintyOf(const Car& car);

/// The car as it stands on its wheels now: weighed, and what came and went since. Every figure that needs the
/// CG is computed from this one.
struct CarBalance {
    double total = 0;   ///< kg
    double front = 0;   ///< kg
    double height = 0;  ///< m, CG above the ground at the measured pose
    CgHeight from;      ///< the height before loads came and went, and its source
    /// Why the height somebody chose can't be had; the one entered is in use then. Empty: it is in use.
    std::string refusal;
    /// Why loads that came or went are left out, in one sentence; empty: they are in.
    std::string ballastRefusal;

    /// CG ahead of the rear axle in the car frame, m.
    [[nodiscard]] double cgX(double wheelbase) const { return wheelbase * front / total; }
};
/// The car must have passed findFaults().
[[nodiscard]] CarBalance balanceOf(const Car& car);

}  // namespace bolthole
