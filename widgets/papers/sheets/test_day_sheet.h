// The test-day sheet: the setup on top, a row a pass to fill in by pen, in the order the passes are entered.
// One page.
#pragma once

#include <QPageLayout>

#include "geometry/car/car.h"
#include "geometry/units/text.h"
#include "widgets/papers/kit/printed_sheets.h"

namespace bolthole {

/// Rows to write passes in.
inline constexpr int kTestDayPasses = 8;

/// One landscape page. The car must have passed findFaults().
class TestDaySheet : public PrintedSheets {
  public:
    TestDaySheet(const Car& car, NumberStyle style, const QPageLayout& page);
};

}  // namespace bolthole
