// Before and after: the kept states of the car, and what the change from one of them to the bench does.
#pragma once

#include <QWidget>
#include <memory>

#include "geometry/compare/comparison.h"
#include "widgets/state/bench_state.h"

namespace bolthole {

class BeforePanelParts;

/// Lists the kept states, keeps, names, restores, swaps and deletes them, and shows the table of differences
/// against the one that is the before. Also the way to "what if": other tires or another ride height.
class BeforePanel : public QWidget {
    Q_OBJECT
  public:
    explicit BeforePanel(QWidget* parent = nullptr);
    ~BeforePanel() override;

    /// Shows the state; `comparison`: of the before with the bench, null where there is no before or one of
    /// them can't be computed. Both must outlive the panel or be shown anew.
    void showState(const BenchState& state, const Comparison* comparison);
    /// The cursor moved: the column at the cursor alone.
    void showCursor(const BenchState& state, const Comparison* comparison);
    /// Asks for a name and a note and keeps the present state: the window's action of that name does the
    /// same.
    void askKeep();
    /// Asks for tire radii and ride heights, and emits what came of it: a setup to keep, or the change.
    void askRideChange();

    [[nodiscard]] QSize sizeHint() const override { return {1000, 330}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {560, 170}; }

  signals:
    void edited(const bolthole::Edit& edit, bolthole::EditPhase phase);
    /// A car with other tires or ride height, while it is asked for: to be drawn over the present one; null:
    /// no more.
    void ridePreviewed(const std::shared_ptr<const bolthole::Car>& car);
    /// The person wants another car file as the before.
    void otherCarWanted();
    /// The person wants the change sheet: on paper (preview first) or as a PDF file.
    void sheetPreviewWanted();
    void sheetFileWanted();

  private:
    void connectStates();
    void askDescribe(int state);
    void takeRideChange(const RideChange& change, bool keeps);

    std::unique_ptr<BeforePanelParts> parts_;
};

}  // namespace bolthole
