#include "geometry/checks/fixes.h"

#include <utility>

#include "geometry/units/say.h"

namespace bolthole {

namespace {

std::optional<Fix> clearedLength(const Car& car, const FieldId& id) {
    const Link& link = car.links[static_cast<std::size_t>(id.link)];
    if (!link.length) {
        return std::nullopt;
    }
    return Fix{say("Clear the length"), ClearNumber{id}};
}

std::optional<Fix> exchangedLimits(const Car& car, int index) {
    std::optional<Adjuster> adjuster = car.links[static_cast<std::size_t>(index)].adjuster;
    if (!adjuster || !adjuster->shortest || !adjuster->longest || *adjuster->shortest <= *adjuster->longest) {
        return std::nullopt;
    }
    std::swap(adjuster->shortest, adjuster->longest);
    return Fix{say("Exchange the two"), SetAdjuster{index, adjuster}};
}

template <class Number>
std::optional<Fix> exchangedTarget(const Car& car, Number TargetWindow::*one, Number TargetWindow::*other) {
    std::optional<TargetWindow> target = car.target;
    if (!target) {
        return std::nullopt;
    }
    std::swap((*target).*one, (*target).*other);
    return Fix{say("Exchange the two"), SetTarget{target}};
}

}  // namespace

std::optional<Fix> certainFix(const Car& car, const Warning& warning) {
    switch (warning.id.field) {
        case Field::linkLength:
            return clearedLength(car, warning.id);
        case Field::adjusterShortest:
            return exchangedLimits(car, warning.id.link);
        case Field::targetIcNear:
            return exchangedTarget(car, &TargetWindow::icNear, &TargetWindow::icFar);
        case Field::targetLow:
            return exchangedTarget(car, &TargetWindow::antiSquatLow, &TargetWindow::antiSquatHigh);
        default:
            return std::nullopt;
    }
}

}  // namespace bolthole
