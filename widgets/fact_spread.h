// How sure the rows of a page's cards are: what stands before their remarks as "± 4 lb".
#pragma once

#include <functional>
#include <vector>

#include "widgets/fact_card.h"

namespace bolthole {

struct Car;

/// The rows of several cards, in the order the page shows them.
using CardFacts = std::vector<std::vector<Fact>>;

/// Fills in Fact::sure. `read` gives the rows of any car, as it gave `cards` for `car`, which must have
/// passed findFaults(); rows with a FactNumber are held against those of the same place and label. Where some
/// varied car has no such row, nothing is said. Takes some tens of milliseconds at most: not for every step
/// of a drag.
void addSureness(CardFacts& cards, const Car& car, Units units,
                 const std::function<CardFacts(const Car& car)>& read);

}  // namespace bolthole
