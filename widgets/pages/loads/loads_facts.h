// What the loads page says in words and numbers: the rows of its cards, from a LaunchCase.
#pragma once

#include <QString>
#include <vector>

#include "geometry/statics/launch_case.h"
#include "widgets/pages/fact_uncertainty.h"

namespace bolthole {

/// A figure with its unit, an em dash alone where there is none.
[[nodiscard]] QString figureWithUnit(double value, Quantity quantity, Units units);
/// m/s^2 as "0.85 g".
[[nodiscard]] QString inGravities(double acceleration);
/// "at ride", "1.2 in of bump", "0.8 in of droop".
[[nodiscard]] QString travelWords(double travel, Units units);
/// "not known: enter the axle ratio".
[[nodiscard]] QString whyNotKnown(const std::string& refusal);

/// Thrust and axle loads.
[[nodiscard]] std::vector<Fact> launchFacts(const Car& car, const LaunchCase& launch, Units units);
/// Squat or rise, and pitch.
[[nodiscard]] std::vector<Fact> attitudeFacts(const LaunchCase& launch, Units units);
/// What the driveshaft's torque does to the four tires and the body, and what would cancel it.
[[nodiscard]] std::vector<Fact> rollFacts(const LaunchCase& launch, Units units);
[[nodiscard]] std::vector<Fact> brakeFacts(const LaunchCase& launch, Units units);
/// The rows of the four cards above, in their order.
[[nodiscard]] CardFacts launchCards(const Car& car, const LaunchCase& launch, Units units);
/// The same of any car that passed findFaults(); in a travel of few steps, as the cards say nothing of it.
[[nodiscard]] CardFacts readLaunchCards(const Car& car, Units units);
/// What the link loads are computed with.
[[nodiscard]] std::vector<Fact> linkCaseFacts(const Car& car, const LaunchCase& launch, Units units);

}  // namespace bolthole
