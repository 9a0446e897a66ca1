// Keeps the ghost of the baseline and the table of differences in step with the car.
#pragma once

#include <QObject>
#include <optional>

#include "widgets/compare/baseline_panel.h"

namespace bolthole {

/// Between one window's car and its before panel.
class BaselineController : public QObject {
    Q_OBJECT
  public:
    /// `bench` and `panel` must outlive the controller.
    BaselineController(BenchState& bench, BaselinePanel& panel, QObject* parent);

    /// The car on the bench changed: another before, or the same one at another cursor. Cheap where the
    /// before is the same.
    void carChanged();
    /// The cursor moved: the ghost follows.
    void moveGhost();
    /// Compares anew and shows the panel: once the car stands still, or a few times a second in a drag.
    /// `beforeBolting`: the car before its last bolting, null where nobody knows it.
    void show(const std::shared_ptr<const Car>& beforeBolting);
    /// Shows the column at the cursor anew.
    void showCursor();

    /// The baseline against the bench; nothing where there is no baseline or one of them can't be computed.
    [[nodiscard]] const Comparison* comparison() const { return comparison_ ? &*comparison_ : nullptr; }

  private:
    BenchState& bench_;
    BaselinePanel& panel_;
    std::shared_ptr<const Car> shown_;  // the kept car the ghost was made of
    std::optional<Comparison> comparison_;
};

}  // namespace bolthole
