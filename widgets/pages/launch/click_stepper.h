// One adjuster of a shock: its click with a button either side, and what it was in the baseline.
#pragma once

#include <QWidget>
#include <optional>

#include "widgets/fields/sheet_hub.h"
#include "widgets/kit/sheet_parts.h"

namespace bolthole {

/// The clicks a table has forces for; nothing where it has none.
struct ClickRange {
    int least = 0;
    int most = 0;
};
[[nodiscard]] std::optional<ClickRange> clickRange(const DampingWay& way);

/// What one way of a car's shocks is set to and can be set to, by the number of its click; null where the car
/// has no such table.
[[nodiscard]] const DampingWay* wayOf(const Car& car, const FieldId& click);

/// A row with − and + around a field. A press is one edit; at the table's ends a button is off.
class ClickStepper : public QWidget {
    Q_OBJECT
  public:
    ClickStepper(SheetHub& hub, const FieldId& click, const QString& label, QWidget* parent = nullptr);

    /// Brings buttons and "was 0" up to date; `baseline` may be null.
    void refresh(const Car& car, const Car* baseline);
    [[nodiscard]] QAbstractButton& less() const { return *less_; }
    [[nodiscard]] QAbstractButton& more() const { return *more_; }
    /// "was 0", empty where it is what it was or there is no before.
    [[nodiscard]] QString was() const { return was_->text(); }

  protected:
    void paintEvent(QPaintEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void step(int by);
    [[nodiscard]] QAbstractButton* stepButton(const QString& sign, const QString& name, int by);

    SheetHub& hub_;
    FieldId click_;
    NumberField* field_;
    ToneLabel* was_;
    QAbstractButton* less_;
    QAbstractButton* more_;
};

}  // namespace bolthole
