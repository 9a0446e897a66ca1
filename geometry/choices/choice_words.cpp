// The problems and holes of a choice in words: the text part of geometry/choices/choice_figures.h.
#include "geometry/car/fields.h"
#include "geometry/choices/choice_figures.h"
#include "geometry/units/text.h"

namespace bolthole {

namespace {

class ProblemWriter {
  public:
    ProblemWriter(const HoleChoice& choice, const Car& car, Units units)
        : choice_(choice), car_(car), units_(units) {}

    std::string all();

  private:
    [[nodiscard]] std::string one(ChoiceProblem problem) const;
    [[nodiscard]] std::string measure(float value, Quantity quantity) const {
        return withUnit(fineFigureText(static_cast<double>(value), quantity, units_), quantity, units_);
    }
    [[nodiscard]] std::string link(int index) const { return index < 0 ? "a link" : linkWords(car_, index); }

    const HoleChoice& choice_;
    const Car& car_;
    Units units_;
};

std::string ProblemWriter::one(ChoiceProblem problem) const {
    const HoleChoice::Detail& detail = choice_.details[static_cast<std::size_t>(problem)];
    switch (problem) {
        case ChoiceProblem::notAssembled:
            return "can't be assembled at ride" + (detail.link < 0 ? "" : ": " + link(detail.link));
        case ChoiceProblem::droopRunsOut:
            return link(detail.link) + " stops travel at " +
                   measure(std::abs(detail.value), Quantity::length) + " of droop";
        case ChoiceProblem::bumpRunsOut:
            return link(detail.link) + " stops travel at " +
                   measure(std::abs(detail.value), Quantity::length) + " of bump";
        case ChoiceProblem::frontJoint:
            return "front driveshaft joint reaches " + measure(detail.value, Quantity::angle);
        case ChoiceProblem::rearJoint:
            return "rear driveshaft joint reaches " + measure(detail.value, Quantity::angle);
        case ChoiceProblem::rodEnd:
            return link(detail.link) + " rod-end misalignment " + measure(detail.value, Quantity::angle);
        case ChoiceProblem::tooShort:
            return link(detail.link) + " can't be set as short as " + measure(detail.value, Quantity::length);
        case ChoiceProblem::tooLong:
            return link(detail.link) + " can't be set as long as " + measure(detail.value, Quantity::length);
        case ChoiceProblem::thread:
            return link(detail.link) + " would hold only " + measure(detail.value, Quantity::length) +
                   " of thread";
        case ChoiceProblem::crossing:
            return link(detail.link) + " and " + link(detail.other) +
                   " cross: " + measure(detail.value, Quantity::length) + " between their centerlines";
        case ChoiceProblem::count:
            break;
    }
    return {};
}

std::string ProblemWriter::all() {
    std::string words;
    for (std::size_t problem = 0; problem < kChoiceProblems; ++problem) {
        if (choice_.has(static_cast<ChoiceProblem>(problem))) {
            words += (words.empty() ? "" : "; ") + one(static_cast<ChoiceProblem>(problem));
        }
    }
    return words;
}

}  // namespace

std::string describeProblems(const HoleChoice& choice, const Car& car, Units units) {
    return ProblemWriter(choice, car, units).all();
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
