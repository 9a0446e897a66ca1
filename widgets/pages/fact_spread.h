// How sure the rows of a page's cards are: what stands before their remarks as "± 4 lb".
#pragma once

#include <functional>
#include <vector>

#include "geometry/car/car.h"
#include "widgets/pages/fact_card.h"

namespace bolthole {

/// The rows of several cards, in the order the page shows them.
using CardFacts = std::vector<std::vector<Fact>>;

/// Fills in Fact::sure, for the cards of one page. Keeps the last car's, so that a page that is shown again
/// because something else came (the instant center's cloud) computes nothing.
class FactSpread {
  public:
    /// `read` gives the rows of any car, as it gave `cards` for `car`, which must have passed findFaults(); a
    /// row with a FactNumber is held against the one of the same card and label. Where some varied car has no
    /// such row, nothing is said of it. Takes some tens of milliseconds at most for a new car: not for every
    /// step of a drag.
    void addTo(CardFacts& cards, const Car& car, Units units,
               const std::function<CardFacts(const Car& car)>& read);

  private:
    Car car_;
    std::vector<double> spread_;  // standard, of the rows with a number in their order, each in its unit
};

}  // namespace bolthole
