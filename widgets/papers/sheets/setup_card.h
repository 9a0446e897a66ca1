// The setup card: what a car is set to and what that gives, on one page, to be handed to a friend.
#pragma once

#include <QDate>
#include <QPageLayout>
#include <memory>

#include "geometry/car/car.h"
#include "geometry/units/text.h"
#include "widgets/papers/printed_sheets.h"

namespace bolthole {

/// One upright page. The car must have passed findFaults().
class SetupCard : public PrintedSheets {
  public:
    SetupCard(const Car& car, NumberStyle style, QDate date, const QPageLayout& page);
    ~SetupCard() override;
    SetupCard(SetupCard&&) noexcept;

    [[nodiscard]] int sheetCount() const override;
    void paintSheet(QPainter& painter, int index) const override;

  private:
    struct Parts;
    std::unique_ptr<Parts> parts_;
};

}  // namespace bolthole
