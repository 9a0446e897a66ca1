// The measuring sheet: what there is to measure on this very car, with room to write every number twice. One
// layout for PDF, paper and preview.
#pragma once

#include <QPageLayout>

#include "geometry/car/car.h"
#include "geometry/units/text.h"
#include "widgets/papers/kit/printed_sheets.h"

namespace bolthole {

/// Lays the sheets out for a page: one an area, more where its points and numbers need it, each with the
/// area's picture.
class MeasuringSheet : public PrintedSheets {
  public:
    /// The car must have passed findFaults(). `style`: units to measure in.
    MeasuringSheet(const Car& car, NumberStyle style, const QPageLayout& page);
};

}  // namespace bolthole
