// The three directions the car is seen from: from the side, from behind, from above.
#pragma once

#include <QPointF>

#include "geometry/kinematics/linkage.h"

namespace bolthole {

/// The plane a picture shows. Its coordinates are (across, up) as seen, m: side (x, z), front of the car to
/// the right; rear (-y, z), the car's left on the left; top (x, y), front to the right, the car's left up.
enum class ViewPlane { side, rear, top };

/// Which of the car's axes (0 x, 1 y, 2 z) a plane shows, and which it looks along.
struct PlaneAxes {
    int across = 0;
    int up = 2;
    int depth = 1;
    double acrossSense = 1;  ///< -1: the axis points to the left in the picture
};
[[nodiscard]] PlaneAxes axesOf(ViewPlane plane);

/// A point of the car (m, car frame) as the plane shows it.
[[nodiscard]] QPointF inPlane(ViewPlane plane, const Eigen::Vector3d& point);
/// A way in the plane as a way in the car: nothing along the line of sight.
[[nodiscard]] Eigen::Vector3d wayInCar(ViewPlane plane, QPointF way);
/// The point with the two coordinates the plane shows replaced; the third stays.
[[nodiscard]] Eigen::Vector3d withPlane(ViewPlane plane, QPointF shown, Eigen::Vector3d point);

/// The measured place (m, car frame) of a point fixed to the axle that `plane` shows at `drawn` while the
/// axle stands at `pose`; its measured coordinate along the line of sight stays that of `measured`. Gives
/// `measured` back where the axle is turned so far that no such place can be told.
[[nodiscard]] Eigen::Vector3d measuredFromDrawn(ViewPlane plane, const AxlePose& pose, double rearTireRadius,
                                                QPointF drawn, const Eigen::Vector3d& measured);

}  // namespace bolthole
