#include "geometry/combinations/combination_loads.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <tuple>
#include <utility>

namespace bolthole {

namespace {

/// One bracket with a combination of holes.
struct Digit {
    int link = 0;
    End end = End::chassis;
    int holes = 1;
    int bolts = 1;    // that move with it
    int boltsOn = 0;  // of this and all digits after it
};

std::vector<Digit> digitsOf(const Car& car) {
    std::vector<Digit> digits;
    for (int number = 0; number < static_cast<int>(car.links.size()); ++number) {
        const Link& link = car.links[static_cast<std::size_t>(number)];
        for (const End end : {End::chassis, End::axle}) {
            const int holes = static_cast<int>(link.bracket(end).holes.size());
            if (holes > 1) {
                digits.push_back({number, end, holes, sidesOf(link), 0});
            }
        }
    }
    int bolts = 0;
    for (auto digit = digits.rbegin(); digit != digits.rend(); ++digit) {
        digit->boltsOn = bolts += digit->bolts;
    }
    return digits;
}

/// Finds the combinations that move a given number of bolts.
class NearSearch {
  public:
    NearSearch(const Car& car, std::size_t most)
        : digits_(digitsOf(car)), present_(holesInUse(car)), use_(present_), most_(most) {}

    std::vector<HoleUse> run() {
        const int all = digits_.empty() ? 0 : digits_.front().boltsOn;
        for (int bolts = 0; bolts <= all && found_.size() < most_; ++bolts) {
            spend(0, bolts);
        }
        return std::move(found_);
    }

  private:
    // Moves exactly `bolts` of the brackets from `digit` on. A search that can't spend them all ends here, so
    // nearly every step leads to a combination.
    void spend(std::size_t digit, int bolts) {
        if (found_.size() == most_) {
            return;
        }
        if (bolts == 0) {
            found_.push_back(use_);
            return;
        }
        if (digit == digits_.size() || bolts > digits_[digit].boltsOn) {
            return;
        }
        const Digit& at = digits_[digit];
        const int stays = present_.of(at.link, at.end);
        for (int hole = 0; hole < at.holes && at.bolts <= bolts; ++hole) {
            if (hole != stays) {
                use_.set(at.link, at.end, hole);
                spend(digit + 1, bolts - at.bolts);
            }
        }
        use_.set(at.link, at.end, stays);
        spend(digit + 1, bolts);
    }

    std::vector<Digit> digits_;
    HoleUse present_;
    HoleUse use_;
    std::size_t most_;
    std::vector<HoleUse> found_;
};

void takeLargest(const std::vector<JointLoads>& joints, CombinationLoad& load) {
    if (const JointLoads* most = mostUsedOf(joints)) {
        load.ratingUse = most->use;
    }
    const JointLoads* largest = largestOf(joints);
    if (largest == nullptr) {
        return;
    }
    const WorstLoad& worst = largest->worst;
    load.link = largest->link;
    load.side = largest->side;
    load.load = worst.largest();
    load.isRod = largest->isRod;
    load.isTension = worst.tension >= worst.compression;
    load.at = load.isTension ? worst.tensionAt : worst.compressionAt;
    load.determinate = worst.determinate;
}

}  // namespace

NearCombinations nearCombinations(const Car& car, std::size_t most) {
    return {NearSearch(car, most).run(), CombinationSpace(car, {}).count()};
}

CombinationLoadSolver::CombinationLoadSolver(const Car& car, LengthTreatment treatment, LinkCase with)
    : solver_(car, treatment), with_(std::move(with)) {}

CombinationLoad CombinationLoadSolver::solve(const HoleUse& use) {
    solver_.solve(use, combination_);
    CombinationLoad load;
    load.use = use;
    load.boltsMoved = combination_.boltsMoved;
    load.assembled = combination_.assembled;
    if (!load.assembled) {
        return load;
    }
    load.antiSquat = combination_[Figure::antiSquat];
    const LinkFigures figures = linkFigures(solver_.car(), solver_.trace(), with_);
    load.balanced = !figures.sweep.unbalanced;
    load.springsPull = figures.sweep.springsPull;
    if (load.balanced) {
        takeLargest(figures.joints, load);
    }
    return load;
}

std::vector<std::size_t> byLoad(std::span<const CombinationLoad> combinations) {
    std::vector<std::size_t> order(combinations.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::ranges::stable_sort(order, {}, [&combinations](std::size_t index) {
        const CombinationLoad& combination = combinations[index];
        const bool isKnown = !std::isnan(combination.load);
        return std::tuple(!isKnown, isKnown ? combination.load : 0.0, combination.boltsMoved);
    });
    return order;
}

}  // namespace bolthole
