#include "geometry/checks/warnings_unmeasured.h"

#include <algorithm>

#include "geometry/car/fields.h"
#include "geometry/car/starting_numbers.h"
#include "geometry/units/say.h"

namespace bolthole {

namespace {

/// A link is computed of the holes it is bolted to, and of none of its others.
bool isUnused(const Car& car, const FieldId& id) {
    return ruleOf(id.field).scope == Scope::hole && findLink(car, id.link)->bracket(id.end).use != id.hole;
}

/// Whether both are numbers of one link, one spring, one load, or of the driveline.
bool areOfOnePart(const FieldId& one, const FieldId& other) {
    const bool isDriveline = ruleOf(one.field).scope == Scope::driveline;
    return isDriveline == (ruleOf(other.field).scope == Scope::driveline) && one.link == other.link &&
           one.item == other.item && (isDriveline || one.link >= 0 || one.item >= 0);
}

bool isOf(const FieldId& starting, const FieldId& about) {
    const bool isSame = starting.field == about.field && starting.link == about.link &&
                        starting.item == about.item && starting.end == about.end &&
                        starting.hole == about.hole && (about.axis < 0 || starting.axis == about.axis);
    return isSame || areOfOnePart(starting, about);
}

}  // namespace

void softenUnmeasured(const Car& car, std::vector<Warning>& warnings) {
    const std::vector<FieldId> starting = startingNumbers(car);
    for (Warning& warning : warnings) {
        const bool rests = std::ranges::any_of(starting, [&](const FieldId& id) {
            return isOf(id, warning.id) && (id == warning.id || !isUnused(car, id));
        });
        Finding& finding = warning.finding;
        if (rests && finding.severity == Severity::wrong) {
            finding.severity = Severity::unmeasured;
            finding.follows =
                finding.follows.empty()
                    ? say("it comes of starting numbers: measure them first")
                    : say("%1; it comes of starting numbers: measure them first", finding.follows);
        }
    }
}

}  // namespace bolthole
