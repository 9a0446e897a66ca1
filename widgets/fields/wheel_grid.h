// Fields of numbers that come in fours, one a wheel.
#pragma once

#include <QWidget>

#include "geometry/car/fields.h"
#include "widgets/fields/sheet_hub.h"
#include "widgets/kit/sheet_parts.h"

class QGridLayout;

namespace bolthole {

/// Four numbers, one a wheel, laid out as the car stands: left and right, front above rear.
class WheelGrid : public QWidget {
    Q_OBJECT
  public:
    WheelGrid(SheetHub& hub, const QString& title, const WheelFields& wheels, QWidget* parent);

    /// Brings the unit up to date; `remark` stands under the four, where it is not empty.
    void refresh(const QString& remark);

  private:
    void addWheels(QGridLayout* grid, const WheelFields& wheels);

    SheetHub& hub_;
    QString title_;
    Quantity quantity_;
    ToneLabel* heading_;
    ToneLabel* remark_;
};

}  // namespace bolthole
