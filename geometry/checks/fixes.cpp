#include "geometry/checks/fixes.h"

#include <utility>

namespace bolthole {

namespace {

std::optional<Fix> clearedLength(const Car& car, const FieldId& id) {
    const Link& link = car.links[static_cast<std::size_t>(id.link)];
    if (!link.length) {
        return std::nullopt;
    }
    return Fix{"Clear the length", ClearNumber{id}};
}

std::optional<Fix> exchangedLimits(const Car& car, int index) {
    std::optional<Adjuster> adjuster = car.links[static_cast<std::size_t>(index)].adjuster;
    if (!adjuster || !adjuster->shortest || !adjuster->longest || *adjuster->shortest <= *adjuster->longest) {
        return std::nullopt;
    }
    std::swap(adjuster->shortest, adjuster->longest);
    return Fix{"Exchange the two", SetAdjuster{index, adjuster}};
}

template <class Number>
std::optional<Fix> exchangedTarget(const Car& car, Number WantedWindow::*one, Number WantedWindow::*other) {
    std::optional<WantedWindow> wanted = car.wanted;
    if (!wanted) {
        return std::nullopt;
    }
    std::swap((*wanted).*one, (*wanted).*other);
    return Fix{"Exchange the two", SetWanted{wanted}};
}

}  // namespace

std::optional<Fix> sureFix(const Car& car, const Doubt& doubt) {
    switch (doubt.id.field) {
        case Field::linkLength:
            return clearedLength(car, doubt.id);
        case Field::adjusterShortest:
            return exchangedLimits(car, doubt.id.link);
        case Field::wantedIcNear:
            return exchangedTarget(car, &WantedWindow::icNear, &WantedWindow::icFar);
        case Field::wantedLow:
            return exchangedTarget(car, &WantedWindow::antiSquatLow, &WantedWindow::antiSquatHigh);
        default:
            return std::nullopt;
    }
}

}  // namespace bolthole
