// The points and links of the side view, placed for the travel the axle is drawn at.
#pragma once

#include <QPointF>
#include <QRectF>
#include <QString>
#include <vector>

#include "widgets/bench_state.h"

namespace bolthole {

/// A hole or joint as drawn. Positions in the car frame, (x, z) in m.
struct DrawnPoint {
    PointId id;
    QPointF at;
    bool inUse = false;
    Role role = Role::lower;  ///< of its link; joints have lower and are drawn in metal
};

/// One side of a link as drawn.
struct DrawnLink {
    int link = 0;
    Role role = Role::lower;
    QPointF axle;
    QPointF chassis;
    bool farSide = false;  ///< the right one of a pair
};

/// Everything the side view places. Rebuilt for each picture, storage reused.
struct SidePoints {
    std::vector<DrawnPoint> points;
    std::vector<DrawnLink> links;
    double closestHoles = 1.0;  ///< smallest distance of two holes of one bracket, m

    void rebuild(const BenchState& state);
};

/// The station the axle is drawn at: the cursor's where the links reach, else the nearest that can be
/// reached; null when nothing was ever solved.
[[nodiscard]] const Station* drawnStation(const BenchState& state);

/// Where a point fixed to the axle, given as measured (m, car frame), stands in the drawn pose; and back: the
/// measured (x, z) of a drawn place for a point whose measured y is `measured.y()`.
[[nodiscard]] QPointF carriedToPicture(const BenchState& state, const Eigen::Vector3d& measured);
[[nodiscard]] Eigen::Vector3d measuredFromDrawn(const AxlePose& pose, double rearTireRadius, QPointF drawn,
                                                const Eigen::Vector3d& measured);

/// Box around rear tire, links and driveline, with the instant center while it is near (car frame, m, y is
/// z).
[[nodiscard]] QRectF linksBox(const BenchState& state);
/// Box around the whole car, CG and the instant center unless it is farther than 8 m.
[[nodiscard]] QRectF wholeBox(const BenchState& state);

/// "lower, axle hole 'top'" or "pinion joint"; for tool tips, the status line and screen readers.
[[nodiscard]] QString pointName(const Car& car, const PointId& id);
/// Where it was measured: "1/2 in forward, 9 3/4 in up, 21 in out".
[[nodiscard]] QString pointPlace(const Car& car, const PointId& id, NumberStyle style);
/// The measured point, m, car frame; nothing if the id names no point.
[[nodiscard]] std::optional<Eigen::Vector3d> pointAt(const Car& car, const PointId& id);

}  // namespace bolthole
