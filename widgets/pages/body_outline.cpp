#include "widgets/pages/body_outline.h"

namespace bolthole {

QPolygonF bodyOutline(double wheelbase, double rearRadius) {
    const double floor = 0.62 * rearRadius;
    const double waist = 2.5 * rearRadius;
    return {QPointF(-kBodyOverhang, floor + 0.1),
            QPointF(-kBodyOverhang + 0.03, waist),
            QPointF(-0.1, waist + 0.03),
            QPointF(0.22 * wheelbase, kBodyRoof - 0.02),
            QPointF(0.5 * wheelbase, kBodyRoof - 0.02),
            QPointF(0.7 * wheelbase, waist + 0.02),
            QPointF(wheelbase + kBodyOverhang - 0.08, waist - 0.1),
            QPointF(wheelbase + kBodyOverhang, floor + 0.1),
            QPointF(wheelbase + kBodyOverhang - 0.1, floor),
            QPointF(-kBodyOverhang + 0.1, floor)};
}

}  // namespace bolthole
