// Before and after: the kept setups of the car, and what the change from one of them to the bench does.
#pragma once

#include <QWidget>
#include <memory>

#include "geometry/car/field_id.h"
#include "geometry/compare/comparison.h"
#include "widgets/state/bench_state.h"

namespace bolthole {

class BaselinePanelParts;

/// Lists the kept setups, keeps, names, restores, swaps and deletes them, and shows the table of differences
/// against the one that is the baseline. Also the way to "what if": other tires or another ride height.
class BaselinePanel : public QWidget {
    Q_OBJECT
  public:
    explicit BaselinePanel(QWidget* parent = nullptr);
    ~BaselinePanel() override;

    /// Shows the state; `comparison`: of the baseline with the bench, null where there is no baseline or one
    /// of them can't be computed. Both must outlive the panel or be shown anew.
    void showState(const BenchState& state, const Comparison* comparison);
    /// The car before its last bolting, which the next showState() offers as the baseline where it has no
    /// difference to show; null: nobody knows it.
    void offerBeforeBolting(std::shared_ptr<const Car> car);
    /// The cursor moved: the column at the cursor alone.
    void showCursor(const BenchState& state, const Comparison* comparison);
    /// Asks for a name and a note and keeps the present state: the window's action of that name does the
    /// same.
    void askKeep();
    /// Asks for tire radii and ride heights, and emits what came of it: a setup to keep, or the change.
    void askRideChange();

    [[nodiscard]] QSize sizeHint() const override { return {1000, 310}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {560, 170}; }

  signals:
    void edited(const bolthole::Edit& edit, bolthole::EditPhase phase);
    /// A car with other tires or ride height, while it is asked for: to be drawn over the present one; null:
    /// no more.
    void ridePreviewed(const std::shared_ptr<const bolthole::Car>& car);
    /// How a number is measured is asked for in its field.
    void howToRequested(const bolthole::FieldId& id);
    /// The person wants another car file as the baseline.
    void otherCarRequested();
    /// The person wants the change sheet: on paper (preview first) or as a PDF file.
    void sheetPreviewRequested();
    void sheetFileRequested();

  private:
    void connectStates();
    void askDescribe(int state);
    void compareWithBeforeBolting();
    void takeRideChange(const RideChange& change, bool keeps);

    std::unique_ptr<BaselinePanelParts> parts_;
};

}  // namespace bolthole
