#include "geometry/car/car.h"

#include <cmath>

namespace bolthole {

bool KeptSetup::operator==(const KeptSetup& other) const {
    return id == other.id && name == other.name && date == other.date && note == other.note &&
           (car == other.car || *car == *other.car);
}

Car::Car() = default;
Car::Car(const Car&) = default;
Car::Car(Car&&) noexcept = default;
Car& Car::operator=(const Car&) = default;
Car& Car::operator=(Car&&) noexcept = default;
Car::~Car() = default;
bool Car::operator==(const Car&) const = default;

Car withoutKept(const Car& car) {
    Car alone = car;
    alone.kept.clear();
    alone.passes.clear();
    alone.baseline.reset();
    alone.stateName.clear();
    alone.stateNote.clear();
    return alone;
}

double holeDistance(const Link& link) {
    return (link.axle.inUse().at - link.chassis.inUse().at).norm();
}

double builtLength(const Link& link) {
    return link.length.value_or(holeDistance(link));
}

Role roleOf(const Link& link, double axleCenterHeight) {
    if (link.role) {
        return *link.role;
    }
    const Eigen::Vector3d& axle = link.axle.inUse().at;
    const double foreAft = std::abs(axle.x() - link.chassis.inUse().at.x());
    const bool crosswiseRod = link.kind == LinkKind::rod && foreAft < holeDistance(link) / 3.0;
    if (crosswiseRod || link.kind == LinkKind::guide) {
        return Role::crosswise;
    }
    return axle.z() > axleCenterHeight ? Role::upper : Role::lower;
}

}  // namespace bolthole
