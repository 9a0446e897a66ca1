// What the sprung mass's pitch inertia is about, where nobody has swung the car.
#pragma once

#include <optional>

#include "geometry/car/car.h"

namespace bolthole {

/// How far off the estimate may be: 95 of 100 cars lie within this part of it. A judgement, no source.
inline constexpr double kPitchInertiaUncertainty = 0.20;

/// m_b b (L - b), kg m^2: m_b the sprung mass, b its center ahead of the rear axle, L the wheelbase; a
/// dynamic index of one (vehicle dynamics' usual first guess; from memory). Nothing where an unsprung mass is
/// not entered or the sprung center stands outside the wheelbase. The car must have passed findFaults().
[[nodiscard]] std::optional<double> estimatedPitchInertia(const Car& car);

}  // namespace bolthole
