// The uncertainty of the rows of a page's cards: what stands before their remarks as "± 4 lb".
#pragma once

#include <functional>
#include <memory>
#include <vector>

#include "geometry/car/car.h"
#include "geometry/car/field_id.h"
#include "geometry/uncertainty/propagation.h"
#include "widgets/kit/job_runner.h"
#include "widgets/pages/fact_card.h"

namespace bolthole {

/// The rows of several cards, in the order the page shows them.
using CardFacts = std::vector<std::vector<Fact>>;

/// Gives the rows of any car that passed findFaults().
using ReadCards = std::function<CardFacts(const Car& car)>;

/// Every number of the cards in their order, of each row its own before its others; those with an id alone.
[[nodiscard]] std::vector<const FactNumber*> numbersOf(const CardFacts& cards);

/// Standard uncertainties of numbersOf(`cards`) in their order, each in its number's unit, SI; `read` gives
/// the rows of any car, as it gave `cards` for `car`. A number is held against the one with the same id,
/// wherever it stands and whatever its row is called; where some varied car has none, NaN: nothing is known.
/// One with an own uncertainty (FactNumber::ownUncertainty) has that.
/// As readUncertainty(): some tens of milliseconds at most, not for every step of a drag.
[[nodiscard]] std::vector<double> uncertaintiesOf(const CardFacts& cards, const Car& car,
                                                  const ReadCards& read);

/// For each of numbersOf(`cards`) the starting numbers it rests on; see startsBehind() in
/// geometry/uncertainty/read_uncertainty.h.
[[nodiscard]] std::vector<std::vector<FieldId>> startsOf(const CardFacts& cards, const Car& car,
                                                         const ReadCards& read);

/// Fills in Fact::sure and Fact::starting, for the cards of one page. Keeps the last car's, so that a page
/// that is shown again because something else came (the instant center's cloud) computes nothing.
class FactUncertainty {
  public:
    /// By uncertaintiesOf(), which see, for `car`, which must have passed findFaults(). Where nothing is
    /// known nothing is said. At once where `whenKnown` is empty; else off the window's thread, with
    /// `whenKnown` called on it when they are there: until then nothing is said. `read` must hold by value
    /// what it reads.
    void addTo(CardFacts& cards, const Car& car, Units units, const ReadCards& read,
               std::function<void()> whenKnown = {});

    /// For a page that has no facts to show: what is still computed is never answered.
    void forget();

  private:
    [[nodiscard]] QString plusMinusOf(const FactNumber& number, std::size_t index, Units units) const;
    void compute(const CardFacts& cards, const Car& car, const ReadCards& read,
                 std::function<void()> whenKnown);

    Car car_;                          // that `uncertainty_` is of, or will be
    std::size_t count_ = 0;            // of its numbers
    std::vector<double> uncertainty_;  // of numbersOf() in their order; empty while they are computed
    std::vector<Coverage> ranges_;     // the same; empty where none is a size near nothing
    std::vector<std::vector<FieldId>> starts_;  // the same
    std::unique_ptr<JobRunner> jobs_;
};

}  // namespace bolthole
