#include "widgets/board/combination_problem.h"

#include "widgets/kit/translation.h"

namespace bolthole {

namespace {

bool usesPlanned(const HoleUse& use, const Car& car) {
    for (std::size_t link = 0; link < car.links.size(); ++link) {
        for (const End end : {End::chassis, End::axle}) {
            const int hole = use.of(static_cast<int>(link), end);
            if (car.links[link].bracket(end).holes[static_cast<std::size_t>(hole)].planned) {
                return true;
            }
        }
    }
    return false;
}

}  // namespace

// That a hole is not there yet stops nobody from looking at it, but from bolting to it.
QString problemText(const HoleCombination& combination, const Car& car, Units units) {
    QStringList problems{usesPlanned(combination.use, car) ? tr("a hole is not drilled yet") : QString(),
                         QString::fromStdString(describeProblems(combination, car, units))};
    problems.removeAll(QString());
    return problems.join(QStringLiteral("; "));
}

}  // namespace bolthole
