#include "widgets/state/view_plane.h"

#include <cmath>

namespace bolthole {

PlaneAxes axesOf(ViewPlane plane) {
    switch (plane) {
        case ViewPlane::side:
            return {.across = 0, .up = 2, .depth = 1, .acrossSense = 1};
        case ViewPlane::rear:
            return {.across = 1, .up = 2, .depth = 0, .acrossSense = -1};
        case ViewPlane::top:
            break;
    }
    return {.across = 0, .up = 1, .depth = 2, .acrossSense = 1};
}

QPointF inPlane(ViewPlane plane, const Eigen::Vector3d& point) {
    const PlaneAxes axes = axesOf(plane);
    return {axes.acrossSense * point[axes.across], point[axes.up]};
}

Eigen::Vector3d wayInCar(ViewPlane plane, QPointF way) {
    return withPlane(plane, way, Eigen::Vector3d::Zero());
}

Eigen::Vector3d withPlane(ViewPlane plane, QPointF shown, Eigen::Vector3d point) {
    const PlaneAxes axes = axesOf(plane);
    point[axes.across] = axes.acrossSense * shown.x();
    point[axes.up] = shown.y();
    return point;
}

// The two shown coordinates depend linearly on the two measured ones in the plane, through the rotation's
// 2 x 2 block there; what the third contributes is already in the present place.
Eigen::Vector3d measuredFromDrawn(ViewPlane plane, const AxlePose& pose, double rearTireRadius, QPointF drawn,
                                  const Eigen::Vector3d& measured) {
    constexpr double kTurnedAway =
        1e-3;  // determinant of the block: the cosine of how far the axle is turned
    const PlaneAxes axes = axesOf(plane);
    const Eigen::Matrix3d rotation = pose.rotation();
    const Eigen::Vector3d now = pose.carry(measured - Eigen::Vector3d(0, 0, rearTireRadius));
    const Eigen::Vector3d way = withPlane(plane, drawn, now) - now;
    const double a = rotation(axes.across, axes.across);
    const double b = rotation(axes.across, axes.up);
    const double c = rotation(axes.up, axes.across);
    const double d = rotation(axes.up, axes.up);
    const double determinant = a * d - b * c;
    if (std::abs(determinant) < kTurnedAway) {
        return measured;
    }
    Eigen::Vector3d back = measured;
    back[axes.across] += (d * way[axes.across] - b * way[axes.up]) / determinant;
    back[axes.up] += (a * way[axes.up] - c * way[axes.across]) / determinant;
    return back;
}

}  // namespace bolthole
