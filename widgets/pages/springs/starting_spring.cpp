#include "widgets/pages/springs/starting_spring.h"

#include <algorithm>
#include <cmath>

#include "geometry/car/starting_numbers.h"
#include "geometry/units/say.h"

namespace bolthole {

namespace {

/// Where a kind's mounts stand. `out` as a share of half the track; heights above the axle's center as a
/// share of the tire radius; `behind` the axle likewise.
struct MountPositions {
    double axleOut;
    double chassisOut;
    double axleUp;
    double chassisUp;
    double behind;
};

MountPositions mountPositionsOf(PartKind kind) {
    switch (kind) {
        case PartKind::spring:
            return {0.60, 0.60, 0.22, 0.95, 0};
        case PartKind::shock:
            return {0.68, 0.55, -0.15, 1.15, 0.35};
        case PartKind::coilOver:
            return {0.62, 0.52, -0.10, 1.10, 0.30};
        case PartKind::bumpStop:
            return {0.52, 0.52, 0.22, 0.55, 0};
        case PartKind::strap:
            return {0.45, 0.45, 0.15, 1.00, 0.10};
    }
    return {};
}

double rounded(double length, Units units) {
    const double unit = units == Units::inch ? kMetresPerInch / 4 : 5 * kMetresPerMillimetre;
    return std::round(length / unit) * unit;
}

std::string freeName(const Car& car, PartKind kind) {
    const std::string plain = say("rear %1", say(nameOf(kind)));
    std::string name = plain;
    const auto taken = [&] {
        return std::ranges::any_of(car.springs,
                                   [&](const SuspensionPart& part) { return part.name == name; });
    };
    for (int number = 2; taken(); ++number) {
        name = say("%1 %2", plain, number);
    }
    return name;
}

}  // namespace

SuspensionPart startingSpring(const Car& car, PartKind kind) {
    const MountPositions mounts = mountPositionsOf(kind);
    const double radius = car.rearTireRadius;
    const double half = car.rearTrack.value_or(0.5 * car.wheelbase) / 2;
    const auto point = [&](double out, double up) {
        return Eigen::Vector3d(rounded(-mounts.behind * radius, car.units), rounded(out * half, car.units),
                               rounded(radius + up * radius, car.units));
    };
    SuspensionPart part;
    part.name = freeName(car, kind);
    part.kind = kind;
    part.chassis.holes = {Hole{-1, "top", point(mounts.chassisOut, mounts.chassisUp)}};
    part.axle.holes = {Hole{-1, "bottom", point(mounts.axleOut, mounts.axleUp)}};
    startFrom(part);
    return part;
}

}  // namespace bolthole
