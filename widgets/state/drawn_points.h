// The holes, joints and links of a picture, placed for the travel the axle is drawn at.
#pragma once

#include <QPointF>
#include <QRectF>
#include <QString>
#include <vector>

#include "widgets/state/bench_state.h"
#include "widgets/state/view_plane.h"

namespace bolthole {

/// A hole or joint as drawn. `at`: in the picture's plane, m (see view_plane.h).
struct DrawnPoint {
    PointId id;
    QPointF at;
    bool inUse = false;
    Role role = Role::lower;  ///< of its link; joints have lower and are drawn in metal
    bool mirrored = false;    ///< the right-hand hole of a pair, which has the left one's id
};

/// One side of a link as drawn.
struct DrawnLink {
    int link = 0;
    Role role = Role::lower;
    QPointF axle;           ///< of an arm rigid with the axle: where it leaves the axle's line
    QPointF chassis;        ///< and its front
    bool mirrored = false;  ///< the right-hand one of a pair
    bool farSide = false;   ///< behind the car's middle as seen: drawn faint, without a name
};

/// Everything a picture places. Rebuilt for each picture, storage reused. From the side the right-hand holes
/// of the pairs are left out: they stand behind the left ones.
struct DrawnPoints {
    std::vector<DrawnPoint> points;
    std::vector<DrawnLink> links;
    double closestHoles = 1.0;  ///< smallest distance seen of two holes of one bracket, m

    void rebuild(const BenchState& state, ViewPlane plane = ViewPlane::side);

  private:
    void addHoles(const BenchState& state, ViewPlane plane, int link, Role role);
    void addLink(const BenchState& state, ViewPlane plane, int link, Role role);
};

/// The station the axle is drawn at: the cursor's where the links reach, else the nearest that can be
/// reached; null when nothing was ever solved.
[[nodiscard]] const Station* drawnStation(const BenchState& state);
/// The axle's pose there; as measured when nothing was ever solved.
[[nodiscard]] AxlePose drawnPose(const BenchState& state);

/// Where a point fixed to the axle, given as measured (m, car frame), stands in `pose`, in the plane.
[[nodiscard]] QPointF carriedInto(ViewPlane plane, const AxlePose& pose, double rearTireRadius,
                                  const Eigen::Vector3d& measured);

/// "lower, axle hole 'top'" or "rear U-joint"; for tool tips, the status line and screen readers.
[[nodiscard]] QString pointName(const Car& car, const PointId& id);
/// Where it was measured: "1/2 in forward, 9 3/4 in up, 21 in out".
[[nodiscard]] QString pointPlace(const Car& car, const PointId& id, NumberStyle style);
/// The measured point, m, car frame; nothing if the id names no point.
[[nodiscard]] std::optional<Eigen::Vector3d> pointAt(const Car& car, const PointId& id);

}  // namespace bolthole
