// What the links carry in every hole choice: the worst over the sweep, and which link it is.
#pragma once

#include <cstdint>
#include <limits>
#include <optional>
#include <span>
#include <vector>

#include "geometry/choices/choice_figures.h"
#include "geometry/statics/launch_case.h"

namespace bolthole {

/// Hole choices in the order of the bolts that have to be moved for them.
struct NearChoices {
    std::vector<HoleUse> uses;  ///< the present one first
    std::uint64_t total = 0;    ///< how many there are, at most ChoiceSpace::kCountLimit

    [[nodiscard]] bool isAll() const { return uses.size() == total; }
};
/// The `most` choices that move the fewest bolts, both sides of a pair counted, every bracket on its own. The
/// car must have passed findFaults().
[[nodiscard]] NearChoices nearChoices(const Car& car, std::size_t most);

/// The worst link load of one choice.
struct ChoiceLoad {
    HoleUse use;
    int boltsMoved = 0;
    bool assembled = false;      ///< false: the rest does not hold
    bool balanced = false;       ///< false: something nothing holds; the rest does not hold
    double antiSquat = kAbsent;  ///< percent, at ride
    int link = -1;               ///< whose load is largest; -1: the car has no link
    Side side = Side::center;
    double load = kAbsent;     ///< N, the largest of any joint in travel
    bool isTension = false;    ///< rods; else compression
    bool isRod = true;         ///< false: an amount
    double at = kAbsent;       ///< m of travel
    bool settled = true;       ///< statics alone settles it, see JointLoad
    bool springsPull = false;  ///< somewhere a spring would have to pull, so the figures do not hold there
    std::optional<double> ratingUse =
        std::nullopt;  ///< most of any link's rating, factor included; 1: all of it
};

/// Computes choices one after another, with the thrust and tire loads of one case.
class ChoiceLoadSolver {
  public:
    /// As ChoiceSolver; `with` must belong to the car.
    ChoiceLoadSolver(const Car& car, LengthTreatment treatment, LinkCase with);

    [[nodiscard]] ChoiceLoad solve(const HoleUse& use);

  private:
    ChoiceSolver solver_;
    LinkCase with_;
    HoleChoice choice_;
};

/// The order to show them in, as indices: least load first, then fewest bolts moved; those without a figure
/// last.
[[nodiscard]] std::vector<std::size_t> byLoad(std::span<const ChoiceLoad> choices);

}  // namespace bolthole
