// "What if": other tire radii, another ride height.
#pragma once

#include <QDialog>
#include <array>
#include <memory>
#include <optional>

#include "geometry/car/field_id.h"
#include "geometry/edits/ride_change.h"
#include "geometry/kinematics/trace.h"
#include "geometry/units/text.h"

class QPushButton;

namespace bolthole {

class NumberField;
class ToneLabel;

/// Asks for a RideChange and shows beforehand what it does to the figures at ride, or why it can't be. First
/// a comparison: to keep it beside the present setup is its default, to change the car the second button.
class RideChangeDialog : public QDialog {
    Q_OBJECT
  public:
    /// `problem`: why the car can't be computed as it stands; empty: it can, and has passed findFaults().
    RideChangeDialog(const Car& car, NumberStyle style, const QString& problem, QWidget* parent);

    /// What was asked for, as it stands typed; nothing where a number can't be read or is not allowed.
    [[nodiscard]] std::optional<RideChange> change() const;
    /// What is to become of it once the dialog was accepted: kept as a setup beside the present one, or
    /// taken.
    enum class Answer { keep, changeTheCar };
    [[nodiscard]] Answer answer() const { return answer_; }

  signals:
    /// The car as asked for, to be drawn over the present one; null: there is none to draw.
    void previewed(const std::shared_ptr<const bolthole::Car>& car);
    /// How a tire's radius is measured is asked for in its field.
    void howToRequested(const bolthole::FieldId& id);

  private:
    NumberField* addField(const QString& label, const QString& name, const QString& howTo, double value);
    void refresh();
    void showRefusal(const QString& reason);
    void showOutcome(const Car& after);
    void addButtons();

    Car car_;
    NumberStyle style_;
    QString problem_;
    Trace before_;
    Trace after_;
    std::array<NumberField*, 4> fields_{};  // rear and front radius, rear and front lowered by
    ToneLabel* outcome_;
    ToneLabel* refusal_;
    QPushButton* keep_ = nullptr;
    QPushButton* take_ = nullptr;
    Answer answer_ = Answer::keep;
};

}  // namespace bolthole
