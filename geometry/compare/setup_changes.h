// What changed between setups and between passes, in words made by comparison, never typed.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "geometry/car/car.h"

namespace bolthole {

/// Whether two cars are one setup: the same in everything that can be turned, bolted, filled or weighed.
/// Titles, notes, units, the target, the uncertainty of the numbers, the rows of a sweep, holes planned but
/// not drilled, and the launch that was measured or is computed from are no part of it.
[[nodiscard]] bool isSameSetup(const Car& one, const Car& other);

/// Index of the newest kept setup that is the car's setup as it stands; nothing where none is.
[[nodiscard]] std::optional<int> keptSetup(const Car& car);

/// What was turned from one car to the other, a few words each: "lower axle hole 'top'", "upper left +1.5
/// turns", "rear spring rate +10 lbf/in", "CG height -0.5 in". Bolts first, then lengths (not of a rod that
/// is only as long as its moved holes are apart), springs, ballast and numbers. Numbers and units as in
/// `units`. Empty where nothing of that differs.
[[nodiscard]] std::vector<std::string> setupChanges(const Car& before, const Car& after, Units units);

/// A name for the car as it stands against the setup of its last pass, or the last kept one: what changed,
/// the first three of more; "first setup" where nothing is kept. Unlike the names of all that is kept.
[[nodiscard]] std::string nameForSetup(const Car& car);

/// What changed from the pass before the one at `index` (a row of Car::passes), as one text: the setup, tire
/// pressures (a whole axle's where both tires changed alike), launch rpm, place and surface. What is missing
/// in either pass is no change. Empty for the first pass and where nothing changed. Air and track temperature
/// are nobody's doing and left out.
[[nodiscard]] std::string changesSincePassBefore(const Car& car, std::size_t index, Units units);

}  // namespace bolthole
