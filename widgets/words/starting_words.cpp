#include "widgets/words/starting_words.h"

#include <algorithm>
#include <array>

#include "geometry/car/starting_numbers.h"
#include "geometry/uncertainty/uncertain_inputs.h"
#include "widgets/kit/translation.h"

namespace bolthole {

QString startingWords(const Car& car, std::span<const FieldId> starts) {
    const QString names = QString::fromStdString(startWords(car, starts));
    return names.isEmpty() ? names : tr("starting numbers: %1").arg(names);
}

QString startingWords(const Car& car) {
    return startingWords(car, startsUsed(car));
}

namespace {

QString headingOf(const Car& car, std::span<const FieldId> startIds, std::span<const FieldId> workedOutIds) {
    const QString starts = QString::fromStdString(startWords(car, startIds));
    const QString workedOut = QString::fromStdString(startWords(car, workedOutIds));
    if (starts.isEmpty() || workedOut.isEmpty()) {
        return !starts.isEmpty()      ? tr("Starting numbers, not measured: %1").arg(starts)
               : !workedOut.isEmpty() ? tr("Worked out, not measured: %1").arg(workedOut)
                                      : QString();
    }
    return tr("Starting numbers, not measured: %1; worked out, not measured: %2").arg(starts, workedOut);
}

bool hasPlateToMeasure(const Car& car) {
    return std::ranges::any_of(car.links, [](const Link& link) {
        return std::ranges::any_of(std::array{&link.chassis, &link.axle}, [](const Bracket* bracket) {
            return bracket->plate && bracket->plate->starts.any();
        });
    });
}

// A spring's numbers are no inputs of the figures through travel; those of its brackets' other holes are none
// of anything.
bool isOfSpringInUse(const Car& car, const FieldId& id) {
    const Scope scope = ruleOf(id.field).scope;
    return scope == Scope::spring ||
           (scope == Scope::mount && findSpring(car, id.item)->bracket(id.end).use == id.hole);
}

}  // namespace

QString workedOutWords(const Car& car) {
    const QString names = QString::fromStdString(startWords(car, workedOutUsed(car)));
    return names.isEmpty() ? names : tr("worked out, not measured: %1").arg(names);
}

QString startingHeading(const Car& car) {
    return headingOf(car, startsUsed(car), workedOutUsed(car));
}

QString startingHeading(const Car& car, const std::function<bool(Scope)>& rests) {
    std::vector<FieldId> starts = startsUsed(car);
    std::vector<FieldId> workedOut = workedOutUsed(car);
    for (const FieldId& id : unmeasuredNumbers(car)) {
        if (isOfSpringInUse(car, id)) {
            (isStarting(car, id) ? starts : workedOut).push_back(id);
        }
    }
    const auto isElsewhere = [&rests](const FieldId& id) { return !rests(ruleOf(id.field).scope); };
    std::erase_if(starts, isElsewhere);
    std::erase_if(workedOut, isElsewhere);
    return headingOf(car, starts, workedOut);
}

QString startingHeading(const Car& before, const Car& after) {
    const QString was = startingHeading(before);
    QString is = startingHeading(after);
    if (was == is || was.isEmpty()) {
        return is;
    }
    return is.isEmpty() ? tr("Before: %1").arg(was) : tr("Before: %1. After: %2").arg(was, is);
}

namespace {

QString calculatedFrom(bool hasStarts, bool hasWorkedOut) {
    const QString from = hasStarts ? tr("Calculated also from starting numbers, which nobody measured")
                         : hasWorkedOut
                             ? tr("Calculated from your measurements and from numbers that were worked out")
                             : tr("Calculated from your measurements");
    return tr("%1; no strength of brackets, welds or bolts.").arg(from);
}

}  // namespace

QString calculatedWords(const Car& car) {
    return calculatedFrom(!startsUsed(car).empty(), !workedOutUsed(car).empty());
}

QString allCalculatedWords(const Car& car) {
    const bool hasStarts =
        !startingNumbers(car).empty() || !startsUsed(car).empty() || hasPlateToMeasure(car);
    return calculatedFrom(hasStarts, !unmeasuredNumbers(car).empty());
}

QString workedOutLengthsWords(const Car& car) {
    int count = 0;
    for (int link = 0; link < static_cast<int>(car.links.size()); ++link) {
        const FieldId length{.field = Field::linkLength, .link = link};
        count += numberAt(car, length) && originOf(car, length) == Origin::workedOut ? 1 : 0;
    }
    return count == 0   ? QString()
           : count == 1 ? tr("1 length was worked out, not measured")
                        : tr("%n lengths were worked out, not measured", count);
}

QString originWords(Origin origin) {
    switch (origin) {
        case Origin::starting:
            return tr("a starting number");
        case Origin::workedOut:
            return tr("worked out, not measured");
        case Origin::measured:
            break;
    }
    return tr("measured");
}

bool restsOnStarts(const Car& car, std::initializer_list<Scope> scopes) {
    return std::ranges::any_of(startingNumbers(car), [&](const FieldId& id) {
        const Scope scope = ruleOf(id.field).scope;
        const bool isUnused = scope == Scope::hole && findLink(car, id.link)->bracket(id.end).use != id.hole;
        return std::ranges::find(scopes, scope) != scopes.end() && !isUnused;
    });
}

QString noUncertaintyWords() {
    return tr("no ±");
}

}  // namespace bolthole
