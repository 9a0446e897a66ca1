// The problems and holes of a combination in words: the text part of
// geometry/combinations/combination_figures.h.
#include "geometry/car/fields.h"
#include "geometry/combinations/combination_figures.h"
#include "geometry/units/text.h"

namespace bolthole {

namespace {

class ProblemWriter {
  public:
    ProblemWriter(const HoleCombination& combination, const Car& car, Units units)
        : combination_(combination), car_(car), units_(units) {}

    std::string all();

  private:
    [[nodiscard]] std::string one(CombinationProblem problem) const;
    [[nodiscard]] std::string measure(float value, Quantity quantity) const {
        return withUnit(fineFigureText(static_cast<double>(value), quantity, units_), quantity, units_);
    }
    [[nodiscard]] std::string link(int index) const { return index < 0 ? "a link" : linkWords(car_, index); }

    const HoleCombination& combination_;
    const Car& car_;
    Units units_;
};

std::string ProblemWriter::one(CombinationProblem problem) const {
    const HoleCombination::Detail& detail = combination_.details[static_cast<std::size_t>(problem)];
    switch (problem) {
        case CombinationProblem::notAssembled:
            return "can't be assembled at ride" + (detail.link < 0 ? "" : ": " + link(detail.link));
        case CombinationProblem::droopRunsOut:
            return link(detail.link) + " stops travel at " +
                   measure(std::abs(detail.value), Quantity::length) + " of droop";
        case CombinationProblem::bumpRunsOut:
            return link(detail.link) + " stops travel at " +
                   measure(std::abs(detail.value), Quantity::length) + " of bump";
        case CombinationProblem::frontJoint:
            return "front driveshaft joint reaches " + measure(detail.value, Quantity::angle);
        case CombinationProblem::rearJoint:
            return "rear driveshaft joint reaches " + measure(detail.value, Quantity::angle);
        case CombinationProblem::rodEnd:
            return link(detail.link) + " rod-end misalignment " + measure(detail.value, Quantity::angle);
        case CombinationProblem::tooShort:
            return link(detail.link) + " can't be set as short as " + measure(detail.value, Quantity::length);
        case CombinationProblem::tooLong:
            return link(detail.link) + " can't be set as long as " + measure(detail.value, Quantity::length);
        case CombinationProblem::thread:
            return link(detail.link) + " would hold only " + measure(detail.value, Quantity::length) +
                   " of thread";
        case CombinationProblem::crossing:
            return link(detail.link) + " and " + link(detail.other) +
                   " cross: " + measure(detail.value, Quantity::length) + " between their centerlines";
        case CombinationProblem::count:
            break;
    }
    return {};
}

std::string ProblemWriter::all() {
    std::string words;
    for (std::size_t problem = 0; problem < kCombinationProblems; ++problem) {
        if (combination_.has(static_cast<CombinationProblem>(problem))) {
            words += (words.empty() ? "" : "; ") + one(static_cast<CombinationProblem>(problem));
        }
    }
    return words;
}

}  // namespace

std::string describeProblems(const HoleCombination& combination, const Car& car, Units units) {
    return ProblemWriter(combination, car, units).all();
}

std::string holeNames(const HoleUse& use, const Car& car) {
    std::string names;
    for (std::size_t index = 0; index < car.links.size(); ++index) {
        for (const End end : {End::chassis, End::axle}) {
            const Bracket& bracket = car.links[index].bracket(end);
            if (bracket.holes.size() < 2) {
                continue;
            }
            const int hole = use.of(static_cast<int>(index), end);
            const std::string& name = bracket.holes[static_cast<std::size_t>(hole)].name;
            names += (names.empty() ? "" : " / ") + (name.empty() ? std::to_string(hole + 1) : name);
        }
    }
    return names;
}

}  // namespace bolthole
