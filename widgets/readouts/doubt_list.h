// What keeps the car from being computed and what looks doubtful, each with a jump to its field.
#pragma once

#include <QListWidget>

#include "widgets/state/bench_state.h"

namespace bolthole {

/// Faults first, then doubts. Activating one (double-click, Enter) asks for its field.
class DoubtList : public QListWidget {
    Q_OBJECT
  public:
    explicit DoubtList(QWidget* parent = nullptr);

    void showState(const BenchState& state);

  signals:
    void fieldWanted(const bolthole::FieldId& id);

  private:
    std::vector<FieldId> fields_;
    QStringList shown_;
};

}  // namespace bolthole
