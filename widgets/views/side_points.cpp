#include "widgets/views/side_points.h"

#include <algorithm>
#include <cmath>

#include "geometry/weights/entered_figures.h"

namespace bolthole {

namespace {

constexpr double kNearIc = 2.2;  // m ahead of the axle: still in the first picture, and so is a CG
constexpr double kFarIc = 8.0;   // m: beyond, "show all" leaves it to the edge marker

void include(QRectF& box, double x, double z) {
    if (std::isfinite(x) && std::isfinite(z)) {
        box.setLeft(std::min(box.left(), x));
        box.setRight(std::max(box.right(), x));
        box.setTop(std::min(box.top(), z));
        box.setBottom(std::max(box.bottom(), z));
    }
}

QRectF tireAndLinks(const BenchState& state) {
    const double radius = state.car.rearTireRadius;
    QRectF box(QPointF(-radius, -0.06), QPointF(radius, 2 * radius));
    for (const Link& link : state.car.links) {
        for (const Bracket* bracket : {&link.axle, &link.chassis}) {
            for (const Hole& hole : bracket->holes) {
                include(box, hole.at.x(), hole.at.z());
            }
        }
    }
    return box;
}

}  // namespace

QPointF carriedToPicture(const BenchState& state, const Eigen::Vector3d& measured) {
    return carriedInto(ViewPlane::side, drawnPose(state), state.car.rearTireRadius, measured);
}

QRectF linksBox(const BenchState& state) {
    QRectF box = tireAndLinks(state);
    const Station& ride = state.trace.ride;
    if (ride.usable && ride.icCarX > 0 && ride.icCarX < kNearIc && std::abs(ride.icCarZ) < 1.0) {
        include(box, ride.icCarX + 0.15, ride.icCarZ);
    } else {
        include(box, std::max(box.right(), 1.2), 0);
    }
    const CarBalance balance = balanceOf(state.car);
    if (const double ahead = balance.cgX(state.car.wheelbase); ahead < kNearIc) {
        include(box, ahead, balance.height);
    }
    return box;
}

QRectF wholeBox(const BenchState& state) {
    QRectF box = tireAndLinks(state);
    include(box, state.car.wheelbase + state.car.frontTireRadius, 2 * state.car.frontTireRadius);
    include(box, 0, balanceOf(state.car).height);
    const Station& ride = state.trace.ride;
    if (ride.usable && std::abs(ride.icCarX) < kFarIc && std::abs(ride.icCarZ) < kFarIc / 2) {
        include(box, ride.icCarX, ride.icCarZ);
    }
    return box;
}

}  // namespace bolthole
