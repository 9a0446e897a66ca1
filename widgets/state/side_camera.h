// From a plane of the car to the picture (x right, y down, logical pixels), to scale. From the side: x
// forward, z up, m, front of the car to the right; the other planes' coordinates stand in view_plane.h.
#pragma once

#include <QPointF>
#include <QRectF>
#include <algorithm>

namespace bolthole {

/// A similarity between car frame and picture; one scale for both directions, always.
struct SideCamera {
    double scale = 400;  ///< pixels a metre
    QPointF origin;      ///< where the car frame's origin stands in the picture

    [[nodiscard]] QPointF toPicture(double x, double z) const {
        return {origin.x() + x * scale, origin.y() - z * scale};
    }
    [[nodiscard]] QPointF toPicture(QPointF car) const { return toPicture(car.x(), car.y()); }
    /// Car frame point (x, z) under a picture point.
    [[nodiscard]] QPointF toCar(QPointF picture) const {
        return {(picture.x() - origin.x()) / scale, (origin.y() - picture.y()) / scale};
    }
    /// Shows `box` (car frame, y is z, any orientation) in `picture`, as large as fits, centered across and
    /// standing on the picture's bottom edge: what is left over is sky. Both must not be empty.
    void fit(QRectF box, QRectF picture) {
        box = box.normalized();
        scale = std::min(picture.width() / box.width(), picture.height() / box.height());
        origin = {picture.center().x() - box.center().x() * scale, picture.bottom() + box.top() * scale};
    }
    /// Multiplies the scale, keeping the car under `fixed` where it is. Clamped to 20..20,000 pixels a metre.
    void zoom(double factor, QPointF fixed) {
        const QPointF held = toCar(fixed);
        scale = std::clamp(scale * factor, 20.0, 20'000.0);
        origin += fixed - toPicture(held);
    }
};

}  // namespace bolthole
