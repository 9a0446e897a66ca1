// The problems and holes of a combination in words: the text part of
// geometry/combinations/combination_figures.h.
#include "geometry/car/fields.h"
#include "geometry/combinations/combination_figures.h"
#include "geometry/units/say.h"
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
    [[nodiscard]] std::string link(int index) const {
        return index < 0 ? say("a link") : linkWords(car_, index);
    }

    const HoleCombination& combination_;
    const Car& car_;
    Units units_;
};

std::string ProblemWriter::one(CombinationProblem problem) const {
    const HoleCombination::Detail& detail = combination_.details[static_cast<std::size_t>(problem)];
    switch (problem) {
        case CombinationProblem::notAssembled:
            return detail.link < 0 ? say("can't be assembled at ride")
                                   : say("can't be assembled at ride: %1", link(detail.link));
        case CombinationProblem::droopRunsOut:
            return say("%1 stops travel at %2 of droop", link(detail.link),
                       measure(std::abs(detail.value), Quantity::length));
        case CombinationProblem::bumpRunsOut:
            return say("%1 stops travel at %2 of bump", link(detail.link),
                       measure(std::abs(detail.value), Quantity::length));
        case CombinationProblem::frontJoint:
            return say("front driveshaft joint reaches %1", measure(detail.value, Quantity::angle));
        case CombinationProblem::rearJoint:
            return say("rear driveshaft joint reaches %1", measure(detail.value, Quantity::angle));
        case CombinationProblem::rodEnd:
            return say("%1 rod-end misalignment %2", link(detail.link),
                       measure(detail.value, Quantity::angle));
        case CombinationProblem::tooShort:
            return say("%1 can't be set as short as %2", link(detail.link),
                       measure(detail.value, Quantity::length));
        case CombinationProblem::tooLong:
            return say("%1 can't be set as long as %2", link(detail.link),
                       measure(detail.value, Quantity::length));
        case CombinationProblem::thread:
            return say("%1 would hold only %2 of thread", link(detail.link),
                       measure(detail.value, Quantity::length));
        case CombinationProblem::crossing:
            return say("%1 and %2 cross: %3 between their centerlines", link(detail.link), link(detail.other),
                       measure(detail.value, Quantity::length));
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
