#include "geometry/car/starting_numbers.h"

#include <algorithm>

#include "geometry/car/fields.h"

namespace bolthole {

namespace {

/// Lists the numbers of a car that are there.
class MeasurableLister {
  public:
    explicit MeasurableLister(const Car& car) : car_(car) {}

    std::vector<FieldId> list() {
        addScope(Scope::car, {});
        for (std::size_t link = 0; link < car_.links.size(); ++link) {
            addLink(static_cast<int>(link));
        }
        if (car_.driveline) {
            addScope(Scope::driveline, {});
        }
        for (std::size_t item = 0; item < car_.ballast.size(); ++item) {
            addScope(Scope::ballast, {.item = static_cast<int>(item)});
        }
        for (std::size_t item = 0; item < car_.springs.size(); ++item) {
            addSpring(static_cast<int>(item));
        }
        return std::move(ids_);
    }

  private:
    void add(const FieldRule& rule, const FieldId& id) {
        const std::optional<double> number = numberAt(car_, id);
        const bool isLeftOut = rule.fallback && number == *rule.fallback && !isStarting(car_, id);
        if (number && (!isLeftOut || !rule.isRare)) {
            ids_.push_back(id);
        }
    }
    void addScope(Scope scope, FieldId id) {
        for (const FieldRule* rule : rulesOf(scope)) {
            if (!mayBeStarting(rule->field)) {
                continue;
            }
            id.field = rule->field;
            if (!rule->hasAxis) {
                id.axis = -1;
                add(*rule, id);
                continue;
            }
            for (const int axis : {0, 2, 1}) {  // as fields stand: forward, up, left
                id.axis = axis;
                add(*rule, id);
            }
        }
    }
    void addHoles(Scope scope, const Bracket& bracket, FieldId id) {
        for (std::size_t hole = 0; hole < bracket.holes.size(); ++hole) {
            if (bracket.holes[hole].planned) {
                continue;  // nobody can measure what is not drilled
            }
            id.hole = static_cast<int>(hole);
            addScope(scope, id);
        }
    }
    void addLink(int link) {
        for (const End end : {End::chassis, End::axle}) {
            addHoles(Scope::hole, findLink(car_, link)->bracket(end), {.link = link, .end = end});
        }
        addScope(Scope::link, {.link = link});
    }
    void addSpring(int item) {
        for (const End end : {End::chassis, End::axle}) {
            addHoles(Scope::mount, findSpring(car_, item)->bracket(end), {.end = end, .item = item});
        }
        addScope(Scope::spring, {.item = item});
    }

    const Car& car_;
    std::vector<FieldId> ids_;
};

/// Marks the numbers of one part that are there.
void startPart(const Part<const Car>& part, Uncertainties& uncertainties, Scope scope) {
    for (const FieldRule* rule : rulesOf(scope)) {
        const int axes = rule->hasAxis ? 3 : 1;
        for (int at = 0; at < axes && mayBeStarting(rule->field); ++at) {
            const int axis = rule->hasAxis ? at : -1;
            const std::optional<double> number = numberIn(rule->access.constSlot(part, axis));
            if (number && !(rule->isRare && number == rule->fallback)) {
                uncertainties.setOrigin(rule->field, axis, Origin::starting);
            }
        }
    }
}

void startBracket(Bracket& bracket, Field field) {
    for (Hole& hole : bracket.holes) {
        startFrom(hole, field);
    }
}

/// Whether one of the coordinates that the length between the holes in use is made of is a starting number.
bool restsOnStarting(const Link& link) {
    return !link.chassis.inUse().uncertainties.marks().empty() ||
           !link.axle.inUse().uncertainties.marks().empty();
}

}  // namespace

bool mayBeStarting(Field field) {
    return mayHaveUncertainty(field) || field == Field::bump || field == Field::droop;
}

Origin originOf(const Car& car, const FieldId& id) {
    const Uncertainties* marks = id.uncertainty || !mayBeStarting(id.field) ? nullptr : partMarksAt(car, id);
    return marks != nullptr && numberAt(car, id) ? marks->originOf(id.field, id.axis) : Origin::measured;
}

bool isStarting(const Car& car, const FieldId& id) {
    return originOf(car, id) == Origin::starting;
}

bool isMeasured(const Car& car, const FieldId& id) {
    return originOf(car, id) == Origin::measured && numberAt(car, id);
}

void setOrigin(Car& car, const FieldId& id, Origin origin) {
    Uncertainties* marks = id.uncertainty || !mayBeStarting(id.field) ? nullptr : partMarksAt(car, id);
    const bool isWhole = ruleOf(id.field).hasAxis == (id.axis >= 0 && id.axis < 3);
    if (marks != nullptr && isWhole) {
        marks->setOrigin(id.field, id.axis, origin);
    }
}

std::vector<FieldId> measurableNumbers(const Car& car) {
    return MeasurableLister(car).list();
}

std::vector<FieldId> startingNumbers(const Car& car) {
    std::vector<FieldId> ids = measurableNumbers(car);
    std::erase_if(ids, [&car](const FieldId& id) { return !isStarting(car, id); });
    return ids;
}

std::vector<FieldId> unmeasuredNumbers(const Car& car) {
    std::vector<FieldId> ids = measurableNumbers(car);
    std::erase_if(ids, [&car](const FieldId& id) { return isMeasured(car, id); });
    return ids;
}

void startFrom(Hole& hole, Field field) {
    for (int axis = 0; axis < 3; ++axis) {
        hole.uncertainties.setOrigin(field, axis, Origin::starting);
    }
}

void startFrom(Link& link) {
    startBracket(link.chassis, Field::holeAt);
    startBracket(link.axle, Field::holeAt);
    startPart(&link, link.uncertainties, Scope::link);
}

void startFrom(SuspensionPart& part) {
    startBracket(part.chassis, Field::mountAt);
    startBracket(part.axle, Field::mountAt);
    startPart(&part, part.uncertainties, Scope::spring);
}

void startFrom(Driveline& driveline) {
    startPart(&driveline, driveline.uncertainties, Scope::driveline);
}

void startFrom(Car& car) {
    for (const FieldId& id : measurableNumbers(car)) {
        setOrigin(car, id, Origin::starting);
    }
}

void markWorkedOut(Car& car, const FieldId& id) {
    const bool restsOnStart = id.field == Field::linkLength && restsOnStarting(*findLink(car, id.link));
    setOrigin(car, id, restsOnStart || isStarting(car, id) ? Origin::starting : Origin::workedOut);
}

void markWorkedOutLengths(Car& car, const Car& before) {
    for (std::size_t index = 0; index < car.links.size(); ++index) {
        Link& link = car.links[index];
        const Link& was = before.links[index];
        if (link.length && link.length != was.length) {
            const bool wasStarting = was.length && was.uncertainties.isStarting(Field::linkLength);
            const bool rests = restsOnStarting(link) || restsOnStarting(was) || wasStarting;
            link.uncertainties.setOrigin(Field::linkLength, -1, rests ? Origin::starting : Origin::workedOut);
        }
    }
}

}  // namespace bolthole
