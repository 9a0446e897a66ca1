// The Springs page's figures as rows of fact cards.
#pragma once

#include <vector>

#include "widgets/pages/fact_uncertainty.h"
#include "widgets/pages/springs/spring_findings.h"

namespace bolthole {

/// What is said of one of Car::springs: length, room both ways, motion ratio, wheel rate.
[[nodiscard]] std::vector<Fact> partFacts(const Car& car, const SpringFindings& found, int item);

/// What ends bump and droop.
[[nodiscard]] std::vector<Fact> roomFacts(const Car& car, const SpringFindings& found);

/// The rows of the rates' card, then of each part.
[[nodiscard]] CardFacts springCards(const Car& car, const SpringFindings& found);

/// Which lengths are missing, so that nobody knows what they would end; empty: none.
[[nodiscard]] QString missingLengths(const Car& car);

/// Whether the travel entered goes on past what ends it.
[[nodiscard]] bool isPast(const TravelEnd& end);

/// The rear wheel rate: what the springs make, what is in use elsewhere, what they carry.
[[nodiscard]] std::vector<Fact> rateFacts(const Car& car, const SpringFindings& found);

}  // namespace bolthole
