// The body that the pictures of a car draw from the side: a plain shape of its kind, no car's.
#pragma once

#include <QPolygonF>
#include <QRectF>
#include <optional>

#include "geometry/car/car.h"

namespace bolthole {

/// In the car frame from the side, x forward and y up, m, the car at rest.
struct BodyShape {
    QPolygonF outline;  ///< closed
    QPolygonF window;   ///< closed; empty: none
};

/// Of a car's wheelbase and tires; of no body in particular where none was chosen.
[[nodiscard]] BodyShape bodyShape(std::optional<Body> body, double wheelbase, double rearRadius);

/// What the shape needs of a picture: from its tail to its nose and from the ground to its roof, m.
[[nodiscard]] QRectF roomOf(const BodyShape& shape);

}  // namespace bolthole
