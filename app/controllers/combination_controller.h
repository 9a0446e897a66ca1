// Keeps the hole board supplied: decides what to compute when the car changes, and what is pointed at.
#pragma once

#include <QElapsedTimer>
#include <QObject>
#include <QTimer>
#include <memory>
#include <optional>
#include <vector>

#include "app/controllers/combination_runner.h"
#include "app/controllers/combination_uncertainty_runner.h"
#include "widgets/board/hole_board.h"

namespace bolthole {

/// Between one window's car and its hole board.
class CombinationController : public QObject {
    Q_OBJECT
  public:
    /// `bench` and `board` must outlive the controller.
    CombinationController(BenchState& bench, HoleBoard& board, QObject* parent);

    /// The car on the bench changed. `dragging`: more changes follow at once; then the work is done aside.
    void carChanged(bool dragging);
    /// The bench's units, target window or theme changed, or the car did while nothing else is computed:
    /// shows the board anew.
    void show();
    /// Another car was opened: treatment and scope go back to what suits it.
    void reset();
    /// What happens to the links' lengths from now on, wherever it was chosen: BenchState::chosenLengths.
    void chooseLengths(LengthTreatment lengths);
    /// Another car stands in place of the combination pointed at; null: that again.
    void preview(const std::shared_ptr<const Car>& car);
    /// The cursor moved: the ghost pointed at follows.
    void moveGhost();

    [[nodiscard]] const BoardState& state() const { return state_; }

  signals:
    /// BenchState::pointed changed.
    void pointedChanged();
    /// BenchState::chosenLengths changed.
    void lengthsChanged();

  private:
    void chooseScope(const CombinationScope& scope);
    void computeAll();
    void point(const std::optional<HoleUse>& use);
    void compute(bool dragging);
    void start(bool dragging);
    void solvePresent();
    void take(const std::vector<HoleCombination>& combinations, bool last);
    void publishDue();
    void publishComing(bool last);
    void putPresentFirst();
    void startUncertainties();
    void clearUncertainties();
    void takeUncertainties(std::uint64_t first, const std::vector<CombinationUncertainty>& uncertainties,
                           bool last);
    void remakeGhost();
    void showGhost(const Car& car, const QString& name);

    BenchState& bench_;
    HoleBoard& board_;
    BoardState state_;
    std::vector<HoleCombination> coming_;   // of the job under way
    std::shared_ptr<const Car> comingCar_;  // the car they are for
    std::optional<HoleUse> pointed_;
    bool wantsMany_ = false;
    bool dragging_ = false;   // the last job was started in a drag
    bool overtaken_ = false;  // and the car moved on since
    QElapsedTimer age_;       // of the job under way
    CombinationRunner runner_;
    CombinationUncertaintyRunner uncertaintyRunner_;  // once every combination is there, never in a drag
    QTimer showTimer_;
    QTimer uncertaintyTimer_;
};

}  // namespace bolthole
