// The setup card: what a car is set to and what that gives, on one page, to be handed to a friend.
#pragma once

#include <QDate>
#include <QPageLayout>

#include "geometry/car/car.h"
#include "geometry/units/text.h"
#include "widgets/papers/kit/printed_sheets.h"

namespace bolthole {

/// One upright page. The car must have passed findFaults().
class SetupCard : public PrintedSheets {
  public:
    SetupCard(const Car& car, NumberStyle style, QDate date, const QPageLayout& page);
};

}  // namespace bolthole
