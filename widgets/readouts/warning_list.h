// What keeps the car from being computed and what looks doubtful, each with a jump to its field.
#pragma once

#include <vector>

#include "geometry/edits/edit.h"
#include "widgets/kit/quiet_scroller.h"
#include "widgets/readouts/warning_row.h"
#include "widgets/state/bench_state.h"

class QVBoxLayout;

namespace bolthole {

/// Faults first, then warnings, the gravest first. A click on one, or Enter, asks for its field; its button,
/// where it has one, mends it in one step. The focus goes to the first row, and by arrow keys on.
class WarningList : public QuietScroller {
    Q_OBJECT
  public:
    explicit WarningList(QWidget* parent = nullptr);

    void showState(const BenchState& state);

  signals:
    void fieldRequested(const bolthole::FieldId& id);
    void edited(const bolthole::Edit& edit);

  private:
    struct Row {
        WarningWords words;
        FieldId field;
        Edit fix;
    };
    [[nodiscard]] static std::vector<Row> rowsOf(const BenchState& state);
    void build();

    std::vector<Row> rows_;
    QVBoxLayout* layout_;
};

}  // namespace bolthole
