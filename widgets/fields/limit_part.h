// What a rod can be set to and how far its ends may lean, in the car sheet: folded away until asked for.
#pragma once

#include <QWidget>

#include "widgets/fields/sheet_hub.h"
#include "widgets/kit/sheet_parts.h"

namespace bolthole {

/// The limits of one rod: rod-end angle; with an adjuster its shortest and longest length, the thread held
/// and the least that must be. All may stay empty. Folded, the button tells how many limits are entered.
class LimitPart : public QWidget {
    Q_OBJECT
  public:
    LimitPart(SheetHub& hub, int link, QWidget* parent = nullptr);

    /// Brings everything but the hub's numbers up to date.
    void refresh();
    /// Shows or hides the fields. The hub remembers it while the sheet is built anew.
    void setUnfolded(bool unfolded);

  private:
    NumberRow* addRow(Field field, const QString& absent);
    void refreshSteps();
    [[nodiscard]] const Link& link() const;
    [[nodiscard]] int entered() const;
    [[nodiscard]] QString measuredWords() const;

    SheetHub& hub_;
    int link_;
    QAbstractButton* button_;
    QWidget* box_;
    NumberField* shortest_ = nullptr;
    NumberField* longest_ = nullptr;
    QWidget* adjuster_;  // what only a rod with an adjuster has
    ToneLabel* measured_;
};

}  // namespace bolthole
