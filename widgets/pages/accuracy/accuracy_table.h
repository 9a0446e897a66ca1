// The table of the page "Accuracy": what to measure again, the number that matters most first.
#pragma once

#include "widgets/kit/read_table.h"
#include "widgets/words/accuracy_reading.h"

namespace bolthole {

/// One row a measured number. Enter or a double click: numberRequested().
class AccuracyTable : public ReadTable {
    Q_OBJECT
  public:
    enum Column { number, value, plusMinus, tool, share, withCalipers, ifExact, columnCount };
    explicit AccuracyTable(QWidget* parent = nullptr);

    /// Shows the rows and selects the first, or the number that is selected now where `keepsNumber`.
    void showRows(const std::vector<AccuracyRow>& rows, bool keepsNumber);
    /// Selects the row of a number and scrolls to it. False: there is none.
    bool selectNumber(const FieldId& id);
    /// The number whose row is selected; null where there is none.
    [[nodiscard]] const FieldId* selected() const;

  signals:
    void selectedChanged();  ///< the person selected another number
    void numberRequested(const FieldId& id);
    void calipersRequested();  ///< C was pressed: the selected number was taken with calipers
    void toolRequested();      ///< Delete was pressed: it has the uncertainty of its tool

  protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    std::vector<FieldId> ids_;
    bool showing_ = false;
};

}  // namespace bolthole
