// The words of the card that says what one rod's length does.
#pragma once

#include <QString>
#include <vector>

#include "geometry/car/car.h"
#include "geometry/units/text.h"
#include "widgets/pages/fact_card.h"

namespace bolthole {

/// Left and right rods that differ, then a row a rod: what one turn of its adjuster, or a sixteenth of an
/// inch or a millimeter where it has none, does to pinion and axle. The car must have passed findFaults().
[[nodiscard]] std::vector<Fact> rodEffectFacts(const Car& car, NumberStyle style);
/// What the figures leave out.
[[nodiscard]] QString rodEffectWords();

}  // namespace bolthole
