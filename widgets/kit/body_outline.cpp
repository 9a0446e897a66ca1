#include "widgets/kit/body_outline.h"

namespace bolthole {

namespace {

/// Makes a shape of points whose x is in m behind the rear axle, in wheelbases between the axles, or in m
/// ahead of the front one, and whose y is above the sill, the waist or the roof.
class Shaper {
  public:
    Shaper(double wheelbase, double rearRadius)
        : wheelbase_(wheelbase), sill_(0.62 * rearRadius), waist_(2.5 * rearRadius) {}

    [[nodiscard]] QPointF behind(double x, double y) const { return {-x, y}; }
    [[nodiscard]] QPointF between(double share, double y) const { return {share * wheelbase_, y}; }
    [[nodiscard]] QPointF ahead(double x, double y) const { return {wheelbase_ + x, y}; }
    [[nodiscard]] double sill(double above) const { return sill_ + above; }
    [[nodiscard]] double waist(double above) const { return waist_ + above; }
    [[nodiscard]] static double roof(double above) { return 1.35 + above; }

    /// Nose, hood and sill are much the same on all of them.
    [[nodiscard]] QPolygonF closed(QPolygonF fromTailToHood, double nose, double tail) const {
        return fromTailToHood << ahead(nose - 0.08, waist(-0.1)) << ahead(nose, sill(0.16))
                              << ahead(nose - 0.08, sill(0)) << behind(tail - 0.08, sill(0));
    }

  private:
    double wheelbase_;
    double sill_;
    double waist_;
};

BodyShape plain(const Shaper& at) {
    return {at.closed({at.behind(0.75, at.sill(0.1)), at.behind(0.72, at.waist(0)),
                       at.behind(0.1, at.waist(0.03)), at.between(0.22, Shaper::roof(-0.02)),
                       at.between(0.5, Shaper::roof(-0.02)), at.between(0.7, at.waist(0.02))},
                      0.75, 0.75),
            {}};
}

BodyShape sedan(const Shaper& at) {
    return {at.closed({at.behind(0.98, at.sill(0.14)), at.behind(1.0, at.waist(-0.06)),
                       at.behind(0.94, at.waist(0.02)), at.behind(0.28, at.waist(0.06)),
                       at.between(0.08, Shaper::roof(-0.04)), at.between(0.16, Shaper::roof(0)),
                       at.between(0.48, Shaper::roof(0)), at.between(0.54, Shaper::roof(-0.05)),
                       at.between(0.73, at.waist(0.03))},
                      0.8, 0.98),
            {at.behind(0.12, at.waist(0.06)), at.between(0.11, Shaper::roof(-0.1)),
             at.between(0.18, Shaper::roof(-0.07)), at.between(0.5, Shaper::roof(-0.08)),
             at.between(0.67, at.waist(0.06))}};
}

BodyShape coupe(const Shaper& at) {
    return {at.closed({at.behind(0.85, at.sill(0.14)), at.behind(0.9, at.waist(0.02)),
                       at.behind(0.8, at.waist(0.08)), at.between(0.04, Shaper::roof(-0.22)),
                       at.between(0.24, Shaper::roof(-0.08)), at.between(0.42, Shaper::roof(-0.06)),
                       at.between(0.52, Shaper::roof(-0.12)), at.between(0.72, at.waist(0.01))},
                      0.8, 0.85),
            {at.between(0.04, at.waist(0.06)), at.between(0.13, Shaper::roof(-0.22)),
             at.between(0.27, Shaper::roof(-0.15)), at.between(0.46, Shaper::roof(-0.15)),
             at.between(0.64, at.waist(0.05))}};
}

BodyShape wagon(const Shaper& at) {
    return {at.closed({at.behind(1.02, at.sill(0.14)), at.behind(1.06, at.waist(0)),
                       at.behind(0.9, Shaper::roof(-0.05)), at.behind(0.8, Shaper::roof(0.02)),
                       at.between(0.46, Shaper::roof(0.02)), at.between(0.53, Shaper::roof(-0.04)),
                       at.between(0.73, at.waist(0.03))},
                      0.8, 1.02),
            {at.behind(0.9, at.waist(0.08)), at.behind(0.8, Shaper::roof(-0.08)),
             at.between(0.49, Shaper::roof(-0.08)), at.between(0.67, at.waist(0.06))}};
}

BodyShape pickup(const Shaper& at) {
    return {at.closed({at.behind(1.05, at.sill(0.2)), at.behind(1.06, at.waist(0.03)),
                       at.between(0.28, at.waist(0.03)), at.between(0.3, Shaper::roof(0.13)),
                       at.between(0.34, Shaper::roof(0.18)), at.between(0.52, Shaper::roof(0.16)),
                       at.between(0.57, Shaper::roof(0.1)), at.between(0.7, at.waist(0.14)),
                       at.ahead(0.5, at.waist(0.06))},
                      0.75, 1.05),
            {at.between(0.33, at.waist(0.14)), at.between(0.345, Shaper::roof(0.08)),
             at.between(0.53, Shaper::roof(0.07)), at.between(0.65, at.waist(0.15))}};
}

BodyShape roadster(const Shaper& at) {
    return {at.closed(
                {at.behind(0.72, at.sill(0.12)), at.behind(0.76, at.waist(-0.1)), at.behind(0.5, at.waist(0)),
                 at.between(0.1, at.waist(0.03)), at.between(0.16, at.waist(0.16)),
                 at.between(0.21, at.waist(0.16)), at.between(0.24, at.waist(0)),
                 at.between(0.52, at.waist(0.0)), at.between(0.49, at.waist(0.33)),
                 at.between(0.505, at.waist(0.34)), at.between(0.6, at.waist(0.03))},
                0.78, 0.72),
            {}};
}

}  // namespace

BodyShape bodyShape(std::optional<Body> body, double wheelbase, double rearRadius) {
    const Shaper at(wheelbase, rearRadius);
    if (!body) {
        return plain(at);
    }
    switch (*body) {
        case Body::sedan:
            return sedan(at);
        case Body::coupe:
            return coupe(at);
        case Body::wagon:
            return wagon(at);
        case Body::pickup:
            return pickup(at);
        case Body::roadster:
            break;
    }
    return roadster(at);
}

QRectF roomOf(const BodyShape& shape) {
    const QRectF box = shape.outline.boundingRect();
    return {QPointF(box.left(), 0), QPointF(box.right(), box.bottom())};
}

}  // namespace bolthole
