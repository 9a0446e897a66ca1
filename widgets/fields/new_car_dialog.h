// Starting a car: a layout among small pictures, and the few numbers that are known at once.
#pragma once

#include <QDialog>
#include <array>
#include <optional>
#include <utility>
#include <vector>

#include "geometry/car/faults.h"
#include "geometry/car/field_id.h"
#include "geometry/edits/starting_car.h"
#include "geometry/units/text.h"

class QAbstractButton;
class QLineEdit;
class QListWidget;

namespace bolthole {

class CalmCombo;
class NumberField;
class ToneLabel;

/// Asks for what a StartingCar is made of. Up and Down walk through the layouts, Enter or a double click
/// starts the car.
class NewCarDialog : public QDialog {
    Q_OBJECT
  public:
    /// `style`: what lengths are shown and typed in at first.
    explicit NewCarDialog(NumberStyle style, QWidget* parent = nullptr);

    /// What was asked for, as it stands typed; nothing where a number can't be read or is not allowed.
    [[nodiscard]] std::optional<StartingCar> chosen() const;

  signals:
    void howToRequested(const bolthole::FieldId& id);  ///< how to measure it is asked for in its field

  private:
    void buildList();
    [[nodiscard]] QLayout* buildForm();
    [[nodiscard]] NumberField* addField(QLayout* column, const QString& label, const QString& name,
                                        const QString& howTo, double value);
    /// The choice and the row it stands in.
    std::pair<CalmCombo*, QWidget*> addCombo(QLayout* column, const QString& label,
                                             const QStringList& options);
    void chooseUnits(int index);
    void refresh();
    void showDoubts(const std::vector<Warning>& warnings);
    void take();
    // What the form says, as far as its numbers can be read.
    [[nodiscard]] std::optional<StartingCar> typed() const;
    [[nodiscard]] std::vector<Field> typedFields() const;
    void markTyped(const NumberField* field);
    [[nodiscard]] LinkLayout layoutChosen() const;
    [[nodiscard]] SidewaysHold sidewaysChosen() const;

    NumberStyle style_;
    QListWidget* list_;
    QLineEdit* title_ = nullptr;
    std::array<NumberField*, 3> fields_{};  // wheelbase, rear and front tire radius
    std::array<bool, 3> typed_{};           // of each whether it was typed, and so is no starting number
    CalmCombo* units_ = nullptr;
    CalmCombo* sideways_ = nullptr;
    QWidget* sidewaysRow_ = nullptr;  // not seen where the links themselves hold the axle
    ToneLabel* sidewaysWords_ = nullptr;
    ToneLabel* problem_ = nullptr;
    QAbstractButton* start_ = nullptr;
};

}  // namespace bolthole
