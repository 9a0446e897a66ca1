// What the links carry in every hole combination: the worst over the sweep, and which link it is.
#pragma once

#include <cstdint>
#include <limits>
#include <optional>
#include <span>
#include <vector>

#include "geometry/combinations/combination_figures.h"
#include "geometry/statics/launch_case.h"

namespace bolthole {

/// Hole combinations in the order of the bolts that have to be moved for them.
struct NearCombinations {
    std::vector<HoleUse> uses;  ///< the present one first
    std::uint64_t total = 0;    ///< how many there are, at most CombinationSpace::kCountLimit

    [[nodiscard]] bool isAll() const { return uses.size() == total; }
};
/// The `most` combinations that move the fewest bolts, both sides of a pair counted, every bracket on its
/// own. The car must have passed findFaults().
[[nodiscard]] NearCombinations nearCombinations(const Car& car, std::size_t most);

/// The worst link load of one combination.
struct CombinationLoad {
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
    bool determinate = true;   ///< statics alone determines it, see JointLoad
    bool springsPull = false;  ///< somewhere a spring would have to pull, so the figures do not hold there
    std::optional<double> ratingUse =
        std::nullopt;  ///< most of any link's rating, factor included; 1: all of it
};

/// Computes combinations one after another, with the thrust and tire loads of one case.
class CombinationLoadSolver {
  public:
    /// As CombinationSolver; `with` must belong to the car.
    CombinationLoadSolver(const Car& car, LengthTreatment treatment, LinkCase with);

    [[nodiscard]] CombinationLoad solve(const HoleUse& use);

  private:
    CombinationSolver solver_;
    LinkCase with_;
    HoleCombination combination_;
};

/// The order to show them in, as indices: least load first, then fewest bolts moved; those without a figure
/// last.
[[nodiscard]] std::vector<std::size_t> byLoad(std::span<const CombinationLoad> combinations);

}  // namespace bolthole
