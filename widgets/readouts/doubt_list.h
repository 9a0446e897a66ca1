// What keeps the car from being computed and what looks doubtful, each with a jump to its field.
#pragma once

#include <vector>

#include "geometry/edits/edit.h"
#include "widgets/kit/quiet_scroller.h"
#include "widgets/readouts/doubt_row.h"
#include "widgets/state/bench_state.h"

class QVBoxLayout;

namespace bolthole {

/// Faults first, then doubts, the gravest first. A click on one, or Enter, asks for its field; its button,
/// where it has one, mends it in one step. The focus goes to the first row, and by arrow keys on.
class DoubtList : public QuietScroller {
    Q_OBJECT
  public:
    explicit DoubtList(QWidget* parent = nullptr);

    void showState(const BenchState& state);

  signals:
    void fieldWanted(const bolthole::FieldId& id);
    void edited(const bolthole::Edit& edit);

  private:
    struct Row {
        DoubtWords words;
        FieldId field;
        Edit fix;
    };
    [[nodiscard]] static std::vector<Row> rowsOf(const BenchState& state);
    void build();

    std::vector<Row> rows_;
    QVBoxLayout* layout_;
};

}  // namespace bolthole
