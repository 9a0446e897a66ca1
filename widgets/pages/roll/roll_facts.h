// The words of the roll page's cards.
#pragma once

#include <QString>
#include <vector>

#include "widgets/pages/fact_uncertainty.h"
#include "widgets/pages/roll/roll_reading.h"

namespace bolthole {

/// Roll center at ride and at both ends of travel, roll axis, roll steer. `reading` is there.
[[nodiscard]] std::vector<Fact> rollCenterFacts(const RollReading& reading, Units units);

/// How far the axle has shifted sideways from ride at both ends of travel. `reading` is there.
[[nodiscard]] std::vector<Fact> shiftFacts(const RollReading& reading, Units units);
/// What locates the axle sideways and so shifts it, or not.
[[nodiscard]] QString shiftWords(const RollReading& reading);

/// Bind at 1, 2 and 3 degrees, the worse side. `reading` is there.
[[nodiscard]] std::vector<Fact> bindFacts(const RollReading& reading, Units units);
/// One sentence on what takes the bind up. `reading` is there.
[[nodiscard]] QString bindWords(const RollReading& reading, Units units);

/// The instant center of each side and the axle's own.
[[nodiscard]] std::vector<Fact> sideCenterFacts(const SideCenters& centers, Units units);
[[nodiscard]] QString sideCenterWords(const SideCenters& centers);

/// The rows of the cards: of the instant centers, and where roll can be computed of roll center, shift and
/// bind.
[[nodiscard]] CardFacts rollCards(const RollReading& reading, Units units);

/// 0.023 as "0.023°/°", signed; an em dash for NaN.
[[nodiscard]] QString steerText(double steer);

}  // namespace bolthole
