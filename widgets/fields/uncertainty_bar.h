// The uncertainty of one number, to be changed: its ± and what it was taken with.
#pragma once

#include <QWidget>
#include <optional>

#include "geometry/edits/edit.h"
#include "widgets/kit/number_field.h"

class QAbstractButton;
class QHBoxLayout;

namespace bolthole {

class ToneLabel;

/// A line for one number of the car: its name, its own ± (empty: its tool's), and three buttons.
class UncertaintyBar : public QWidget {
    Q_OBJECT
  public:
    explicit UncertaintyBar(QWidget* parent = nullptr);

    /// Shows a number of `car`, which must outlive the next call; nothing: hides what the line is for.
    void showNumber(const Car& car, const std::optional<FieldId>& id, NumberStyle style);
    [[nodiscard]] const std::optional<FieldId>& number() const { return id_; }
    /// Enters the field of its ±.
    void enter();
    /// What the buttons do.
    void takeCalipers();
    void takeTool();

  signals:
    void edited(const Edit& edit);
    void numberRequested(const FieldId& id);

  private:
    void makeField();
    [[nodiscard]] FieldId uncertaintyId() const;

    const Car* car_ = nullptr;
    std::optional<FieldId> id_;
    QHBoxLayout* line_;
    ToneLabel* name_;
    NumberField* field_ = nullptr;
    ToneLabel* unit_;
    QAbstractButton* calipers_;
    QAbstractButton* tool_;
    QAbstractButton* go_;
    ToneLabel* note_;
};

}  // namespace bolthole
