#include "geometry/kinematics/linkage.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

namespace bolthole {

namespace {

bool isMirrorOf(const Constraint& one, const Constraint& other) {
    const auto samePlace = [](const Eigen::Vector3d& a, const Eigen::Vector3d& b) {
        return (a - b).lpNorm<Eigen::Infinity>() <= kSamePoint;
    };
    return one.kind == other.kind && samePlace(one.onAxle, mirrored(other.onAxle)) &&
           samePlace(one.onChassis, mirrored(other.onChassis)) &&
           std::abs(one.length - other.length) <= kSamePoint;
}

}  // namespace

bool Linkage::isMirrorSymmetric() const {
    return std::ranges::all_of(constraints, [this](const Constraint& one) {
        return std::ranges::any_of(constraints,
                                   [&](const Constraint& other) { return isMirrorOf(one, other); });
    });
}

Linkage buildLinkage(const Car& car) {
    Linkage linkage;
    buildLinkage(car, linkage);
    return linkage;
}

void buildLinkage(const Car& car, Linkage& linkage) {
    linkage.constraints.clear();
    linkage.measuredHeight = car.rearTireRadius;
    const Eigen::Vector3d center(0, 0, car.rearTireRadius);
    for (std::size_t index = 0; index < car.links.size(); ++index) {
        const Link& link = car.links[index];
        Constraint constraint{.kind = link.kind,
                              .link = static_cast<int>(index),
                              .side = link.side,
                              .onAxle = link.axle.inUse().at - center,
                              .onChassis = link.chassis.inUse().at,
                              .length = link.kind == LinkKind::rod ? builtLength(link) : 0.0};
        if (link.side != Side::both) {
            linkage.constraints.push_back(constraint);
            continue;
        }
        constraint.side = Side::left;
        linkage.constraints.push_back(constraint);
        constraint.side = Side::right;
        constraint.onAxle = mirrored(constraint.onAxle);
        constraint.onChassis = mirrored(constraint.onChassis);
        linkage.constraints.push_back(constraint);
    }
}

void AxleTurn::turnTo(double roll, double pitch, double yaw) {
    const double sinPitch = std::sin(pitch);
    const double cosPitch = std::cos(pitch);
    const double sinYaw = std::sin(yaw);
    const double cosYaw = std::cos(yaw);
    const double sinRoll = std::sin(roll);
    const double cosRoll = std::cos(roll);
    const Eigen::Vector3d left(-sinYaw, cosYaw, 0.0);                          // Rz y
    const Eigen::Vector3d up(cosYaw * sinPitch, sinYaw * sinPitch, cosPitch);  // Rz Ry z
    pitchAxis = left;
    rotation.col(0) = Eigen::Vector3d(cosYaw * cosPitch, sinYaw * cosPitch, -sinPitch);
    rotation.col(1) = cosRoll * left + sinRoll * up;
    rotation.col(2) = cosRoll * up - sinRoll * left;
}

Eigen::Matrix3d AxlePose::rotation() const {
    AxleTurn turn;
    turn.turnTo(roll, pitch, yaw);
    return turn.rotation;
}

Eigen::Vector3d AxlePose::carry(const Eigen::Vector3d& fromCenter) const {
    return Eigen::Vector3d(x, y, z) + rotation() * fromCenter;
}

}  // namespace bolthole
