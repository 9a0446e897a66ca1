#include "geometry/kinematics/side_centers.h"

#include <Eigen/LU>
#include <algorithm>
#include <cmath>

#include "geometry/units/say.h"

namespace bolthole {

namespace {

constexpr double kDependent = 1e-12;  // of the determinant against the squared trace

// Two unknowns a unit of bump: how fast the axle moves forward and how fast it pitches. Each equation of a
// link is one row, as in geometry/kinematics/axle_solver.cpp seen from the side.
class SideView {
  public:
    explicit SideView(const AxlePose& pose) : pose_(pose) {}

    void add(const Constraint& link) {
        const Eigen::Vector3d end = pose_.carry(link.onAxle);
        const Eigen::Vector3d arm = end - Eigen::Vector3d(pose_.x, pose_.y, pose_.z);
        if (link.kind == LinkKind::rod) {
            const Eigen::Vector3d along = (end - link.onChassis).normalized();
            addRow(arm, along.x(), along.z());
        }
        if (link.kind == LinkKind::pivot) {
            addRow(arm, 1, 0);
        }
        if (link.kind == LinkKind::pivot || link.kind == LinkKind::slider) {
            addRow(arm, 0, 1);
        }
    }

    [[nodiscard]] SideCenter solve(const GroundLine& ground) const {
        SideCenter center;
        const double trace = normal_.trace();
        if (rows_ < 2 || normal_.determinant() <= kDependent * trace * trace) {
            center.state = SideCenterState::tooFew;
            return center;
        }
        const Eigen::Vector2d rates = normal_.inverse() * moment_;
        center.state = SideCenterState::parallel;
        if (std::abs(rates[1]) < kSlowestSwing) {
            return center;
        }
        center.state = SideCenterState::there;
        center.carX = pose_.x + 1.0 / rates[1];
        center.carZ = pose_.z - rates[0] / rates[1];
        center.ahead = ground.ahead(center.carX, center.carZ);
        center.above = ground.above(center.carX, center.carZ);
        return center;
    }

  private:
    // The end moves at (dx + w Z, 1 - w X); along (alongX, alongZ) it must not.
    void addRow(const Eigen::Vector3d& arm, double alongX, double alongZ) {
        const Eigen::Vector2d row(alongX, alongX * arm.z() - alongZ * arm.x());
        normal_ += row * row.transpose();
        moment_ -= alongZ * row;
        ++rows_;
    }

    const AxlePose& pose_;
    Eigen::Matrix2d normal_ = Eigen::Matrix2d::Zero();
    Eigen::Vector2d moment_ = Eigen::Vector2d::Zero();
    int rows_ = 0;
};

bool countsFromTheSide(const Constraint& link, const Car& car) {
    return link.kind != LinkKind::guide &&
           roleOf(car.links[static_cast<std::size_t>(link.link)], car.rearTireRadius) != Role::crosswise;
}

// Whether another one stands at its mirror image.
bool hasMirrorImage(const Constraint& link, const Linkage& linkage) {
    const auto near = [](const Eigen::Vector3d& a, const Eigen::Vector3d& b) {
        return (a - mirrored(b)).lpNorm<Eigen::Infinity>() <= kSamePoint;
    };
    return std::ranges::any_of(linkage.constraints, [&](const Constraint& other) {
        return other.kind == link.kind && near(link.onAxle, other.onAxle) &&
               near(link.onChassis, other.onChassis) && std::abs(link.length - other.length) <= kSamePoint;
    });
}

SideCenter axleCenter(const Station& station) {
    SideCenter center;
    center.carX = station.icCarX;
    center.carZ = station.icCarZ;
    center.ahead = station[Figure::icX];
    center.above = station[Figure::icZ];
    center.state = std::isnan(center.ahead) ? SideCenterState::parallel : SideCenterState::there;
    return center;
}

}  // namespace

SideCenters sideCenters(const Car& car, const Station& station) {
    SideCenters centers;
    if (!station.usable) {
        return centers;
    }
    const Linkage linkage = buildLinkage(car);
    SideView left(station.pose);
    SideView right(station.pose);
    for (const Constraint& link : linkage.constraints) {
        if (!countsFromTheSide(link, car)) {
            continue;
        }
        if (link.side != Side::right) {
            left.add(link);
        }
        if (link.side != Side::left) {
            right.add(link);
        }
        centers.apart = centers.apart || (link.side != Side::center && !hasMirrorImage(link, linkage));
    }
    centers.left = left.solve(station.ground);
    centers.right = right.solve(station.ground);
    centers.axle = axleCenter(station);
    return centers;
}

std::string describe(SideCenterState state) {
    switch (state) {
        case SideCenterState::parallel:
            return say("its links are parallel: infinitely far");
        case SideCenterState::tooFew:
            return say("too few of its links count in side view");
        case SideCenterState::notSolved:
            return say("the car can't be computed at ride");
        case SideCenterState::there:
            break;
    }
    return "";
}

}  // namespace bolthole
