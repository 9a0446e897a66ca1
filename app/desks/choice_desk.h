// Keeps the hole board supplied: decides what to compute when the car changes, and what is pointed at.
#pragma once

#include <QElapsedTimer>
#include <QObject>
#include <QTimer>
#include <memory>
#include <optional>
#include <vector>

#include "app/desks/choice_runner.h"
#include "app/desks/choice_spread_runner.h"
#include "widgets/board/hole_board.h"

namespace bolthole {

/// Between one window's car and its hole board.
class ChoiceDesk : public QObject {
    Q_OBJECT
  public:
    /// `bench` and `board` must outlive the desk.
    ChoiceDesk(BenchState& bench, HoleBoard& board, QObject* parent);

    /// The car on the bench changed. `dragging`: more changes follow at once; then the work is done aside.
    void carChanged(bool dragging);
    /// The bench's units, wanted window or theme changed, or the car did while nothing else is computed:
    /// shows the board anew.
    void show();
    /// Another car was opened: treatment and scope go back to what suits it.
    void reset();
    /// Another car stands in place of the choice pointed at; null: that again.
    void preview(const std::shared_ptr<const Car>& car);
    /// The cursor moved: the ghost pointed at follows.
    void moveGhost();

    [[nodiscard]] const BoardState& state() const { return state_; }

  signals:
    /// BenchState::pointed changed.
    void pointedChanged();

  private:
    void chooseLengths(LengthTreatment lengths);
    void chooseScope(const ChoiceScope& scope);
    void computeAll();
    void point(const std::optional<HoleUse>& use);
    void compute(bool dragging);
    void start(bool dragging);
    void solvePresent();
    void take(const std::vector<HoleChoice>& choices, bool last);
    void publishDue();
    void publishComing(bool last);
    void putPresentFirst();
    void startSpreads();
    void clearSpreads();
    void takeSpreads(std::uint64_t first, const std::vector<ChoiceSpread>& spreads, bool last);
    void remakeGhost();
    void showGhost(const Car& car, const QString& name);

    BenchState& bench_;
    HoleBoard& board_;
    BoardState state_;
    std::vector<HoleChoice> coming_;    // of the job under way
    std::vector<HoleChoice> finished_;  // of the last job that ended in a drag
    std::shared_ptr<const Car> finishedCar_;
    std::shared_ptr<const Car> comingCar_;   // the car they are for
    std::optional<LengthTreatment> chosen_;  // by the person; else what suits the car
    std::optional<HoleUse> pointed_;
    bool wantsMany_ = false;
    bool dragging_ = false;   // the job under way was started in a drag
    bool overtaken_ = false;  // and the car moved on since
    QElapsedTimer age_;       // of the job under way
    ChoiceRunner runner_;
    ChoiceSpreadRunner spreadRunner_;  // once every choice is there, never in a drag
    QTimer showTimer_;
    QTimer spreadTimer_;
};

}  // namespace bolthole
