#include "widgets/words/starting_words.h"

#include <algorithm>

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

QString startingHeading(const Car& car) {
    const QString starts = QString::fromStdString(startWords(car, startsUsed(car)));
    const QString workedOut = QString::fromStdString(startWords(car, workedOutUsed(car)));
    if (starts.isEmpty() || workedOut.isEmpty()) {
        return !starts.isEmpty()      ? tr("Starting numbers, not measured: %1").arg(starts)
               : !workedOut.isEmpty() ? tr("Worked out, not measured: %1").arg(workedOut)
                                      : QString();
    }
    return tr("Starting numbers, not measured: %1; worked out, not measured: %2").arg(starts, workedOut);
}

QString startingHeading(const Car& before, const Car& after) {
    const QString was = startingHeading(before);
    QString is = startingHeading(after);
    if (was == is || was.isEmpty()) {
        return is;
    }
    return is.isEmpty() ? tr("Before: %1").arg(was) : tr("Before: %1. After: %2").arg(was, is);
}

QString calculatedWords(const Car& car) {
    return startsUsed(car).empty()
               ? tr("Calculated from your measurements; no strength of brackets, welds or bolts.")
               : tr("Calculated also from starting numbers, which nobody measured; no strength of brackets, "
                    "welds or "
                    "bolts.");
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
