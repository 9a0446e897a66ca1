// Every figure at full droop, ride, full bump and at the cursor, side by side.
#pragma once

#include <QTableWidget>

#include "widgets/state/bench_state.h"

namespace bolthole {

class UncertaintyDelegate;

/// A table of the trace's figures. Rows are figures, columns places in the travel. Can be copied with Ctrl+C
/// as tab-separated text.
class FigureTable : public QTableWidget {
    Q_OBJECT
  public:
    explicit FigureTable(QWidget* parent = nullptr);

    void showState(const BenchState& state);
    /// Takes the cursor column alone.
    void showCursor(const BenchState& state);

    [[nodiscard]] QSize sizeHint() const override { return {520, 220}; }

  protected:
    void keyPressEvent(QKeyEvent* event) override;

  private:
    void showColumn(int column, const Station* station, Units units);
    void showUncertainty(int column, const BenchState& state, const Station* station);
    void dress();

    UncertaintyDelegate* uncertainty_;
};

}  // namespace bolthole
