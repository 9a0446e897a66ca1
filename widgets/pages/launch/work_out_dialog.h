// Works a number out of a few readings and offers it with its plus or minus.
#pragma once

#include <QDialog>
#include <functional>
#include <optional>
#include <vector>

#include "geometry/dynamics/worked_out.h"
#include "geometry/units/text.h"
#include "geometry/units/units.h"

class QPushButton;

namespace bolthole {

class NumberField;
class ToneLabel;

/// What is asked for, and what is made of it.
struct WorkOut {
    struct Reading {
        QString label;
        Quantity quantity;
    };
    QString title;
    QString procedure;  ///< how it is measured, with what to mind
    QString result;     ///< "Rear tire rate"
    Quantity quantity = Quantity::rate;
    std::vector<Reading> readings;
    /// Of the readings, in their order, SI; nothing where they give none.
    std::function<std::optional<WorkedOut>(const std::vector<double>&)> compute;
};

/// Can be accepted once all readings are there and give a number.
class WorkOutDialog : public QDialog {
    Q_OBJECT
  public:
    WorkOutDialog(WorkOut task, NumberStyle style, QWidget* parent = nullptr);

    /// What was worked out; nothing while a reading is missing.
    [[nodiscard]] const std::optional<WorkedOut>& worked() const { return worked_; }

  private:
    void refresh();

    WorkOut task_;
    NumberStyle style_;
    std::vector<NumberField*> fields_;
    std::optional<WorkedOut> worked_;
    ToneLabel* said_;
    QPushButton* take_;
};

}  // namespace bolthole
