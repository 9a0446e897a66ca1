// What the driveline page says in figures: pure functions from a reading to the rows of its cards.
#pragma once

#include <vector>

#include "widgets/pages/driveline/driveline_reading.h"
#include "widgets/pages/fact_uncertainty.h"

namespace bolthole {

/// Joint angles, equivalent angle and speed swing at ride, coasting and wound up, against the bounds of
/// geometry/statics/driveline_figures.h.
[[nodiscard]] std::vector<Fact> rideFacts(const DrivelineReading& reading);

/// The same at their largest over the travel and where; the entered joint limit.
[[nodiscard]] std::vector<Fact> travelFacts(const DrivelineReading& reading, Units units);

/// Speed of the shaft, the joint angle it allows, and how hard the pinion is shaken.
[[nodiscard]] std::vector<Fact> speedFacts(const DrivelineReading& reading);

/// Plunge both ways, and what is left of the slip yoke.
[[nodiscard]] std::vector<Fact> plungeFacts(const DrivelineReading& reading, Units units);

/// Both pinion settings, coasting and wound up.
[[nodiscard]] std::vector<Fact> pinionFacts(const DrivelineReading& reading);

/// The rows of all cards in the order above, pinion first; none of a reading that is not there.
[[nodiscard]] CardFacts drivelineCards(const DrivelineReading& reading, Units units);

/// A speed swing in percent: "0.27 %".
[[nodiscard]] QString swingText(double swing);

}  // namespace bolthole
