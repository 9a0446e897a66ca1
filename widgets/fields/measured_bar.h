// How much of a car was measured, and the way to what was not.
#pragma once

#include <QWidget>
#include <optional>

#include "geometry/car/car.h"
#include "geometry/car/field_id.h"

class QAbstractButton;

namespace bolthole {

class ToneLabel;

/// A line above the car sheet: "23 of 41 measured" and a button to the next number that was not. Hidden while
/// all is measured.
class MeasuredBar : public QWidget {
    Q_OBJECT
  public:
    explicit MeasuredBar(QWidget* parent = nullptr);

    /// Counts the numbers of `car`, which must outlive the bar or be shown anew.
    void showCar(const Car& car);
    /// Asks for the starting number after `from`, or after the one asked for last; from the last on to the
    /// first. Nothing where there is none.
    void goOn(const std::optional<FieldId>& from);

  signals:
    void enteringRequested();                ///< a filled measuring sheet is to be typed in
    void nextRequested();                    ///< the button: the owner knows which field is entered
    void fieldRequested(const FieldId& id);  ///< its field is to be entered

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    const Car* car_ = nullptr;
    std::optional<FieldId> last_;
    double share_ = 1;  // of the numbers that were measured
    ToneLabel* words_;
    QAbstractButton* next_;
};

}  // namespace bolthole
