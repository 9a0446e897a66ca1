// The travel curves: five quantities side by side over one vertical travel axis, bump up.
#pragma once

#include <vector>

#include "widgets/curves/curve_chart.h"
#include "widgets/curves/curve_data.h"
#include "widgets/state/bench_state.h"

namespace bolthole {

/// Cards for IC distance, IC height, anti-squat, pinion and joints, with a cursor through all of them and the
/// ghosts of the baseline and of what is pointed at. A slider beside it labels the travel.
class TravelCurves : public CurveChart {
    Q_OBJECT
  public:
    explicit TravelCurves(QWidget* parent = nullptr);

    /// Takes trace, units and cursor, and redraws everything.
    void showTrace(const BenchState& state);
    using CurveChart::showCursor;
    /// Takes the cursor alone; the curves under it are not drawn anew.
    void showCursor(const BenchState& state);

    [[nodiscard]] QSize minimumSizeHint() const override;

  private:
    void takeCard(std::size_t index, const BenchState& state);
    void takeProblem(const BenchState& state);

    std::vector<ChartCard> made_;                 // storage for what is shown
    std::vector<std::vector<ChartValue>> there_;  // at the cursor, as there are series
    Units units_ = Units::inch;
};

}  // namespace bolthole
