// The side view on the change sheet: to scale, before dashed, after solid, holes named.
#pragma once

#include <QPainter>
#include <QRectF>
#include <vector>

#include "geometry/compare/comparison.h"
#include "widgets/papers/kit/paper_marks.h"

namespace bolthole {

/// What the side view calls the kit's types and pens.
namespace sheet_type = kit_type;
[[nodiscard]] inline QPen printPen(double width) {
    return kitPen(width);
}

/// What came of a side view, for tests: no two labels overlap.
struct SheetSide {
    double scale = 1;  ///< 1 : scale
    std::vector<QRectF> labels;
};

/// Draws both cars at ride into `area`, mm, at the largest round scale that fits; what stands alike is drawn
/// once. A car that can't be assembled is drawn as measured. Holes whose names find no free place stay
/// unnamed, and so do those of a link seen end on (a track bar) where its bolts stay.
SheetSide drawSheetSide(QPainter& painter, const QRectF& area, const PrintFonts& fonts,
                        const Comparison& comparison);

}  // namespace bolthole
